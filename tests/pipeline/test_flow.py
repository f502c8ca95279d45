"""The flow in stages: what a glimpse shows is what the whole shows, sooner, and what was wished before costs nothing."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold import pipeline
from littlefold.body.measurements import Measurements
from littlefold.check import Circumstances
from littlefold.draft.suits import stature_range
from littlefold.pipeline import Wish, Workroom, draw, finish, fulfil, glimpse, on_the_shelf
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names

if TYPE_CHECKING:
    from collections.abc import Callable


def wish_for(name: str, share: float = 0.5) -> Wish:
    """A wish for a child whose height lies so far between the smallest and the tallest a recipe suits."""
    recipe = on_the_shelf(name)
    assert recipe is not None
    low, high = stature_range(recipe)
    return Wish(recipe, Measurements.of({"stature": low + share * (high - low)}), Circumstances())


@pytest.mark.parametrize("name", shipped_names())
def test_a_glimpse_of_any_sheet_shows_what_the_whole_shows(name: str) -> None:
    wish = wish_for(name)
    outcome, draft = fulfil(wish), draw(wish)
    for sheet in draft.sheets:
        seen = glimpse(draft, sheet.name)
        assert seen == outcome.glimpse(sheet.name)
        assert {piece.name for piece in seen.pieces} == {
            piece.name for piece in draft.pieces if piece.sheet == sheet.name
        }
    assert glimpse(draft, None) == outcome.glimpse(None)
    assert outcome.glimpse(None).pieces == outcome.pattern.pieces


def test_where_there_is_no_such_sheet_the_first_is_seen() -> None:
    wish = wish_for("bodice")
    draft = draw(wish)
    assert glimpse(draft, "attic").sheet == draft.sheets[0].name
    assert fulfil(wish).glimpse("").sheet == draft.sheets[0].name


def test_of_nothing_drawn_nothing_is_seen() -> None:
    bare = Wish(parse("recipe bare\n", "bare"), Measurements.of({"stature": 1000.0}), Circumstances())
    outcome = fulfil(bare)
    assert outcome.glimpse("front") == glimpse(outcome.draft, "front")
    assert outcome.glimpse("front").pieces == ()
    assert outcome.glimpse("front").sheet is None
    assert "nothing-drawn" in {problem.code for problem in outcome.problems}


def test_both_halves_of_the_flow_are_the_whole() -> None:
    wish = wish_for("trousers")
    assert finish(wish, draw(wish)).problems == fulfil(wish).problems


@pytest.fixture
def worked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The stages in the order in which they are worked through."""
    done: list[str] = []

    def told_of(stage: str) -> Callable[..., object]:
        real = getattr(pipeline, stage)

        def work(*words: object, **more: object) -> object:
            done.append(stage)
            return real(*words, **more)

        return work

    for stage in ("evaluate", "trace", "trace_sheet", "check", "examine"):
        monkeypatch.setattr(pipeline, stage, told_of(stage))
    return done


def test_a_glimpse_is_neither_checked_nor_wholly_traced(worked: list[str]) -> None:
    room, wish = Workroom(), wish_for("bodice")
    room.glimpse(wish, "front")
    assert worked == ["evaluate", "trace_sheet"]


def test_what_is_fulfilled_after_a_glimpse_is_not_drafted_again(worked: list[str]) -> None:
    room, wish = Workroom(), wish_for("bodice")
    room.glimpse(wish, "front")
    worked.clear()
    outcome = room.fulfil(wish)
    assert "evaluate" not in worked
    assert {"trace", "check", "examine"} == set(worked)
    worked.clear()
    assert room.fulfil(wish) is outcome
    assert worked == []


def test_only_the_last_wishes_are_remembered(worked: list[str]) -> None:
    room = Workroom(keep=2)
    first, second, third = (wish_for("bib", share) for share in (0.2, 0.5, 0.8))
    for wish in (first, second, first, third):
        room.glimpse(wish, None)
    worked.clear()
    room.glimpse(first, None)
    assert "evaluate" not in worked
    room.glimpse(second, None)
    assert "evaluate" in worked
