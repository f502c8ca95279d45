"""Writes docs/constructions.md anew: `.venv/bin/python tools/construction_pages.py`; a test says when it was forgotten.

Every construction of the register stands there with what it does, its examples, and the sentence of each example
as the instruction sheet says it.  What is done to outlines, and strips, stand with the sentence as the table has
it, since their examples need a whole garment before them.
"""

from __future__ import annotations

import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING

sys.path.insert(0, str(Path(__file__).parents[1]))

from littlefold.draft.acts import ACTS
from littlefold.draft.register import CONSTRUCTIONS
from littlefold.draft.sentence import languages, table
from littlefold.draft.shapes import SHAPE_ACTS
from littlefold.draft.strips import STRIP_ACTS
from littlefold.recipe import tree
from littlefold.recipe.forms import FORMS
from littlefold.recipe.parse import read_statement
from tools.language_reference import said

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from littlefold.draft.register import Construction

DOCS = Path(__file__).parents[1] / "docs"
HEAD = """\
# Constructions

Each act of the pencil is one entry of a register: the statement that asks for it, and one function that draws it.
It writes down a numbered step of a *kind*; a table for each language ({languages}) has one sentence for each kind,
and the names and lengths of the step are put in. A new construction is a new entry and a sentence in each table.

This page is made from the register and the English table; change those, not the page.
"""
OUTLINES = """
## What is done to outlines, and pieces in one line

Names and lengths are put in where braces stand.
"""
# The statement of each kind of step that no construction of the register draws.
OTHERS: dict[str, type] = {
    "sheet.trace": tree.TraceLines,
    "sheet.lay": tree.LayPart,
    "sheet.lay_plain": tree.LayPart,
    "shape.outline": tree.Outline,
    "shape.split": tree.Split,
    "shape.slash": tree.Slash,
    "shape.close_dart": tree.CloseDart,
    "shape.pleats": tree.FoldIn,
    "shape.tucks": tree.FoldIn,
    "shape.gathers": tree.GatherIn,
    "shape.join": tree.Join,
    "shape.button_stand": tree.ButtonStand,
    "piece.rectangle": tree.PieceRectangle,
    "piece.bias": tree.PieceBias,
    "piece.band": tree.PieceBand,
    "piece.facing": tree.PieceFacing,
}


def page() -> str:
    """The whole page."""
    drawn = "".join(_drawn(known) for known in sorted(CONSTRUCTIONS.values(), key=lambda one: one.kind))
    others = "".join(_other(kind, statement) for kind, statement in OTHERS.items())
    return HEAD.format(languages=", ".join(languages())) + drawn + OUTLINES + others


def _drawn(known: Construction) -> str:
    examples = "".join(f"- `{form}`\n  *{said(form)}*\n" for form in _forms(known.statement))
    return f"\n### {known.kind}\n\n{_meaning(known.draw)}\n\n{examples}"


def _other(kind: str, statement: type) -> str:
    act = {**ACTS, **SHAPE_ACTS, **STRIP_ACTS}[statement]
    word = kind.partition(".")[2]
    forms = [form for form in _forms(statement) if statement is not tree.FoldIn or form.startswith(word)]
    examples = "".join(f"- `{form}`\n" for form in forms)
    return f"\n### {kind}\n\n{_meaning(act)}\n\n{examples}\n*{table('en')['steps'][kind]}*\n"


def _meaning(act: Callable[..., object]) -> str:
    """What a function does: the first paragraph of what is written about it."""
    first = (act.__doc__ or "").strip().partition("\n\n")[0]
    return re.sub(r"\s+", " ", first)


def _forms(statement: type) -> Iterator[str]:
    return (form for forms in FORMS.values() for form in forms if isinstance(read_statement(form), statement))


if __name__ == "__main__":
    DOCS.joinpath("constructions.md").write_text(page(), encoding="utf-8")
