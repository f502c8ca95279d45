"""The maker's own allowances, for edges of which the recipe says nothing.

They come among the choices, under names that no recipe can have, so that whatever keeps, repeats or compares a draft
by its choices has them too: `allowance-seam`, `allowance-hem`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.draft.desk import DEFAULT_ALLOWANCES

if TYPE_CHECKING:
    from collections.abc import Mapping

OWN_ALLOWANCE: Final = "allowance-"


def usual_allowances(choices: Mapping[str, float | str]) -> dict[str, float]:
    """The allowance of every kind of edge where nothing is said [mm]: the maker's own, or the common one.

    Args:
        choices: Of a wish, by name.
    """
    return {
        kind: float(own) if isinstance(own := choices.get(OWN_ALLOWANCE + kind), (int, float)) else common
        for kind, common in DEFAULT_ALLOWANCES.items()
    }


def own_allowances(widths: Mapping[str, float]) -> dict[str, float]:
    """The choices that say a maker's own allowances; none for those that are the common ones anyway.

    Args:
        widths: Allowances by kind of edge [mm].
    """
    return {OWN_ALLOWANCE + kind: mm for kind, mm in widths.items() if mm != DEFAULT_ALLOWANCES[kind]}
