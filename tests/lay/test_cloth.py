from __future__ import annotations

from dataclasses import replace

import pytest
from garments import rectangle
from hypothesis import given
from hypothesis import strategies as st

from littlefold.lay.adapter import enlarged
from littlefold.lay.cloth import YARD, YARD_STEP, Cloth, Price
from littlefold.lay.shrink import (
    BY_FIBRE,
    Shrinkage,
    Treatment,
    advice,
    from_test_square,
)
from littlefold.problem import Problem, Severity


def test_cut_length_is_finished_over_one_minus_shrinkage() -> None:
    # standards.md, check values 24: 100 cm at 5 % -> 105.263 cm, not 105; 64 cm at 3 % -> 65.979.
    assert Shrinkage(0.05, 0.0, "").cut_length(1000) == pytest.approx(1052.63, abs=0.005)
    assert Shrinkage(0.03, 0.0, "").cut_length(640) == pytest.approx(659.79, abs=0.005)


def test_usable_width_is_without_selvedges() -> None:
    assert Cloth(1120, selvedge=15).usable_width == 1090
    assert Cloth(750, tube=True).usable_width == 750


def test_washing_first_narrows_the_cloth_and_enlarging_leaves_it() -> None:
    wash = Cloth(1020, shrinkage=Shrinkage(0.05, 0.02, "square"), treatment=Treatment.WASH)
    assert wash.usable_width == pytest.approx(980)
    assert replace(wash, treatment=Treatment.ENLARGE).usable_width == 1000


@given(along=st.floats(0, 0.1), across=st.floats(0, 0.1))
def test_pieces_are_enlarged_or_the_cloth_is_washed_never_both(along: float, across: float) -> None:
    shrinkage = Shrinkage(along, across, "square")
    piece = rectangle("strip", 400, 100)
    for treatment in Treatment:
        cloth = Cloth(1000, selvedge=0, shrinkage=shrinkage, treatment=treatment, end_loss=0, step=1e-3)
        (cut,) = enlarged([piece], cloth)
        left, low, right, high = cut.polygon.bounds
        # Once washed, everything comes out at its own size, whichever way was chosen.
        washed_first = treatment is Treatment.WASH
        assert (right - left) * (1 if washed_first else 1 - along) == pytest.approx(400)
        assert (high - low) * (1 if washed_first else 1 - across) == pytest.approx(100)
        bought = cloth.length_to_buy(1000)
        assert bought * ((1 - along) if washed_first else 1) == pytest.approx(1000, abs=0.01)


def test_length_to_buy_is_rounded_up_to_the_step_with_the_end() -> None:
    assert Cloth(1120, end_loss=20).length_to_buy(880) == pytest.approx(900)
    assert Cloth(1120, end_loss=20).length_to_buy(881) == pytest.approx(1000)
    eighth = Cloth(1120, end_loss=0, step=YARD_STEP)
    assert eighth.length_to_buy(YARD) == pytest.approx(YARD)
    assert eighth.length_to_buy(YARD + 1) == pytest.approx(YARD * 9 / 8)


def test_price_by_the_metre_and_by_the_yard() -> None:
    assert Cloth(1120, end_loss=0, price=Price(8.0, "EUR")).cost(1250) == pytest.approx(10.4)
    yards = Cloth(1120, end_loss=0, step=YARD_STEP, price=Price(6.0, "", YARD))
    assert yards.cost(YARD * 1.5) == pytest.approx(9.0)


def test_test_square_gives_the_share_lost() -> None:
    found = from_test_square((200, 200), (194, 198))
    assert isinstance(found, Shrinkage)
    assert (found.along, found.across) == (pytest.approx(0.03), pytest.approx(0.01))
    assert "20 x 20 cm" in found.origin


@pytest.mark.parametrize("after", [(0.0, 200.0), (100.0, 200.0), (400.0, 200.0)])
def test_an_unbelievable_square_is_refused_in_words(after: tuple[float, float]) -> None:
    found = from_test_square((200, 200), after)
    assert isinstance(found, Problem)
    assert found.code == "test-square-unbelievable"


def test_every_default_says_that_it_is_from_memory() -> None:
    assert all("memory" in shrinkage.origin for shrinkage in BY_FIBRE.values())


def test_advice_says_what_to_do_and_what_not_to_do() -> None:
    shrinkage = Shrinkage(0.05, 0.02, "square")
    (wash,) = advice(shrinkage, Treatment.WASH)
    (enlarge,) = advice(shrinkage, Treatment.ENLARGE)
    assert "not enlarged" in wash.message
    assert "Do not wash" in enlarge.message
    assert wash.severity is Severity.WARNING
    assert advice(Shrinkage(0, 0, ""), Treatment.WASH) == ()
