"""`littlefold recipes`: what is on the shelf."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.booklet.recipes import recipe_record
from littlefold.cli.words import print_document, to_person
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names, shipped_text

if TYPE_CHECKING:
    from littlefold.recipe.recipe import Recipe


def list_recipes(*, as_data: bool) -> int:
    """Lists the shipped recipes; returns the exit status."""
    shipped = {name: _shipped(name) for name in shipped_names()}
    records = [recipe_record(recipe, shipped.get) for recipe in shipped.values()]
    if as_data:
        print_document(records)
        return 0
    console = to_person()
    for record in records:
        low, high = (round(bound / 10) for bound in record["suits_mm"])
        console.print(f"{record['name']:<14} {record['title']}  (stature {low} to {high} cm)")
        console.print(f"{'':<14} needs {', '.join(record['measures']) or 'no measurements'}", style="dim")
    return 0


def _shipped(name: str) -> Recipe:
    text = shipped_text(name)
    assert text is not None, "the shelf names only what it holds"  # noqa: S101 - our own mistake
    return parse(text, name)
