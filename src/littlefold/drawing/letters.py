"""How wide letters are, so that words can be placed before any writer has set them.

The widths are those of Libertinus Serif as the typesetter measures them, rounded up to a twentieth, in parts of
the height of a capital (0.645 of the size); a test measures whole sentences again.  Letters outside of the table
are taken by class, rather wide than narrow: a sheet with a little too much room still reads well.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING
from unicodedata import category, combining, east_asian_width, normalize

if TYPE_CHECKING:
    from littlefold.drawing.style import Face

_MEASURED = {
    0.30: "'",
    0.35: ",.|",
    0.40: " :;\u00b7",
    0.45: "!\\ijl{}\u2018\u2019\u00b0",
    0.50: "()/IJft",
    0.55: '"-[]',
    0.60: "*rs\u201c\u201d",
    0.65: "`z",
    0.70: "?ce~",
    0.75: "#$0123456789FS_a",
    0.80: "^bdgkopqvxy",
    0.85: "+<=>LPhnu\u2013\u00d7",
    0.90: "EY",
    0.95: "BRTZ",
    1.00: "%CK",
    1.05: "UVX\u00bd\u00bc\u00be",
    1.10: "&ADGNOQ",
    1.15: "H\u2014",
    1.20: "w\u2026",
    1.25: "m",
    1.30: "M",
    1.40: "@",
    1.50: "W",
}
_WIDTHS = {letter: width for width, letters in _MEASURED.items() for letter in letters}

WIDE = 1.6
"""Letters of East Asian scripts and pictures: one em each."""
CAPITAL, SMALL = 1.15, 0.95
"""Letters of other scripts, such as Cyrillic."""
HEAVY = 1.12
"""How much wider words are in the heavy face; single letters up to a quarter."""


def text_width(text: str, height: float, face: Face = "upright") -> float:
    """About how wide the words are [mm], for a given height of a capital [mm]; rather more than less."""
    wider = HEAVY if face == "heavy" else 1.0
    return wider * height * sum(map(_letter_width, text))


@lru_cache(maxsize=4096)
def _letter_width(letter: str) -> float:
    """In parts of the height of a capital; a letter with an accent is as wide as without."""
    plain = normalize("NFD", letter)[:1]
    if plain in _WIDTHS:
        return _WIDTHS[plain]
    if combining(letter) or category(letter)[0] == "C":
        return 0.0
    if east_asian_width(letter) in "WF":
        return WIDE
    return CAPITAL if letter.isupper() else SMALL
