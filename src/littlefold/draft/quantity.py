"""Numbers with a dimension: a length is never added to an age, nor to a bare number."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import radians, sqrt


class Dimension(StrEnum):
    """What a number measures."""

    NUMBER = "number"
    LENGTH = "length"
    AREA = "area"
    ANGLE = "angle"
    AGE = "age"


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number and what it measures: mm, mm2, radians, months, or a plain number."""

    value: float
    dimension: Dimension


UNITS: dict[str, Quantity] = {
    "mm": Quantity(1.0, Dimension.LENGTH),
    "cm": Quantity(10.0, Dimension.LENGTH),
    "m": Quantity(1000.0, Dimension.LENGTH),
    "in": Quantity(25.4, Dimension.LENGTH),
    "ft": Quantity(304.8, Dimension.LENGTH),
    "yd": Quantity(914.4, Dimension.LENGTH),
    "degree": Quantity(radians(1), Dimension.ANGLE),
    "degrees": Quantity(radians(1), Dimension.ANGLE),
    "month": Quantity(1.0, Dimension.AGE),
    "months": Quantity(1.0, Dimension.AGE),
    "y": Quantity(12.0, Dimension.AGE),
    "year": Quantity(12.0, Dimension.AGE),
    "years": Quantity(12.0, Dimension.AGE),
}
"""The units every recipe knows; inches, feet and yards exactly, by the international yard of 1959."""

# How the unit of a number is named in a problem and in the data (see `problem.Number`).
UNIT_NAMES = {
    Dimension.NUMBER: "ratio",
    Dimension.LENGTH: "mm",
    Dimension.AREA: "mm2",
    Dimension.ANGLE: "radians",
    Dimension.AGE: "months",
}

_PRODUCTS = {(Dimension.LENGTH, Dimension.LENGTH): Dimension.AREA}
_QUOTIENTS = {(Dimension.AREA, Dimension.LENGTH): Dimension.LENGTH}


class DimensionFault(Exception):
    """Two quantities that cannot be put together so; the message says why."""


def number(value: float) -> Quantity:
    """A plain number."""
    return Quantity(value, Dimension.NUMBER)


def length(value: float) -> Quantity:
    """A length [mm]."""
    return Quantity(value, Dimension.LENGTH)


def product(one: Quantity, other: Quantity) -> Quantity:
    """The product; a length times a length is an area.

    Raises:
        DimensionFault: The product has no meaning, such as an area times a length.
    """
    value = one.value * other.value
    if one.dimension is Dimension.NUMBER:
        return Quantity(value, other.dimension)
    if other.dimension is Dimension.NUMBER:
        return Quantity(value, one.dimension)
    kind = _PRODUCTS.get((one.dimension, other.dimension))
    if kind is None:
        raise DimensionFault(f"{_a(one)} times {_a(other)} has no meaning here. Multiply by a plain number.")
    return Quantity(value, kind)


def quotient(one: Quantity, other: Quantity) -> Quantity:
    """The quotient; like by like is a plain number.

    Raises:
        DimensionFault: The quotient has no meaning, or it is a division by nought.
    """
    if other.value == 0:
        raise DimensionFault("the amount below the stroke is 0, and nothing can be divided by 0. Change it.")
    value = one.value / other.value
    if one.dimension is other.dimension:
        return number(value)
    if other.dimension is Dimension.NUMBER:
        return Quantity(value, one.dimension)
    kind = _QUOTIENTS.get((one.dimension, other.dimension))
    if kind is None:
        raise DimensionFault(
            f"{_a(one)} divided by {_a(other)} has no meaning here. Divide by a plain number."
        )
    return Quantity(value, kind)


def root(of: Quantity) -> Quantity:
    """The square root of a plain number, or of an area (a length).

    Raises:
        DimensionFault: It is negative, or neither number nor area.
    """
    if of.value < 0:
        raise DimensionFault(f"there is no square root of {of.value:g}; it is less than nothing.")
    if of.dimension is Dimension.AREA:
        return length(sqrt(of.value))
    if of.dimension is Dimension.NUMBER:
        return number(sqrt(of.value))
    raise DimensionFault(f"the square root of {_a(of)} has no meaning. Take that of a length times a length.")


def _a(quantity: Quantity) -> str:
    word = "plain number" if quantity.dimension is Dimension.NUMBER else quantity.dimension.value
    return f"{'an' if word[0] in 'aeiou' else 'a'} {word}"
