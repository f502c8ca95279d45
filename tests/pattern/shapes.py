"""Pieces built by hand, as a recipe would state them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.body.measurements import Measurements
from littlefold.draft.model import Cutting, Draft, DraftEdge, DraftPiece, EdgeKind
from littlefold.geometry import Path, Point

if TYPE_CHECKING:
    from collections.abc import Iterable


def point(x, y):
    return Point(float(x), float(y))


def straight(*points):
    return Path.line_through(*(point(*p) for p in points))


def edge(name, path, kind=EdgeKind.SEAM, allowance=10.0, **more):
    return DraftEdge(name, kind, path, "", "", allowance, **more)


def polygon_edges(*corners, kinds=None, allowances=None):
    """Straight edges e0, e1 ... between corners in order, counter-clockwise."""
    ends = [*corners[1:], corners[0]]
    kinds = kinds or [EdgeKind.SEAM] * len(corners)
    allowances = allowances or [10.0] * len(corners)
    return tuple(
        edge(f"e{k}", straight(a, b), kind, wide)
        for k, (a, b, kind, wide) in enumerate(zip(corners, ends, kinds, allowances, strict=True))
    )


def piece(name, edges, cutting=Cutting(), notches=(), **more):  # noqa: B008 - frozen
    middle = edges[0].path.start.towards(edges[len(edges) // 2].path.start, 0.5)
    grain = (Point(middle.x, middle.y - 10), Point(middle.x, middle.y + 10))
    title = more.pop("title", name.capitalize())
    return DraftPiece(name, title, "sheet", cutting, "main", tuple(edges), grain, tuple(notches), **more)


def draft(pieces: Iterable[DraftPiece], seams=()):
    return Draft(
        "try",
        "Trial",
        "top",
        "0" * 8,
        (500.0, 1340.0),
        Measurements(),
        (),
        {},
        None,
        pieces=tuple(pieces),
        seams=tuple(seams),
    )
