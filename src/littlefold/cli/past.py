"""Old patterns printed again, and drafted again with what a fitting changed."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.booklet.bundle import bundle
from littlefold.booklet.recipes import with_beginnings
from littlefold.cli.box import keep_on_card, the_box
from littlefold.cli.child import no_draft, refuse, today
from littlefold.cli.draft import DEFAULT_FOLDER
from littlefold.cli.files import plain_name
from littlefold.cli.sheets import write_sheets
from littlefold.cli.typed import pairs, unpaired
from littlefold.cli.words import print_findings, to_person
from littlefold.draft.choices import read_choices
from littlefold.pipeline import fulfil, on_the_shelf, settings
from littlefold.problem import Problem, has_errors
from littlefold.sheet.paper import read_paper
from littlefold.store.reprint import findings_again, pattern_again, recipe_of, speech_of, wish_again

if TYPE_CHECKING:
    from pathlib import Path

    from littlefold.store import PastDraft


def print_again(name: str, number: int, paper: str, out: Path | None) -> int:
    """Writes the sheets of an old draft again; returns the exit status."""
    draft, sheet = _draft(name, number), read_paper(paper)
    if isinstance(draft, Problem) or isinstance(sheet, Problem):
        return refuse(*(one for one in (draft, sheet) if isinstance(one, Problem)))
    pattern, differs = pattern_again(draft)
    problems = (*differs, *findings_again(draft, pattern))
    front = f"{plain_name(recipe_of(draft).name)}-{number}"
    fault = write_sheets(
        bundle(pattern, problems, speech_of(draft), sheet, draft.made),
        out or DEFAULT_FOLDER,
        front,
    )
    if fault is not None:
        return refuse(fault)
    if problems:
        print_findings(problems, to_person())
    return 0


def draft_changed(name: str, number: int, texts: tuple[str, ...], out: Path | None) -> int:
    """Drafts again with changed choices, writes the sheets, and keeps the draft as one that follows."""
    draft, sheet, day = _draft(name, number), read_paper("a4"), today()
    if isinstance(draft, Problem) or isinstance(sheet, Problem):
        return refuse(*(one for one in (draft, sheet) if isinstance(one, Problem)))
    recipe = recipe_of(draft)
    changed, faults = read_choices(with_beginnings(recipe, on_the_shelf), pairs(texts))
    faults = (*faults, *unpaired(texts, "--choose"))
    if faults:
        return refuse(*faults)
    wish = replace(wish_again(draft), choices=settings(dict(draft.choices) | changed))
    outcome = fulfil(wish)
    sheets = bundle(outcome.pattern, outcome.problems, speech_of(draft), sheet, day)
    fault = write_sheets(sheets, out or DEFAULT_FOLDER, plain_name(recipe.name))
    if fault is not None:
        return refuse(fault)
    keep_on_card(name, wish, outcome, day, units=draft.units, follows=number)
    print_findings(outcome.problems, to_person())
    return 1 if has_errors(outcome.problems) else 0


def _draft(name: str, number: int) -> PastDraft | Problem:
    with the_box() as box:
        card = box if isinstance(box, Problem) else box.card(name)
    if isinstance(card, Problem):
        return card
    return card.draft(number) if 1 <= number <= len(card.drafts) else no_draft(card, number)
