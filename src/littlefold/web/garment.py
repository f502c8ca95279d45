"""A recipe as a card among the garments."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from littlefold.body.register import REGISTER
from littlefold.booklet.recipes import measures_of, with_beginnings
from littlefold.draft.suits import ANY, stature_range
from littlefold.pipeline import on_the_shelf
from littlefold.recipe import tree
from littlefold.recipe.shelf import shipped_names

if TYPE_CHECKING:
    from littlefold.recipe.recipe import Recipe

Json = dict[str, Any]


def garment(recipe: Recipe) -> Json:
    """What a card tells: name, title, sizes, measurements, pieces, source."""
    whole = with_beginnings(recipe, on_the_shelf)
    measures = dict.fromkeys(name for one in whole for name in measures_of(one))
    low, high = stature_range(recipe)
    source = recipe.first(tree.Source)
    kind = recipe.first(tree.Garment)
    return {
        "name": recipe.name if recipe.name in shipped_names() else recipe.file,
        "title": recipe.title,
        "kind": kind.kind.text if kind else "",
        "suits": "any child" if (low, high) == ANY else f"{low / 10:.0f} to {high / 10:.0f} cm tall",
        "low_cm": low / 10,
        "high_cm": high / 10,
        "measures": [REGISTER[one].title if one in REGISTER else one.replace("_", " ") for one in measures],
        "source": _source_words(source),
        "own": recipe.file not in shipped_names(),
        "faults": len(recipe.problems),
    }


def _source_words(source: tree.Source | None) -> str:
    text = source.source if source else None
    return text.words if isinstance(text, tree.Text) else "common practice"
