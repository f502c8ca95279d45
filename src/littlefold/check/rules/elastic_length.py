"""An elastic gathers its casing, and holds."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.body import girth
from littlefold.check.notions import elastics, place_of, relaxed
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece, times
from littlefold.check.roles import Role
from littlefold.check.worn import opening
from littlefold.problem import Number, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.check.worn import Opening
    from littlefold.draft.model import Notion
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "elastic-length"
LEAST: Final = 0.55  # of the casing
SLACK: Final = 1.0  # mm: nobody cuts elastic more exactly


@rule(
    code=CODE,
    title="A relaxed elastic is 0.55 to 1 times its casing, and a waist elastic no longer than the waist",
    why="A very short elastic makes a hard roll of gathers; a long one does not hold the garment up.",
    source="0.65 of the opening and not under 0.55 (Little Onion Cloth); waist 21 in, elastic 20 in "
    "(Oliver + S forum, elastic at waist)",
)
def elastic_length(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Elastics outside 0.55 to 1 times their casing when it lies flat, and waist elastics longer than the waist."""
    for notion in elastics(pattern):
        role = place_of(pattern, notion)
        around = None if role is None else opening(pattern, role)
        if around is not None:
            yield from _judged(notion, relaxed(notion, role), around, _most(pattern, role, around))


def _most(pattern: Pattern, role: Role | None, around: Opening) -> float:
    """The longest elastic that still holds [mm]."""
    waist = girth(pattern, "waist")
    if waist is None or role is not Role.WAIST:
        return around.drawn
    return min(around.drawn, waist - around.drawn_in_to(0.0))


def _judged(notion: Notion, length: float, around: Opening, most: float) -> Iterator[Problem]:
    least = min(LEAST * around.drawn, most)
    if least - SLACK <= length <= most + SLACK:
        return
    piece, edge = around.parts[0]
    yield found(
        CODE,
        say(
            'The {notion} is {length} long, {ratio} of its casing of {casing} (edge "{edge}" of the '
            'piece "{piece}"); {least} to {most} works.',
            notion=say(notion.name.replace("_", " ")),
            length=cm(length),
            ratio=times(length / around.drawn),
            casing=cm(around.drawn),
            edge=edge.name,
            piece=piece.name,
            least=cm(least),
            most=cm(most),
        ),
        say("Cut it {right} long, and try it round the child.", right=cm(least if length < least else most)),
        place=on_piece(piece, edge.name),
        numbers=(
            mm("elastic", length),
            mm("casing", around.drawn),
            mm("least", least),
            mm("most", most),
            Number("share", length / around.drawn, "ratio"),
        ),
        severity=Severity.WARNING,
    )
