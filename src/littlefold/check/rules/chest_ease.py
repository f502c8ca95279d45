"""The garment is larger than the chest, and not by half."""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING

from littlefold.check.body import girth
from littlefold.check.chest import chest_as_worn
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece, on_tape
from littlefold.check.stretch import stretch
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.chest import Chest
    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "chest-ease"
LEAST = 40.0  # mm: the smallest published ease of a woven block
MOST = 0.8  # of the chest: beyond it a formula has a wrong basis


@rule(
    code=CODE,
    title="The garment is at least 4 cm larger than the chest, and not nearly twice as large",
    why="With less ease than breathing takes a woven garment splits; with far too much, a formula used "
    "the wrong measurement, half a girth for a whole one, or the wrong unit.",
    source="full ease of 4, 5 or 6 cm by size in a flat block (Les Petits Anglais 2009/11) to 24 cm in a "
    "shirt (children's clothes, boy's shirt); the upper limit is common practice, no source",
)
def chest_ease(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Bodies narrower at the underarm than the chest (error), or with unusual ease (warning)."""
    worn, chest = chest_as_worn(pattern), girth(pattern, "chest")
    if worn is None or chest is None:
        return
    given = stretch(pattern, circumstances)
    reach = worn.length * (1 + given)
    least = 0.0 if given > 0 else LEAST
    most = inf if worn.is_gathered else chest * (1 + MOST)
    if not chest + least <= reach <= most:
        yield _problem(worn, reach, chest, least)


def _problem(worn: Chest, reach: float, chest: float, least: float) -> Problem:
    most = chest * (1 + MOST)
    return found(
        CODE,
        say(
            'The garment is {reach} round at the underarm (piece "{piece}" and those beside it); the '
            "chest is {chest}, and {least} to {most} is wearable.",
            reach=cm(reach),
            piece=worn.piece.name,
            chest=on_tape(chest),
            least=on_tape(chest + least),
            most=on_tape(most),
        ),
        say("Look at the formula of the width: a quarter of the full girth, and ease."),
        place=on_piece(worn.piece),
        numbers=(mm("garment", reach), mm("chest", chest), mm("least", chest + least), mm("most", most)),
        severity=Severity.ERROR if reach < chest else Severity.WARNING,
    )
