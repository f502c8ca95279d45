"""How far the main cloth stretches."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.pattern.model import Pattern

    from .circumstances import Circumstances


def stretch(pattern: Pattern, circumstances: Circumstances) -> float:
    """How much longer the main cloth becomes, as a part of itself: what the recipe says, or the cloth at hand."""
    return max(pattern.draft.stretch, circumstances.stretch)
