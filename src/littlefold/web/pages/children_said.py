"""What the pages say of a card: ages, days, lengths in the maker's units."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from littlefold.body.by_age import said_age
from littlefold.body.register import REGISTER
from littlefold.body.tape import ONE_MM, say_length
from littlefold.problem import Severity
from littlefold.sheet.wording import spoken_date

if TYPE_CHECKING:
    from datetime import date

    from littlefold.problem import Problem
    from littlefold.store import Card, Measured, PastDraft
    from littlefold.web.preferences import Units

Json = dict[str, Any]

BESIDE = 4
"""Sets of readings that are shown beside each other."""
MONTH = 30.4375
"""Days in a month, on average."""
SMALL_UNTIL = 36.0
OLD_OF_SMALL, OLD = 3.0, 6.0
"""Readings are old after so many months: of children under three, and of older ones."""


def title_of(name: str) -> str:
    """A measurement in plain words; one of a recipe's own by its name."""
    return REGISTER[name].title if name in REGISTER else name.replace("_", " ")


def doubt(problem: Problem) -> str:
    """The heading over what was found among readings."""
    return "Once more, to be sure" if problem.severity is Severity.NOTE else "Measure again"


def age_on(card: Card, day: date) -> str:
    """The age in words; nothing where it is not known."""
    months = card.age(day)
    return "" if months is None else said_age(months)


def on_list(card: Card, today: date, units: Units) -> Json:
    """A card as it stands among the others."""
    newest = card.latest()
    height = dict(newest.readings).get("stature") if newest else None
    return {
        "name": card.name,
        "age": age_on(card, today),
        "height": say_length(round(height), units, ONE_MM) if height else "",
        "measured": spoken_date(newest.day) if newest else "",
        "old": readings_old(card, today),
        "drafts": len(card.drafts),
    }


def readings_old(card: Card, today: date) -> str:
    """A sentence where the newest readings are old; else nothing."""
    newest = card.latest()
    if newest is None:
        return ""
    months, age = (today - newest.day).days / MONTH, card.age(today)
    limit = OLD_OF_SMALL if age is not None and age < SMALL_UNTIL else OLD
    if months <= limit:
        return ""
    return f"Measured {months:.0f} months ago, and grown since. Measure again before you cut cloth."


def sets_beside(card: Card, units: Units) -> Json:
    """The newest sets as a table, the newest first: a heading for each, and a row for each measurement."""
    newest = card.newest_first()[:BESIDE]
    lengths = [dict(one.readings) for one in newest]
    known = [name for name in REGISTER if any(name in one for one in lengths)]
    own = dict.fromkeys(name for one in lengths for name in one if name not in REGISTER)
    return {
        "headings": [
            {"day": spoken_date(one.day), "age": age_on(card, one.day), "by": one.by, "over": one.over}
            for one in newest
        ],
        "own": _own_words(newest),
        "rows": [
            {
                "title": title_of(name),
                "cells": [say_length(one[name], units) if name in one else "" for one in lengths],
            }
            for name in (*known, *own)
        ],
    }


def _own_words(sets: tuple[Measured, ...]) -> list[tuple[str, str, str]]:
    """Title, recipe and words of what recipes asked for as their own, each once."""
    meanings = {(own.name, own.recipe): own for one in reversed(sets) for own in one.own}
    return [(title_of(own.name), own.recipe, own.how) for own in meanings.values()]


def draft_line(draft: PastDraft, number: int, title: str, units: Units) -> Json:
    """A past draft as it stands on the card."""
    return {
        "number": number,
        "made": spoken_date(draft.made),
        "title": title,
        "follows": draft.follows,
        "hem": say_length(draft.let_down, units) if draft.let_down else "",
        "fittings": [(spoken_date(one.day), one.showed) for one in draft.fittings],
    }
