"""A recipe text cut into statements: one a line, gone on with below where a line ends in a comma."""

from __future__ import annotations

from dataclasses import dataclass

# What a recipe may be at most; a longer one is refused before it is read (it is somebody else's text).
MOST_CHARACTERS = 200_000
MOST_LINES = 4_000


@dataclass(frozen=True, slots=True)
class Stretch:
    """The text of one statement, without its comment.

    `line` counts from 1; a blank line, or one that is only a comment, has no text.
    """

    line: int
    text: str
    comment: str


def stretches(text: str) -> tuple[Stretch, ...]:
    """The statements of a recipe text, in order, blank lines and comments among them."""
    found: list[Stretch] = []
    begun: list[str] = []
    first = 0
    comments: list[str] = []
    for number, line in enumerate(text.splitlines(), start=1):
        words, comment = _comment_apart(line)
        if not begun:
            first = number
        begun.append(words)
        if comment:
            comments.append(comment)
        if not words.rstrip().endswith(","):
            found.append(Stretch(first, "\n".join(begun).rstrip(), " ".join(comments)))
            begun, comments = [], []
    if begun:
        found.append(Stretch(first, "\n".join(begun).rstrip(), " ".join(comments)))
    return tuple(found)


def _comment_apart(line: str) -> tuple[str, str]:
    """The words of a line and its comment, which begins at a `#` outside quotes."""
    quoted = False
    escaped = False
    for index, letter in enumerate(line):
        if escaped:
            escaped = False
        elif letter == "\\" and quoted:
            escaped = True
        elif letter == '"':
            quoted = not quoted
        elif letter == "#" and not quoted:
            return line[:index], line[index + 1 :].strip()
    return line, ""
