"""How many garments need each measurement: those that most need are taken first."""

from __future__ import annotations

from collections import Counter
from functools import lru_cache
from typing import TYPE_CHECKING

from littlefold.booklet.recipes import measures_of, with_beginnings
from littlefold.pipeline import on_the_shelf
from littlefold.store import own_of

if TYPE_CHECKING:
    from littlefold.recipe.recipe import Recipe
    from littlefold.store import Card, OwnMeasurement
    from littlefold.web.room import Room


def needed_for(room: Room) -> Counter[str]:
    """For each measurement the number of recipes that ask for it; the height counts first of all."""
    counted = Counter(name for recipe in room.recipes() for name in measured_for(recipe))
    counted["stature"] = max(counted["stature"], counted.total())  # everything else is judged beside it
    return counted


def measured_for(recipe: Recipe) -> tuple[str, ...]:
    """The measurements that a recipe asks for, those of the recipes it begins with too."""
    return _measured_for(recipe)


def own_for(recipe: Recipe | None, card: Card) -> dict[str, OwnMeasurement]:
    """The own measurements that are asked for: a recipe's, or where none is named those of the newest readings."""
    newest = card.latest()
    asked = own_of(recipe) if recipe is not None else newest.own if newest else ()
    return {one.name: one for one in asked}


@lru_cache(maxsize=256)
def _measured_for(recipe: Recipe) -> tuple[str, ...]:
    whole = with_beginnings(recipe, on_the_shelf)
    return tuple(dict.fromkeys(name for one in whole for name in measures_of(one)))
