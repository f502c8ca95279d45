"""What the cover of pages to join says: the title, how to join, and the cautions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.drawing import Label, Meaning, text_block, wrapped
from littlefold.drawing.words import LEADING
from littlefold.geometry import Point
from littlefold.sheet.cautions import caution_lines
from littlefold.sheet.grid import cell_name
from littlefold.sheet.wording import counted, sheet_words, spoken_date

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.geometry import Bounds
    from littlefold.sheet.grid import Grid
    from littlefold.sheet.imprint import Imprint
    from littlefold.sheet.paper import Paper

BODY = 2.5
"""The height of a capital in the text [mm]."""
HEAD = 6.0
"""The height of a capital in the title [mm]."""
LINES_OF_TITLE = 3
"""A longer title is cut off."""
WIDEST_TEXT = 165.0
"""Longer lines are hard to follow [mm]."""


def cover_words(grid: Grid, paper: Paper, imprint: Imprint, room: Bounds) -> tuple[Label, ...]:
    """Title, facts, numbered steps and cautions from the top of a room downwards; they may go on below it."""
    width, words = min(room.width, WIDEST_TEXT), sheet_words(imprint.language)["cover"]
    heads = wrapped(imprint.title or words["pattern"], width, HEAD, "heavy")[:LINES_OF_TITLE]
    top = Point(room.left, room.top - HEAD)
    head = text_block(heads, top, height=HEAD, meaning=Meaning.TITLE, name="cover.title")
    below = head[-1].at.y - HEAD
    facts = wrapped(_facts(grid, paper, imprint), width, BODY)
    fact = text_block(facts, Point(room.left, below), height=BODY, name="cover.facts")
    steps = _numbered(words["steps"], Point(room.left, fact[-1].at.y - 3.2 * BODY), width)
    warned = Point(room.left, steps[-1].at.y - 3.2 * BODY)
    return (*head, *fact, *steps, *caution_lines(imprint.cautions, warned, width, BODY))


def _facts(grid: Grid, paper: Paper, imprint: Imprint) -> str:
    words, language = sheet_words(imprint.language)["cover"], imprint.language
    bare = [cell_name(cell) for cell in grid.cells() if cell not in grid.printed]
    left_out = words["bare"].format(names=", ".join(bare)) if bare else ""
    said = words["facts"].format(
        date=spoken_date(imprint.made, language),
        pages=counted(len(grid.printed), "pages", language),
        paper=paper.name,
        rows=counted(grid.rows, "rows", language),
        columns=counted(grid.columns, "columns", language),
    )
    return f"{said}{left_out}"


def _numbered(steps: Sequence[str], at: Point, width: float) -> tuple[Label, ...]:
    """The numbered steps, each number standing out to the left of its lines."""
    labels: list[Label] = []
    indent, y = 6.0, at.y
    for number, step in enumerate(steps, start=1):
        lines = wrapped(step, width - indent, BODY)
        labels.append(Label(str(number), Point(at.x, y), Meaning.TITLE, BODY, name="cover.steps"))
        labels.extend(text_block(lines, Point(at.x + indent, y), height=BODY, name="cover.steps"))
        y -= (len(lines) + 0.25) * BODY * LEADING
    return tuple(labels)
