"""Damaged spots are places of the cloth: laid another way, they come elsewhere on the table."""

from __future__ import annotations

import pytest
import shapely
from garments import rectangle
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.lay.cloth import Cloth
from littlefold.lay.unfolded import joined, spots_laid
from littlefold.lay.ways import Spread, Way, spread
from littlefold.problem import Problem

WIDE = 1380.0
"""What is used of cloth 140 cm wide with selvedges of 1 cm [mm]."""
DEEP = 300.0


def laid(way: Way) -> Spread:
    found = spread(Cloth(1400.0), way, [rectangle("front", 400.0, DEEP, on_fold=True)])
    assert isinstance(found, Spread)
    return found


WHERE = {
    Way.OPEN: lambda y: y,
    Way.FOLDED: lambda y: abs(y - WIDE / 2),
    Way.PARTLY: lambda y: abs(y - DEEP),
    Way.TWO_FOLDS: lambda y: (
        WIDE / 4 - y if y < WIDE / 4 else y - WIDE / 4 if y < WIDE * 3 / 4 else WIDE * 5 / 4 - y
    ),
    Way.TWO_PARTLY: lambda y: (
        DEEP - y if y < DEEP else y - DEEP if y < WIDE - DEEP else 2 * WIDE - 3 * DEEP - y
    ),
}
"""Where a thread of the open cloth, so far from its edge [mm], comes when the cloth is laid: reckoned by hand."""


@given(st.sampled_from(sorted(WHERE)), st.sampled_from(sorted(WHERE)), st.floats(1.0, WIDE - 1.0))
@settings(max_examples=150)
def test_a_damaged_thread_is_under_its_spot_however_the_cloth_is_laid(was: Way, now: Way, y: float) -> None:
    there = WHERE[was](y)
    spot = shapely.box(100.0, there - 0.5, 120.0, there + 0.5)
    found = spots_laid((spot,), laid(was), laid(now))
    assert not isinstance(found, Problem)
    thread = shapely.Point(110.0, WHERE[now](y))
    assert shapely.union_all(list(found)).distance(thread) < 1e-6
    assert all(one.bounds[0] == 100.0 and one.bounds[2] == 120.0 for one in found)


def test_of_two_layers_both_count() -> None:
    found = spots_laid((shapely.box(0, 20, 50, 60),), laid(Way.FOLDED), laid(Way.OPEN))
    assert not isinstance(found, Problem)
    # 2 and 6 cm from the fold, which is the middle of the 138 cm: at 63-67 and at 71-75 cm
    assert sorted(one.bounds for one in found) == [(0, 630, 50, 670), (0, 710, 50, 750)]


@pytest.mark.parametrize("way", [Way.CROSSWISE, Way.FOUR_LAYERS])
def test_a_fold_across_comes_where_the_lay_ends_so_that_nothing_is_carried_over_it(way: Way) -> None:
    for was, now in [(Way.OPEN, way), (way, Way.OPEN)]:
        found = spots_laid((shapely.box(0, 0, 9, 9),), laid(was), laid(now))
        assert isinstance(found, Problem)
        assert str(way) in found.message
    same = spots_laid((shapely.box(0, 0, 9, 9),), laid(way), laid(way))
    assert not isinstance(same, Problem)
    assert same[0].bounds == (0, 0, 9, 9)


def test_spots_that_lie_on_each_other_are_one() -> None:
    one = joined((shapely.box(0, 0, 10, 10), shapely.box(5, 5, 20, 20), shapely.box(90, 0, 95, 5)))
    assert sorted(spot.area for spot in one) == [25.0, 100.0 + 225.0 - 25.0]
