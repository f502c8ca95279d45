"""Corners at which the cutting lines themselves meet, or are joined by a straight cut."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.geometry import Path
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.pattern.corner import Corner, Rule, reach
from littlefold.pattern.crossing import crossing

if TYPE_CHECKING:
    from littlefold.pattern.margin import Margin

# A mitre reaches no further from the corner than this many widths; beyond, it is a spike that catches in the
# seam and is cut off.  2 squares off corners sharper than 60 degrees.  Common practice, no source.
MITRE_LIMIT = 2.0


def to_fold(first: Margin, second: Margin) -> Corner | None:
    """The allowance of one edge carried on to the line of the fold beside it."""
    return _meeting(first, second, Rule.TO_FOLD)


def mitred(first: Margin, second: Margin) -> Corner | None:
    """Both cutting lines carried on until they meet; None where that is too far out."""
    found = _meeting(first, second, Rule.MITRED)
    if found is None:
        return None
    tip = first.cut.at(found.first)
    furthest = MITRE_LIMIT * max(first.width, second.width)
    return found if tip.distance(first.stitch.path.start) <= furthest + SAME_POINT else None


def _meeting(first: Margin, second: Margin, rule: Rule) -> Corner | None:
    corner = first.stitch.path.start
    found = crossing(first.cut, second.cut, corner, reach(first, second))
    return None if found is None else Corner(rule, found.first, found.second)


def stepped(first: Margin, second: Margin) -> Corner:
    """Each cutting line ends square across from the corner; a straight cut joins the two."""
    return Corner(Rule.STEPPED, 0.0, 0.0, (Path.line_through(first.cut.at(0.0), second.cut.at(0.0)),))
