"""Readings of recipes' own measurements: which a recipe asks for, and which on a card are meant for it.

Two recipes may call different things by one name.  So a reading is kept with the recipe it was taken for and with its
words, and stands for another recipe only where the words are the same.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.booklet.recipes import with_beginnings
from littlefold.pipeline import on_the_shelf
from littlefold.recipe import tree
from littlefold.store.card import OwnMeasurement

if TYPE_CHECKING:
    from littlefold.recipe.recipe import Recipe
    from littlefold.store.card import Measured


def own_of(recipe: Recipe) -> tuple[OwnMeasurement, ...]:
    """The own measurements that a recipe asks for, those of the recipes it begins with too; each name once."""
    found: dict[str, OwnMeasurement] = {}
    for one in with_beginnings(recipe, on_the_shelf):
        for step in one.all_of(tree.OwnMeasure):
            found.setdefault(step.name.text, OwnMeasurement(step.name.text, one.name, step.how.words))
    return tuple(found.values())


def meant_for(recipe: Recipe, one: Measured) -> Measured:
    """A set without those own readings that are not what this recipe asks for, though they may be called alike."""
    asked = {own.name: own for own in own_of(recipe)}
    strange = {own.name for own in one.own if not _is_meant(own, asked.get(own.name))}
    readings = tuple((name, mm) for name, mm in one.readings if name not in strange)
    return replace(one, readings=readings, own=tuple(own for own in one.own if own.name not in strange))


def _is_meant(own: OwnMeasurement, asked: OwnMeasurement | None) -> bool:
    return asked is not None and (own.recipe == asked.recipe or own.how == asked.how)
