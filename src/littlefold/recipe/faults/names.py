"""Names: no word of the language, and one meaning for each."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.recipe import tree
from littlefold.recipe.faults.fault import fault

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.problem import Problem
    from littlefold.recipe.recipe import Recipe, Written

# Words that begin a value, and words that join the parts of a sentence; as names they could not be told apart.
RESERVED: Final = frozenset(
    (
        "pi",
        "larger",
        "smaller",
        "round",
        "square",
        "length",
        "not",
        "of",
        "and",
        "or",
        "to",
        "by",
        "at",
        "from",
    )
) | {"then", "gives", "is", "when", "otherwise", "end", "with", "as", "towards", "between", "the"}
_VALUES: Final = (
    *(tree.OwnMeasure, tree.Unit, tree.ChoiceLength, tree.ChoiceOption),
    *(tree.Amount, tree.Table, tree.Find),
)
_DRAWN: Final = tuple(
    getattr(tree, name)
    for name in tree.__all__
    if name.startswith(("Point", "Line", "Curve", "Arc", "Circle", "Copy"))
    and name not in {"LineRef", "LineNamed"}
)


def names_are_no_words(recipe: Recipe) -> Iterator[Problem]:
    """No value, point or line is named by a word that the language needs."""
    for written in recipe.written:
        for name in (*_values(written), *_drawn(written)):
            if name.text in RESERVED:
                words = f'"{name}" is a word of the language and cannot be a name. Choose another.'
                yield fault(written, name.spot, "reserved-word", words)


def one_meaning(recipe: Recipe) -> Iterator[Problem]:
    """A point or line is not named like a measurement, choice, amount, table or unit."""
    values = {name.text: written.line for written in recipe.written for name in _values(written)}
    for written in recipe.written:
        for name in _drawn(written):
            if name.text in values:
                words = (
                    f'"{name}" is a number already (line {values[name.text]}). '
                    "One name has one meaning: name the point or line otherwise."
                )
                yield fault(written, name.spot, "name-means-two-things", words)


def _values(written: Written) -> tuple[tree.Name, ...]:
    """The names of numbers that a statement gives."""
    statement = written.statement
    if isinstance(statement, tree.Measure):
        return tuple(wanted.name for wanted in statement.wanted)
    return (statement.name,) if isinstance(statement, _VALUES) else ()


def _drawn(written: Written) -> tuple[tree.Name, ...]:
    """The name of the point or line that a statement draws."""
    return (written.statement.name,) if isinstance(written.statement, _DRAWN) else ()
