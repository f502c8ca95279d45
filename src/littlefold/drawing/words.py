"""Words on paper: how they are broken, where their lines stand, and what is left out of them."""

from __future__ import annotations

import re
from math import pi
from typing import TYPE_CHECKING
from unicodedata import category

from littlefold.drawing.letters import text_width
from littlefold.drawing.marks import Label, Meaning
from littlefold.drawing.style import look
from littlefold.geometry import Bounds, Point, Vector

if TYPE_CHECKING:
    from collections.abc import Iterable

    from littlefold.drawing.style import Face

# Lines of a block follow each other at this many heights of a capital.
LEADING = 1.9

# Words of one label longer than this are no label.  Larger: a hostile name makes a sheet useless and slow.
LONGEST = 300

# Signs that join letters or set the direction of a script; all other invisible signs are left out.
JOINERS = frozenset("\u200c\u200d\u200e\u200f")

# A number with its unit, or any other word.
_UNBROKEN = re.compile(r"(?:\d\S* )+(?:cm|mm|in|Zoll)(?!\w)\S*|\S+")


def plain(text: str, longest: int = LONGEST) -> str:
    """The words on one line, without invisible signs, cut off with an ellipsis where they would never end."""
    shown = "".join(_shown(letter) for letter in text[: 4 * longest])
    line = " ".join(shown.split())
    return line if len(line) <= longest else line[: longest - 1] + "…"


def _shown(letter: str) -> str:
    if letter.isspace():
        return " "
    return letter if category(letter)[0] != "C" or letter in JOINERS else ""


def wrapped(
    text: str, width: float, height: float, face: Face = "upright", longest: int = LONGEST
) -> tuple[str, ...]:
    """The words broken into lines that fit a width [mm]; a word that is too long by itself is broken too.

    A number stays with its unit.  What is longer than the longest words of a label, or so many signs, is cut off.
    """
    lines: list[str] = []
    for word in _UNBROKEN.findall(plain(text, longest)) or [""]:
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, height, face) <= width:
            lines[-1] = longer
        else:
            lines.extend(_broken(word, width, height, face))
    return tuple(lines)


def _broken(word: str, width: float, height: float, face: Face) -> list[str]:
    parts = [""]
    for letter in word:
        if parts[-1] and text_width(parts[-1] + letter, height, face) > width:
            parts.append("")
        parts[-1] += letter
    return parts


def shortened(text: str, width: float, height: float, face: Face = "upright") -> str:
    """The words on one line of a width [mm], with an ellipsis if some had to go."""
    line = plain(text)
    if text_width(line, height, face) <= width:
        return line
    while line and text_width(line + "…", height, face) > width:
        line = line[:-1]
    return line.rstrip() + "…"


def text_block(
    lines: Iterable[str],
    at: Point,
    *,
    height: float = 2.5,
    angle: float = 0.0,
    meaning: Meaning = Meaning.TEXT,
    name: str = "",
) -> tuple[Label, ...]:
    """Lines of words below each other, the first with its base line at `at`.

    All lines carry the same name, so that a reduced drawing can keep them together.
    """
    down = Vector.polar(angle - pi / 2, height * LEADING)
    return tuple(
        Label(line, at + down * number, meaning, height, angle, name=name)
        for number, line in enumerate(lines)
    )


def label_bounds(label: Label) -> Bounds:
    """The upright rectangle round a label, by estimate, with room for letters that hang below the line."""
    width = text_width(label.text, label.height, look(label.meaning).face)
    shift = {"start": 0.0, "middle": -0.5, "end": -1.0}[label.anchor] * width
    low, high = -0.35 * label.height, 1.1 * label.height
    along = Vector.polar(label.angle)
    up = along.turned_left()
    corners = [(shift, low), (shift + width, low), (shift, high), (shift + width, high)]
    return Bounds.of_points(*(label.at + along * u + up * v for u, v in corners))
