"""Pieces in one line: rectangles, bias strips, bands, facings."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.strips import facing, straight
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.draft.desk import Desk
    from littlefold.recipe.recipe import Written

STRIP_ACTS: dict[type, Callable[[Written, Desk], None]] = {
    tree.PieceRectangle: straight.rectangle,
    tree.PieceBias: straight.bias,
    tree.PieceBand: straight.band,
    tree.PieceFacing: facing.facing,
}
