"""An old pattern is printed again exactly, whatever became of the shelf."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from littlefold.body.measurements import Measurements
from littlefold.body.tape import EIGHTH
from littlefold.check import Circumstances
from littlefold.pattern.picture import draw_pattern
from littlefold.pipeline import Wish, fulfil, on_the_shelf
from littlefold.sheet.svg import write_svg
from littlefold.store import Card, CardBox, RecipeText, cards_from_json, cards_to_json
from littlefold.store.reprint import past_draft, pattern_again, pattern_hash, wish_again

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


def test_the_wish_is_the_same_wish() -> None:
    wish, _, draft = made("bodice")
    again = wish_again(draft)  # type: ignore[arg-type]
    assert (again.recipe.text, again.choices, again.tape) == (wish.recipe.text, wish.choices, wish.tape)
    assert again.measurements.nickname == "Mina"
    assert pattern_hash(fulfil(again).pattern) == pattern_hash(fulfil(wish).pattern)
