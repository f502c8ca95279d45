"""Lines and curves parallel to others."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.drawn import NewLine, named, pencil, word
from littlefold.draft.refusal import Refusal
from littlefold.draft.register import construction
from littlefold.draft.sides import pick, side_words
from littlefold.geometry import Path
from littlefold.geometry.offset import offset, offset_tapered
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.model import LineKind
    from littlefold.geometry import Point


@construction(tree.LineParallel, "line.parallel")
def line(step: tree.LineParallel, desk: Desk) -> NewLine:
    """A straight line parallel to another, as long as it."""
    straight, distance = desk.straight(step.line), pencil(step.distance, desk)
    across = straight.tangent(0).turned_left() * distance.value
    answers = [Path.line_through(straight.start + way, straight.end + way) for way in (across, -across)]
    path = answers[0] if distance.value == 0 else pick(answers, _middle, step.side, desk, step.name.spot)
    words = {"line": named(step.line), "distance": distance.said} | side_words(step.side)
    return NewLine(path, "line", "", "", words, distance)


@construction(tree.CurveParallel, "curve.parallel")
def curve(step: tree.CurveParallel, desk: Desk) -> NewLine:
    """A curve at one distance from another, or at distances that change evenly from end to end."""
    original, distance = desk.named_line(step.line), pencil(step.distance, desk)
    second = pencil(step.end_distance, desk) if step.end_distance is not None else distance
    sign = _sign(original.path, (distance.value + second.value) / 2, step, desk)
    path = _beside(original.path, sign * distance.value, sign * second.value, step)
    words = {"line": named(step.line), "distance": distance.said} | side_words(step.side)
    words |= {
        "taper": word("taper" if step.end_distance is not None else "none"),
        "end_distance": second.said,
    }
    kind: LineKind = "arc" if original.kind == "arc" and second is distance else "curve"
    return NewLine(path, kind, "", "", words, distance)


def _beside(path: Path, at_start: float, at_end: float, step: tree.CurveParallel) -> Path:
    found = offset(path, at_start) if at_start == at_end else offset_tapered(path, at_start, at_end)
    if found is None:
        raise Refusal(
            "parallel-too-far",
            say(
                "{line} bends too sharply for a parallel at {distance}. Take a smaller distance.",
                line=str(step.line),
                distance=f"{abs(at_start) / 10:.1f} cm",
            ),
            step.name.spot,
            (Number("distance", max(abs(at_start), abs(at_end))), Number("length", path.length())),
        )
    return found


def _sign(path: Path, distance: float, step: tree.CurveParallel, desk: Desk) -> int:
    """On which side of a curve its parallel is meant: 1 left of the curve's way, -1 right of it."""
    if distance == 0:
        return 1
    middle = path.length() / 2
    across = path.tangent_at_length(middle).turned_left() * distance
    place = path.at_length(middle)
    return pick((1, -1), lambda sign: place + across * sign, step.side, desk, step.name.spot)


def _middle(path: Path) -> Point:
    return path.at_length(path.length() / 2)
