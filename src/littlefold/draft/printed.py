"""The numbers a book prints for its own example, held against what its formulas give.

They are compared only where that example is drafted: with its measurements and its choices.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.body.measurements import Measurements
from littlefold.draft.arithmetic import evaluate
from littlefold.draft.attempt import where
from littlefold.draft.desk import Desk
from littlefold.draft.quantity import UNIT_NAMES, Dimension, Quantity
from littlefold.draft.refusal import Refusal
from littlefold.problem import Number, Problem, Severity, say
from littlefold.recipe import tree
from littlefold.recipe.wording import leftmost_spot, written

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from littlefold.recipe.recipe import Recipe, Written

SAME_READING = 0.05
"""Two measurements are the same reading within this [mm]: less than any tape shows."""


def examples(recipe: Recipe) -> Iterator[tuple[tree.Example, Measurements, dict[str, float | str]]]:
    """The examples of a recipe: their measurements and choices."""
    units = Desk(Measurements(), None)
    for unit in recipe.all_of(tree.Unit):
        units.units[unit.name.text] = evaluate(unit.value, units)
    for example in recipe.all_of(tree.Example):
        try:
            lengths, age = _readings(example, units)
            choices = {setting.name.text: _setting(setting, units) for setting in example.choosing or ()}
        except Refusal:
            continue
        yield example, Measurements.of(lengths, age_months=age), choices


def _readings(example: tree.Example, units: Desk) -> tuple[dict[str, float], float | None]:
    lengths: dict[str, float] = {}
    age = None
    for setting in example.measures or ():
        value = evaluate(setting.value, units)
        if value.dimension is Dimension.AGE:
            age = value.value
        else:
            lengths[setting.name.text] = value.value
    return lengths, age


def _setting(setting: tree.Setting, units: Desk) -> float | str:
    if isinstance(setting.value, tree.Named):
        return setting.value.name.text
    return evaluate(setting.value, units).value


def compare_printed(recipe: Recipe, desk: Desk, choices: Mapping[str, float | str]) -> Iterable[Problem]:
    """The printed numbers that disagree with their formulas; none where another child is drafted."""
    if not desk.printed or not any(_is_drafted(*example[1:], desk, choices) for example in examples(recipe)):
        return ()
    return tuple(
        problem
        for line, printed, value in desk.printed
        if (problem := _compared(line, printed, value, desk)) is not None
    )


def _is_drafted(
    measurements: Measurements,
    example_choices: Mapping[str, float | str],
    desk: Desk,
    choices: Mapping[str, float | str],
) -> bool:
    for name, reading in measurements.readings:
        mine = desk.measurements.get(name)
        if mine is None or abs(mine.mm - reading.mm) > SAME_READING:
            return False
    return all(_same(value, desk.values.get(name)) for name, value in example_choices.items()) and not any(
        name not in example_choices and not _is_default(name, value, desk) for name, value in choices.items()
    )


def _same(one: float | str, other: object) -> bool:
    if isinstance(one, str) or not isinstance(other, Quantity):
        return one == other
    return abs(one - other.value) <= SAME_READING


def _is_default(name: str, value: float | str, desk: Desk) -> bool:
    options = desk.options.get(name)
    return options is not None and value == options[0]


def _compared(line: Written, printed: tree.Printed, value: Quantity, desk: Desk) -> Problem | None:
    try:
        book = evaluate(printed.value, desk)
    except Refusal as refusal:
        return Problem(refusal.code, refusal.message, place=line.place(refusal.spot))
    slack = _half_last_place(printed.value, desk)
    if book.dimension is value.dimension and abs(book.value - value.value) <= slack * (1 + 1e-9):
        return None
    unit, place = UNIT_NAMES[value.dimension], line.place(leftmost_spot(printed.value))
    name = getattr(line.statement, "name", "")
    numbers = (
        Number("by formula", value.value, unit),
        Number("printed", book.value, unit),
        Number("allowed", slack, unit),
    )
    said = say(
        "{where}: {name} comes to {value} by its formula, but the book prints {printed}. Find out which is right before "
        "you cut; the formula is drawn.",
        where=where(place),
        name=str(name),
        value=_said(value, printed.value),
        printed=written(printed.value),
    )
    return Problem("printed-number-disagrees", str(said), Severity.WARNING, place, numbers, said=(said,))


def _half_last_place(expr: tree.Expr, desk: Desk) -> float:
    """Half of the last place or fraction in which a number is printed: 4.9 cm to 0.05 cm, 3 1/4 in to 1/8 in."""
    if isinstance(expr, tree.Quantity):
        return _half_step(expr.numeral) * desk.units[expr.unit.text].value
    if isinstance(expr, tree.Plain):
        return _half_step(expr.numeral)
    return 0.0


def _half_step(numeral: tree.Numeral) -> float:
    if numeral.is_fraction:
        return 0.5 / float(numeral.text.rpartition("/")[2])
    decimals = len(numeral.text.partition(".")[2])
    return float(0.5 * 10.0**-decimals)


def _said(value: Quantity, like: tree.Expr) -> str:
    """A value in the unit in which the book prints."""
    if value.dimension is Dimension.LENGTH and isinstance(like, tree.Quantity) and like.unit.text == "in":
        return f"{value.value / 25.4:.3f} in"
    return f"{value.value / 10:.2f} cm" if value.dimension is Dimension.LENGTH else f"{value.value:g}"
