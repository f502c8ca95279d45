"""The register of constructions: which function draws which statement."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.drawn import Drawn

Draw = Callable[[Any, "Desk"], "Drawn"]


@dataclass(frozen=True, slots=True)
class Construction:
    """A construction: the statement it draws, the kind by which sentences know it, the function."""

    statement: type
    kind: str
    draw: Draw


CONSTRUCTIONS: dict[type, Construction] = {}


def construction(statement: type, kind: str) -> Callable[[Draw], Draw]:
    """Registers a function as the one that draws a statement.

    Raises:
        ValueError: The statement, or the kind, has a construction already.
    """

    def enter(draw: Draw) -> Draw:
        if statement in CONSTRUCTIONS or any(known.kind == kind for known in CONSTRUCTIONS.values()):
            raise ValueError(f"{statement.__name__} or {kind} has a construction already")
        CONSTRUCTIONS[statement] = Construction(statement, kind, draw)
        return draw

    return enter
