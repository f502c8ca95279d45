"""Numbers as problems speak them, in the unit of what they measure, and as they are compared by a program."""

from __future__ import annotations

from math import degrees

from littlefold.draft.quantity import Dimension
from littlefold.problem import Number

# How the unit of a number in a problem is called (see `problem.Number`).
_UNITS = {
    Dimension.NUMBER: "ratio",
    Dimension.LENGTH: "mm",
    Dimension.AREA: "mm2",
    Dimension.ANGLE: "degrees",
    Dimension.AGE: "months",
}


def spoken(value: float, dimension: Dimension) -> str:
    """A value with its unit: `5.71 cm`, `15 degrees`, `18 months`, `1.8`."""
    match dimension:
        case Dimension.LENGTH:
            return f"{_short(value / 10)} cm"
        case Dimension.AREA:
            return f"{_short(value / 100)} square cm"
        case Dimension.ANGLE:
            return f"{_short(degrees(value))} degrees"
        case Dimension.AGE:
            return f"{_short(value)} months"
        case _:
            return f"{value:.4g}"


def _short(value: float) -> str:
    """A number to two decimals, with no more of them than needed."""
    said = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if said == "-0" else said


def compared(name: str, value: float, dimension: Dimension) -> Number:
    """A value as a problem compares it."""
    return Number(name, degrees(value) if dimension is Dimension.ANGLE else value, _UNITS[dimension])
