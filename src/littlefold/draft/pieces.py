"""Pieces as the recipe states them: begun by a `piece` line, filled by the lines after it, traced at the end."""

from __future__ import annotations

from dataclasses import dataclass, field
from math import floor
from typing import TYPE_CHECKING

from littlefold.draft.grain import grain_arrow
from littlefold.draft.model import Cutting, DraftEdge, DraftNotch, DraftPiece, EdgeKind, Inside
from littlefold.draft.outline import closed, counter_clockwise, snapped, stitch_lines
from littlefold.draft.refusal import Refusal

if TYPE_CHECKING:
    from typing import Literal

    from littlefold.geometry import Path, Point, Vector
    from littlefold.problem import Place
    from littlefold.recipe.recipe import Written
    from littlefold.recipe.tree import Spot


PlaceKey = tuple[int, int]


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


def traced_edges(stated: StatedPiece, ends: dict[PlaceKey, str]) -> tuple[DraftEdge, ...]:
    """The edges of a piece: cut where neighbours meet, counter-clockwise, stitch lines found.

    Args:
        stated: The piece as stated.
        ends: The names of points by their place.

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


def _name_at(ends: dict[PlaceKey, str], place: Point) -> str:
    return ends.get(place_key(place), "")


def place_key(place: Point) -> PlaceKey:
    """A place in whole hundredths of a millimetre, by which points are known again."""
    return (floor(place.x * 100 + 0.5), floor(place.y * 100 + 0.5))


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
        grain_arrow((edge.path for edge in edges), stated.grain),
        notches,
        tuple(stated.inside),
        tuple(stated.marks),
        stated.place,
        stated.made_as,
    )
