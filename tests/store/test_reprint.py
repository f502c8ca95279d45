"""An old pattern is printed again exactly, whatever became of the shelf."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING

import pytest

from littlefold.body.measurements import Measurements
from littlefold.body.tape import EIGHTH
from littlefold.booklet.bundle import bundle
from littlefold.check import Circumstances
from littlefold.draft.sentence import Speech
from littlefold.pattern.picture import draw_pattern
from littlefold.pipeline import Wish, fulfil, on_the_shelf
from littlefold.sheet.paper import Paper, read_paper
from littlefold.sheet.svg import write_svg
from littlefold.store import Card, CardBox, RecipeText, cards_from_json, cards_to_json
from littlefold.store.reprint import (
    findings_again,
    past_draft,
    pattern_again,
    pattern_hash,
    speech_of,
    wish_again,
)

if TYPE_CHECKING:
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem
    from littlefold.store.card import Units

DAY = date(2026, 3, 1)
BODY = Measurements.of({"stature": 1040.0, "chest": 553.0}, age_months=51.5, sex="girl", nickname="Mina")
CHOICES = {"bodice": (("ease", 80.0),), "a-line-frock": (), "trousers": ()}


def made(name: str) -> tuple[Wish, list[str], object]:
    recipe = on_the_shelf(name)
    assert recipe is not None
    wish = Wish(recipe, BODY, Circumstances(), CHOICES[name], EIGHTH)
    outcome = fulfil(wish)
    return wish, [write_svg(piece) for piece in draw_pattern(outcome.pattern)], past_draft(wish, outcome, DAY)


@pytest.mark.parametrize("name", CHOICES)
def test_the_pattern_comes_out_the_same_from_box_and_file(box: CardBox, name: str) -> None:
    _, pieces, draft = made(name)
    box.add(Card("Mina", drafts=(draft,)))  # type: ignore[arg-type]
    kept = box.card("Mina")
    assert isinstance(kept, Card)
    (filed,) = cards_from_json(cards_to_json((kept,)))
    assert isinstance(filed, Card)
    for card in (kept, filed):
        pattern, problems = pattern_again(card.draft(1))
        assert problems == ()
        assert [write_svg(piece) for piece in draw_pattern(pattern)] == pieces


def test_a_recipe_that_begins_with_another_keeps_that_one_too() -> None:
    _, pieces, draft = made("a-line-frock")
    names = [recipe.name for recipe in draft.recipes]  # type: ignore[attr-defined]
    assert names[0] == "a-line-frock"
    assert len(names) > 1, "else this test needs another recipe"
    emptied = replace(draft, recipes=draft.recipes[:1])  # type: ignore[attr-defined, type-var]
    pattern, _ = pattern_again(emptied)  # type: ignore[arg-type]
    assert [write_svg(piece) for piece in draw_pattern(pattern)] != pieces, "the kept text is what is used"


def test_a_pattern_that_comes_out_otherwise_is_told() -> None:
    _, _, draft = made("bodice")
    text = draft.recipes[0].text.replace("neck / 6 + 0.5 cm", "neck / 6 + 0.6 cm")  # type: ignore[attr-defined]
    changed = replace(draft, recipes=(RecipeText("bodice", text),))  # type: ignore[type-var]
    _, problems = pattern_again(changed)  # type: ignore[arg-type]
    assert [problem.code for problem in problems] == ["pattern-differs"]


def sheets_of(pattern: Pattern, problems: tuple[Problem, ...], speech: Speech) -> dict[str, bytes]:
    """Every sheet but the printer check, which knows nothing of the draft."""
    paper = read_paper("a4")
    assert isinstance(paper, Paper)
    made = {sheet.name: sheet.make() for sheet in bundle(pattern, problems, speech, paper, DAY)}
    return {name: content for name, content in made.items() if name != "printer-check.pdf"}


@pytest.mark.parametrize("units", ["cm", "in"])
def test_every_sheet_is_printed_again_with_its_cautions(box: CardBox, units: Units) -> None:
    """A cord at the neck, by US rules; German words, the tape's mark, and the units of the day."""
    recipe = on_the_shelf("casing-top")
    assert recipe is not None
    around = Circumstances("us", "3T", None, 1120.0)
    wish = Wish(recipe, BODY, around, (("closing", "cord"),), EIGHTH, "de")
    outcome = fulfil(wish)
    speech = Speech(units, EIGHTH, "de")
    before = sheets_of(outcome.pattern, outcome.problems, speech)
    assert any(problem.rule for problem in outcome.problems), "else there is no caution to lose"
    box.add(Card("Mina", drafts=(past_draft(wish, outcome, DAY, units=units),)))
    kept = box.card("Mina")
    assert isinstance(kept, Card)
    for card in (kept, *cards_from_json(cards_to_json((kept,)))):
        assert isinstance(card, Card)
        draft = card.draft(1)
        pattern, differs = pattern_again(draft)
        assert differs == ()
        assert sheets_of(pattern, findings_again(draft, pattern), speech_of(draft)) == before
        assert wish_again(draft).circumstances == around


def test_a_draft_kept_without_its_cautions_gets_those_of_today() -> None:
    recipe = on_the_shelf("casing-top")
    assert recipe is not None
    wish = Wish(recipe, BODY, Circumstances(), (("closing", "cord"),))
    draft = replace(past_draft(wish, fulfil(wish), DAY), around=None, findings=())
    found = findings_again(draft, pattern_again(draft)[0])
    assert found[0].code == "findings-of-today"
    assert any(problem.rule.startswith("EN 14682") for problem in found)


def test_the_wish_is_the_same_wish() -> None:
    wish, _, draft = made("bodice")
    again = wish_again(draft)  # type: ignore[arg-type]
    assert (again.recipe.text, again.choices, again.tape) == (wish.recipe.text, wish.choices, wish.tape)
    assert again.measurements.nickname == "Mina"
    assert pattern_hash(fulfil(again).pattern) == pattern_hash(fulfil(wish).pattern)
