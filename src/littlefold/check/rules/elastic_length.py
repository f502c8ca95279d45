"""An elastic gathers its casing, and holds."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.body import girth
from littlefold.check.notions import elastics, place_of
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.check.roles import Role
from littlefold.check.worn import opening
from littlefold.problem import Number, Severity

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.check.worn import Opening
    from littlefold.draft.model import Notion
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "elastic-length"
LEAST: Final = 0.55  # of the opening
MOST_OF_OPENING: Final = 1.0
MOST_OF_WAIST: Final = 1.0


@rule(
    code=CODE,
    title="A relaxed elastic is 0.55 to 1 times its opening, and a waist elastic no longer than the waist",
    why="A very short elastic makes a hard roll of gathers; a long one does not hold the garment up.",
    source="0.65 of the opening and not under 0.55 (Little Onion Cloth); waist 21 in, elastic 20 in "
    "(Oliver + S forum, elastic at waist)",
)
def elastic_length(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Elastics outside 0.55 to 1 times the flat opening, and waist elastics longer than the waist."""
    for notion in elastics(pattern):
        role = place_of(pattern, notion)
        around = None if role is None else opening(pattern, role)
        if around is not None:
            most = _most(pattern, role, around)
            yield from _judged(notion, around, most)


def _most(pattern: Pattern, role: Role | None, around: Opening) -> float:
    waist = girth(pattern, "waist")
    flat = around.closed * MOST_OF_OPENING
    return min(flat, waist * MOST_OF_WAIST) if waist is not None and role is Role.WAIST else flat


def _judged(notion: Notion, around: Opening, most: float) -> Iterator[Problem]:
    length, least = notion.length or 0.0, min(LEAST * around.closed, most)
    if least <= length <= most:
        return
    piece, edge = around.parts[0]
    yield found(
        CODE,
        f"The {notion.name.replace('_', ' ')} is {cm(length)} long, {length / around.closed:.2f} of its "
        "opening of "
        f'{cm(around.closed)} (edge "{edge.name}" of the piece "{piece.name}"); {cm(least)} to {cm(most)} '
        "works.",
        f"Cut it {cm(least if length < least else most)} long, and try it round the child.",
        place=on_piece(piece, edge.name),
        numbers=(
            mm("elastic", length),
            mm("opening", around.closed),
            mm("least", least),
            mm("most", most),
            Number("share", length / around.closed, "ratio"),
        ),
        severity=Severity.WARNING,
    )
