"""Lengths in a unit that the recipe declares itself: they are spoken in it, with the tape's own beside them.

`point B below A by 2 nail` is said as `2 nail (11.43 cm)`.  A length counts as one of an old unit when nothing
else that is a length goes into it: `2 nail`, `2 * (1 nail + 1/4 nail)`, an amount so made; not `chest / 4 + 1 nail`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from littlefold.draft.quantity import UNITS, Dimension, Quantity
from littlefold.recipe import tree
from littlefold.recipe.walk import every

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk

# A number of units is said as a fraction with one of these below the stroke where it is one, to this nearness.
STROKES = (1, 2, 3, 4, 8, 16)
SAME_FRACTION = 1e-6


def unit_of(expr: Any, desk: Desk) -> str:
    """The old unit of a length, the only one that goes into it; empty where there is none, or another length."""
    if len(desk.units) == len(UNITS):  # none is declared
        return ""
    units = {_declared(quantity.unit.text, desk) for quantity in every(tree.Quantity, expr)}
    units |= {
        desk.old_units.get(named.name.text, "") for named in every(tree.Named, expr) if _is_long(named, desk)
    }
    units |= {"" for measured in (tree.LengthOf, tree.RoundOf) for _ in every(measured, expr)}
    return units.pop() if len(units) == 1 else ""


def _is_long(named: tree.Named, desk: Desk) -> bool:
    """Whether a name stands for more than a plain number."""
    value = desk.values.get(desk.qualified(named.name.text), desk.values.get(named.name.text))
    return not isinstance(value, Quantity) or value.dimension is not Dimension.NUMBER


def _declared(unit: str, desk: Desk) -> str:
    known = desk.units.get(unit)
    return unit if unit not in UNITS and known is not None and known.dimension is Dimension.LENGTH else ""


def in_old_unit(mm: float, expr: Any, desk: Desk) -> str:
    """A length in the old unit of its expression, such as `2 1/4 nail`; empty where it is of none."""
    unit = unit_of(expr, desk)
    return f"{_number(mm / desk.units[unit].value)} {unit}" if unit else ""


def _number(value: float) -> str:
    """A number as a fraction where it is a simple one: `2 1/4`, `1/3`; else with two decimals."""
    for below in STROKES:
        above = round(abs(value) * below)
        if abs(abs(value) * below - above) < SAME_FRACTION * below:
            whole, rest = divmod(above, below)
            words = [str(whole)] if whole or not rest else []
            return "-" * (value < 0) + " ".join([*words, f"{rest}/{below}"] if rest else words)
    return f"{value:.2f}"
