"""The register of what is done to outlines: which function does which statement."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.draft.desk import Desk
    from littlefold.recipe.recipe import Written

    Act = Callable[[Written, Desk], None]

SHAPE_ACTS: dict[type, Act] = {}


def shape_act(statement: type) -> Callable[[Act], Act]:
    """Registers a function as the one that does a statement.

    Raises:
        ValueError: The statement has one already.
    """

    def enter(act: Act) -> Act:
        if statement in SHAPE_ACTS:
            raise ValueError(f"{statement.__name__} is done already")
        SHAPE_ACTS[statement] = act
        return act

    return enter
