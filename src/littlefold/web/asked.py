"""What a link or a form asks for, validated at the door and made into a wish.

    /draw/casing-top.svg?chest=560&ease=120&for-size=104&in-units=cm

The names of measurements and choices are the recipe's; words of our own have a hyphen, which no name in a recipe
can have.  A bare number is millimetres or degrees; `bare-numbers=cm`, which forms send, makes it centimetres.
What cannot be understood is reported beside its field, and the rest is drafted.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final, Literal, cast
from urllib.parse import urlencode

from littlefold.body.chart import SIZES, chart_row, size_for
from littlefold.body.measurements import Measurements, Reading
from littlefold.body.register import REGISTER
from littlefold.body.tape import MARKS, MM_PER, read_length
from littlefold.booklet.recipes import measures_of, with_beginnings
from littlefold.check import Circumstances
from littlefold.draft.choices import choices_of, dimension_of, read_choices
from littlefold.draft.quantity import Dimension
from littlefold.draft.sentence import Speech, languages
from littlefold.draft.suits import stature_range
from littlefold.draft.usual import own_allowances
from littlefold.pipeline import Wish, on_the_shelf, settings
from littlefold.problem import Problem
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.body.tape import Unit
    from littlefold.recipe.recipe import Recipe
    from littlefold.web.preferences import Preferences

MOST_FIELDS: Final = 120
FORM_FIELDS: Final = frozenset({"for-name", "for-size", "on-sheet", "bare-numbers"})
"""Words of our own that the form of the table has fields for."""
LONGEST_VALUE: Final = 200
OLDEST: Final = 240
"""Months; a link that says more does not mean a child."""
USUAL_STATURE: Final = 1040.0
"""The child that a recipe is first shown for, where the recipe suits her [mm]."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked for.

    Attributes:
        wish: What is to be drafted.
        speech: How it is said.
        size: The size of the chart that stands in for what was not measured; None for none.
        sheet: The sheet of the draft that is shown; empty for the first.
        typed: What was written in each field, to be shown again.
        refused: What could not be understood, by field.
        measures: The measurements that the recipe asks for.
    """

    wish: Wish
    speech: Speech
    size: int | None
    sheet: str
    typed: tuple[tuple[str, str], ...]
    refused: tuple[tuple[str, Problem], ...]
    measures: tuple[str, ...]

    @property
    def recipe(self) -> Recipe:
        """The recipe that is drafted."""
        return self.wish.recipe

    @property
    def unasked(self) -> tuple[tuple[str, str], ...]:
        """What was written of which the recipe's own form knows nothing; a form has to carry it along."""
        known = {*self.measures, *(name for name, _ in _choices(with_beginnings(self.recipe, on_the_shelf)))}
        return tuple((name, text) for name, text in self.typed if name not in known | FORM_FIELDS)

    def query(self, changed: Mapping[str, str] | None = None, **words: str) -> str:
        """The part of a link after the question mark; a changed value of nothing leaves its field out.

        Words of our own, which have a hyphen, may be given with an underscore: `on_sheet="back"`.
        """
        own = {name.replace("_", "-"): value for name, value in words.items()}
        fields = dict(self.typed) | own | dict(changed or {})
        return urlencode([(name, value) for name, value in fields.items() if value])


def understand(recipe: Recipe, fields: Mapping[str, str], preferences: Preferences) -> Asked:
    """The wish that a link or a form means."""
    given = {name: text.strip()[:LONGEST_VALUE] for name, text in list(fields.items())[:MOST_FIELDS]}
    whole = with_beginnings(recipe, on_the_shelf)
    measures = tuple(dict.fromkeys(name for one in whole for name in measures_of(one)))
    unit, bare, language = _units(given, preferences), _bare(given), _language(given, preferences)
    body, refused = _body(given, _measured(given, measures, whole), bare)
    size = _size(given, recipe)
    if size is not None:
        body = _over(chart_row(size), body, given.get("for-name", ""))
    wanted = {name: _with_unit(given[name], one, bare) for name, one in _choices(whole) if given.get(name)}
    choices, wrong = read_choices(whole, wanted)
    chosen = choices | own_allowances(preferences.allowances)
    tape = MARKS.get(given.get("on-tape", preferences.tape))
    mark = tape if tape is not None and tape.mm else None
    wish = Wish(recipe, body, Circumstances(region=preferences.region), settings(chosen), mark, language)
    not_choices = [(_about(problem, wanted), problem) for problem in wrong]
    typed = {name: text for name, text in given.items() if text and name != "bare-numbers"}
    settled = _settled(typed, bare, _lengths(_measured(given, measures, whole), whole))
    return Asked(
        wish,
        Speech(unit, mark, language),
        size,
        given.get("on-sheet", ""),
        settled,
        (*refused, *not_choices),
        measures,
    )


