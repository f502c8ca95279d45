"""Which rule cuts a corner: decided by what becomes of its two edges."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.model import EdgeKind
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.pattern.allowance import TURNED, is_turned
from littlefold.pattern.corner import Corner, Rule
from littlefold.pattern.mirrored import mirrored
from littlefold.pattern.mitred import mitred, stepped, to_fold
from littlefold.pattern.squared import is_sharp, squared

if TYPE_CHECKING:
    from littlefold.pattern.margin import Margin


def corner(first: Margin, second: Margin) -> Corner:
    """The corner between two margins that both set out from it: fold before turned edge before seams."""
    if first.cut.path.start.distance(second.cut.path.start) <= SAME_POINT:
        return Corner(Rule.PLAIN, 0.0, 0.0)
    if EdgeKind.FOLD in (first.edge.kind, second.edge.kind):
        return to_fold(first, second) or stepped(first, second)
    return _turned(first, second) or mitred(first, second) or _cut_short(first, second)


def _turned(first: Margin, second: Margin) -> Corner | None:
    """The corner at a turned edge; of two, the one that is folded last mirrors the other."""
    if not (is_turned(first.edge) or is_turned(second.edge)):
        return None
    if _rank(first) < _rank(second):
        found = mirrored(second, first)
        return None if found is None else found.swapped()
    return mirrored(first, second)


def _rank(margin: Margin) -> int:
    return TURNED.index(margin.edge.kind) if is_turned(margin.edge) else len(TURNED)


def _cut_short(first: Margin, second: Margin) -> Corner:
    return squared(first, second) if is_sharp(first, second) else stepped(first, second)
