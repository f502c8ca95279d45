"""8. Tables, conditions, fallbacks, measurements of the recipe's own."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.booklet.needs import measurement_rows
from littlefold.booklet.wording import wording
from littlefold.draft.evaluate import evaluate
from littlefold.draft.sentence import Speech
from littlefold.recipe.parse import parse
from tests.language.drafting import FRAME as BASE
from tests.language.drafting import at, draft_of, only, told

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = BASE
ROWS = "100 cm gives 10 cm, 110 cm gives 20 cm, 120 cm gives 40 cm"


@pytest.mark.parametrize(("way", "depth"), [("between", 14), ("stepped", 10)])
def test_by_stature_stepped_or_between(way: str, depth: float) -> None:
    """The child is 104 cm tall: four tenths of the way from the first row to the second."""
    drawn = draft_of(f"{FRAME}table t by stature {way} {ROWS}\npoint P below A by t")
    assert not drawn.problems
    assert at(drawn, "s.P") == pytest.approx((0, -depth))


def test_by_size() -> None:
    drawn = draft_of(f"{FRAME}table t by size between 98 gives 3 cm, 110 gives 4 cm\npoint P below A by t")
    assert at(drawn, "s.P") == pytest.approx((0, -3.5))


def test_by_age() -> None:
    text = f"{FRAME}table t by age between 2 y gives 3 cm, 4 y gives 5 cm\npoint P below A by t"
    child, _ = complete(Measurements.of({"stature": 1040.0}, age_months=30))
    drawn = evaluate(parse(text, "audit"), child)
    assert drawn.points["s.P"].at.y == pytest.approx(-35)
    assert only(text).code == "age-not-known"


def test_outside_the_table_is_refused_with_all_three_numbers() -> None:
    problem = only(
        f"{FRAME}table t by stature between 62 cm gives 1 cm, 68 cm gives 2 cm\npoint P below A by t"
    )
    assert problem.code == "outside-table"
    assert [number.value for number in problem.numbers] == [1040, 620, 680]


BRANCHES = """choice closing = elastic | cord | studs
choice ease = 6 cm, 1 cm .. 9 cm
when closing is elastic and ease > 7 cm
point P below A by 1 cm
otherwise when not (closing is cord) and ease >= 6 cm
point P below A by 2 cm
otherwise
point P below A by 3 cm
end
point Q right of P by 1 cm
"""


@pytest.mark.parametrize(
    ("choices", "depth"),
    [({}, 2), ({"ease": 80.0}, 1), ({"closing": "cord"}, 3), ({"ease": 50.0}, 3), ({"closing": "studs"}, 2)],
)
def test_when_and_otherwise_take_choices_and_comparisons(choices: dict[str, float | str], depth: int) -> None:
    child, _ = complete(Measurements.of({"stature": 1040.0}))
    drawn = evaluate(parse(FRAME + BRANCHES, "audit"), child, choices)
    assert not drawn.problems
    assert at(drawn, "s.Q") == (1, -depth)


def test_a_name_of_one_branch_cannot_be_used_outside_it() -> None:
    text = "choice w = yes | no\nwhen w is yes\npoint P below A by 1 cm\nend\npoint Q below P by 1 cm"
    problem = only(FRAME + text)
    assert problem.code == "name-of-one-branch"
    assert problem.place.line == FRAME.count("\n") + 5
    assert f"line {FRAME.count(chr(10)) + 3}" in problem.message
    same = text.replace("point Q below P by 1 cm", "when w is yes\npoint Q below P by 1 cm\nend")
    assert told(FRAME + same) == []


def test_an_option_that_is_not_there_gets_a_suggestion() -> None:
    problem = only(FRAME + "choice w = yes | no\nwhen w is yess\npoint P below A by 1 cm\nend")
    assert 'Did you mean "yes"?' in problem.message


def test_a_measurement_of_the_recipes_own(drafted: Draft) -> None:
    """
    own measure front_length "From the neck point to the waist"
    point P below A by front_length
    """
    (problem,) = drafted.problems
    assert problem.code == "measurement-missing"
    assert "From the neck point to the waist" in problem.message
    given = draft_of(
        f'{FRAME}own measure front_length "From the neck point"\npoint P below A by front_length',
        front_length=21,
    )
    assert at(given, "s.P") == (0, -21)


def test_a_fallback_is_marked_on_the_sheets() -> None:
    text = f'{FRAME}measure head\nown measure drop "how" or else head * 0.5\npoint P below A by drop'
    drawn = draft_of(text, head=50)
    assert at(drawn, "s.P") == (0, -25)
    rows = {row["title"]: row for row in measurement_rows(drawn, wording("en"), Speech())}
    assert rows["drop"]["certain"] is False
    assert rows["drop"]["origin"].startswith("estimated")
