"""The bound of pieces that are too deep to lie side by side."""

from __future__ import annotations

import pytest
from garments import dress, rectangle, romper
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.lay.cloth import Cloth
from littlefold.lay.deal import Cut
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.profile import EVERY, depths, side_by_side
from littlefold.lay.ways import Way


def cut(length: float, width: float) -> Cut:
    return Cut(
        rectangle(f"{length} by {width}", length, width), half=False, layers=1, zones=(0,), hand="plain"
    )


def test_the_depths_of_a_piece_add_up_to_its_area() -> None:
    one = cut(300, 120)
    assert depths(one, 0.0).sum() * EVERY == pytest.approx(300 * 120, rel=0.01)


def test_three_sheets_of_more_than_half_the_height_lie_in_a_row() -> None:
    """By hand: 3 x 400 mm, each 51 of 100 deep; the area alone would allow 612 mm."""
    assert side_by_side([cut(400, 51)] * 3, 100.0) == pytest.approx(1200, abs=3 * EVERY)
    assert side_by_side([cut(400, 50)] * 2, 100.0) <= 400


@pytest.mark.parametrize("pieces", [dress(), romper()])
@pytest.mark.parametrize("way", [Way.OPEN, Way.FOLDED])
def test_no_lay_is_shorter_than_its_bounds(pieces: tuple, way: Way) -> None:  # type: ignore[type-arg]
    prepared = prepare(pieces, Cloth(1120), way)
    assert isinstance(prepared, Prepared)
    assert all(lay.length >= prepared.bounds.most for lay in lays(prepared, Effort(200)))


@settings(max_examples=25, deadline=None)
@given(st.lists(st.tuples(st.integers(40, 300), st.integers(40, 400)), min_size=1, max_size=5))
def test_no_lay_of_any_rectangles_is_shorter_than_the_bound(sides: list[tuple[int, int]]) -> None:
    pieces = tuple(rectangle(f"r{k}", *side) for k, side in enumerate(sides))
    prepared = prepare(pieces, Cloth(420, selvedge=10), Way.OPEN, gap=0.0)
    assert isinstance(prepared, Prepared)
    assert all(lay.length >= prepared.bounds.most - 1e-6 for lay in lays(prepared, Effort(60)))
