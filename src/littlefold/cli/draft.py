"""`littlefold draft`: a garment for a child, its sheets written, its findings told."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from littlefold.booklet.record import draft_record, empty_record
from littlefold.booklet.spoken import spoken
from littlefold.cli.box import keep_on_card
from littlefold.cli.files import plain_name
from littlefold.cli.sheets import write_sheets
from littlefold.cli.understood import Understood, understand
from littlefold.cli.words import aside, print_document, print_findings, to_person
from littlefold.pipeline import fulfil
from littlefold.problem import has_errors

if TYPE_CHECKING:
    from datetime import date

    from littlefold.cli.asked import Asked
    from littlefold.pipeline import Outcome
    from littlefold.problem import Problem

DEFAULT_FOLDER = Path("sheets")


def draft_garment(asked: Asked, out: Path | None, *, as_data: bool) -> int:
    """Drafts, writes and tells; returns the exit status: 0 fine, 1 an error was found, 2 not understood."""
    today = datetime.now(tz=UTC).astimezone().date()
    understood = understand(asked, today)
    if not isinstance(understood, Understood):
        return _refuse(understood, asked, as_data=as_data)
    outcome = fulfil(understood.wish)
    problems = (*understood.problems, *outcome.problems)
    folder = out if out is not None else (None if as_data else DEFAULT_FOLDER)
    if folder is not None:
        fault = _write(outcome, problems, understood, folder, today)
        if fault is not None:
            return _refuse((fault,), asked, as_data=as_data)
    if asked.card is not None:
        kept = replace(outcome, problems=problems)
        keep_on_card(asked.card, understood.wish, kept, today, units=understood.speech.units)
    if as_data:
        print_document(draft_record(outcome.pattern, problems, understood.speech))
    else:
        print_findings(spoken(problems, understood.speech), to_person())
    return 1 if has_errors(problems) else 0


def _refuse(problems: tuple[Problem, ...], asked: Asked, *, as_data: bool) -> int:
    if as_data:
        print_document(empty_record(problems, asked.recipe))
    else:
        print_findings(problems, aside())
    return 2


def _write(
    outcome: Outcome, problems: tuple[Problem, ...], understood: Understood, folder: Path, today: date
) -> Problem | None:
    """Writes all sheets into a folder, and says which."""
    from littlefold.booklet.bundle import bundle

    made = bundle(
        outcome.pattern, problems, understood.speech, understood.paper, today, least=understood.least
    )
    return write_sheets(made, folder, plain_name(outcome.recipe.name))
