"""What a pattern cutter does with a closed outline: cut it, open it, fold it in, gather it, put it together."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.draft.desk import Desk
    from littlefold.recipe.recipe import Written

SHAPE_ACTS: dict[type, Callable[[Written, Desk], None]] = {}
