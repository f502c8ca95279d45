"""Numbers that can be read in two ways, choices that contradict themselves, and book numbers without a book."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.recipe import tree
from littlefold.recipe.faults.fault import did_you_mean, fault
from littlefold.recipe.walk import every
from littlefold.recipe.wording import leftmost_spot
from littlefold.recipe.wording import written as wording

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from littlefold.problem import Problem
    from littlefold.recipe.recipe import Recipe, Written


def two_ways_to_divide(recipe: Recipe) -> Iterator[Problem]:
    """`a / 3/4` could mean a third of a quarter or four thirds; brackets or spaces say which."""
    for line in recipe.written:
        for over in every(tree.Over, line.statement):
            numeral = _fraction(over.right)
            if numeral:
                above, below = numeral.text.split("/")
                left = wording(over.left)
                words = (
                    f'"{wording(over)}" can be read in two ways. '
                    f"Write {left} / {above} / {below}, or {left} / ({wording(over.right)})."
                )
                yield fault(line, numeral.spot, "two-ways-to-divide", words)


def _fraction(divisor: tree.Expr) -> tree.Numeral | None:
    """The simple fraction with which a divisor begins, as `3/4` or `3/4 in`; not `3 1/4`, which is clear."""
    if not isinstance(divisor, tree.Plain | tree.Quantity | tree.Share):
        return None
    numeral = divisor.numeral
    return numeral if numeral.is_fraction and " " not in numeral.text else None


def bare_numbers(recipe: Recipe) -> Iterator[Problem]:
    """The range of a recipe, and the measurements of an example, have units."""
    for line in recipe.written:
        statement = line.statement
        if isinstance(statement, tree.Suits):
            units = ("cm", "in") if statement.scale == "stature" else ("months", "y")
            yield from _bare(line, (statement.low, statement.high), units)
        elif isinstance(statement, tree.Example):
            yield from _bare(line, (setting.value for setting in statement.measures or ()), ("cm", "in"))


def _bare(line: Written, values: Iterable[tree.Expr], units: tuple[str, ...]) -> Iterator[Problem]:
    for value in values:
        if isinstance(value, tree.Plain):
            said = wording(value)
            words = f"{said} what? Write {' or '.join(f'{said} {unit}' for unit in units)}."
            yield fault(line, value.numeral.spot, "number-without-unit", words)


def options_differ(recipe: Recipe) -> Iterator[Problem]:
    """No option of a choice is named twice."""
    for line in recipe.written:
        if isinstance(line.statement, tree.ChoiceOption):
            seen: set[str] = set()
            for option in line.statement.options:
                if option.text in seen:
                    words = f'the option "{option}" is named twice. Leave one of them out.'
                    yield fault(line, option.spot, "option-twice", words)
                seen.add(option.text)


def printed_with_example(recipe: Recipe) -> Iterator[Problem]:
    """The number a book prints can be compared only where the book's own measurements are given."""
    if recipe.first(tree.Example) is not None:
        return
    for line in recipe.written:
        for printed in every(tree.Printed, line.statement):
            words = (
                "a printed number is compared when the book's own example is drafted, but there is no example. "
                'Add a line such as: example "Size 28" with hip = 56 cm'
            )
            yield fault(line, leftmost_spot(printed.value), "printed-without-example", words)
            return


def examples_set_what_is_asked(recipe: Recipe) -> Iterator[Problem]:
    """An example gives measurements and choices that the recipe asks for."""
    if recipe.first(tree.BeginWith) is not None:
        return
    measures = {wanted.name.text for measure in recipe.all_of(tree.Measure) for wanted in measure.wanted}
    measures |= {own.name.text for own in recipe.all_of(tree.OwnMeasure)}
    kinds = (tree.ChoiceLength, tree.ChoiceOption)
    choices = {choice.name.text for kind in kinds for choice in recipe.all_of(kind)}
    for line in recipe.written:
        if isinstance(line.statement, tree.Example):
            yield from _unasked(line, line.statement.measures, measures, "measurement")
            yield from _unasked(line, line.statement.choosing, choices, "choice")


def _unasked(
    line: Written, settings: tuple[tree.Setting, ...] | None, asked: set[str], what: str
) -> Iterator[Problem]:
    for setting in settings or ():
        if setting.name.text not in asked:
            hint = did_you_mean(setting.name.text, sorted(asked))
            words = f'the recipe asks for no {what} "{setting.name}", so the example cannot give it.{hint}'
            yield fault(line, setting.name.spot, "example-not-asked-for", words)
