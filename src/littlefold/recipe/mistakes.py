"""What to say about a line that cannot be read: what is wrong, where, and how such a line is written."""

from __future__ import annotations

from difflib import get_close_matches
from typing import TYPE_CHECKING

from littlefold.problem import Place, Problem
from littlefold.recipe.forms import FORMS

if TYPE_CHECKING:
    from lark.exceptions import UnexpectedInput

    from littlefold.recipe.lines import Stretch


def explain(fault: UnexpectedInput, stretch: Stretch, file: str) -> Problem:
    """The problem with a line, in words."""
    line, column = _spot(fault, stretch)
    where = f"{file}, line {line}, column {column}"
    keyword = stretch.text.split()[0]
    place = Place(file=file, line=line, column=column)
    if keyword not in FORMS:
        return Problem("unknown-statement", f"{where}: {_unknown(keyword)}", place=place)
    found = _word_at(stretch, line, column)
    problem = f'I cannot read "{found}" here.' if found else "the line ends too early."
    return Problem("cannot-read-line", f"{where}: {problem} {_form(stretch, keyword)}", place=place)


def _spot(fault: UnexpectedInput, stretch: Stretch) -> tuple[int, int]:
    line = getattr(fault, "line", -1)
    if not isinstance(line, int) or line < 1:
        rows = stretch.text.split("\n")
        return stretch.line + len(rows) - 1, len(rows[-1]) + 1
    return stretch.line + line - 1, max(1, fault.column)


def _word_at(stretch: Stretch, line: int, column: int) -> str:
    row = stretch.text.split("\n")[line - stretch.line]
    return row[column - 1 :].split(" ")[0][:40]


def _unknown(keyword: str) -> str:
    close = get_close_matches(keyword, FORMS, n=1)
    hint = f' Did you mean "{close[0]}"?' if close else ""
    return f'no statement begins with "{keyword[:40]}".{hint} A line begins with one of: {", ".join(FORMS)}.'


def _form(stretch: Stretch, keyword: str) -> str:
    """The form that comes nearest to what was written."""
    forms = FORMS[keyword]
    near = get_close_matches(" ".join(stretch.text.split()), forms, n=1, cutoff=0.0)
    return f"Such a line is written: {near[0]}"
