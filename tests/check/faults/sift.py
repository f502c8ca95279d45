"""Drafts a recipe with and without a fault, and tells whether the fault matters and whether it is found."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.check import check
from littlefold.draft.evaluate import evaluate
from littlefold.draft.printed import examples
from littlefold.draft.suits import stature_range
from littlefold.pattern.trace import trace
from littlefold.problem import Severity
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_text

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern
    from littlefold.recipe.recipe import Recipe

# A change of less than this everywhere is no fault that a sewer would notice [mm].
MATTERS = 10.0


Report = tuple[str, str | None, str | None, str]
"""An error or warning: its code, piece, edge and weight."""


def children(text: str) -> Iterator[tuple[Measurements, dict[str, float | str]]]:
    """The children for whom a recipe is looked at, with their choices.

    One in the middle of the statures that it suits, those of its own examples, the smallest and the tallest.
    """
    recipe = parse(text)
    low, high = stature_range(recipe)
    yield _child((low + high) / 2), {}
    for _, measured, choices in examples(recipe):
        yield complete(measured)[0], choices
    yield _child(low), {}
    yield _child(high), {}


def drafted(
    text: str, child: Measurements, choices: dict[str, float | str]
) -> tuple[Pattern, frozenset[Report]]:
    """The pattern of a recipe for one child, and the errors and warnings about it."""
    draft = evaluate(parse(text), child, choices, shelf=_shelf)
    pattern = trace(draft)
    problems = (*draft.problems, *pattern.problems, *check(pattern))
    loud = (p for p in problems if p.severity is not Severity.NOTE)
    return pattern, frozenset((p.code, p.place.piece, p.place.edge, p.severity.value) for p in loud)


@lru_cache(maxsize=64)
def _child(stature: float) -> Measurements:
    return complete(Measurements.of({"stature": stature}))[0]


@lru_cache(maxsize=32)
def _shelf(name: str) -> Recipe | None:
    text = shipped_text(name)
    return None if text is None else parse(text)


@dataclass(frozen=True, slots=True)
class Sifted:
    """What became of a fault: whether it changes the garment, and the codes of the reports that it adds."""

    matters: bool
    codes: frozenset[str]


class Sieve:
    """One sound recipe, drafted once for each child, against which its faults are held."""

    def __init__(self, text: str) -> None:
        self.children = tuple(children(text))
        self.sound = [drafted(text, *child) for child in self.children]

    def sift(self, spoilt: str) -> Sifted:
        """Drafts the spoilt recipe for one child after the other until something new is reported."""
        matters = False
        for child, (pattern, reports) in zip(self.children, self.sound, strict=True):
            changed, found = drafted(spoilt, *child)
            matters = matters or differs(pattern, changed)
            if found - reports:
                return Sifted(
                    matters or differs(pattern, changed), frozenset(code for code, *_ in found - reports)
                )
        return Sifted(matters, frozenset())


def differs(sound: Pattern, spoilt: Pattern) -> bool:
    """Whether a fault moves a corner by `MATTERS` or more, or changes pieces, allowances or what is sewn to what."""
    before, after = _corners(sound), _corners(spoilt)
    if before.keys() != after.keys() or _sewing(sound) != _sewing(spoilt):
        return True
    return any(_moved(before[name], after[name]) for name in before)


def _corners(pattern: Pattern) -> dict[tuple[str, str], DraftEdge]:
    return {(piece.name, edge.name): edge for piece in pattern.pieces for edge in piece.edges}


def _moved(before: DraftEdge, after: DraftEdge) -> bool:
    here, there = before.path, after.path
    way = max(here.start.distance(there.start), abs(here.length() - there.length()))
    return way >= MATTERS or before.allowance != after.allowance


def _sewing(pattern: Pattern) -> list[tuple]:
    return [(seam.first, seam.second) for seam in pattern.seams]
