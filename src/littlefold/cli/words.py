"""Findings and lists as a person reads them in a terminal."""

from __future__ import annotations

import json
import sys
from typing import TYPE_CHECKING, Any

from rich.console import Console
from rich.table import Table
from rich.text import Text

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from littlefold.problem import Problem

STYLES = {"error": "bold red", "warning": "yellow", "note": "dim"}


def to_person() -> Console:
    """The terminal, for what was asked for."""
    return Console(highlight=False, soft_wrap=False)


def aside() -> Console:
    """The terminal, for progress and remarks."""
    return Console(stderr=True, highlight=False)


def print_findings(problems: Iterable[Problem], console: Console) -> None:
    """Prints findings as a table, errors first as they come."""
    found = list(problems)
    if not found:
        console.print("The checks found nothing to report.")
        return
    table = Table(show_lines=True, expand=True, pad_edge=False)
    table.add_column("", width=7)
    table.add_column("Where", ratio=1, overflow="fold")
    table.add_column("What was found", ratio=4)
    for problem in found:
        weight = Text(problem.severity.value, STYLES[problem.severity.value])
        table.add_row(weight, Text(where(problem)), Text(problem.message))
    console.print(table)


def where(problem: Problem) -> str:
    """The place of a problem in a few words."""
    place = problem.place
    parts = [place.piece, place.edge, place.point]
    named = ", ".join(part for part in parts if part)
    if place.line is None:
        return named
    return f"line {place.line}" + (f" ({named})" if named else "")


def print_document(document: Any) -> None:
    """Prints one JSON document, in UTF-8, without numbers that JSON does not know."""
    text = json.dumps(document, ensure_ascii=False, allow_nan=False, indent=1)
    sys.stdout.buffer.write(text.encode("utf-8", "replace") + b"\n")
    sys.stdout.buffer.flush()


def refused(problems: Sequence[Problem], *, as_data: bool) -> int:
    """Says what cannot be done, as a document with `problems` where data was asked for; the exit status for it."""
    if as_data:
        from littlefold.booklet.record import problem_record

        print_document({"problems": [problem_record(problem) for problem in problems]})
    else:
        print_findings(problems, aside())
    return 2


def count_words(count: int, one: str) -> str:
    """`1 error`, `3 errors`."""
    return f"{count} {one}{'' if count == 1 else 's'}"
