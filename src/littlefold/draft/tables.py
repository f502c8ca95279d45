"""Values from a table by age, stature or size."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from littlefold.body.chart import size_for
from littlefold.draft.quantity import Dimension, Quantity
from littlefold.draft.refusal import Refusal
from littlefold.draft.spoken import compared, spoken

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
            f"table {table.name} goes from {spoken(keys[0], sort)} to {spoken(keys[-1], sort)}; the {table.key} is "
            f"{spoken(key, sort)}. Add a row, or choose another recipe.",
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
                "age-not-known", f"table {table.name} goes by age; give the child's birth date.", name.spot
            )
        return age
    stature = desk.measurements.get("stature")
    if stature is None:
        raise Refusal(
            "stature-not-known", f"table {table.name} goes by {table.key}; give the stature.", name.spot
        )
    return float(size_for(stature.mm)) if table.key == "size" else stature.mm


def _in_order(table: tree.Table, name: tree.Name, rows: list[tuple[Quantity, Quantity]]) -> None:
    wanted = _DIMENSIONS[table.key]
    if any(key.dimension is not wanted for key, _ in rows):
        raise Refusal(
            "table-key-of-wrong-kind",
            f"table {table.name} goes by {table.key}; each row begins with one.",
            name.spot,
        )
    if any(one[0].value >= other[0].value for one, other in pairwise(rows)):
        raise Refusal("table-not-in-order", f"the rows of table {table.name} must go upward.", name.spot)
    if len({value.dimension for _, value in rows}) > 1:
        raise Refusal(
            "table-of-mixed-kinds", f"the values of table {table.name} must be of one kind.", name.spot
        )
