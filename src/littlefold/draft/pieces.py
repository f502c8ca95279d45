"""Pieces as the recipe states them: begun by a `piece` line, filled by the lines after it, traced at the end."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise
from math import hypot
from typing import TYPE_CHECKING

from littlefold.draft.model import Cutting, DraftEdge, DraftNotch, DraftPiece, EdgeKind, Inside
from littlefold.draft.outline import closed, counter_clockwise, snapped, stitch_lines
from littlefold.draft.refusal import Refusal
from littlefold.geometry import Path, Point, Vector

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from typing import Literal

    from littlefold.problem import Place
    from littlefold.recipe.recipe import Written
    from littlefold.recipe.tree import Spot


@dataclass(frozen=True, slots=True)
class StatedEdge:
    """An edge as stated: its drawn line and what becomes of it."""

    name: str
    kind: EdgeKind
    path: Path
    allowance: float
    spot: Spot
    included: bool = False
    turns: int = 1
    lap: float = 0.0
    folded: float = 0.0


@dataclass(slots=True)
class StatedPiece:
    """A piece in the making: the line that begins it and the line that states its edges.

    `usual` are its edges where no line states them.
    """

    name: str
    title: str
    sheet: str
    cutting: Cutting
    cloth: str
    place: Place
    spot: Spot
    written: Written
    made_as: Literal["traced", "rectangle", "bias", "band", "facing"] = "traced"
    edges: list[StatedEdge] = field(default_factory=list)
    usual: list[StatedEdge] = field(default_factory=list)
    edges_line: Written | None = None
    grain: Vector | None = None
    notches: list[Written] = field(default_factory=list)
    inside: list[Inside] = field(default_factory=list)
    marks: list[tuple[str, Point]] = field(default_factory=list)


def traced_edges(stated: StatedPiece, ends: dict[tuple[float, float], str]) -> tuple[DraftEdge, ...]:
    """The edges of a piece: cut where neighbours meet, counter-clockwise, stitch lines found.

    Args:
        stated: The piece as stated.
        ends: The names of points by their place, rounded to a hundredth of a millimetre.

    Raises:
        Refusal: The edges do not close.
    """
    edges = stated.edges or stated.usual
    if not edges:
        raise Refusal(
            "piece-without-edges", f"the piece {stated.name} has no edges. Add a line: edges ...", stated.spot
        )
    names, spots = [edge.name for edge in edges], [edge.spot for edge in edges]
    drawn = snapped(closed([edge.path for edge in edges], names, spots))
    if not counter_clockwise(drawn):
        edges, names, spots = edges[::-1], names[::-1], spots[::-1]
        drawn = tuple(path.reversed() for path in reversed(drawn))
    insets = [edge.allowance if edge.included else 0.0 for edge in edges]
    stitched = snapped(stitch_lines(drawn, insets, names, spots))
    return tuple(
        DraftEdge(
            edge.name,
            edge.kind,
            path,
            _name_at(ends, path.start),
            _name_at(ends, path.end),
            edge.allowance,
            edge.included,
            edge.turns,
            edge.lap,
            edge.folded,
        )
        for edge, path in zip(edges, stitched, strict=True)
    )


def _name_at(ends: dict[tuple[float, float], str], place: Point) -> str:
    return ends.get(place_key(place), "")


def place_key(place: Point) -> tuple[float, float]:
    """A place to a hundredth of a millimetre, by which points are known again."""
    return (round(place.x, 2), round(place.y, 2))


def finished(
    stated: StatedPiece, edges: tuple[DraftEdge, ...], notches: tuple[DraftNotch, ...]
) -> DraftPiece:
    """The piece with its traced edges and its notches."""
    return DraftPiece(
        stated.name,
        stated.title,
        stated.sheet,
        stated.cutting,
        stated.cloth,
        edges,
        _grain(stated, edges),
        notches,
        tuple(stated.inside),
        tuple(stated.marks),
        stated.place,
        stated.made_as,
    )


# The grain arrow takes up this share of the room it has, about its middle.
GRAIN_SHARE = 0.6

# Longer arrows would only be in the way of words [mm].
LONGEST_GRAIN = 240.0

# Where the arrow is tried, as shares of the piece's width from side to side.  Off the middle first: it leaves
# the larger part for words.
GRAIN_PLACES = (0.3, 0.7, 0.35, 0.65, 0.25, 0.75, 0.4, 0.6, 0.2, 0.8, 0.45, 0.55, 0.5)

# A place is good when the arrow has this share of the longest room found ...
GOOD_ENOUGH = 0.75

# ... and keeps this far from the outline on both sides [mm]: further than any bracket, allowance or word there.
GRAIN_CLEAR = 20.0

# The arrow is sought among chords that lie within this of the outline [mm]: much less than its distance from it.
GRAIN_CHORDS = 0.1


def _grain(stated: StatedPiece, edges: tuple[DraftEdge, ...]) -> tuple[Point, Point]:
    """The grain arrow, inside the piece, along the direction stated; upright where none is."""
    outline = Path.joined(*(edge.path for edge in edges))
    way = stated.grain.unit() if stated.grain else Vector(0, 1)
    if way.y < 0 or (way.y == 0 and way.x < 0):
        way = -way
    ring = outline.flatten(GRAIN_CHORDS)
    arrows = [arrow for share in GRAIN_PLACES if (arrow := _arrow(outline, ring, way, share)) is not None]
    longest = max(start.distance(end) for start, end in arrows)
    long = [arrow for arrow in arrows if arrow[0].distance(arrow[1]) >= GOOD_ENOUGH * longest]
    return _clearest(long, ring)


def _clearest(arrows: list[tuple[Point, Point]], ring: Sequence[Point]) -> tuple[Point, Point]:
    """The first arrow that keeps `GRAIN_CLEAR` from the outline, or the one that keeps furthest from it."""
    best, furthest = arrows[0], -1.0
    for arrow in arrows:
        clear = _clearance(arrow, ring)
        if clear > furthest:
            best, furthest = arrow, clear
        if clear >= GRAIN_CLEAR:
            break
    return best


def _arrow(outline: Path, ring: Sequence[Point], way: Vector, share: float) -> tuple[Point, Point] | None:
    """The arrow about the middle of the longest stretch at a share of the width."""
    room = _room(outline, ring, way, share)
    if room is None:
        return None
    through, low, high = room
    middle, half = (low + high) / 2, min((high - low) * GRAIN_SHARE, LONGEST_GRAIN) / 2
    return (through + way * (middle - half), through + way * (middle + half))


def _clearance(arrow: tuple[Point, Point], ring: Sequence[Point]) -> float:
    """How near an outline, given by the corners of its chords, comes to an arrow that does not meet it [mm]."""
    ends = (_beside(end, start, stop) for end in arrow for start, stop in pairwise(ring))
    return min(*ends, *(_beside(corner, *arrow) for corner in ring))


def _beside(point: Point, start: Point, end: Point) -> float:
    """How far a point lies from a straight line between two others [mm]."""
    x, y, dx, dy = point.x - start.x, point.y - start.y, end.x - start.x, end.y - start.y
    square = dx * dx + dy * dy
    along = min(1.0, max(0.0, (x * dx + y * dy) / square)) if square > 0 else 0.0
    return hypot(x - along * dx, y - along * dy)


def _room(
    outline: Path, ring: Sequence[Point], way: Vector, share: float
) -> tuple[Point, float, float] | None:
    """The longest stretch inside an outline along a direction, at a share of its width: a point and two lengths."""
    box = outline.bounds()
    across = way.turned_right()
    corners = [Point(x, y) - box.centre for x in (box.left, box.right) for y in (box.bottom, box.top)]
    reach = max(abs(corner.dot(across)) for corner in corners)
    through = box.centre + across * (reach * (2 * share - 1))
    marks = sorted(_marks(ring, through, way))
    stretches = list(zip(marks[::2], marks[1::2], strict=False))
    if not stretches:
        return None
    low, high = max(stretches, key=lambda stretch: stretch[1] - stretch[0])
    return (through, low, high)


def _marks(ring: Sequence[Point], through: Point, way: Vector) -> Iterator[float]:
    """Where chords cross a line through a point, as the way along the line [mm]; a corner on it counts once."""
    turned = way.turned_left()
    sides = [(point.x - through.x) * turned.x + (point.y - through.y) * turned.y for point in ring]
    for (start, end), (one, other) in zip(pairwise(ring), pairwise(sides), strict=True):
        if (one < 0) != (other < 0):
            yield (start.towards(end, one / (one - other)) - through).dot(way)
