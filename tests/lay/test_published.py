"""Cloth to buy beside amounts in print (drafting reference, 5.3): within 15 %, or the difference explained."""

from __future__ import annotations

from datetime import date
from math import ceil
from typing import TYPE_CHECKING

import pytest
from garments import romper

from littlefold.cli.asked import Asked
from littlefold.cli.understood import Understood, understand
from littlefold.lay.adapter import lay_pieces
from littlefold.lay.cloth import YARD, YARD_STEP, Cloth
from littlefold.lay.compare import best_row
from littlefold.lay.place import Effort
from littlefold.lay.ways import Way
from littlefold.pipeline import fulfil

if TYPE_CHECKING:
    from littlefold.lay.piece import LayPiece

INCH = 25.4
NEAR = 0.15


def pieces_of(recipe: str, size: str) -> tuple[LayPiece, ...]:
    understood = understand(Asked(recipe, size=size), date(2026, 1, 1))
    assert isinstance(understood, Understood)
    return lay_pieces(fulfil(understood.wish).pattern)[0]


def to_buy(pieces: tuple[LayPiece, ...], inches: float, way: Way) -> float:
    row = best_row(pieces, Cloth(inches * INCH, step=YARD_STEP), way, Effort(steps=300))
    assert row.to_buy is not None
    return row.to_buy


def by_the_rule(lengths: tuple[float, ...], sleeve: float, step: float = YARD / 2) -> float:
    """The dressmaker's rule for the cloth of a dress [mm] [S117]: all lengths twice, and the sleeve, up to the step."""
    return ceil((2 * sum(lengths) + sleeve) / step - 1e-9) * step


def test_the_dressmakers_rule_is_as_printed() -> None:
    """T20 [S117]: (32 + 20) x 2 + 12 = 116 in = 3.22 yd -> buy 3 1/2 yd."""
    assert by_the_rule((32 * INCH, 20 * INCH), 12 * INCH) == pytest.approx(3.5 * YARD)
    assert by_the_rule((32 * INCH, 20 * INCH), 12 * INCH, step=INCH) == pytest.approx(116 * INCH)


def test_a_toddlers_top_takes_the_printed_half_yard() -> None:
    """[S119] prints about 1/2 yd for a toddler's T-shirt; our loose top without sleeves, 45 in cloth, open."""
    assert to_buy(pieces_of("casing-top", "92"), 45, Way.OPEN) == pytest.approx(YARD / 2, rel=NEAR)


def test_a_toddlers_dress_folded_takes_the_printed_yard_and_a_half() -> None:
    """[S119] prints 1 1/2-2 yd for a toddler's dress; ours laid on the centre fold, as home sewers lay it."""
    pieces = pieces_of("a-line-frock", "92")
    assert to_buy(pieces, 45, Way.FOLDED) == pytest.approx(1.5 * YARD, rel=NEAR)
    assert to_buy(pieces, 45, Way.OPEN) <= 0.6 * 1.5 * YARD, (
        "the fold, not the dress, takes the printed amount"
    )


def test_the_dressmakers_rule_agrees_with_the_folded_lay_of_a_frock() -> None:
    """T20 [S117]: the lengths twice (front and back) and the sleeve, up to the half yard; a frock without sleeves."""
    pieces = pieces_of("a-line-frock", "92")
    skirt = max(piece.polygon.bounds[2] - piece.polygon.bounds[0] for piece in pieces if piece.on_fold)
    assert to_buy(pieces, 45, Way.FOLDED) == pytest.approx(by_the_rule((skirt,), 0.0), rel=NEAR)


def test_the_rompers_envelope_lies_between_the_fold_and_the_better_fold() -> None:
    """[S118] prints 7/8 yd of 45 in (newborn to large) and 5/8-3/4 yd of 60 in for a baby romper.

    Ours is invented and of one size.  On the centre fold its pieces lie in a row, which takes more than printed; two
    folds take less.  So the envelope reckons with a lay between the two, or with the largest size on two folds.
    """
    pieces = romper()
    assert to_buy(pieces, 45, Way.TWO_FOLDS) <= 7 / 8 * YARD <= to_buy(pieces, 45, Way.FOLDED)
    assert to_buy(pieces, 60, Way.OPEN) == pytest.approx(5 / 8 * YARD, rel=NEAR)


@pytest.mark.parametrize("way", [Way.OPEN, Way.FOLDED])
@pytest.mark.parametrize("inches", [36, 45])
def test_drawers_take_twice_the_length_of_the_leg(inches: float, way: Way) -> None:
    """[S88] reckons twice the leg's length; ours at about 8 years, by the cutting line of the leg."""
    pieces = pieces_of("drawers", "122")
    leg = next(piece.polygon.bounds for piece in pieces if piece.name == "leg")
    assert to_buy(pieces, inches, way) == pytest.approx(2 * (leg[2] - leg[0]), rel=NEAR)


def test_a_jama_of_six_years_takes_its_length_and_an_inch_and_a_half() -> None:
    """[S28b]: length + 1 1/2 in, front and back side by side; ours is the loose top without sleeves, 45 in, open.

    The rule knows no buying step: it is rounded up to the eighth of a yard, as ours is.
    """
    pieces = pieces_of("casing-top", "116")
    long = max(piece.polygon.bounds[2] - piece.polygon.bounds[0] for piece in pieces if piece.on_fold)
    rule = by_the_rule((long / 2,), 1.5 * INCH, YARD_STEP)
    assert to_buy(pieces, 45, Way.OPEN) == pytest.approx(rule, rel=NEAR)
