"""What to measure, what is needed, and the numbers of the child: the tables before the first step."""

from __future__ import annotations

from dataclasses import replace
from math import ceil
from typing import TYPE_CHECKING, Any

from littlefold.body.register import REGISTER, register_in
from littlefold.body.tape import EIGHTH, MM_PER, ONE_MM
from littlefold.booklet.formula import amount_formula, said_value, spoken
from littlefold.booklet.spoken import word
from littlefold.check.rules.paper_needed import CODE as PAPER_NEEDED
from littlefold.check.rules.paper_needed import sheets_needed
from littlefold.pattern.block import cutting_words
from littlefold.pattern.wording import piece_wording

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from littlefold.draft.model import Amount, Draft, Notion
    from littlefold.draft.sentence import Speech
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

    Words = Mapping[str, Mapping[str, str]]

LIES = 860.0
"""A child up to this stature is measured lying down [mm]: the babies' tables end there, and few stand still before."""

SAME = 1e-6
"""Widths nearer to each other than this are the same [mm]: paper that lies flat is as wide as what is drawn."""

Row = dict[str, Any]


def measurement_rows(draft: Draft, words: Words, speech: Speech) -> Iterator[Row]:
    """Each measurement the recipe asks for: its value, where it came from, how it is taken."""
    exactly = replace(speech, mark=None)
    amounts = {amount.name: amount for amount in draft.amounts}
    for name in draft.used:
        reading, amount = draft.measurements.get(name), amounts.get(name)
        fallback = bool(amount and amount.formula)
        origin = "fallback" if fallback or reading is None else reading.origin.value
        mm = amount.value if amount else (reading.mm if reading else None)
        yield {
            "title": _title(name, speech.language),
            "value": "" if mm is None else _to_the_mark(mm, exactly, taken=origin == "given"),
            "origin": words["origin"][origin],
            "certain": origin in {"given", "chart"},
            "how": _how(name, amount, draft, speech.language),
        }


def _to_the_mark(mm: float | str, exactly: Speech, *, taken: bool) -> str:
    """A measurement as it was read; where nobody read it, no finer than a tape: to 1 mm, or to 1/8 in."""
    if taken or isinstance(mm, str):
        return said_value(mm, "mm", exactly)
    mark = EIGHTH if exactly.units == "in" else ONE_MM
    return replace(exactly, mark=mark).length(mm)


def _title(name: str, language: str) -> str:
    return register_in(language)[name].title if name in REGISTER else name.replace("_", " ")


def _how(name: str, amount: Amount | None, draft: Draft, language: str) -> str:
    """How a measurement is taken; the recipe tells it of its own."""
    if name not in REGISTER:
        return amount.title if amount else ""
    stature = draft.measurements.get("stature")
    lies = stature is not None and stature.mm <= LIES
    taken = register_in(language)[name]
    return taken.how_lying if lies else taken.how_standing


def paper_rows(
    pattern: Pattern, problems: tuple[Problem, ...], words: Words, speech: Speech
) -> Iterator[str]:
    """The paper of each drawing, from the findings that say how much is needed."""
    needed = [problem for problem in problems if problem.code == PAPER_NEEDED]
    for name, problem in zip(sheets_needed(pattern), needed, strict=False):
        numbers = {number.name: number.value for number in problem.numbers}
        kind = "flat" if abs(numbers["width"] - numbers["drawn"]) < SAME else "folded"
        size = {side: _rounded_up(numbers[side], speech) for side in ("width", "height")}
        yield words["paper"][kind].format(sheet=name.replace("_", " "), **size)


def _rounded_up(mm: float, speech: Speech) -> str:
    """To a whole centimetre or half inch: nobody cuts paper finer."""
    step = MM_PER["in"] / 2 if speech.units == "in" else MM_PER["cm"]
    return replace(speech, mark=None).length(ceil(mm / step - 1e-6) * step)


def notion_rows(draft: Draft, words: Words, speech: Speech) -> Iterator[Row]:
    """What to buy or cut beside the cloth."""
    for notion in draft.notions:
        where = word(notion.where.replace("_", " "), speech.language)
        yield {
            "title": word(notion.name.replace("_", " "), speech.language),
            "value": _amount(notion, words["notion"], speech),
            "remark": ": ".join(filter(None, (where, notion.remark))),
        }


def _amount(notion: Notion, words: Mapping[str, str], speech: Speech) -> str:
    if notion.length is None:
        return words["counted"].format(count=notion.count)
    kind = "one" if notion.count == 1 else "each"
    return words[kind].format(count=notion.count, length=speech.length(notion.length))


def cloth_rows(pattern: Pattern, speech: Speech) -> Iterator[Row]:
    """Each piece and how it is cut."""
    words = piece_wording(speech.language)
    return ({"title": piece.title, "value": cutting_words(piece, words)} for piece in pattern.pieces)


def number_rows(draft: Draft, speech: Speech) -> Iterator[Row]:
    """The choices and amounts of the recipe: title, formula with numbers put in, value, source."""
    exactly = replace(speech, mark=None)
    for amount in draft.amounts:
        if amount.name not in draft.used:
            yield {
                "name": spoken(amount.name),
                "title": amount.title,
                "formula": amount_formula(amount, draft, speech),
                "value": said_value(amount.value, amount.unit, exactly),
                "source": amount.source,
            }
