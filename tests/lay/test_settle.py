from __future__ import annotations

import numpy as np
import pytest
import shapely

from littlefold.lay.convex import convex_parts, polygon_of, ring_of
from littlefold.lay.nofit import PLAIN, Lattice
from littlefold.lay.settle import Settler
from littlefold.lay.strip import Member, Shape, Spot, Stance, Strip


def shape(corners: list[tuple[float, float]]) -> Shape:
    polygon = polygon_of(np.array(corners, dtype=float))
    return Shape(convex_parts(polygon), polygon.bounds, polygon.area, 0, 0.0, (0.0, 0.0), ring_of(polygon))


SQUARE = shape([(0, 0), (100, 0), (100, 100), (0, 100)])


def strip_of(members: tuple[Member, ...], height: float = 300.0) -> Strip:
    return Strip(height, (SQUARE,), members, Lattice(10.0, 10.0))


def free() -> Member:
    return Member((Stance(0, PLAIN, 0.0, 200.0),))


def test_squares_in_a_row_are_pushed_together() -> None:
    row = tuple(Member((Stance(0, PLAIN, 0.0, 0.0),)) for _ in range(3))
    settled = Settler(strip_of(row)).settle((Spot(0, 3, 0), Spot(0, 120, 0), Spot(0, 240, 0)))
    assert settled.is_clean
    assert settled.length == pytest.approx(300.0, abs=1e-6)


def test_a_small_overlap_is_driven_out() -> None:
    settled = Settler(strip_of((free(), free()))).settle((Spot(0, 0, 0), Spot(0, 30, 92)), 130.0)
    assert settled.is_clean
    first, second = (shapely.box(s.x, s.y, s.x + 100, s.y + 100) for s in settled.layout)
    assert first.intersection(second).area < 1e-3


def test_a_fixed_member_and_a_bound_row_stay() -> None:
    members = (
        Member((Stance(0, PLAIN, 150.0, 150.0),), fixed_at=(37.0, 150.0)),
        Member((Stance(0, PLAIN, 0.0, 200.0, along_phase=(0.0, 50.0)),)),
    )
    settled = Settler(strip_of(members)).settle((Spot(0, 37, 150), Spot(0, 150, 0)))
    assert settled.layout[0] == Spot(0, 37.0, 150.0)
    assert settled.layout[1].x == 150.0


def test_what_cannot_be_freed_is_not_clean() -> None:
    row = tuple(Member((Stance(0, PLAIN, 0.0, 0.0),)) for _ in range(2))
    settled = Settler(strip_of(row)).settle((Spot(0, 0, 0), Spot(0, 50, 0)), 150.0)
    assert not settled.is_clean
    assert settled.overlap == pytest.approx(50.0, abs=1e-3)
