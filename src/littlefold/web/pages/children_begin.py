"""A draft begun with the readings on a card: the link that says so."""

from __future__ import annotations

from math import floor
from typing import TYPE_CHECKING, Any
from urllib.parse import urlencode

from littlefold.body.by_age import body_of_age
from littlefold.body.chart import size_for
from littlefold.body.tape import say_length
from littlefold.store import meant_for
from littlefold.web.garment import garment
from littlefold.web.pages.children_needs import measured_for
from littlefold.web.pages.children_readings import field_of
from littlefold.web.pages.children_said import title_of

if TYPE_CHECKING:
    from datetime import date

    from littlefold.recipe.recipe import Recipe
    from littlefold.store import Card
    from littlefold.web.preferences import Units

Json = dict[str, Any]

SIXTEENTH = 25.4 / 16
ON_MARK = 0.01
"""A length this near to a sixteenth of an inch was read from a tape in inches [mm]."""


def offer(card: Card, recipe: Recipe, today: date, units: Units) -> Json:
    """A garment with the link that begins it with the child's own readings, and what is still to be measured for it."""
    known = known_of(card, recipe)
    told = garment(recipe)
    tall = known.get("stature", 0.0) / 10
    missing = [name for name in measured_for(recipe) if name not in known]
    return told | {
        "heights": told["suits"],
        "suits": not tall or told["low_cm"] <= tall <= told["high_cm"],
        "query": query_for(card, recipe, today, units),
        "missing": [(field_of(name), title_of(name).lower()) for name in missing],
    }


def known_of(card: Card, recipe: Recipe) -> dict[str, float]:
    """The newest readings on a card that are meant for a recipe [mm]."""
    newest = card.latest()
    return dict(meant_for(recipe, newest).readings) if newest else {}


def query_for(card: Card, recipe: Recipe, today: date, units: Units) -> str:
    """The part of a link that begins a draft with the readings of a card; what is missing comes from her size."""
    return urlencode(fields_for(card, recipe, today, units))


def fields_for(card: Card, recipe: Recipe, today: date, units: Units) -> dict[str, str]:
    """The same, field by field."""
    known = known_of(card, recipe)
    fields = {"for-name": card.name, "for-size": _size(card, known, today)}
    fields["for-age"] = _months(card, today)
    looked_at = dict.fromkeys(
        (*measured_for(recipe), "stature")
    )  # the checks ask how tall a child is where the draft does not
    fields |= {name: exact_words(known[name], units) for name in looked_at if name in known}
    return {name: text for name, text in fields.items() if text}


def _months(card: Card, today: date) -> str:
    age = card.age(today)
    return "" if age is None else str(floor(age))


def exact_words(mm: float, units: Units) -> str:
    """A length as it was read from the tape, so that the same number comes back."""
    steps = mm / SIXTEENTH
    on_mark = units == "in" and abs(steps - round(steps)) * SIXTEENTH <= ON_MARK
    return say_length(mm, "in" if on_mark else "cm")


def _size(card: Card, known: dict[str, float], today: date) -> str:
    if "stature" in known:
        return str(size_for(known["stature"]))
    age = card.age(today)
    return "" if age is None else str(size_for(body_of_age(age, card.sex).mm("stature")))