def _units(given: Mapping[str, str], preferences: Preferences) -> Literal["cm", "in"]:
    said = given.get("in-units", preferences.units)
    return "in" if said == "in" else "cm"


def _language(given: Mapping[str, str], preferences: Preferences) -> str:
    """The language in which steps are said; English where it has no table of sentences."""
    said = given.get("in-language", preferences.language)
    return said if said in languages() else "en"


def _measured(
    given: Mapping[str, str], measures: tuple[str, ...], whole: tuple[Recipe, ...]
) -> tuple[str, ...]:
    """What the recipe asks for, and what else was measured: checks look at more than the draft does."""
    own = {*measures, *(name for name, _ in _choices(whole))}
    return (*measures, *(name for name in given if name in REGISTER and name not in own))


def _age(given: Mapping[str, str]) -> float | None:
    """The child's age, which links say in whole months."""
    said = given.get("for-age", "")
    return float(said) if said.isascii() and said.isdigit() and int(said) <= OLDEST else None


def _bare(given: Mapping[str, str]) -> Unit:
    said = given.get("bare-numbers", "mm")
    return cast("Unit", said) if said in {"cm", "in"} else "mm"


def _settled(typed: Mapping[str, str], bare: Unit, lengths: frozenset[str]) -> tuple[tuple[str, str], ...]:
    """Bare lengths with the unit that was meant, so that a link and a form mean the same."""
    return tuple((name, _unit_said(text, bare) if name in lengths else text) for name, text in typed.items())


def _unit_said(text: str, bare: Unit) -> str:
    """A bare number as a length; millimetres, which no tape of a maker shows, as centimetres."""
    number = _bare_number(text)
    if number is None:
        return text
    return f"{text} {bare}" if bare != "mm" else f"{number / MM_PER['cm']:.10g} cm"


def _lengths(measures: tuple[str, ...], whole: tuple[Recipe, ...]) -> frozenset[str]:
    """The names of all fields that are lengths."""
    return frozenset((*measures, *(name for name, choice in _choices(whole) if _is_length(choice))))


def _is_length(choice: tree.ChoiceLength | tree.ChoiceOption) -> bool:
    return isinstance(choice, tree.ChoiceLength) and dimension_of(choice) is Dimension.LENGTH


def _bare_number(text: str) -> float | None:
    """The number of a length whose unit the form or the link has to say, as of `22`, `4,5`, `22 1/4`; else None."""
    some, other = read_length(text, "mm"), read_length(text, "cm")
    if isinstance(some, Problem) or isinstance(other, Problem):
        return None
    return some if some != other or text.strip(" 0.,") == "" else None


def _body(
    given: Mapping[str, str], measures: tuple[str, ...], bare: Unit
) -> tuple[Measurements, tuple[tuple[str, Problem], ...]]:
    body, refused = Measurements(age_months=_age(given), nickname=given.get("for-name", "")), []
    for name in measures:
        if given.get(name):
            found = read_length(given[name], bare)
            if isinstance(found, Problem):
                refused.append((name, found))
            elif found <= 0:
                refused.append((name, Problem("measurement-zero", "A measurement is more than nothing.")))
            else:
                body = body.with_reading(name, Reading(found))
    return body, tuple(refused)


def _size(given: Mapping[str, str], recipe: Recipe) -> int | None:
    """The size asked for; with nothing said, one that the recipe suits."""
    said = given.get("for-size", "")
    if said == "none":
        return None
    if said.isascii() and said.isdigit() and int(said) in SIZES:
        return int(said)
    low, high = stature_range(recipe)
    return size_for(min(max(USUAL_STATURE, low), high))


def _over(chart: Measurements, given: Measurements, name: str) -> Measurements:
    """A size of the chart with the child's own readings in place of the chart's."""
    for known, reading in given.readings:
        chart = chart.with_reading(known, reading)
    return replace(chart, nickname=name or chart.nickname, age_months=given.age_months)


def _choices(whole: tuple[Recipe, ...]) -> list[tuple[str, tree.ChoiceLength | tree.ChoiceOption]]:
    return [(choice.name.text, choice) for one in whole for choice in choices_of(one)]


def _with_unit(text: str, choice: tree.ChoiceLength | tree.ChoiceOption, bare: Unit) -> str:
    """A length that was written as a bare number, with its unit."""
    return f"{text} {bare}" if _is_length(choice) and _bare_number(text) is not None else text


def _about(problem: Problem, wanted: Mapping[str, str]) -> str:
    return next((name for name in wanted if problem.message.startswith(f"{name}:")), "")
