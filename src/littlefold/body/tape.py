"""Lengths as people write them on a card, and as a tape shows them.

Read:  `56 cm`   `560 mm`   `22 1/4"`   `22¼ in`   `22.25in`   `56,5 cm`   `1.04 m`
Shown: `56.5 cm`, or in inches to the tape's mark, `22 1/4 in`.
"""

from __future__ import annotations

import math
import re
import unicodedata
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import TYPE_CHECKING, Final, Literal

from littlefold.problem import Number, Problem

if TYPE_CHECKING:
    from collections.abc import Mapping

Unit = Literal["mm", "cm", "m", "in"]

MM_PER: Final[Mapping[str, float]] = MappingProxyType({"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4})

_UNIT_WORDS: Final[Mapping[str, Unit]] = MappingProxyType(
    {
        "mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
        "cm": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
        "m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m",
        "in": "in", "in.": "in", "inch": "in", "inches": "in", '"': "in", "''": "in",
    }
)  # fmt: skip

# Double primes and quotes, single ones, minus and en dash, and the fraction slash, each as one plain sign.
_ONE_SIGN: Final[Mapping[str, str]] = MappingProxyType(
    {
        **dict.fromkeys("\u2033\u201d\u201c\u201e", '"'),
        **dict.fromkeys("\u2032\u2019\u2018`", "'"),
        **dict.fromkeys("\u2212\u2013", "-"),
        "\u2044": "/",
    }
)

_LONGEST: Final = 40  # characters; nobody writes a length longer than this
_LONGEST_MM: Final = 100_000.0  # a hundred metres: longer is a typing mistake, whatever the garment

_LENGTH: Final = re.compile(
    r"""(?P<whole>\d+)? (?P<point>[.,]\d+)?          # 22   22.25   22,25   .5
        (?: (?:(?<=\d)(?:[ ]|[ ]?-[ ]?)|^) (?P<over>\d+)[ ]?/[ ]?(?P<under>\d+) )?   # 1/4, alone or after 22
        [ ]* (?P<unit>\D*)""",
    re.VERBOSE,
)


def read_length(text: str, default_unit: Unit | None = None) -> float | Problem:
    """The length a person wrote [mm], or a problem that says what could not be understood.

    Args:
        text: What was written.
        default_unit: The unit of a bare number; without it only 0, the same in all, may stand bare.
    """
    if len(text) > _LONGEST:
        return _not_understood(text[:_LONGEST] + "…")
    plain = _plain(text)
    found = _LENGTH.fullmatch(plain)
    if found is None or not (found["whole"] or found["point"] or found["over"]):
        return _refusal(text, plain)
    number = _number_of(found, text)
    if isinstance(number, Problem):
        return number
    unit = _unit_of(found["unit"], default_unit)
    if unit is None:
        return 0.0 if number == 0 and not found["unit"].strip() else _unit_problem(text, found["unit"])
    return _within_reach(text, number * MM_PER[unit])


def read_unit(word: str) -> Unit | None:
    """The unit of that name, such as `cm` or `inches`; None when there is none."""
    return _UNIT_WORDS.get(_plain(word))


def _plain(text: str) -> str:
    """The text with one kind of space, quote and fraction."""
    spread = "".join(_spelled(letter) for letter in text.strip().lower())
    return re.sub(r"\s+", " ", spread).strip()


def _spelled(letter: str) -> str:
    if letter in _ONE_SIGN:
        return _ONE_SIGN[letter]
    if unicodedata.category(letter) == "No" and "\u2044" in unicodedata.normalize("NFKC", letter):
        return " " + unicodedata.normalize("NFKC", letter).replace("\u2044", "/")
    return letter


def _unit_of(word: str, default_unit: Unit | None) -> Unit | None:
    word = word.strip()
    return _UNIT_WORDS.get(word) if word else default_unit


def _number_of(found: re.Match[str], text: str) -> float | Problem:
    whole, point = found["whole"] or "", found["point"] or ""
    if re.fullmatch(r",\d{3}", point) and whole.lstrip("0"):
        return _thousands_or_decimals(text, whole, point)
    if point and found["over"]:
        return _not_understood(text)
    number = float(f"{whole or 0}.{point[1:] or 0}")
    if not found["over"]:
        return number
    over, under = int(found["over"]), int(found["under"])
    if over >= under:  # 221/4 may be 22 1/4 run together
        return _not_understood(text)
    return number + over / under


def _within_reach(text: str, mm: float) -> float | Problem:
    if mm <= _LONGEST_MM:
        return mm
    return Problem(
        "length-too-long",
        f"“{text}” is {mm / 1000:g} m, and nothing here is longer than {_LONGEST_MM / 1000:g} m: "
        "look at the unit.",
        numbers=(Number("written", mm), Number("longest", _LONGEST_MM)),
    )


def _refusal(text: str, plain: str) -> Problem:
    if not plain:
        return Problem("length-missing", "There is no length here. Write one like 56 cm or 22 1/4 in.")
    if re.match(r"-\s*[\d.,]", plain):
        return Problem("length-negative", f"“{text}” is less than nothing. A length is 0 or more.")
    return _not_understood(text)


def _not_understood(text: str) -> Problem:
    return Problem(
        "length-not-understood",
        f"“{text}” is not understood as a length. "
        "Write one number and its unit, like 56 cm, 560 mm or 22 1/4 in.",
    )


def _unit_problem(text: str, word: str) -> Problem:
    if word.strip():
        return Problem(
            "unit-unknown", f"“{text}”: the unit “{word.strip()}” is not known. Use mm, cm, m or in."
        )
    return Problem("unit-missing", f"“{text}” of what? Write {text.strip()} cm or {text.strip()} in.")


def _thousands_or_decimals(text: str, whole: str, point: str) -> Problem:
    return Problem(
        "length-ambiguous",
        f"“{text}” can mean {whole}{point[1:]} or {whole}.{point[1:].rstrip('0') or '0'}. "
        "Write it without the comma, or with a point for the decimals.",
    )


@dataclass(frozen=True, slots=True)
class TapeMark:
    """The finest mark of a tape; `mm` is 0 for 'exact', which rounds nothing."""

    name: str
    mm: float


EXACT: Final = TapeMark("exact", 0.0)
EIGHTH: Final = TapeMark("1/8in", 25.4 / 8)
SIXTEENTH: Final = TapeMark("1/16in", 25.4 / 16)
HALF_CM: Final = TapeMark("0.5cm", 5.0)
ONE_MM: Final = TapeMark("1mm", 1.0)

MARKS: Final[Mapping[str, TapeMark]] = MappingProxyType(
    {mark.name: mark for mark in (EIGHTH, SIXTEENTH, HALF_CM, ONE_MM, EXACT)}
)

_SAME_MARK_MM: Final = 1e-6  # marks closer than this are the same mark


def read_mark(text: str) -> TapeMark | Problem:
    """The tape mark a person named: `1/8in`, `1/16 in`, `0.5 cm`, `1 mm` or `exact`."""
    if text.strip().lower() == EXACT.name:
        return EXACT
    mm = read_length(text)
    if isinstance(mm, float):
        for mark in MARKS.values():
            if abs(mark.mm - mm) < _SAME_MARK_MM:
                return mark
    return Problem(
        "tape-mark-unknown", f"“{text}” is not a mark of the tape. Choose one of: {', '.join(MARKS)}."
    )


def round_to_mark(mm: float, mark: TapeMark | None) -> float:
    """The nearest mark of the tape [mm]; halfway goes up, so that cloth is added and not lost."""
    if mark is None or mark.mm == 0:
        return mm
    return math.floor(mm / mark.mm + 0.5 + _SAME_MARK_MM) * mark.mm


def say_length(mm: float, units: Literal["cm", "in"] = "cm", mark: TapeMark | None = None) -> str:
    """The length in words of the tape: `56.5 cm`, or `22 1/4 in` to the tape's mark.

    Without a mark, centimetres are said to 0.1 mm, with no more decimals than needed, and inches to 1/16.
    """
    on_tape = round_to_mark(mm, mark)
    return _say_inches(on_tape, mark) if units == "in" else _say_centimetres(on_tape)


def _say_centimetres(mm: float) -> str:
    said = f"{mm / 10:.2f}".rstrip("0").rstrip(".")
    return f"{'0' if said == '-0' else said} cm"


def _say_inches(mm: float, mark: TapeMark | None) -> str:
    steps = 8 if mark == EIGHTH else 16
    sign, count = ("-" if mm < 0 else ""), math.floor(abs(mm) / 25.4 * steps + 0.5 + _SAME_MARK_MM)
    whole, rest = divmod(Fraction(count, steps), 1)
    words = [str(whole)] if whole or not rest else []
    if rest:
        words.append(f"{rest.numerator}/{rest.denominator}")
    return f"{sign if count else ''}{' '.join(words)} in"
