"""Lengths as the cutter's tape and the shop say them: centimetres and metres, or inches and yards in eighths."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from littlefold.body.tape import EIGHTH, say_length
from littlefold.lay.cloth import INCH, YARD_STEP

if TYPE_CHECKING:
    from littlefold.geometry import Point
    from littlefold.lay.cloth import Cloth

Units = Literal["cm", "in"]

METRE = 1000.0

_METRIC = re.compile(r"\b(?P<count>\d+(?:[.,]\d+)?)\s*(?P<unit>mm|cm)\b")

# A length this much under a whole eighth of a yard [mm] is said as that eighth.
SAME = 0.5


def units_of(cloth: Cloth) -> Units:
    """Inches where a cloth is sold by the yard."""
    return "in" if cloth.step == YARD_STEP else "cm"


def figure(mm: float, units: Units) -> str:
    """A length on the tape without its unit: to a millimetre, or to an eighth of an inch."""
    if units == "cm":
        return f"{mm / 10:.1f}"
    return say_length(mm, "in", EIGHTH).removesuffix(" in")


def tape(mm: float, units: Units) -> str:
    """A length on the tape: `42.0 cm` or `16 1/2 in`."""
    return f"{figure(mm, units)} {units}"


def spot(point: Point, units: Units) -> str:
    """A place on the cloth: from the cut end / from the lower edge."""
    return f"{figure(point.x, units)} / {figure(point.y, units)}"


def width(mm: float, units: Units) -> str:
    """A width of cloth: `112 cm` or `44 in`, which shops say to the half inch."""
    return f"{mm / 10:g} cm" if units == "cm" else f"{round(mm / INCH * 2) / 2:g} in"


def size(along: float, across: float, units: Units) -> str:
    """The two sides of a rectangle of cloth, to a whole centimetre or half inch."""
    if units == "cm":
        return f"{along / 10:.0f} x {across / 10:.0f} cm"
    return f"{round(along / INCH * 2) / 2:g} x {round(across / INCH * 2) / 2:g} in"


def cloth(mm: float, units: Units) -> str:
    """A length as the shop sells it: `0.50 m`, or `1 3/8 yd`."""
    if units == "cm":
        return f"{mm / METRE:.2f} m"
    whole, part = divmod(Fraction(round((mm + SAME) // YARD_STEP), 8), 1)
    words = [str(whole)] if whole or not part else []
    return " ".join([*words, *([str(part)] if part else []), "yd"])


def notion(mm: float, units: Units) -> str:
    """A length of tape or elastic: from a metre on in metres, else in centimetres; or in inches."""
    if units == "in":
        return tape(mm, "in")
    return f"{mm / METRE:.2f} m" if mm >= METRE else f"{mm / 10:g} cm"


def free_words(words: str, units: Units) -> str:
    """A recipe's own words with the lengths in them as the tape says them: `2 cm wide` is `3/4 in (2 cm) wide`.

    The recipe's figure stays beside it, since what is bought is made to that.
    """
    return words if units == "cm" else _METRIC.sub(_with_inches, words)


def _with_inches(found: re.Match[str]) -> str:
    count = float(found["count"].replace(",", "."))
    return f"{tape(count * (10.0 if found['unit'] == 'cm' else 1.0), 'in')} ({found[0]})"
