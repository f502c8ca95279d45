"""The sample: the sewing room of a small playgroup, with invented children, their drafts and a class.

Days are counted back from the day on which it is laid out, so that nobody in it is ever out of date.
"""

from __future__ import annotations

from datetime import date, timedelta
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Literal

from pydantic import BaseModel, ConfigDict, Field

from littlefold.body.tape import read_length
from littlefold.problem import Problem
from littlefold.store import Card, Fitting, Measured, Note, SewingClass
from littlefold.store.reprint import past_draft
from littlefold.store.sample import lay_out
from littlefold.web.asked import understand
from littlefold.web.pages.children_begin import fields_for
from littlefold.web.pages.children_said import MONTH
from littlefold.web.recent import Recent, keep_recent

if TYPE_CHECKING:
    from littlefold.store import CardBox, PastDraft
    from littlefold.web.room import Room


class _Strict(BaseModel):
    model_config = ConfigDict(extra="forbid")


class _Measured(_Strict):
    days_ago: int
    by: str
    over: str
    readings: dict[str, str]


class _Draft(_Strict):
    recipe: str
    choices: dict[str, str]
    days_ago: int
    follows: int | None = None
    fittings: list[tuple[int, str]] = Field(default_factory=list)


class _Child(_Strict):
    name: str
    months_old: float
    sex: Literal["girl", "boy"]
    measured: list[_Measured]
    notes: list[tuple[int, str]]
    drafts: list[_Draft]


class _Class(_Strict):
    name: str
    recipe: str
    choices: dict[str, str]
    pupils: list[str]


class _Sample(_Strict):
    about: str
    children: list[_Child]
    classes: list[_Class]


@lru_cache(maxsize=1)
def _sample() -> _Sample:
    return _Sample.model_validate_json(files("littlefold.web").joinpath("sample.json").read_bytes())


def lay_out_sample(room: Room, box: CardBox) -> None:
    """Puts the sample into a new box, and its newest drafts among those that lay on the table last."""
    cards = sample_cards(room)
    if not lay_out(box, cards, sample_classes()):
        return
    told = _sample()
    for child, card in zip(told.children, cards, strict=True):
        for draft in child.drafts:
            fields = _fields(room, card, draft)
            keep_recent(room.folder, Recent(draft.recipe, tuple(fields.items()), room.today()))


def sample_cards(room: Room) -> tuple[Card, ...]:
    """The cards of the sample, as of today."""
    return tuple(_card(room, child) for child in _sample().children)


def sample_classes() -> tuple[SewingClass, ...]:
    """The classes of the sample."""
    return tuple(
        SewingClass(one.name, one.recipe, tuple(one.choices.items()), tuple(one.pupils))
        for one in _sample().classes
    )


def _card(room: Room, child: _Child) -> Card:
    today = room.today()
    card = Card(
        child.name,
        today - timedelta(days=round(child.months_old * MONTH)),
        child.sex,
        tuple(_measured(one, today) for one in child.measured),
        tuple(Note(_ago(today, days), text) for days, text in child.notes),
    )
    for draft in child.drafts:
        card = card.with_draft(_draft(room, card, draft))
    return card


def _measured(one: _Measured, today: date) -> Measured:
    return Measured(_ago(today, one.days_ago), tuple(map(_reading, one.readings.items())), one.by, one.over)


def _reading(pair: tuple[str, str]) -> tuple[str, float]:
    mm = read_length(pair[1])
    assert not isinstance(mm, Problem), pair  # noqa: S101 - the sample is our own
    return pair[0], mm


def _draft(room: Room, card: Card, draft: _Draft) -> PastDraft:
    """A draft on a card, made anew, so that it prints exactly with the recipes as they are."""
    recipe, today = room.recipe(draft.recipe), room.today()
    assert recipe is not None, draft.recipe  # noqa: S101 - the sample is our own
    wish = understand(recipe, _fields(room, card, draft), room.preferences).wish
    kept = past_draft(
        wish, room.fulfil(wish), _ago(today, draft.days_ago), draft.follows, room.preferences.units
    )
    shown = Card(card.name, drafts=(kept,))
    for days, showed in draft.fittings:
        shown = shown.with_fitting(1, Fitting(_ago(today, days), showed))
    return shown.drafts[0]


def _fields(room: Room, card: Card, draft: _Draft) -> dict[str, str]:
    recipe = room.recipe(draft.recipe)
    assert recipe is not None, draft.recipe  # noqa: S101 - the sample is our own
    return fields_for(card, recipe, room.today(), "cm") | draft.choices


def _ago(today: date, days: int) -> date:
    return today - timedelta(days=days)
