"""Children of the survey with every reading of its first set, and the one garment that touches all of them.

../shared/reference/standards.md section 7, item 13 (R. G. Snyder et al., UM-HSRI-77-17): outlines closed, seams equal, the
cap between the armhole and the armhole with its ease, the neckline no smaller than the neck, the cuff no smaller than
the wrist.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from littlefold.check import Circumstances
from littlefold.check.roles import Role
from littlefold.check.rules.cap_ease import ease_of_cap
from littlefold.check.worn import opening
from littlefold.draft.suits import stature_range
from littlefold.pipeline import Wish, fulfil, on_the_shelf
from tests.body.survey import survey_children

if TYPE_CHECKING:
    from littlefold.body.measurements import Measurements
    from littlefold.pattern.model import Pattern

FIRST_SET = (
    "stature",
    "head",
    "neck",
    "chest",
    "waist",
    "hip",
    "upper_arm",
    "wrist",
    "thigh",
    "calf",
    "ankle",
    "foot",
)
EVERY = 20
STEP = 3.1  # mm: the recipe solves its cap to within 3 mm
MOST_EASE = 15.0  # mm, the recipe's own bound


@lru_cache(maxsize=1)
def first_set() -> tuple[Measurements, ...]:
    """Those whom the sleeve suits, of those under 164 cm who have every reading."""
    recipe = on_the_shelf("sleeve")
    assert recipe is not None
    low, high = stature_range(recipe)
    whole = (child for child in survey_children() if all(name in child for name in FIRST_SET))
    return tuple(child for child in whole if low <= child.mm("stature") <= min(high, 1640.0))


def sleeved(child: Measurements) -> Pattern:
    recipe = on_the_shelf("sleeve")
    assert recipe is not None
    return fulfil(Wish(recipe, child, Circumstances())).pattern


def test_sleeves_for_the_children_of_the_first_set() -> None:
    children = first_set()
    assert len(children) > 500
    for child in children[::EVERY]:
        pattern = sleeved(child)
        assert all(piece.outline.cut.is_closed for piece in pattern.pieces)
        assert all(piece.outline.stitch.is_closed for piece in pattern.pieces)
        assert all(seam.matched for seam in pattern.seams)
        eases = [ease for ease in (ease_of_cap(pattern, seam) for seam in pattern.seams) if ease is not None]
        assert eases, "the sleeve is sewn into an armhole"
        assert all(-STEP <= ease <= MOST_EASE + STEP for ease in eases), eases
        neck, cuff = opening(pattern, Role.NECK), opening(pattern, Role.WRIST)
        assert neck is not None
        assert cuff is not None
        assert neck.closed >= child.mm("neck"), child
        assert cuff.opened >= child.mm("wrist"), child
