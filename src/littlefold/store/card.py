"""A child's card as values: measured now and then, notes, past drafts and what their fittings showed.

A card holds what sewing for the child needs and nothing else: no surname is asked for, no address, no weight, no
photograph.  The sex is optional; only growth curves ask for it.
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from littlefold.body.child import age_in_months
from littlefold.body.measurements import Measurements, Reading

if TYPE_CHECKING:
    from datetime import date

    from littlefold.body.measurements import Sex
    from littlefold.check import Circumstances
    from littlefold.problem import Problem

Choices = tuple[tuple[str, float | str], ...]
Units = Literal["cm", "in"]


@dataclass(frozen=True, slots=True)
class OwnMeasurement:
    """A measurement that no register knows: a recipe's own.

    Attributes:
        name: Its short name in the recipe.
        recipe: The name of the recipe that asks for it.
        how: The recipe's words on how to take it.
    """

    name: str
    recipe: str
    how: str


@dataclass(frozen=True, slots=True)
class Measured:
    """One set of tape readings.

    Attributes:
        day: When they were taken.
        readings: Pairs of short name and length [mm], each name once.
        by: Who held the tape; may be empty.
        over: What the child wore under the tape; may be empty.
        own: What those of the readings mean that are recipes' own measurements, each name once.
    """

    day: date
    readings: tuple[tuple[str, float], ...]
    by: str = ""
    over: str = ""
    own: tuple[OwnMeasurement, ...] = ()


@dataclass(frozen=True, slots=True)
class Note:
    """A few words of a day."""

    day: date
    text: str


@dataclass(frozen=True, slots=True)
class Fitting:
    """What trying a garment on showed; the changed choices are another draft, which follows this one."""

    day: date
    showed: str


@dataclass(frozen=True, slots=True)
class RecipeText:
    """A recipe as it was when it was drafted, under the name by which others begin with it."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class PastDraft:
    """Everything that made a pattern, so that it can be printed again exactly.

    Attributes:
        made: The day.
        recipes: The recipe that was drafted, and after it those it begins with.
        body: Every measurement as it went into the draft, estimates with it.
        choices: Pairs of name and value: millimetres, radians, plain numbers, or the name of an option.
        tape: The mark distances were rounded to, or `exact`.
        language: Of the words on the pattern.
        units: Of the lengths on the sheets.
        around: What the safety rules were asked with: region, US size, paper, width of the cloth; None where a draft was
            kept before such things were.
        findings: What was found and printed on the sheets, in the language and units of the draft.
        pattern_hash: Of the pattern as it was drawn; a pattern drafted again has the same.
        let_down: What is left in the hem to be let down [mm].
        follows: The number of the draft whose fitting led to this one; None where there was none.
        fittings: What trying it on showed.
    """

    made: date
    recipes: tuple[RecipeText, ...]
    body: Measurements
    choices: Choices = ()
    tape: str = "exact"
    language: str = "en"
    pattern_hash: str = ""
    let_down: float = 0.0
    follows: int | None = None
    fittings: tuple[Fitting, ...] = ()
    units: Units = "cm"
    around: Circumstances | None = None
    findings: tuple[Problem, ...] = ()


@dataclass(frozen=True, slots=True)
class Card:
    """One child's card; drafts are numbered from 1 in their order."""

    name: str
    born: date | None = None
    sex: Sex | None = None
    measured: tuple[Measured, ...] = ()
    notes: tuple[Note, ...] = ()
    drafts: tuple[PastDraft, ...] = ()

    @property
    def key(self) -> str:
        """What tells children of the box apart: the name, however its letters are written."""
        return key_of(self.name)

    def latest(self) -> Measured | None:
        """The newest set; of two of one day the one written down last."""
        return next(iter(self.newest_first()), None)

    def newest_first(self) -> tuple[Measured, ...]:
        """All sets, the newest first; of two of one day the one written down last."""
        return tuple(sorted(self.measured, key=lambda one: one.day))[::-1]

    def day_by_day(self) -> tuple[Measured, ...]:
        """The set that counts of each day, which is the one written down last, in order of their days."""
        by_day = {one.day: one for one in self.measured}
        return tuple(by_day[day] for day in sorted(by_day))

    def of_day(self, day: date) -> Measured | None:
        """The set that counts of a day: the one written down last."""
        return next((one for one in reversed(self.measured) if one.day == day), None)

    def on_the_same_day(self, one: Measured) -> Measured:
        """A set with what was read earlier on its day and not again: a second reading replaces its measurement alone."""
        before = self.of_day(one.day)
        if before is None:
            return one
        joined = dict(before.readings) | dict(one.readings)
        own = {each.name: each for each in (*before.own, *one.own)}
        return Measured(
            one.day,
            tuple(joined.items()),
            one.by or before.by,
            one.over or before.over,
            tuple(own.values()),
        )

    def body(self, one: Measured | None = None) -> Measurements:
        """A set as measurements, with the age on its day; the newest set where none is named."""
        chosen = one or self.latest()
        if chosen is None:
            return Measurements((), None, self.sex, self.name)
        readings = tuple((name, Reading(mm)) for name, mm in chosen.readings)
        return Measurements(readings, self.age(chosen.day), self.sex, self.name)

    def age(self, day: date) -> float | None:
        """The age on a day [months]; None where the birth date is not known or lies ahead of it."""
        if self.born is None or day < self.born:
            return None
        return age_in_months(self.born, day)

    def with_measured(self, one: Measured) -> Card:
        """The card with another set on it."""
        return replace(self, measured=(*self.measured, one))

    def with_note(self, note: Note) -> Card:
        """The card with another note on it."""
        return replace(self, notes=(*self.notes, note))

    def with_draft(self, draft: PastDraft) -> Card:
        """The card with another draft on it; its number is how many there are then."""
        return replace(self, drafts=(*self.drafts, draft))

    def with_fitting(self, number: int, fitting: Fitting, let_down: float | None = None) -> Card:
        """The card with what a fitting of a draft showed, and what is left in its hem [mm] where that is known.

        Raises:
            IndexError: There is no draft of that number.
        """
        old = self.draft(number)
        new = replace(
            old,
            fittings=(*old.fittings, fitting),
            let_down=old.let_down if let_down is None else let_down,
        )
        drafts = (*self.drafts[: number - 1], new, *self.drafts[number:])
        return replace(self, drafts=drafts)

    def draft(self, number: int) -> PastDraft:
        """The draft of that number, counted from 1.

        Raises:
            IndexError: There is none.
        """
        if not 1 <= number <= len(self.drafts):
            raise IndexError(number)
        return self.drafts[number - 1]


def key_of(name: str) -> str:
    """One key for all ways to write a name: capitals, spaces and composed letters make no difference."""
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())
