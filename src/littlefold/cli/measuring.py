"""`littlefold child measure`: readings looked at and put on a card, a recipe's own among them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.body.child import read_reading
from littlefold.body.plausible import examine
from littlefold.cli.ages import read_day
from littlefold.cli.child import change_card, refuse, the_card, today
from littlefold.cli.files import read_recipe
from littlefold.cli.words import aside, count_words, print_findings, to_person
from littlefold.problem import Problem, has_errors
from littlefold.store import Card, Measured, OwnMeasurement, measuring_fault, own_of

if TYPE_CHECKING:
    from collections.abc import Mapping

Problems = tuple[Problem, ...]
Own = dict[str, OwnMeasurement]


@dataclass(frozen=True, slots=True)
class Taking:
    """How a set was taken, as it was said; `recipe` is the one whose own measurements are among the readings."""

    day: str | None = None
    by: str = ""
    over: str = ""
    recipe: str | None = None


def measure_child(name: str, texts: tuple[str, ...], taking: Taking, *, anyway: bool) -> int:
    """Puts a set of readings on a card, after they were looked at; what is impossible is kept only if it is meant."""
    card = the_card(name)
    if isinstance(card, Problem):
        return refuse(card)
    new = _understood(card, texts, taking)
    if not isinstance(new, Measured):
        return refuse(*new)
    found = examine(card.body(card.on_the_same_day(new)))
    if found:
        print_findings(found, to_person())
    if has_errors(found) and not anyway:
        aside().print("Nothing was kept. Measure again, or say --anyway.")
        return 1
    kept = f"{count_words(len(new.readings), 'reading')} of {new.day} kept."
    others = len(card.on_the_same_day(new).readings) - len(new.readings)
    if others:
        kept = f"{kept[:-1]}, with {count_words(others, 'other')} of that day."
    return change_card(name, lambda old: old.with_measured(old.on_the_same_day(new)), kept)


def _understood(card: Card, texts: tuple[str, ...], taking: Taking) -> Measured | Problems:
    """The set that was said, or all that is wrong with it."""
    day = today() if taking.day is None else read_day(taking.day)
    own = _own(card, taking.recipe)
    known: Own = {} if isinstance(own, Problem) else own
    pairs = tuple(_reading(text, known) for text in texts)
    faults = tuple(one for one in (own, day, *pairs) if isinstance(one, Problem))
    if faults or isinstance(day, Problem):
        return faults
    readings = tuple(pair for pair in pairs if not isinstance(pair, Problem))
    fault = measuring_fault(card, day, today())
    wrong = (*_twice(readings), *(() if fault is None else (fault,)))
    described = tuple(known[name] for name, _ in readings if name in known)
    return wrong or Measured(day, readings, taking.by, taking.over, described)


def _own(card: Card, recipe: str | None) -> Own | Problem:
    """What recipes' own measurements can be read: those of the recipe that is named, and those of the newest readings."""
    newest = card.latest()
    known = {one.name: one for one in (newest.own if newest else ())}
    if recipe is None:
        return known
    found = read_recipe(recipe)
    return found if isinstance(found, Problem) else known | {one.name: one for one in own_of(found)}


def _reading(text: str, own: Mapping[str, OwnMeasurement]) -> tuple[str, float] | Problem:
    name, equals, length = text.partition("=")
    if not equals:
        return Problem("option-not-understood", f'{text[:40]}: write a measurement, "=" and a length.')
    reading = read_reading(name.strip(), length, own)
    if not isinstance(reading, Problem):
        return name.strip(), reading.mm
    is_unknown = reading.code == "measurement-unknown"
    hint = " A recipe's own measurement needs --for RECIPE." if is_unknown else ""
    return replace(reading, message=reading.message + hint)


def _twice(readings: tuple[tuple[str, float], ...]) -> Problems:
    names = [name for name, _ in readings]
    again = dict.fromkeys(name for name in names if names.count(name) > 1)
    return tuple(
        Problem("option-not-understood", f"{name} is given twice. Say each measurement once.")
        for name in again
    )
