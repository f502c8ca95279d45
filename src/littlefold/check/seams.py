"""Seams in words and places."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.draft.model import EdgeRef
    from littlefold.pattern.model import Seam
    from littlefold.problem import Place


def run_words(run: tuple[EdgeRef, ...]) -> str:
    """A run of edges for a message, as `back.neck with front.neck`."""
    return " with ".join(f"{ref.piece}.{ref.edge}" for ref in run)


def seam_place(seam: Seam) -> Place:
    """The line of the recipe that sews the seam, and the last edge of its second run."""
    ref = seam.second[-1]
    return replace(seam.place, piece=ref.piece, edge=ref.edge)
