"""The readings on the tape and the slips of the choices, as a page shows them."""

from __future__ import annotations

from dataclasses import dataclass
from math import degrees, radians
from typing import TYPE_CHECKING, Any

from littlefold.body.measurements import Origin
from littlefold.body.register import REGISTER
from littlefold.body.tape import ONE_MM, round_to_mark
from littlefold.booklet.recipes import recipe_record
from littlefold.pipeline import on_the_shelf

if TYPE_CHECKING:
    from littlefold.draft.model import Draft
    from littlefold.web.asked import Asked

SPREAD = 0.25
"""The tape beside a reading reaches this part of it below and above."""
STEPS = {"mm": 1.0, "degrees": 0.5, "ratio": 0.01, "months": 1.0, "years": 0.1}
ORIGINS = {Origin.GIVEN: "measured", Origin.CHART: "size {size}", Origin.ESTIMATED: "estimated"}


@dataclass(frozen=True, slots=True)
class TapeReading:
    """A measurement as it stands on the tape; `typed` is what the maker wrote, `mm` what is drafted."""

    name: str
    title: str
    how: str
    mm: float
    said: str
    typed: str
    origin: str
    low: float
    high: float
    refused: str


@dataclass(frozen=True, slots=True)
class Slip:
    """A choice on its slip; `options` are empty for a choice between bounds, `low` None where the bounds vary."""

    name: str
    title: str
    value: float | str
    said: str
    default: float | str | None
    typed: str
    options: tuple[str, ...]
    low: float | None
    high: float | None
    step: float
    unit: str
    refused: str


def tape_readings(asked: Asked, draft: Draft) -> tuple[TapeReading, ...]:
    """What the recipe measures, in its order."""
    refused = dict(asked.refused)
    return tuple(
        _reading(name, asked, draft, refused[name].message if name in refused else "")
        for name in asked.measures
    )


def _reading(name: str, asked: Asked, draft: Draft, refused: str) -> TapeReading:
    found = draft.measurements.get(name)
    amount = next((one for one in draft.amounts if one.name == name), None)
    worked_out = amount.value if amount is not None and isinstance(amount.value, float) else 0.0
    mm = found.mm if found else worked_out
    is_taken = found is not None and found.origin is Origin.GIVEN
    origin = ORIGINS[found.origin].format(size=asked.size) if found else "worked out"
    known = REGISTER.get(name)
    title = known.title if known else (amount.title if amount and amount.title else name.replace("_", " "))
    return TapeReading(
        name,
        title,
        known.how_standing if known else "",
        round(mm, 1),
        asked.speech.length(mm if is_taken else round_to_mark(mm, ONE_MM)),
        dict(asked.typed).get(name, ""),
        origin,
        round(mm * (1 - SPREAD)),
        round(mm * (1 + SPREAD)),
        refused,
    )


def slips(asked: Asked, draft: Draft) -> tuple[Slip, ...]:
    """The choices of the recipe, in its order."""
    refused = dict(asked.refused)
    found = {choice["name"]: choice for choice in recipe_record(asked.recipe, on_the_shelf)["choices"]}
    return tuple(
        _slip(choice, asked, draft, refused[name].message if name in refused else "")
        for name, choice in found.items()
    )


def _slip(choice: dict[str, Any], asked: Asked, draft: Draft, refused: str) -> Slip:
    name, unit = choice["name"], choice["unit"] or ""
    stated = {amount.name: amount.value for amount in draft.amounts}
    value = draft.choices.get(name, stated.get(name, choice["default"]))
    shown = _spoken_unit(value, unit)
    return Slip(
        name,
        choice["title"] or name.replace("_", " "),
        shown,
        said_choice(shown, unit, asked),
        choice["default"],
        dict(asked.typed).get(name, ""),
        tuple(choice["values"]),
        choice["min"],
        choice["max"],
        STEPS.get(unit, 1.0),
        unit,
        refused,
    )


def _spoken_unit(value: float | str | None, unit: str) -> float | str:
    if value is None:
        return ""
    if isinstance(value, str):
        return value
    return round(degrees(value) if unit == "degrees" else value, 4)


def said_choice(value: float | str, unit: str, asked: Asked) -> str:
    """The value of a choice in words."""
    if isinstance(value, str):
        return value.replace("_", " ")
    if unit == "mm":
        return asked.speech.length(value)
    return asked.speech.spelled(f"{value:g}°" if unit == "degrees" else f"{value:g}")


def another(slip: Slip) -> float | str | None:
    """Another value for a choice, in the measure of the draft, by which it can be seen where the choice acts."""
    if slip.options:
        return next((option for option in slip.options if option != slip.value), None)
    if not isinstance(slip.value, float | int) or slip.low is None or slip.high is None:
        return None
    other = slip.high if slip.high - slip.value >= slip.value - slip.low else slip.low
    return radians(other) if slip.unit == "degrees" else other
