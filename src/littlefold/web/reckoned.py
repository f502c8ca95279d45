"""What a garment takes, reckoned before anything is laid: its pieces, and about how much cloth."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

from littlefold.body.tape import say_length
from littlefold.lay.bounds import GOOD_DENSITY
from littlefold.lay.place import Prepared, prepare
from littlefold.web.asked import understand
from littlefold.web.pages.cloth_laid import on_cloths
from littlefold.web.pages.cloth_said import bought

if TYPE_CHECKING:
    from littlefold.recipe.recipe import Recipe
    from littlefold.web.room import Room

Json = dict[str, Any]

SPARE: Final = 1.1
"""First lays came out 4 to 20 % over the bound for the shipped garments (measured at size 104 on 140 cm)."""


def reckoned(room: Room, recipe: Recipe) -> Json:
    """The pieces and the cloth of a recipe, for the child it is first shown for."""
    asked = understand(recipe, {}, room.preferences)
    outcome, units = room.fulfil(asked.wish), room.preferences.units
    on, *others = on_cloths(outcome, {}, units)
    prepared = prepare(on.pieces, on.asked.cloth, on.asked.way) if on.pieces else ()
    pieces = [piece.title for piece in outcome.pattern.pieces]
    if not isinstance(prepared, Prepared):
        return {"pieces": pieces, "cloth": "", "also": "", "size": asked.size}
    bounds, cloth = prepared.bounds, on.asked.cloth
    long = max(bounds.area / GOOD_DENSITY, bounds.fold_row, bounds.longest) * SPARE
    wide = say_length(cloth.width, units)
    return {
        "pieces": pieces,
        "cloth": f"about {bought(cloth.length_to_buy(long), units)} of {wide}",
        "also": ", ".join(other.name.replace("_", " ") for other in others),
        "size": asked.size,
    }
