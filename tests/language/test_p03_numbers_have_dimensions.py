"""3. Every number has a dimension; girths are full; old units; the arithmetic that is promised."""

from __future__ import annotations

from math import pi, sqrt
from typing import TYPE_CHECKING

import pytest

from tests.language.drafting import FRAME as BASE
from tests.language.drafting import amount, at, draft_of, only, said

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = BASE.replace("drawing s", "measure chest, hip\ndrawing s")

# Formula for a chest of 56 cm and a hip of 60 cm, and its value [cm] worked out here.
WORKED_OUT = {
    "2.5 cm": 2.5,
    "1/2 in": 1.27,
    "3 1/4 in": 8.255,
    "25 mm": 2.5,
    "chest / 4 + 1 cm": 15,
    "1/4 of chest - 1/2 in": 12.73,
    "larger of chest and hip": 60,
    "smaller of chest and hip": 56,
    "chest / 8 at least 9 cm": 9,
    "chest / 4 at most 9 cm": 9,
    "round up chest / 5 to 1/2 cm": 11.5,
    "round up chest to 1 in": 23 * 2.54,
    "square root of (chest * hip)": sqrt(56 * 60),
    "pi * 2 cm": 2 * pi,
    "chest / (3/4)": 56 * 4 / 3,
    "chest / 3 / 4": 56 / 12,
    "-(1 cm - 3 cm)": 2,
    "length of top": 12,
    "length of B-C": 15,
}


@pytest.mark.parametrize("formula", WORKED_OUT)
def test_arithmetic(formula: str) -> None:
    drawn = draft_of(f"{FRAME}amount x = {formula}", chest=56, hip=60)
    assert not drawn.problems
    assert amount(drawn, "x") == pytest.approx(WORKED_OUT[formula])


def test_one_what() -> None:
    problem = only(FRAME + "amount x = chest / 4 + 1")
    assert "1 what? Write 1 cm or 1 in." in problem.message
    assert problem.place.column == 24


# What is refused, and what the problem says of it.
REFUSED = {
    "amount x = smaller of chest and 2": "2 what? Write 2 cm or 2 in.",
    "amount x = chest / hip + 1 cm": "chest / hip what?",
    "amount x = chest / 3/4": "can be read in two ways",
    "amount x = 1 degrees + 1 cm": "1 degrees is an angle and 1 cm is a length",
    "amount x = chest * hip + 1 cm": "cannot be put together",
    "point P below A by 3": "3 what? Write 3 cm or 3 in.",
    "point P below A by 18 months": "an age, not a length",
    "point P below A by 15 degrees": "an angle, not a length",
    "point P below A by chest * hip": "an area, not a length",
    "point P on top at 3 cm from A": "a length, not a plain number",
    "point P turning B about A by 3 cm clockwise": "a length, not an angle",
    "amount x = 3 inches": 'Did you mean "in"?',
    "amount x = 3 CM": 'Did you mean "cm"?',
    "amount x = 3 centimetres": 'Did you mean "cm"?',
    "amount x = 1,5 cm": "Write 1.5 with a point",
    "amount x = chest / 0": "nothing can be divided by 0",
    "amount x = 1/0 * 1 cm": "nothing can be divided by 0",
    "amount x = square root of (1 cm - 3 cm)": "root",
}


@pytest.mark.parametrize("line", REFUSED)
def test_what_has_no_meaning_is_refused_in_words(line: str) -> None:
    problem = only(FRAME + line)
    assert REFUSED[line] in problem.message
    assert problem.place.line == FRAME.count("\n") + 1
    assert problem.place.column


def test_both_numbers_stand_in_the_problem() -> None:
    problem = only(FRAME + "amount x = chest / (hip - hip)")
    assert [number.name for number in problem.numbers] == ["chest", "(hip - hip)"]
    assert problem.numbers[1].value == 0


def test_girths_are_full_and_a_book_of_halves_begins_with_an_amount() -> None:
    drawn = draft_of(f'{FRAME}amount half_hip = hip / 2 "the book\'s hip"', hip=60)
    assert amount(drawn, "half_hip") == 30
    assert next(one for one in drawn.amounts if one.name == "half_hip").title == "the book's hip"


def test_old_units_are_spoken_with_cm_beside_them(drafted: Draft) -> None:
    """
    unit nail = 2 1/4 in
    point P below A by 2 nail
    """
    assert at(drafted, "s.P") == (0, -11.43)
    assert said(drafted, "s.P") == "From A measure 2 nail (11.43 cm) straight down and mark P."


def test_length_is_as_drawn_and_round_is_as_worn(drafted: Draft) -> None:
    """
    line side from B to D
    line hem from C to D
    line mid from A to C
    piece front from s cut 1 on fold
    edges mid fold, hem hem, side seam, top bound
    piece back from s cut 2 as a pair
    edges mid button 2 cm lap 2 cm, hem hem, side seam, top bound
    piece open from s cut 1 on fold
    edges mid fold, hem hem, side seam, top bound
    inside slit A-C on top
    amount drawn = length of front.top
    amount folded = round of front.top
    amount lapped = round of front.top then back.top
    amount slit = round of open.top
    """
    assert not drafted.problems
    assert amount(drafted, "drawn") == pytest.approx(12)
    assert amount(drafted, "folded") == pytest.approx(24)
    assert amount(drafted, "lapped") == pytest.approx(24 + 24 - 2 * 2)  # each of the pair gives its lap
    assert amount(drafted, "slit") == pytest.approx(24 + 2 * 9)


def test_a_distance_less_than_nothing_is_measured_the_other_way(drafted: Draft) -> None:
    """
    point P below A by 1 cm - 4 cm
    point Q from A towards B by -2 cm
    point R right of A by 1 cm and above by -2 cm
    """
    assert at(drafted, "s.P") == (0, 3)
    assert said(drafted, "s.P") == "From A measure 3 cm straight up and mark P."
    assert at(drafted, "s.Q") == (-2, 0)
    assert said(drafted, "s.Q") == "From A measure 2 cm straight away from B and mark Q."
    assert said(drafted, "s.R").endswith("mark R, 2 cm further down.")
