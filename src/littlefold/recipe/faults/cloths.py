"""Names of cloths that look like a slip of the pen."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.problem import Severity
from littlefold.recipe import tree
from littlefold.recipe.faults.fault import did_you_mean, fault
from littlefold.recipe.walk import every

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.problem import Problem
    from littlefold.recipe.recipe import Recipe

CLOTHS: Final = ("main", "lining", "interfacing")


def cloths_spelt_alike(recipe: Recipe) -> Iterator[Problem]:
    """A recipe may name any cloth; one that is nearly a usual one is probably meant to be that."""
    for written in recipe.written:
        for order in every(tree.CutOrder, written.statement):
            if order.cloth is None or order.cloth.text in CLOTHS:
                continue
            hint = did_you_mean(order.cloth.text, CLOTHS)
            if hint:
                words = f'"{order.cloth}" becomes a cloth of its own.{hint} Cloths: {", ".join(CLOTHS)}.'
                yield fault(written, order.cloth.spot, "cloth-spelt-alike", words, Severity.WARNING)
