"""A recipe text cut into statements: one a line, gone on with below where a line ends in a comma."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

# What a recipe may be at most; a longer one is refused before it is read (it is somebody else's text).
MOST_CHARACTERS = 200_000
MOST_LINES = 4_000

_LINE_END = re.compile(r"\r\n|\r|\n")
# Quoted words (perhaps without their closing quote), or anything else that is no comment.
_BEFORE_COMMENT = re.compile(r'(?:"(?:\\.|[^"\\])*(?:"|\\?$)|[^"#])*')


@dataclass(frozen=True, slots=True)
class Stretch:
    """The lines of one statement, or a blank line, or a line that is only a comment.

    Attributes:
        line: The line on which it begins, from 1.
        text: The statement without its comments, its lines parted by newlines; empty where there is none.
        comment: `# ` and the words of its comments; empty where there is none.
        raw: The lines as they stand.
    """

    line: int
    text: str
    comment: str
    raw: str


def stretches(text: str) -> tuple[Stretch, ...]:
    """The statements of a recipe text, in order, blank lines and comments among them."""
    found: list[Stretch] = []
    begun: list[_Line] = []
    goes_on = False
    for line in _lines(text):
        if begun and (line.is_blank or not goes_on):
            found.append(_stretch(begun))
            begun = []
        begun.append(line)
        # A comment between two lines of a statement does not end it.
        goes_on = line.words.endswith(",") or (goes_on and not line.words and not line.is_blank)
    return (*found, _stretch(begun)) if begun else tuple(found)


@dataclass(frozen=True, slots=True)
class _Line:
    """A line of the text, its words apart from its comment."""

    number: int
    words: str
    comment: str
    raw: str

    @property
    def is_blank(self) -> bool:
        return not self.words and not self.comment


def _lines(text: str) -> Iterator[_Line]:
    """The lines of a text; a line end at the very end begins no further line, byte order marks are none."""
    lines = _LINE_END.split(text.replace("\ufeff", ""))
    for number, line in enumerate(lines[:-1] if not lines[-1] else lines, start=1):
        words, comment = _comment_apart(line)
        yield _Line(number, words.rstrip(), comment, line)


def _stretch(lines: list[_Line]) -> Stretch:
    text = "\n".join(line.words for line in lines).rstrip()
    comments = " ".join(line.comment for line in lines if line.comment)
    return Stretch(lines[0].number, text, comments, "\n".join(line.raw for line in lines))


def _comment_apart(line: str) -> tuple[str, str]:
    """The words of a line and its comment, which begins at a `#` outside quotes."""
    end = _BEFORE_COMMENT.match(line).end()  # type: ignore[union-attr]  # it matches nothing at least
    words = line[end:].lstrip("#")
    hashes = "#" * (len(line) - end - len(words))
    return line[:end], f"{hashes} {words.strip()}".rstrip()
