"""Slips of the pen that can be told from the text alone: quotes, odd characters, commas, capitals."""

from __future__ import annotations

import re
import unicodedata
from typing import TYPE_CHECKING, Final

from littlefold.recipe.forms import FORMS

if TYPE_CHECKING:
    from collections.abc import Mapping

# Characters that word processors put in, each with what a recipe has in its place.
_INSTEAD: Final[Mapping[str, str]] = {
    **dict.fromkeys("“”„«»‟", 'straight quotes: "'),  # these are what a message is about
    **dict.fromkeys("’‘`´", "an apostrophe only inside quotes"),  # noqa: RUF001
    **dict.fromkeys("–—−‐‑", "a plain minus: -"),  # noqa: RUF001
    "×": "*",  # noqa: RUF001
    "·": "*",
    "÷": "/",
    "½": "1/2",
    "¼": "1/4",
    "¾": "3/4",
    "⅓": "1/3",
    "⅔": "2/3",
    "⅛": "1/8",
    "°": "degrees",
    "″": "in",
    "′": "a length with its unit: cm or in",  # noqa: RUF001
    "'": "a length with its unit: cm or in; an apostrophe stands only inside quotes",
    "%": "a share: 0.5, or 1/2 of chest",
    "≥": ">=",
    "≤": "<=",
    "≠": "not, or a comparison with < or >",
    "…": "two dots: ..",
    ";": "one statement on each line, and commas between parts",
    ":": "=, or words",
    "\N{NO-BREAK SPACE}": "a plain space",
    "\N{NARROW NO-BREAK SPACE}": "a plain space",
    "\N{THIN SPACE}": "a plain space",
}
_QUOTE: Final = re.compile(r'"(?:\\.|[^"\\\n])*("|\\?$|\\?(?=\n))', re.MULTILINE)
_DECIMAL_COMMA: Final = re.compile(r"(\d+),(\d+)")


def open_quote(text: str) -> int | None:
    """Where quotes begin that are not closed on their line; None when all are closed."""
    return next((quote.start() for quote in _QUOTE.finditer(text) if quote[1] != '"'), None)


def odd_characters(word: str) -> str | None:
    """What to say about a word with a character that means nothing in a recipe; None when all are ordinary."""
    letter = next((letter for letter in word if letter in _INSTEAD or not _is_ordinary(letter)), None)
    if letter is None:
        return None
    cure = f"Write {_INSTEAD[letter]}" if letter in _INSTEAD else "Take it away"
    return f"the character {_shown(letter)} has no meaning here. {cure}."


def _is_ordinary(letter: str) -> bool:
    return letter.isalnum() or (letter.isascii() and letter.isprintable())


def _shown(letter: str) -> str:
    name = unicodedata.name(letter, f"U+{ord(letter):04X}").lower()
    return f'"{letter}" ({name})' if letter.isprintable() and not letter.isspace() else f"({name})"


def decimal_comma(text: str, at: int) -> str | None:
    """What to say about a number with a comma, as `2,5`, at or just before a place."""
    for number in _DECIMAL_COMMA.finditer(text):
        if number.start() <= at <= number.end():
            return f'"{number[0]}" has a comma. Write {number[1]}.{number[2]} with a point.'
    return None


def stray_comma(text: str, at: int) -> str | None:
    """What to say when a line was read as going on only because the line above ends in a comma."""
    if at >= len(text) and text.endswith(","):
        return "the line ends in a comma, so it goes on below; but nothing follows. Take the comma away."
    first = text[text.rfind("\n", 0, at) + 1 :].split(maxsplit=1)[:1]
    if "\n" in text[:at] and first and first[0] in FORMS:
        return "the line above ends in a comma, so this line was read as part of it. Take that comma away."
    return None
