"""Cards as one file: JSON, every length in millimetres, every date as in ISO 8601; docs/cards.md describes it.

What is written is read back exactly.  The file is read at the door: what is not understood is refused by its place.
"""

from __future__ import annotations

import json
from dataclasses import asdict
from datetime import date  # noqa: TC003 - pydantic reads the annotations
from typing import TYPE_CHECKING, Any, Final, Literal

from pydantic import BaseModel, ConfigDict, Field, FiniteFloat, ValidationError

from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.check import Circumstances
from littlefold.problem import Number, Place, Problem, Severity
from littlefold.store.card import Card, Fitting, Measured, Note, OwnMeasurement, PastDraft, RecipeText

if TYPE_CHECKING:
    from collections.abc import Mapping

FORMAT: Final = "littlefold-cards/3"  # older ones had less, see docs/cards.md; they are read too
EXPORTS: Final = "littlefold-cards/"  # how every version of it begins
_MOST_TOLD: Final = 10  # faults of one file that are told

_Sex = Literal["girl", "boy"]


class _Strict(BaseModel):
    model_config = ConfigDict(extra="forbid")


class _Own(_Strict):
    name: str
    recipe: str
    how: str


class _Measured(_Strict):
    day: date
    by: str = ""
    over: str = ""
    readings: dict[str, FiniteFloat]
    own: list[_Own] = Field(default_factory=list)


class _Note(_Strict):
    day: date
    text: str


class _Recipe(_Strict):
    name: str
    text: str


class _Reading(_Strict):
    mm: FiniteFloat
    origin: Origin = Origin.GIVEN
    spread: FiniteFloat = 0.0


class _Place(_Strict):
    file: str | None = None
    line: int | None = None
    column: int | None = None
    piece: str | None = None
    edge: str | None = None
    point: str | None = None


class _Number(_Strict):
    name: str
    value: FiniteFloat
    unit: str


class _Finding(_Strict):
    code: str
    severity: Severity
    message: str
    place: _Place = Field(default_factory=_Place)
    numbers: list[_Number] = Field(default_factory=list)
    rule: str = ""
    cure: str = ""


class _Around(_Strict):
    region: str
    us_size: str = ""
    paper: tuple[FiniteFloat, FiniteFloat] | None = None
    cloth_width: FiniteFloat | None = None


class _Fitting(_Strict):
    day: date
    showed: str


class _Draft(_Strict):
    made: date
    recipes: list[_Recipe] = Field(min_length=1)
    measurements: dict[str, _Reading]
    age_months: FiniteFloat | None = None
    sex: _Sex | None = None
    nickname: str = ""
    choices: dict[str, FiniteFloat | str] = Field(default_factory=dict)
    tape: str = "exact"
    language: str = "en"
    pattern_hash: str = ""
    let_down: FiniteFloat = 0.0
    follows: int | None = None
    fittings: list[_Fitting] = Field(default_factory=list)
    units: Literal["cm", "in"] = "cm"
    around: _Around | None = None
    findings: list[_Finding] = Field(default_factory=list)


class _Card(_Strict):
    name: str
    born: date | None = None
    sex: _Sex | None = None
    measured: list[_Measured] = Field(default_factory=list)
    notes: list[_Note] = Field(default_factory=list)
    drafts: list[_Draft] = Field(default_factory=list)


class _File(_Strict):
    format: Literal["littlefold-cards/1", "littlefold-cards/2", "littlefold-cards/3"]
    cards: list[_Card]


def cards_to_json(cards: tuple[Card, ...]) -> str:
    """All of these cards as the text of one file."""
    document = {"format": FORMAT, "cards": [_card_record(card) for card in cards]}
    return json.dumps(document, ensure_ascii=False, allow_nan=False, indent=1) + "\n"


def cards_from_json(text: str) -> tuple[Card, ...] | tuple[Problem, ...]:
    """The cards in the text of a file; or problems, and then no card."""
    try:
        file = _File.model_validate(json.loads(text))
    except (json.JSONDecodeError, RecursionError):
        return (Problem("cards-unreadable", "This is no file of cards: it is not JSON."),)
    except ValidationError as fault:
        return tuple(_misshapen(error) for error in fault.errors()[:_MOST_TOLD])
    return tuple(_card(card) for card in file.cards)


