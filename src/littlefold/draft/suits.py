"""The bodies a recipe is meant for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.body.measurements import Measurements
from littlefold.body.stature import stature_at
from littlefold.draft.arithmetic import evaluate
from littlefold.draft.desk import Desk
from littlefold.draft.quantity import Dimension
from littlefold.draft.refusal import Refusal
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.recipe.recipe import Recipe

ANY = (0.0, 2_000.0)
"""The range of a recipe that says nothing [mm]: any child."""


def stature_range(recipe: Recipe) -> tuple[float, float]:
    """The statures for which a recipe is meant [mm]; ages are turned into median statures (WHO)."""
    suits = recipe.first(tree.Suits)
    if suits is None:
        return ANY
    desk = Desk(Measurements(), None)
    try:
        low, high = evaluate(suits.low, desk), evaluate(suits.high, desk)
    except Refusal:
        return ANY
    if low.dimension is Dimension.AGE and high.dimension is Dimension.AGE:
        return stature_at(low.value, None).median, stature_at(high.value, None).median
    return low.value, high.value
