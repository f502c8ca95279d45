"""Buttons and studs on clothes for the smallest."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

from littlefold.check.notions import words
from littlefold.check.register import rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm
from littlefold.check.safety.limits import (
    CYLINDER_DEPTH,
    CYLINDER_WIDTH,
    SMALL_PARTS_AGE,
    SMALL_PARTS_STATURE,
)
from littlefold.check.wearer import is_younger
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import Notion
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "small-parts"
RULE: Final = "16 CFR 1501 (clothing buttons exempt: 1501.3(d))"
_PARTS: Final = frozenset({"button", "stud", "snap", "popper", "bead", "toggle", "hook", "eyelet", "popstud"})
_SIZE: Final = re.compile(r"(\d+(?:\.\d+)?) ?(mm|cm)")


@rule(
    code=CODE,
    title="Buttons, studs and beads on clothes for children under 3 years come with a caution",
    why="What comes off goes into the mouth, and what fits into the cylinder blocks a small throat.",
    source="16 CFR 1501: cylinder 1.25 in wide, up to 2.25 in deep; 1501.3(d) exempts buttons on "
    "clothing, so this is good practice and no breach; pull tests of BS 7907 and EN 17394 are from memory",
    safety=True,
)
def small_parts(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Small things among the notions of a garment for a child under 36 months that fit into the cylinder."""
    if pattern.draft.garment == "block" or not is_younger(pattern, SMALL_PARTS_AGE, SMALL_PARTS_STATURE):
        return
    for notion in pattern.draft.notions:
        size = size_said(notion)
        if not _PARTS.isdisjoint(words(notion)) and fits_cylinder(size):
            yield _problem(notion, size)


def fits_cylinder(size: float) -> bool:
    """Whether something flat of a diameter [mm] goes into the cylinder; a size of 0, not known, does."""
    return size < CYLINDER_WIDTH


def size_said(notion: Notion) -> float:
    """The diameter in the name or remark of a notion [mm]; 0 where there is none."""
    said = _SIZE.search(f"{notion.name} {notion.remark}".replace("_", " "))
    if said is None:
        return 0.0
    return float(said[1]) * (10.0 if said[2] == "cm" else 1.0)


def _problem(notion: Notion, size: float) -> Problem:
    across = cm(size) if size else say("of a size not said")
    return found(
        CODE,
        say(
            "The {notion} ({count}, {across}) fit into the small-parts cylinder, {cylinder_width} wide "
            "and up to {cylinder_depth} deep, on a garment for a child under 3 years.",
            notion=say(notion.name.replace("_", " ")),
            count=notion.count,
            across=across,
            cylinder_width=cm(CYLINDER_WIDTH),
            cylinder_depth=cm(CYLINDER_DEPTH),
        ),
        say(
            "Sew them on with a shank and a doubled thread, pull hard at each, and look at them after "
            "every wash. {law}",
            law=NOT_LEGAL_ADVICE,
        ),
        numbers=(mm("size", size), mm("cylinder", CYLINDER_WIDTH)),
        severity=Severity.WARNING,
        rule=RULE,
    )
