"""An outline cut along lines and opened: `slash skirt along C-D as flared opening 4 cm at hemline`.

One opening: the part turns about the other end of the line, which stays closed (the edge there gets a bend).
Two openings: the parts move apart at both ends.  An opened edge is carried across by a curve that goes on from
both its halves; the halves themselves are kept.  Several lines are opened one after the other, each by the same.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

from littlefold.draft.drawn import named, pencil, word
from littlefold.draft.model import Said
from littlefold.draft.outline import CORNER
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.cut import crossing
from littlefold.draft.shapes.laid_down import lay_down, tell
from littlefold.draft.shapes.opened import halved, motion, put_together, smooth_bridge
from littlefold.draft.shapes.register import shape_act
from littlefold.draft.shapes.taken import line_named, noting, outline_taken, short
from littlefold.geometry.intersection import meet
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.drawn import Distance
    from littlefold.draft.shapes.opened import Halves
    from littlefold.draft.shapes.shape import Shape
    from littlefold.geometry import Affine, Path
    from littlefold.recipe.recipe import Written


@dataclass(frozen=True, slots=True)
class _Opening:
    """How far which edge is opened."""

    edge: tree.Name
    by: float


@shape_act(tree.Slash)
def slash(line: Written, desk: Desk) -> None:
    """Opens an outline along lines from edge to edge."""
    step: tree.Slash = line.statement
    shape = noting(outline_taken(step.outline, desk), step.lines, step.outline, desk)
    first = pencil(step.opening, desk)
    second = pencil(step.second_opening, desk) if step.second_opening is not None else None
    openings = _openings(step, first, second, shape, desk)
    paths = [line_named(ref, step.outline, desk) for ref in step.lines]
    _apart(step, paths)
    for index, ref in enumerate(step.lines):
        shape, move = _opened(step, ref, shape, paths[index], openings)
        paths[index + 1 :] = [move(path) for path in paths[index + 1 :]]
    lay_down(step.name, shape, desk)
    tell(line, step.name, "shape.slash", _words(step, first, second), desk, first)


def _words(step: tree.Slash, first: Distance, second: Distance | None) -> dict[str, Said]:
    words = {"outline": named(step.outline), "lines": named(", ".join(map(short, step.lines)))}
    words |= {"name": named(step.name), "opening": first.said, "edge": named(step.at)}
    words |= {
        "count": Said("number", len(step.lines)),
        "second": word("none" if second is None else "second"),
    }
    if second is not None:
        words |= {"second_opening": second.said, "second_edge": named(step.second_at)}
    return words


def _openings(
    step: tree.Slash, first: Distance, second: Distance | None, shape: Shape, desk: Desk
) -> tuple[_Opening, ...]:
    """The openings, each more than nothing and at an edge of the outline."""
    stated = [(step.at, first), (step.second_at, second)]
    openings = tuple(_Opening(at, by.value) for at, by in stated if at is not None and by is not None)
    for opening in openings:
        if opening.edge.text not in shape.names:
            raise desk.missing(say("edge of {piece}", piece=str(step.outline)), opening.edge, shape.names)
        if opening.by <= 0:
            raise Refusal(
                "opening-not-possible",
                say(
                    "an opening of {by} at {edge} opens nothing. Give more than 0 cm.",
                    by=f"{opening.by / 10:.1f} cm",
                    edge=str(opening.edge),
                ),
                opening.edge.spot,
                (Number("opening", opening.by),),
            )
    return openings


def _apart(step: tree.Slash, paths: list[Path]) -> None:
    """Refuses slash lines that cross each other; they may end in one place."""
    for (one, first), (other, second) in combinations(enumerate(paths), 2):
        for meeting in meet(first, second):
            rest = min(meeting.first_length, first.length() - meeting.first_length)
            if rest > CORNER:
                raise Refusal(
                    "slash-lines-cross",
                    say(
                        "{one} and {other} cross {rest} from an end. Let them run side by side, or slash one after "
                        "the other.",
                        one=str(step.lines[one]),
                        other=str(step.lines[other]),
                        rest=f"{rest / 10:.1f} cm",
                    ),
                    step.lines[other].spot,
                    (Number("from the end", rest),),
                )


@dataclass(frozen=True, slots=True)
class _Move:
    """Takes a line along with the part it lies on."""

    halves: Halves
    going: Affine

    def __call__(self, path: Path) -> Path:
        middle = path.at_length(path.length() / 2)
        return path.transformed(self.going) if self.halves.leaving.region.holds(middle) else path


def _opened(
    step: tree.Slash, ref: tree.LineRef, shape: Shape, path: Path, openings: tuple[_Opening, ...]
) -> tuple[Shape, _Move]:
    """The outline opened along one line, and the motion of what lies on the part that goes."""
    cut = crossing(shape, path, (str(ref), step.outline.text), ref.spot)
    halves = halved(shape, cut)
    at_a, at_b = _at_ends(ref, shape, halves, openings)
    going = motion(halves, at_a, at_b)
    if going is None:
        raise _too_far(ref, halves.a.distance(halves.b), abs(at_a - at_b))
    gone = [edge.moved(going) for edge in halves.goes]
    name = step.at.text
    bridge_b = smooth_bridge(halves.stays[-1], gone[0], name) if at_b else ()
    bridge_a = smooth_bridge(gone[-1], halves.stays[0], name) if at_a else ()
    opened = put_together(shape, halves, going, bridge_a, bridge_b)
    return opened, _Move(halves, going)


def _too_far(ref: tree.LineRef, length: float, opening: float) -> Refusal:
    most = length * 2**0.5
    return Refusal(
        "opening-too-wide",
        say(
            "{ref} is {length} long; opened {opening} more at one end than at the other it would turn by "
            "more than a right angle (at most {most}). Open less, or along several lines.",
            ref=str(ref),
            length=f"{length / 10:.1f} cm",
            opening=f"{opening / 10:.1f} cm",
            most=f"{most / 10:.1f} cm",
        ),
        ref.spot,
        (Number("opening", opening), Number("at most", most)),
    )


def _at_ends(
    ref: tree.LineRef, shape: Shape, halves: Halves, openings: tuple[_Opening, ...]
) -> tuple[float, float]:
    """The openings at both ends of the cut, a and b.

    Raises:
        Refusal: An edge that is to be opened is not at just one end.
    """
    ends = tuple(shape.edges_at(place) for place in (halves.a, halves.b))
    by = [0.0, 0.0]
    for opening in openings:
        where = [k for k in (0, 1) if opening.edge.text in ends[k] and not by[k]]
        if len(where) != 1:
            listed = " to ".join(" or ".join(end) for end in ends)
            raise Refusal(
                "slash-not-at-edge",
                say(
                    "{ref} runs from {listed}, so it is not clear how {edge} is opened: it has to be at just one "
                    "of its ends. Draw the line to it, or name another edge.",
                    ref=str(ref),
                    listed=str(listed),
                    edge=str(opening.edge),
                ),
                opening.edge.spot,
            )
        by[where[0]] = opening.by
    return by[0], by[1]
