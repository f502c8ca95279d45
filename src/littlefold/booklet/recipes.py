"""What a recipe asks for and offers, as data: its sizes, measurements and choices."""

from __future__ import annotations

from math import degrees
from typing import TYPE_CHECKING, Any

from littlefold.body.measurements import Measurements
from littlefold.draft.arithmetic import evaluate
from littlefold.draft.choices import choices_of
from littlefold.draft.desk import Desk
from littlefold.draft.quantity import UNIT_NAMES, Dimension
from littlefold.draft.refusal import Refusal
from littlefold.draft.suits import stature_range
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from littlefold.recipe.recipe import Recipe

    Shelf = Callable[[str], Recipe | None]

Json = dict[str, Any]


def recipe_record(recipe: Recipe, shelf: Shelf) -> Json:
    """One line of the list of recipes."""
    low, high = stature_range(recipe)
    whole = with_beginnings(recipe, shelf)
    return {
        "name": recipe.name,
        "title": recipe.title,
        "suits_mm": [round(low, 1), round(high, 1)],
        "measures": list(dict.fromkeys(name for one in whole for name in measures_of(one))),
        "choices": [_choice(choice) for one in whole for choice in choices_of(one)],
    }


def with_beginnings(recipe: Recipe, shelf: Shelf) -> tuple[Recipe, ...]:
    """The recipes a recipe begins with, the first one first, and the recipe itself; each once."""
    found: dict[str, Recipe] = {}
    _collect(recipe, shelf, found)
    return tuple(found.values())


def _collect(recipe: Recipe, shelf: Shelf, found: dict[str, Recipe]) -> None:
    if recipe.name in found:
        return
    for beginning in recipe.all_of(tree.BeginWith):
        other = shelf(beginning.recipe)
        if other is not None and other.name != recipe.name:
            _collect(other, shelf, found)
    found[recipe.name] = recipe


def measures_of(recipe: Recipe) -> Iterator[str]:
    """The short names of the measurements a recipe asks for, in order."""
    for line in recipe.written:
        match line.statement:
            case tree.Measure(wanted):
                yield from (one.name.text for one in wanted)
            case tree.OwnMeasure(name):
                yield name.text


def _choice(choice: tree.ChoiceLength | tree.ChoiceOption) -> Json:
    text = choice.text.words if choice.text else ""
    if isinstance(choice, tree.ChoiceOption):
        options = [option.text for option in choice.options]
        return _record(choice.name.text, text, options[0], None, None, options, None)
    desk = Desk(Measurements(), None)
    try:
        default, low, high = (evaluate(part, desk) for part in (choice.default, choice.low, choice.high))
    except Refusal:
        return _record(choice.name.text, text, None, None, None, [], "mm")
    turn = degrees if default.dimension is Dimension.ANGLE else float
    unit = "degrees" if default.dimension is Dimension.ANGLE else UNIT_NAMES[default.dimension]
    first, least, most = (round(turn(one.value), 4) for one in (default, low, high))
    return _record(choice.name.text, text, first, least, most, [], unit)


def _record(  # noqa: PLR0917 - the fields of the record, in their order
    name: str,
    title: str,
    default: float | str | None,
    low: float | None,
    high: float | None,
    values: list[str],
    unit: str | None,
) -> Json:
    return {
        "name": name,
        "title": title,
        "default": default,
        "min": low,
        "max": high,
        "values": values,
        "unit": unit,
    }
