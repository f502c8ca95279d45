"""Sizes of paper, and reading them as people write them.

Sources: ISO 216:2007 for the A sizes; ANSI/ASME Y14.1 for Letter (A) and Tabloid (B), from memory; Legal is
8 1/2 by 14 in, from memory.  Roll widths are whatever the copy shop says.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from difflib import get_close_matches

from littlefold.drawing.ruler import INCH, LENGTH
from littlefold.problem import Number, Problem

MARGIN = 10.0
"""Paper left bare on every side [mm]; home printers reach to some 4 to 7 mm of the edge (common practice)."""
OVERLAP = 10.0
"""How far a page goes under its neighbour [mm]: room for glue or tape."""
LEAST = LENGTH + 6.0
"""The least room between the margins [mm]: every page carries its check marks both ways."""
LONGEST = 5080.0
"""The longest page a PDF can hold at true scale [mm]: 14400 units of 1/72 in (ISO 32000-1, annex C.2)."""


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet, or a roll if it has no height of its own.  All in millimetres.

    Attributes:
        name: What people call it.
        width: From left to right.
        height: From bottom to top; None for a roll, which is cut off where the drawing ends.
        margin: Left bare on every side.
        overlap: How much of a page lies under the next one.
    """

    name: str
    width: float
    height: float | None
    margin: float = MARGIN
    overlap: float = OVERLAP

    @property
    def is_roll(self) -> bool:
        """Whether the length is cut as needed."""
        return self.height is None

    @property
    def longest(self) -> float:
        """The height of a sheet, or the most that can be pulled off a roll [mm]."""
        return LONGEST if self.height is None else self.height

    @property
    def room_across(self) -> float:
        """Between the margins from left to right [mm]."""
        return self.width - 2 * self.margin

    @property
    def room_up(self) -> float:
        """Between the margins from bottom to top [mm]."""
        return self.longest - 2 * self.margin

    def turned(self) -> Paper:
        """The sheet on its side; a roll stays as it is."""
        if self.height is None:
            return self
        return replace(self, width=self.height, height=self.width)


def _in(width: float, height: float) -> tuple[float, float]:
    return width * INCH, height * INCH


SIZES: dict[str, tuple[float, float]] = {
    "A0": (841.0, 1189.0),
    "A1": (594.0, 841.0),
    "A2": (420.0, 594.0),
    "A3": (297.0, 420.0),
    "A4": (210.0, 297.0),
    "US Letter": _in(8.5, 11.0),
    "US Legal": _in(8.5, 14.0),
    "US Tabloid": _in(11.0, 17.0),
}

_UNITS = {"mm": 1.0, "cm": 10.0, "in": INCH, '"': INCH}
_NUMBER = r"(\d+(?:[.,]\d+)?)"
_UNIT = r'\s*(mm|cm|in|")'
_FREE = re.compile(rf"{_NUMBER}\s*(?:x|\u00d7|by|\*)\s*{_NUMBER}{_UNIT}")
_ROLL = re.compile(rf"roll\s*(?:of\s*)?{_NUMBER}{_UNIT}")
_WAY = re.compile(r"\s+(landscape|portrait)$")

# A paper's name is short; what comes from a form or a command may be anything.
_LONGEST_TEXT = 60


def read_paper(text: str, margin: float = MARGIN, overlap: float = OVERLAP) -> Paper | Problem:
    """The paper a person means: `A4`, `us letter`, `A3 landscape`, `210x297mm`, `8.5x11in`, `roll 36in`."""
    words = " ".join(text[:_LONGEST_TEXT].lower().split())
    found = _free(words) or _roll(words) or _known(words)
    if found is None:
        return _unknown(text, words)
    return _fitting(replace(found, margin=margin, overlap=overlap))


def _millimetres(number: str, unit: str) -> float:
    return float(number.replace(",", ".")) * _UNITS[unit]


def _free(words: str) -> Paper | None:
    match = _FREE.fullmatch(words)
    if match is None:
        return None
    width, height = (_millimetres(match[k], match[3]) for k in (1, 2))
    return Paper(f"{match[1]} x {match[2]} {_spoken(match[3])}", width, height)


def _roll(words: str) -> Paper | None:
    match = _ROLL.fullmatch(words)
    if match is None:
        return None
    return Paper(f"roll of {match[1]} {_spoken(match[2])}", _millimetres(match[1], match[2]), None)


def _spoken(unit: str) -> str:
    return "in" if unit == '"' else unit


def _known(words: str) -> Paper | None:
    way = _WAY.search(words)
    bare = _WAY.sub("", words)
    for name, (width, height) in SIZES.items():
        if bare in (name.lower(), name.lower().removeprefix("us ")):
            paper = Paper(name, width, height)
            return paper.turned() if way and way[1] == "landscape" else paper
    return None


def _unknown(text: str, words: str) -> Problem:
    names = [*SIZES, *(name.removeprefix("US ") for name in SIZES if name.startswith("US "))]
    near = get_close_matches(words, [name.lower() for name in names], n=1)
    guess = f' Did you mean "{_as_written(near[0], names)}"?' if near else ""
    cure = f"Write one of {', '.join(SIZES)}, or a size such as 210x297mm, 8.5x11in or roll 914mm."
    shown = " ".join(text[:_LONGEST_TEXT].split())
    return Problem("paper-unknown", f'There is no paper "{shown}".{guess} {cure}', cure=cure)


def _as_written(lower: str, names: list[str]) -> str:
    return next(name for name in names if name.lower() == lower)


def _fitting(paper: Paper) -> Paper | Problem:
    """The paper itself, or what is wrong with its size, margin or overlap."""
    if paper.margin < 0 or paper.overlap < 0:
        return Problem("paper-margin", "The margin and the overlap are 0 mm or more.", cure="Give 0 or more.")
    least = LEAST + paper.overlap
    room = min(paper.room_across, paper.room_up)
    if room < least:
        return _too_small(paper, room, least)
    if max(paper.width, paper.longest) > LONGEST:
        return _too_long(paper)
    return paper


def _too_small(paper: Paper, room: float, least: float) -> Problem:
    message = (
        f"{paper.name} leaves {room:.0f} mm between the margins; {least:.0f} mm are needed both ways, "
        "so that every page can carry its 10 cm and 4 in check marks. "
        "Take larger paper, or smaller margins and overlap."
    )
    numbers = (Number("room", room), Number("needed", least))
    return Problem("paper-too-small", message, numbers=numbers, cure="Take larger paper.")


def _too_long(paper: Paper) -> Problem:
    longest = max(paper.width, paper.longest)
    message = (
        f"{paper.name} is {longest:.0f} mm long; a page can be at most {LONGEST:.0f} mm. Take smaller paper."
    )
    numbers = (Number("length", longest), Number("longest", LONGEST))
    return Problem("paper-too-large", message, numbers=numbers, cure="Take smaller paper.")
