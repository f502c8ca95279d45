"""Values from a table by age, stature or size."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from littlefold.body.chart import size_for
from littlefold.draft.quantity import Dimension, Quantity
from littlefold.draft.refusal import Refusal
from littlefold.draft.spoken import compared, spoken
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.draft.desk import Desk
    from littlefold.recipe import tree

    Evaluate = Callable[[tree.Expr, Desk], Quantity]

_DIMENSIONS = {"age": Dimension.AGE, "stature": Dimension.LENGTH, "size": Dimension.NUMBER}


def look_up(table: tree.Table, name: tree.Name, desk: Desk, evaluate: Evaluate) -> Quantity:
    """The value of a table for this child; refused outside the table.

    A stepped table gives the value of the last row that the child has reached; one `between` rows goes by straight
    lines from row to row.
    """
    key = _key(table, name, desk)
    rows = [(evaluate(row.key, desk), evaluate(row.value, desk)) for row in table.rows]
    _in_order(table, name, rows)
    keys = [row_key.value for row_key, _ in rows]
    sort = _DIMENSIONS[table.key]
    if not keys[0] <= key <= keys[-1]:
        raise Refusal(
            "outside-table",
            say(
                "table {table} goes from {keys} to {keys_2}; the {key} is {key_2}. Add a row, or choose "
                "another recipe.",
                table=str(table.name),
                keys=str(spoken(keys[0], sort)),
                keys_2=str(spoken(keys[-1], sort)),
                key=say(table.key),
                key_2=str(spoken(key, sort)),
            ),
            name.spot,
            (
                compared(table.key, key, sort),
                compared("first row", keys[0], sort),
                compared("last row", keys[-1], sort),
            ),
        )
    index = max(i for i, row_key in enumerate(keys) if row_key <= key)
    value = rows[index][1]
    if table.way == "stepped" or index == len(rows) - 1:
        return value
    share = (key - keys[index]) / (keys[index + 1] - keys[index])
    return Quantity(value.value + (rows[index + 1][1].value - value.value) * share, value.dimension)


def _key(table: tree.Table, name: tree.Name, desk: Desk) -> float:
    if table.key == "age":
        age = desk.measurements.age_months
        if age is None:
            raise Refusal(
                "age-not-known",
                say("table {table} goes by age; give the child's birth date.", table=str(table.name)),
                name.spot,
            )
        return age
    stature = desk.measurements.get("stature")
    if stature is None:
        raise Refusal(
            "stature-not-known",
            say("table {table} goes by {key}; give the stature.", table=str(table.name), key=say(table.key)),
            name.spot,
        )
    return float(size_for(stature.mm)) if table.key == "size" else stature.mm


def _in_order(table: tree.Table, name: tree.Name, rows: list[tuple[Quantity, Quantity]]) -> None:
    wanted = _DIMENSIONS[table.key]
    if any(key.dimension is not wanted for key, _ in rows):
        raise Refusal(
            "table-key-of-wrong-kind",
            say(
                "table {table} goes by {key}; each row begins with one.",
                table=str(table.name),
                key=say(table.key),
            ),
            name.spot,
        )
    if any(one[0].value >= other[0].value for one, other in pairwise(rows)):
        raise Refusal(
            "table-not-in-order",
            say("the rows of table {table} must go upward.", table=str(table.name)),
            name.spot,
        )
    if len({value.dimension for _, value in rows}) > 1:
        raise Refusal(
            "table-of-mixed-kinds",
            say("the values of table {table} must be of one kind.", table=str(table.name)),
            name.spot,
        )
