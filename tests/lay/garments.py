"""Invented garments of the playgroup's sewing room, drawn by hand so that the lay can be tested by itself.

x runs along the grain from hem to neck; halves on the fold have the fold on y = 0.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.geometry import Point
from littlefold.lay.piece import LayPiece

if TYPE_CHECKING:
    from collections.abc import Sequence

Corners = list[tuple[float, float]]


def curve(
    start: tuple[float, float], bend: tuple[float, float], end: tuple[float, float], count: int = 8
) -> Corners:
    """Points of a parabola from start to end that is drawn towards a corner."""
    ts = [k / (count - 1) for k in range(count)]
    return [
        tuple(
            (1 - t) ** 2 * a + 2 * (1 - t) * t * b + t * t * c
            for a, b, c in zip(start, bend, end, strict=True)
        )
        for t in ts
    ]  # type: ignore[misc]


def ring(corners: Sequence[tuple[float, float]]) -> tuple[Point, ...]:
    pairs = zip(corners, [*corners[1:], corners[0]], strict=True)
    area = sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs)
    return tuple(Point(float(x), float(y)) for x, y in (corners if area > 0 else corners[::-1]))


def rectangle(name: str, length: float, width: float, copies: int = 1, **more: object) -> LayPiece:
    return LayPiece(name, ring([(0, 0), (length, 0), (length, width), (0, width)]), copies, **more)  # type: ignore[arg-type]


def bodice(neck_depth: float, overlap: float = 0.0) -> Corners:
    armhole = curve((110, 170), (120, 125), (205, 130))
    neck = curve((240, 65), (240 - neck_depth, 65), (240 - neck_depth, -overlap), 6)
    return [(0, -overlap), (0, 170), *armhole, *neck]


def dress() -> tuple[LayPiece, ...]:
    """A dress with a gathered skirt: eight pieces, three on the fold."""
    sleeve = [
        (0, 20),
        (0, 190),
        *curve((60, 210), (130, 160), (140, 105)),
        *curve((140, 105), (130, 50), (60, 0))[1:],
    ]
    collar = [*curve((0, 0), (45, 60), (20, 150)), *curve((70, 140), (100, 60), (60, 0))]
    facing = [(0, 0), (0, 60), (60, 110), *curve((80, 70), (20, 70), (20, 0))]
    return (
        LayPiece("front", ring(bodice(70)), 1, on_fold=True, number=1),
        LayPiece("back", ring(bodice(25, 20)), 2, pair=True, number=2),
        LayPiece("skirt_front", ring([(0, 0), (330, 0), (320, 210), (0, 290)]), 1, on_fold=True, number=3),
        LayPiece("skirt_back", ring([(0, -20), (330, -20), (320, 210), (0, 290)]), 2, pair=True, number=4),
        LayPiece("sleeve", ring(sleeve), 2, pair=True, number=5),
        LayPiece("collar", ring(collar), 4, pair=True, number=6),
        LayPiece("facing", ring(facing), 1, on_fold=True, number=7),
        LayPiece("pocket", ring([(0, 0), (130, 0), (130, 110), (20, 110), (0, 55)]), 2, pair=True, number=8),
    )


def romper() -> tuple[LayPiece, ...]:
    """A baby romper whose long pieces all lie on the fold, so that the fold decides the length."""
    leg = [
        (0, 0),
        (0, 25),
        *curve((10, 30), (120, 60), (150, 125)),
        (330, 120),
        *curve((430, 60), (370, 60), (370, 0)),
    ]
    return (
        LayPiece("front", ring(leg), 1, on_fold=True, number=1),
        LayPiece("back", ring([(x + (x > 400) * 15, y) for x, y in leg]), 1, on_fold=True, number=2),
        LayPiece("front_facing", ring([(0, 0), (0, 60), (70, 60), (70, 0)]), 1, on_fold=True, number=3),
        LayPiece("back_facing", ring([(0, 0), (0, 60), (60, 60), (60, 0)]), 1, on_fold=True, number=4),
        rectangle("pocket", 90, 80, 1, number=5),
    )


def top() -> tuple[LayPiece, ...]:
    """A small sleeveless top: front and back alike, both on the fold."""
    return (
        LayPiece("body", ring(bodice(40)), 2, on_fold=True, number=1),
        rectangle("strap", 200, 40, 4, number=2),
    )
