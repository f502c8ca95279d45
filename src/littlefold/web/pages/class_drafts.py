"""The same draft for every pupil of a class, each with her own numbers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from littlefold.booklet.needs import number_rows
from littlefold.booklet.recipes import recipe_record
from littlefold.draft.sentence import full_sentence
from littlefold.pipeline import on_the_shelf
from littlefold.store import Card
from littlefold.web.asked import understand
from littlefold.web.pages.children_begin import fields_for
from littlefold.web.readings import tape_readings

if TYPE_CHECKING:
    from collections.abc import Iterable

    from littlefold.draft.model import Step
    from littlefold.pipeline import Outcome
    from littlefold.recipe.recipe import Recipe
    from littlefold.store import CardBox, SewingClass
    from littlefold.web.asked import Asked
    from littlefold.web.room import Room

Json = dict[str, Any]


@dataclass(frozen=True, slots=True)
class PupilDraft:
    """The draft of one pupil."""

    name: str
    asked: Asked
    outcome: Outcome


def choice_names(recipe: Recipe) -> tuple[str, ...]:
    """The choices of a recipe, those of the recipes it begins with too."""
    return tuple(choice["name"] for choice in recipe_record(recipe, on_the_shelf)["choices"])


def pupil_drafts(room: Room, box: CardBox, one: SewingClass, recipe: Recipe) -> tuple[PupilDraft, ...]:
    """A draft for each pupil, in the order of the class."""
    cards = (box.card(name) for name in one.pupils)
    return tuple(_draft(room, card, one, recipe) for card in cards if isinstance(card, Card))


def _draft(room: Room, card: Card, one: SewingClass, recipe: Recipe) -> PupilDraft:
    own = fields_for(card, recipe, room.today(), room.preferences.units)
    asked = understand(recipe, own | dict(one.choices), room.preferences)
    return PupilDraft(card.name, asked, room.fulfil(asked.wish))


def numbers_beside(drafts: tuple[PupilDraft, ...]) -> list[Json]:
    """The key of the class: every measurement and amount, and beside it each pupil's own number."""
    rows: dict[str, Json] = {}
    for place, one in enumerate(drafts):
        for name, title, value, is_guess in _numbers(one):
            row = rows.setdefault(name, {"title": title, "cells": [("", False)] * len(drafts)})
            row["cells"][place] = (value, is_guess)
    return list(rows.values())


def _numbers(one: PupilDraft) -> Iterable[tuple[str, str, str, bool]]:
    readings = tape_readings(one.asked, one.outcome.draft)
    taken = {reading.name for reading in readings}
    for reading in readings:
        yield reading.name, reading.title, reading.said, reading.origin != "measured"
    for row in number_rows(one.outcome.draft, one.asked.speech):
        if row["name"] not in taken:
            yield row["name"], row["title"] or row["name"], row["value"], False


def steps_together(drafts: tuple[PupilDraft, ...]) -> list[Json]:
    """Every step once, with what each pupil's pencil does: one sentence where all are told the same."""
    steps: dict[tuple[str, int, int], dict[str, list[str]]] = {}
    shown: dict[tuple[str, int, int], tuple[PupilDraft, Step]] = {}
    for one in drafts:
        for key, step in _keyed(one):
            sentence = full_sentence(step, one.outcome.draft, one.asked.speech)
            steps.setdefault(key, {}).setdefault(sentence, []).append(one.name)
            shown.setdefault(key, (one, step))
    return [{"said": list(steps[key].items()), "of": one, "step": step} for key, (one, step) in shown.items()]


def _keyed(one: PupilDraft) -> Iterable[tuple[tuple[str, int, int], Step]]:
    """The steps with what tells the same step in two drafts: the sheet, the line, and how often it was there before."""
    seen: dict[tuple[str, int], int] = {}
    for step in one.outcome.draft.steps:
        place = (step.sheet, step.line)
        seen[place] = seen.get(place, 0) + 1
        yield (*place, seen[place]), step
