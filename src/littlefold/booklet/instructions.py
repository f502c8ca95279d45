"""The instruction sheet: everything a learner needs to draw the pattern by hand, with ruler, pencil and paper."""

from __future__ import annotations

from functools import lru_cache
from importlib.resources import files
from itertools import groupby
from typing import TYPE_CHECKING, Any

from littlefold.booklet.allowances import allowance_rows
from littlefold.booklet.draft_picture import draft_picture
from littlefold.booklet.formula import step_formula
from littlefold.booklet.needs import cloth_rows, measurement_rows, notion_rows, number_rows, paper_rows
from littlefold.booklet.spoken import spoken
from littlefold.booklet.step_picture import stage_scene, step_picture
from littlefold.booklet.wording import wording
from littlefold.check.rules.paper_needed import CODE as PAPER_NEEDED
from littlefold.draft.sentence import guide_sentence, sentence
from littlefold.drawing import plain
from littlefold.problem import Severity
from littlefold.sheet.pdf import typeset
from littlefold.sheet.replay import drawing_as_data, looks_as_data
from littlefold.sheet.wording import spoken_date

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator, Mapping
    from datetime import date

    from littlefold.draft.model import Draft, Step
    from littlefold.draft.sentence import Speech
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem
    from littlefold.sheet.paper import Paper

    Words = Mapping[str, Mapping[str, str]]

Json = dict[str, Any]

ORDER = (Severity.ERROR, Severity.WARNING, Severity.NOTE)


def instruction_sheet(
    pattern: Pattern, problems: tuple[Problem, ...], speech: Speech, paper: Paper, made: date
) -> bytes:
    """The instructions of a pattern as a PDF.

    Args:
        pattern: The traced pattern; its draft holds the steps.
        problems: All findings of the whole flow.
        speech: Units, tape and language.
        paper: The paper it is printed on; a roll is taken as wide as high.
        made: The date on every page.
    """
    return typeset(_template(), sheet_data(pattern, problems, speech, paper, made), made)


def sheet_data(
    pattern: Pattern, problems: tuple[Problem, ...], speech: Speech, paper: Paper, made: date
) -> Json:
    """What the instruction sheet says, as data for its template."""
    draft, words = pattern.draft, wording(speech.language)
    problems = spoken(problems, speech)
    return {
        "paper": {"width": paper.width, "height": paper.height or paper.width},
        "language": speech.language,
        "looks": looks_as_data(),
        "words": {part: dict(words[part]) for part in ("headings", "said", "hint")},
        "title": plain(draft.title),
        "child": child_line(draft, words, speech),
        "made": spoken_date(made, speech.language),
        "measurements": list(measurement_rows(draft, words, speech)),
        "papers": list(paper_rows(pattern, problems, words, speech)),
        "notions": list(notion_rows(draft, words, speech)),
        "cloth": list(cloth_rows(pattern, speech)),
        "numbers": list(number_rows(draft, speech)),
        "sheets": list(_sheets(draft, words, speech)),
        "allowances": list(allowance_rows(pattern, words, speech)),
        "work": list(draft.work),
        "remarks": list(draft.remarks),
        "findings": list(_findings(problems, words)),
        "cautions": list(_cautions(draft, problems, words)),
        "sources": list(_sources(draft)),
    }


def child_line(draft: Draft, words: Words, speech: Speech) -> str:
    """The child's name and height, as far as they are known."""
    stature = draft.measurements.get("stature")
    tall = words["said"]["stature"].format(stature=speech.length(stature.mm)) if stature else ""
    return plain(", ".join(filter(None, (draft.measurements.nickname, tall))))


def _sheets(draft: Draft, words: Words, speech: Speech) -> Iterator[Json]:
    remarks = {sheet.name: sheet.remark for sheet in draft.sheets}
    said_before: set[tuple[str, ...]] = set()
    for name, steps in groupby(draft.steps, key=lambda step: step.sheet):
        told = [_step(step, draft, words, speech, said_before) for step in steps]
        said_before.update(_instruction(step) for step in told)
        whole = draft_picture(draft, name, speech, until=told[-1]["number"])
        yield {
            "name": name.replace("_", " "),
            "remark": remarks.get(name, ""),
            "steps": told,
            "picture": None if len(told) == 1 else drawing_as_data(whole),
        }


def _step(
    step: Step, draft: Draft, words: Words, speech: Speech, said_before: Collection[tuple[str, ...]]
) -> Json:
    """A step; one that was done in the very same way on an earlier sheet has no picture again."""
    line = draft.lines.get(step.name)
    told = {
        "number": step.number,
        "sentence": sentence(step, speech),
        "guide": guide_sentence(line, speech) if line and line.guides else "",
        "formula": step_formula(step, speech, words["formula"]["on_tape"]),
        "remark": step.remark,
        "source": step.source,
    }
    return told | {"picture": None if _instruction(told) in said_before else _picture(step, draft, speech)}


def _instruction(told: Json) -> tuple[str, ...]:
    """What is done in a step, whatever its number."""
    return (told["sentence"], told["guide"], told["formula"])


def _picture(step: Step, draft: Draft, speech: Speech) -> Json:
    window = stage_scene(draft, step.number).window
    return drawing_as_data(step_picture(draft, step.number, speech), window)


def _findings(problems: tuple[Problem, ...], words: Words) -> Iterator[Json]:
    """The findings, errors first; rules of safety are told among the cautions, paper where it is needed."""
    told = [problem for problem in problems if problem.code != PAPER_NEEDED and not problem.rule]
    for problem in sorted(told, key=lambda problem: ORDER.index(problem.severity)):
        yield _finding(problem, words)


def _finding(problem: Problem, words: Words) -> Json:
    return {
        "severity": words["severity"][problem.severity.value],
        "grave": problem.severity is Severity.ERROR,
        "message": problem.message,
        "rule": problem.rule,
    }


def _cautions(draft: Draft, problems: tuple[Problem, ...], words: Words) -> Iterator[Json]:
    """Rules of safety that were broken or are near, then what the recipe warns of."""
    ruled = sorted((one for one in problems if one.rule), key=lambda one: ORDER.index(one.severity))
    yield from (_finding(problem, words) for problem in ruled)
    for caution in draft.cautions:
        yield {"severity": "", "grave": False, "message": caution, "rule": ""}


def _sources(draft: Draft) -> tuple[str, ...]:
    said = (draft.source, *(one.source for one in draft.amounts), *(one.source for one in draft.steps))
    return tuple(dict.fromkeys(filter(None, said)))


@lru_cache(maxsize=1)
def _template() -> str:
    return files("littlefold.booklet").joinpath("instructions.typ").read_text("utf-8")