def _card_record(card: Card) -> dict[str, Any]:
    return {
        "name": card.name,
        "born": None if card.born is None else card.born.isoformat(),
        "sex": card.sex,
        "measured": [_measured_record(one) for one in card.measured],
        "notes": [{"day": note.day.isoformat(), "text": note.text} for note in card.notes],
        "drafts": [_draft_record(draft) for draft in card.drafts],
    }


def _measured_record(one: Measured) -> dict[str, Any]:
    plain = {"day": one.day.isoformat(), "by": one.by, "over": one.over, "readings": dict(one.readings)}
    return plain | {"own": [asdict(own) for own in one.own]}


def _draft_record(draft: PastDraft) -> dict[str, Any]:
    body = draft.body
    return {
        "made": draft.made.isoformat(),
        "recipes": [{"name": recipe.name, "text": recipe.text} for recipe in draft.recipes],
        "measurements": {
            name: {"mm": reading.mm, "origin": reading.origin.value, "spread": reading.spread_mm}
            for name, reading in body.readings
        },
        "age_months": body.age_months,
        "sex": body.sex,
        "nickname": body.nickname,
        "choices": dict(draft.choices),
        "tape": draft.tape,
        "language": draft.language,
        "pattern_hash": draft.pattern_hash,
        "let_down": draft.let_down,
        "follows": draft.follows,
        "fittings": [
            {"day": fitting.day.isoformat(), "showed": fitting.showed} for fitting in draft.fittings
        ],
        "units": draft.units,
        "around": None if draft.around is None else _around_record(draft.around),
        "findings": [_finding_record(problem) for problem in draft.findings],
    }


def _around_record(found: Circumstances) -> dict[str, Any]:
    paper = None if found.paper is None else list(found.paper)
    plain = {"region": found.region, "us_size": found.us_size, "cloth_width": found.cloth_width}
    return plain | {"paper": paper}


def _finding_record(problem: Problem) -> dict[str, Any]:
    place = {name: value for name, value in asdict(problem.place).items() if value is not None}
    return {
        "code": problem.code,
        "severity": problem.severity.value,
        "message": problem.message,
        "place": place,
        "numbers": [asdict(number) for number in problem.numbers],
        "rule": problem.rule,
        "cure": problem.cure,
    }


def _card(card: _Card) -> Card:
    return Card(
        card.name,
        card.born,
        card.sex,
        tuple(map(_measured, card.measured)),
        tuple(Note(note.day, note.text) for note in card.notes),
        tuple(_draft(draft) for draft in card.drafts),
    )


def _measured(one: _Measured) -> Measured:
    own = tuple(OwnMeasurement(each.name, each.recipe, each.how) for each in one.own)
    return Measured(one.day, tuple(one.readings.items()), one.by, one.over, own)


def _draft(draft: _Draft) -> PastDraft:
    readings = tuple(
        (name, Reading(reading.mm, reading.origin, reading.spread))
        for name, reading in draft.measurements.items()
    )
    return PastDraft(
        draft.made,
        tuple(RecipeText(recipe.name, recipe.text) for recipe in draft.recipes),
        Measurements(readings, draft.age_months, draft.sex, draft.nickname),
        tuple(draft.choices.items()),
        draft.tape,
        draft.language,
        draft.pattern_hash,
        draft.let_down,
        draft.follows,
        tuple(Fitting(fitting.day, fitting.showed) for fitting in draft.fittings),
        draft.units,
        None if draft.around is None else Circumstances(**draft.around.model_dump()),
        tuple(map(_finding, draft.findings)),
    )


def _finding(found: _Finding) -> Problem:
    return Problem(
        found.code,
        found.message,
        found.severity,
        Place(**found.place.model_dump()),
        tuple(Number(**number.model_dump()) for number in found.numbers),
        found.rule,
        found.cure,
    )


def _misshapen(error: Mapping[str, Any]) -> Problem:
    where = ".".join(str(step) for step in error["loc"]) or "the file"
    message = str(error["msg"])
    return Problem(
        "cards-misshapen", f"{where}: {message[:1].lower()}{message[1:]}.", place=Place(point=where)
    )
