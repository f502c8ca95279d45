"""What has to be drawn for a trial of `find`, and what changes with the unknown."""

from __future__ import annotations

import pytest

from littlefold.draft.dependence import fixed_and_changing, mentioned
from littlefold.recipe import tree
from littlefold.recipe.parse import parse, read_statement

FIND = "find x between 1 cm and 9 cm so that length of slant = 5 cm"
LINES = """
point B right of A by 3 cm
point C below B by x
point D left of A by 2 cm
line slant from A to C
line idle from D to C
"""


def told(text: str, find: str = FIND) -> tuple[list[str], list[str]]:
    """The names of what is drawn once, and of what is drawn for each trial."""
    recipe = parse(text)
    assert not recipe.problems
    tables = tuple(recipe.all_of(tree.Table))
    lines = [line for line in recipe.written if not isinstance(line.statement, tree.Table)]
    fixed, changing = fixed_and_changing(read_statement(find), lines, tables)
    return [str(line.statement.name) for line in fixed], [str(line.statement.name) for line in changing]


def test_names_are_those_of_the_things_themselves() -> None:
    statement = read_statement(
        "curve c from A tangent to back.neck, to front.G going down, depth x nearer front.S"
    )
    assert {"c", "A", "neck", "G", "x", "S"} <= mentioned(statement)


def test_what_does_not_lead_to_the_goal_is_left_out() -> None:
    assert told(LINES) == (["B"], ["C", "slant"])


def test_the_unknown_works_on_through_amounts() -> None:
    text = LINES.replace("by x", "by depth")
    assert told("amount depth = x / 2\n" + text) == (["B"], ["depth", "C", "slant"])


def test_a_goal_on_both_sides() -> None:
    find = FIND.replace("5 cm", "length of idle")
    assert told(LINES, find) == (["B", "D"], ["C", "slant", "idle"])


@pytest.mark.parametrize(
    "more",
    [
        "drawing other",
        "outline whole edges slant, idle",
        "piece front cut 1",
        "point B left of A by 1 cm",
        "point x left of A by 1 cm",
        "table drop by stature stepped 80 cm gives 1 cm, 90 cm gives length of slant",
    ],
    ids=["sheet", "outline", "piece", "name twice", "name of the unknown", "table that speaks of it"],
)
def test_where_names_do_not_tell_everything_is_drawn(more: str) -> None:
    lines = [line.partition(" ")[2].partition(" ")[0] for line in LINES.strip().splitlines()]
    fixed, changing = told(LINES + more)
    assert not fixed
    assert changing[:5] == lines
