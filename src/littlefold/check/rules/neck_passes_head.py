"""The neck opening passes over the head."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.body.girths_by_age import P97, widest_head
from littlefold.body.measurements import Origin
from littlefold.body.proportions import proportions
from littlefold.check.body import girth, stature
from littlefold.check.register import rule
from littlefold.check.report import cm, estimate, found, mm, on_piece, on_tape, part
from littlefold.check.roles import Role
from littlefold.check.stretch import stretch
from littlefold.check.worn import opening
from littlefold.problem import Number, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.check.worn import Opening
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem, Saying

CODE = "neck-passes-head"
# These do not go over the head: they open, hang from the waist, or are laid on.
_NOT_OVER_HEAD: Final = frozenset(
    {"bib", "trousers", "skirt", "nappy_cover", "hat", "collar", "bloomers", "drawers"}
)


@rule(
    code=CODE,
    title="The neck opening, with its slits and buttons undone, passes over the head",
    why="A garment that sticks on the head frightens a small child, and the front has to be cut open.",
    source="opening at least the head girth, else a placket of half the difference (Zollege, placket "
    "length criteria); a stretch garment copied in woven cloth would not go over the head (Belgina 2014)",
)
def neck_passes_head(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Necks that are smaller than the head even when stretched and undone; for a block this is a note.

    Where the head was not measured, the widest that is likely has to pass: references differ by 2 cm.
    """
    neck, head = opening(pattern, Role.NECK), girth(pattern, "head")
    if neck is None or head is None or pattern.draft.garment in _NOT_OVER_HEAD:
        return
    reach, widest = neck.opened * (1 + stretch(pattern, circumstances)), max(head, _widest(pattern))
    if reach < head:
        severity = Severity.NOTE if pattern.draft.garment == "block" else Severity.ERROR
        yield _problem(neck, reach, widest, say("the head is {head}", head=on_tape(head)), severity)
    elif reach < widest and pattern.draft.garment != "block":
        said = say(
            "the head was not measured, and one of 33 such children has {widest} or more",
            widest=estimate(widest),
        )
        yield _problem(neck, reach, widest, said, Severity.WARNING)


def _widest(pattern: Pattern) -> float:
    """The widest head that is likely where nobody measured it [mm]; nothing where it was measured."""
    body = pattern.draft.measurements
    reading = body.get("head")
    if reading is None or reading.origin is Origin.GIVEN:
        return 0.0
    age, tall = body.age_months, stature(pattern)
    if age is None and tall is not None:
        age = proportions()["age"].median(tall)
    return reading.mm + P97 * reading.spread_mm if age is None else widest_head(age, body.sex)


def _problem(neck: Opening, reach: float, head: float, said: Saying, severity: Severity) -> Problem:
    placket, more = (head - reach) / 2, head / neck.opened - 1
    piece, edge = neck.parts[0]
    cure = "Measure the head, or add" if severity is Severity.WARNING else "Add"
    return found(
        CODE,
        say(
            'The neck opening is {reach} as worn, with everything undone (edge "{edge}" of the piece '
            '"{piece}" and those beside it); {head}.',
            reach=cm(reach),
            edge=edge.name,
            piece=piece.name,
            head=said,
        ),
        say(
            "{cure} a placket of {placket}, half the difference, or a cloth that stretches by {stretch}.",
            cure=say(cure),
            placket=cm(placket),
            stretch=part(more),
        ),
        place=on_piece(piece, edge.name),
        numbers=(
            mm("opening", reach),
            mm("head", head),
            mm("placket", placket),
            Number("stretch", more, "ratio"),
        ),
        severity=severity,
    )
