"""7. What paper cannot solve, the recipe can ask for."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.body.tape import TapeMark
from tests.language.drafting import FRAME as BASE
from tests.language.drafting import at, draft_of, only

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = BASE
SLANT = "point E above A by x\npoint G right of A by 4 cm\nline slant from E to G\n"


def test_it_names_its_goal_before_the_goal_is_drawn(drafted: Draft) -> None:
    """
    find x between 1 cm and 9 cm so that length of slant = 5 cm
    point E above A by x
    point G right of A by 4 cm
    line slant from E to G
    """
    assert not drafted.problems
    assert at(drafted, "s.E") == pytest.approx((0, 3), abs=0.001)  # 3-4-5, solved to 0.01 mm


@pytest.mark.parametrize(("start", "height"), [("", 3), ("starting at 8 cm", 3), ("starting at -1 cm", -3)])
def test_of_several_solutions_the_one_nearest_the_start(start: str, height: float) -> None:
    drawn = draft_of(f"{FRAME}find x between -9 cm and 9 cm {start} so that length of slant = 5 cm\n{SLANT}")
    assert at(drawn, "s.E") == pytest.approx((0, height), abs=0.001)


def test_no_solution_is_a_problem_in_plain_language_with_both_ends() -> None:
    problem = only(f"{FRAME}find x between 5 cm and 9 cm so that length of slant = 5 cm\n{SLANT}")
    assert problem.code == "no-solution"
    assert "never becomes 5 cm" in problem.message
    # At 5 cm the line is the root of 41, at 9 cm the root of 97 cm.
    assert [n.value / 10 for n in problem.numbers] == pytest.approx([41**0.5 - 5, 97**0.5 - 5])


def test_bounds_that_do_not_fit() -> None:
    problem = only(f"{FRAME}find x between 9 cm and 1 cm so that length of slant = 5 cm\n{SLANT}")
    assert problem.code == "bounds-do-not-fit"
    assert [n.value for n in problem.numbers] == [90, 10]


def test_a_goal_never_drawn() -> None:
    problem = only(f"{FRAME}find x between 1 cm and 9 cm so that length of slamt = 5 cm\n{SLANT}")
    assert problem.code == "goal-never-drawn"
    assert 'no line "slamt" yet' in problem.message
    assert 'Did you mean "slant"?' in problem.message


def test_under_a_tape_mark_the_answer_is_rounded_and_what_remains_is_stated() -> None:
    text = FRAME + "find x between 1 cm and 9 cm so that length of slant = 5.2 cm{}\n" + SLANT
    whole = draft_of(text.format(" within 2 mm"), tape=TapeMark("0.5cm", 5.0))
    # The root of 5.2 squared less 4 squared is 3.323 cm: drawn as 3.5 cm, where the line is 5.315 cm long.
    assert at(whole, "s.E") == (0, 3.5)
    (remains,) = whole.problems
    assert remains.severity.value == "note"
    numbers = {number.name: number.value for number in remains.numbers}
    assert numbers["remains"] == pytest.approx((35**2 + 40**2) ** 0.5 - 52)
    assert (numbers["rounded"], numbers["allowed"]) == (35, 2)
    strict = draft_of(text.format(" within 1 mm"), tape=TapeMark("0.5cm", 5.0))
    assert strict.problems[0].severity.value == "warning"
