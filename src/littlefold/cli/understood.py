"""What was asked on the command line, made into a wish, or into problems in words."""

from __future__ import annotations

from dataclasses import dataclass, replace
from importlib.resources import files
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from littlefold.body.by_age import body_of_age
from littlefold.body.chart import chart_row, read_size
from littlefold.body.child import child_from_json, read_reading
from littlefold.body.measurements import Measurements
from littlefold.body.register import REGISTER
from littlefold.body.tape import read_length, read_mark
from littlefold.booklet.recipes import measures_of, with_beginnings
from littlefold.booklet.spoken import word
from littlefold.cli.ages import read_age
from littlefold.cli.files import read_recipe, read_text
from littlefold.cli.surroundings import surroundings
from littlefold.cli.typed import not_one_of, pairs, unpaired
from littlefold.draft.choices import read_choices
from littlefold.draft.sentence import Speech, languages
from littlefold.pipeline import Wish, on_the_shelf, settings
from littlefold.problem import Problem, Severity
from littlefold.sheet.paper import MARGIN, OVERLAP, read_paper

if TYPE_CHECKING:
    from collections.abc import Collection, Mapping
    from datetime import date

    from littlefold.body.tape import TapeMark
    from littlefold.cli.asked import Asked
    from littlefold.recipe.recipe import Recipe
    from littlefold.sheet.paper import Paper

_Found = tuple["Measurements", tuple["Problem", ...], tuple["Problem", ...]]

REDUCED: Mapping[str, float] = MappingProxyType({"page": 1.0, "1:4": 4.0, "1:5": 5.0})
"""Scales of the reduced drawings: as large as a page holds, or one of the two usual in class."""

UNITS: tuple[Literal["cm"], Literal["in"]] = ("cm", "in")


@dataclass(frozen=True, slots=True)
class Understood:
    """What was asked, understood."""

    wish: Wish
    speech: Speech
    paper: Paper
    problems: tuple[Problem, ...]
    least: float = 1.0


def understand(asked: Asked, today: date) -> Understood | tuple[Problem, ...]:
    """The wish that was meant, or everything that could not be understood."""
    recipe = read_recipe(asked.recipe)
    if isinstance(recipe, Problem):
        return (recipe,)
    whole = with_beginnings(recipe, on_the_shelf)
    measurements, notes, refused = _body(asked, whole, today)
    choices, choice_problems = read_choices(whole, pairs(asked.choose))
    tape, paper = read_mark(asked.tape), _paper(asked)
    circumstances, not_understood = surroundings(asked)
    problems = (
        *refused,
        *unpaired(asked.choose, "--choose"),
        *choice_problems,
        *(one for one in (tape, paper) if isinstance(one, Problem)),
        *not_one_of("--units", asked.units, UNITS),
        *not_one_of("--language", asked.language, languages()),
        *not_one_of("--reduced", asked.reduced, tuple(REDUCED)),
        *not_understood,
    )
    if problems or isinstance(tape, Problem) or isinstance(paper, Problem):
        return problems
    mark: TapeMark | None = tape if tape.mm else None
    wish = Wish(recipe, measurements, circumstances, settings(choices), mark, asked.language)
    units: Literal["cm", "in"] = "in" if asked.units == "in" else "cm"
    return Understood(wish, Speech(units, mark, asked.language), paper, notes, REDUCED[asked.reduced])


def _paper(asked: Asked) -> Paper | Problem:
    """The paper, with the margin and overlap that were asked for."""
    margin = MARGIN if asked.margin is None else read_length(asked.margin)
    overlap = OVERLAP if asked.overlap is None else read_length(asked.overlap)
    if isinstance(margin, Problem):
        return Problem("option-not-understood", f"--margin {asked.margin}: {margin.message}")
    if isinstance(overlap, Problem):
        return Problem("option-not-understood", f"--overlap {asked.overlap}: {overlap.message}")
    return read_paper(asked.paper, margin, overlap)


def _body(
    asked: Asked, recipes: tuple[Recipe, ...], today: date
) -> tuple[Measurements, tuple[Problem, ...], tuple[Problem, ...]]:
    """The measurements, with notes on them and with what could not be understood."""
    measurements = Measurements((), None, asked.sex)
    own = {name for recipe in recipes for name in measures_of(recipe)} - set(REGISTER)
    notes: tuple[Problem, ...] = ()
    problems = list(unpaired(asked.measure, "--measure"))
    if asked.child is not None:
        found = _child(asked.child, today, recipes[-1], own)
        if isinstance(found, Problem):
            problems.append(found)
        else:
            measurements, notes, faults = found
            problems.extend(faults)
    age = None if asked.age is None else read_age(asked.age)
    if isinstance(age, Problem):
        problems.append(age)
    elif age is not None:
        measurements = replace(measurements, age_months=age)
    if asked.size is not None:
        size = read_size(asked.size)
        if isinstance(size, Problem):
            problems.append(size)
        else:
            row = chart_row(size)
            called = row.nickname.replace("size", word("size", asked.language))
            measurements = _over(replace(row, nickname=called), measurements)
    for name, text in pairs(asked.measure).items():
        reading = read_reading(name, text, own)
        if isinstance(reading, Problem):
            problems.append(reading)
        else:
            measurements = measurements.with_reading(name, reading)
    if measurements.age_months is not None and not measurements.readings:
        measurements = _by_age_alone(measurements, measurements.age_months)
    return measurements, (*notes, *_sex_without_use(asked)), tuple(problems)


def _sex_without_use(asked: Asked) -> tuple[Problem, ...]:
    """That --girl or --boy changes nothing, where it does not."""
    if asked.sex is None or (asked.child is None and (asked.size is None or asked.age is not None)):
        return ()
    whose = "the child's own card or file says which growth curves are used"
    alike = "the size chart is one for girls and boys. Growth curves are asked with --age"
    said = f"--{asked.sex} changes nothing here: {alike if asked.child is None else whose}."
    return (Problem("sex-not-asked", said, Severity.NOTE),)


def _by_age_alone(child: Measurements, age: float) -> Measurements:
    """The middle body of an age, where nothing of the child was measured; what was decides on all that was not."""
    body = body_of_age(age, child.sex)
    return replace(body, nickname=child.nickname or body.nickname)


def _over(chart: Measurements, given: Measurements) -> Measurements:
    """A chart row with the child's own readings in place of the chart's."""
    for name, reading in given.readings:
        chart = chart.with_reading(name, reading)
    return replace(
        chart, age_months=given.age_months, sex=given.sex, nickname=given.nickname or chart.nickname
    )


def _child(name: str, today: date, recipe: Recipe, own: Collection[str]) -> _Found | Problem:
    """The child of a file or of a card: measurements, notes on them, and what could not be understood."""
    if name == "sample":
        text: str | Problem = files("littlefold.cli").joinpath("sample.json").read_text(encoding="utf-8")
    elif name.endswith(".json"):
        text = read_text(Path(name))
    else:
        from littlefold.cli.box import body_on_card

        card = body_on_card(name, today, recipe)
        return card if isinstance(card, Problem) else (*card, ())
    if isinstance(text, Problem):
        return text
    measurements, faults = child_from_json(text, today, own)
    return measurements or Measurements(), (), faults
