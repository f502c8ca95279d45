"""An outline cut along a line that crosses it.

     p            The line is taken from where it enters the outline (p) to where it leaves it (q); what runs
.----+----.       on past the outline is left off.  Each part has the line as an edge.
|    |    |
'----+----'
     q
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.draft.outline import CORNER, snapped
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.shape import Shape, ShapeEdge, tidied
from littlefold.geometry import Line, Path
from littlefold.geometry.intersection import meet
from littlefold.problem import Number, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.geometry import Point
    from littlefold.recipe.tree import Spot

# A line that stops this short of the outline [mm] still crosses it: the width of a fine pencil.
REACH = 0.1

# Crossings nearer to each other than this along the line [mm] are one: at a corner both edges are met.
ONE_PLACE = 3 * REACH


@dataclass(frozen=True, slots=True)
class Crossing:
    """Where a line crosses an outline: lengths along the outline, the lower first, and the line between them."""

    start: float
    end: float
    path: Path


@dataclass(frozen=True, slots=True)
class _Place:
    """One meeting: length along the outline and along the line [mm]."""

    ring: float
    along: float


def crossing(shape: Shape, path: Path, called: tuple[str, str], spot: Spot) -> Crossing:
    """Where a line crosses an outline.

    Args:
        shape: The outline.
        path: The line, from edge to edge or beyond.
        called: What a problem calls the line and the outline.
        spot: Where the line is named.

    Raises:
        Refusal: It does not cross the outline at just two places, or runs outside between them.
    """
    places = meetings(shape, path)
    if len(places) != 2:  # noqa: PLR2004 - in and out
        raise _not_across(called, len(places), spot)
    return _between(shape, path, places, called, spot)


def crossing_about_middle(shape: Shape, path: Path, called: tuple[str, str], spot: Spot) -> Crossing:
    """The same for a line that may cross further edges beyond: the crossings next to its middle are taken."""
    places = meetings(shape, path)
    middle = path.length() / 2
    before = [place for place in places if place.along <= middle]
    after = [place for place in places if place.along > middle]
    if not before or not after:
        raise _not_across(called, len(places), spot)
    return _between(shape, path, [before[-1], after[0]], called, spot)


def _not_across(called: tuple[str, str], count: int, spot: Spot) -> Refusal:
    line, outline = called
    return Refusal(
        "line-not-across",
        say(
            "{line} meets the outline of {outline} at {count} {places}; it has to cross it at two. Draw "
            "it from edge to edge.",
            line=str(line),
            outline=str(outline),
            count=str(count),
            places=say("place" if count == 1 else "places"),
        ),
        spot,
        (Number("places", count, "count"), Number("needed", 2, "count")),
    )


def _between(shape: Shape, path: Path, places: list[_Place], called: tuple[str, str], spot: Spot) -> Crossing:
    whole = path.length()
    low, high = (min(max(place.along, 0.0), whole) for place in places)
    if high - low <= CORNER or not shape.region.holds_inside(path.at_length((low + high) / 2)):
        raise Refusal(
            "line-outside",
            say(
                "{called} runs outside {called_2} between its edges. Draw it through the inside.",
                called=str(called[0]),
                called_2=str(called[1]),
            ),
            spot,
        )
    inside = path.part(low, high)
    first, last = places
    if first.ring > last.ring:
        first, last, inside = last, first, inside.reversed()
    return Crossing(first.ring, last.ring, inside)


def meetings(shape: Shape, path: Path) -> list[_Place]:
    """Where a line meets an outline, in the order of the line, each place once."""
    reaching = _reaching(path)
    marks = shape.corners
    found = [
        _Place(mark + meeting.first_length, meeting.second_length - REACH)
        for edge, mark in zip(shape.edges, marks, strict=False)
        for meeting in meet(edge.path, reaching)
    ]
    return _once(sorted(found, key=lambda place: place.along), marks, path.length())


def _reaching(path: Path) -> Path:
    """A line carried on a little at both ends; one that is straight stays one line, which is met but once."""
    if path.is_straight:
        return Path((Line(path.start + path.start_tangent * -REACH, path.end + path.end_tangent * REACH),))
    return path.extended_start(REACH).extended_end(REACH)


def _once(places: Sequence[_Place], marks: tuple[float, ...], whole: float) -> list[_Place]:
    kept: list[_Place] = []
    for place in places:
        if kept and place.along - kept[-1].along <= ONE_PLACE:
            kept[-1] = min(kept[-1], place, key=lambda one: _beyond(one.along, whole))
        else:
            kept.append(place)
    return [_Place(_at_corner(place.ring, marks), place.along) for place in kept]


def _beyond(along: float, whole: float) -> float:
    """How far a place lies beyond the ends of the line."""
    return max(-along, along - whole, 0.0)


def _at_corner(ring: float, marks: tuple[float, ...]) -> float:
    """The length of a corner, where the place lies at one; the start, where it lies at the end."""
    near = min(marks, key=lambda mark: abs(mark - ring))
    if abs(near - ring) > 2 * CORNER:
        return ring
    return 0.0 if near == marks[-1] else near


def parts(shape: Shape, cut: Crossing, name: str) -> tuple[Shape, Shape]:
    """The two parts: that from the first crossing to the second, and the rest; the cut edge bears the name."""
    inner = (*shape.stretch(cut.start, cut.end), ShapeEdge(name, cut.path.reversed()))
    outer = (*shape.stretch(cut.end, cut.start), ShapeEdge(name, cut.path))
    first = shape.edges[0].name
    return _part(inner, first, shape), _part(outer, first, shape)


def _part(edges: tuple[ShapeEdge, ...], first: str, shape: Shape) -> Shape:
    return Shape(tidied(joined_up(edges), first)).holding(shape.marks)


def joined_up(edges: Sequence[ShapeEdge]) -> tuple[ShapeEdge, ...]:
    """Edges that go head to tail but for a pencil's width, with their ends in the same places."""
    paths = snapped(tuple(edge.path for edge in edges))
    return tuple(ShapeEdge(edge.name, path, edge.folds) for edge, path in zip(edges, paths, strict=True))


def distance_to(shape: Shape, place: Point) -> float:
    """How far a point lies from a part; nothing inside it [mm]."""
    return 0.0 if shape.region.holds(place) else shape.outline.distance(place)
