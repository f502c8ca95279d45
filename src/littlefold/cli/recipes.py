"""`littlefold recipes`: what is on the shelf."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

from littlefold.booklet.recipes import recipe_record
from littlefold.cli.words import print_document, to_person
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names, shipped_text

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.recipe.recipe import Recipe

Json = dict[str, Any]


def list_recipes(*, as_data: bool) -> int:
    """Lists the shipped recipes; returns the exit status."""
    if as_data:
        print_document(list(_records()))
        return 0
    console = to_person()
    for record in _records():
        low, high = (round(bound / 10) for bound in record["suits_mm"])
        console.print(f"{record['name']:<14} {record['title']}  (stature {low} to {high} cm)")
        console.print(f"{'':<14} needs {', '.join(record['measures']) or 'no measurements'}", style="dim")
        console.file.flush()  # whoever waits sees the first recipe while the others are being read
    return 0


def _records() -> Iterator[Json]:
    return (recipe_record(recipe, _shipped) for recipe in map(_shipped, shipped_names()) if recipe)


@lru_cache(maxsize=64)
def _shipped(name: str) -> Recipe | None:
    text = shipped_text(name)
    return None if text is None else parse(text, name)
