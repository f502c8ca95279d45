"""Straight lines."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.drawn import NewLine, named
from littlefold.draft.refusal import Refusal
from littlefold.draft.register import construction
from littlefold.geometry import Path
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.problem import say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk


@construction(tree.LineStraight, "line.straight")
def straight(step: tree.LineStraight, desk: Desk) -> NewLine:
    """A straight line from point to point to point."""
    names = (step.start, *step.stops)
    places = [desk.point(name) for name in names]
    for one, other, name in zip(places, places[1:], step.stops, strict=False):
        if one.distance(other) <= SAME_POINT:
            raise Refusal(
                "line-without-length",
                say(
                    "the line {name} has no length at {leg}: two of its points lie in the same place. Move "
                    "one of them.",
                    name=str(step.name),
                    leg=str(name),
                ),
                name.spot,
            )
    words = {"start": named(names[0]), "stops": named(", ".join(map(str, step.stops)))}
    return NewLine(Path.line_through(*places), "line", names[0].text, names[-1].text, words)
