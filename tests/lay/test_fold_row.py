"""The row on one fold: as long as by hand, never longer than a lay, and nearly as long where only the fold matters."""

from __future__ import annotations

from dataclasses import replace

import pytest
from garments import bodice, dress, rectangle, ring, romper
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.lay.cloth import Cloth
from littlefold.lay.fold_row import MOST, STEP, least_row
from littlefold.lay.piece import LayPiece
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.ways import Way

WEDGE = LayPiece("wedge", ring([(0, 0), (100, 0), (200, 100), (0, 100)]), on_fold=True)


def test_rectangles_lie_one_after_the_other_with_gaps() -> None:
    pieces = [replace(rectangle(f"p{k}", 100, 50), on_fold=True) for k in range(3)]
    assert least_row(pieces, 4.0, may_turn=True) == pytest.approx(308, abs=3 * STEP)


def test_what_leans_over_its_edge_needs_the_room() -> None:
    """By hand, without a gap: a wedge is 200 long over an edge of 100, its side leaning by 45 degrees.

    Two of them take 400, upright side to upright side or one behind the other.  A block 20 high begins at 120, under the
    slant, and ends at 180; that the wedge reaches 200 is the bound of the longest piece.
    """
    two = [WEDGE, replace(WEDGE, name="other")]
    assert least_row(two, 0.0, may_turn=True) == pytest.approx(400, abs=2 * STEP)
    low = replace(rectangle("low", 60, 20), on_fold=True)
    assert least_row([WEDGE, low], 0.0, may_turn=False) == pytest.approx(180, abs=2 * STEP)


def test_none_and_too_many_give_no_bound() -> None:
    assert least_row([], 3.0, may_turn=True) == 0.0
    many = [replace(rectangle(f"p{k}", 10, 10), on_fold=True) for k in range(MOST + 1)]
    assert least_row(many, 3.0, may_turn=True) == 0.0


@pytest.mark.parametrize("pieces", [dress(), romper()])
def test_the_fold_decides_the_length_of_dress_and_romper(pieces: tuple[LayPiece, ...]) -> None:
    prepared = prepare(pieces, Cloth(1120), Way.FOLDED)
    assert isinstance(prepared, Prepared)
    assert prepared.bounds.binding == "fold"
    best = list(lays(prepared, Effort(300)))[-1]
    assert prepared.bounds.fold_row <= best.length <= 1.06 * prepared.bounds.fold_row


@settings(max_examples=20, deadline=None)
@given(
    st.lists(
        st.tuples(st.integers(40, 200), st.integers(30, 240), st.integers(-40, 90), st.integers(-40, 90)),
        min_size=1,
        max_size=4,
    ),
    st.booleans(),
)
def test_no_lay_on_a_fold_is_shorter_than_its_row(sides: list[tuple[int, int, int, int]], nap: bool) -> None:  # noqa: FBT001
    pieces = tuple(
        LayPiece(
            f"p{k}",
            ring([(0, 0), (edge, 0), (edge + right, deep), (min(-left, edge + right - 20), deep)]),
            on_fold=True,
        )
        for k, (edge, deep, left, right) in enumerate(sides)
    )
    prepared = prepare(pieces, Cloth(520, nap=nap), Way.FOLDED)
    if isinstance(prepared, Prepared):
        assert all(lay.length >= prepared.bounds.fold_row - 1e-6 for lay in lays(prepared, Effort(60)))


def test_a_half_bodice_and_its_turn_share_the_room_at_the_neck() -> None:
    front = LayPiece("front", ring(bodice(70)), on_fold=True)
    back = LayPiece("back", ring(bodice(25)), on_fold=True)
    row = least_row([front, back], 0.0, may_turn=True)
    assert front.fold_length + back.fold_length <= row < 480
