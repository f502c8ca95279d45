"""A stretched elastic lets the body through."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.body import PASSED_OVER, passed_over
from littlefold.check.notions import elastics, place_of, relaxed
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece, on_tape
from littlefold.check.worn import opening
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.check.roles import Role
    from littlefold.draft.model import Notion
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "elastic-reach"
STRETCHED: Final = 2.0  # times its relaxed length: what a braided or knitted elastic gives


@rule(
    code=CODE,
    title="An elastic stretched to twice its length lets head, hip, fist or foot through",
    why="An elastic that is at its end before the head is through hurts, and tears out of its casing.",
    source=COMMON_PRACTICE,
)
def elastic_reach(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Openings that are smaller than the girth that must pass when their elastic is stretched to twice its length."""
    for notion in elastics(pattern):
        role = place_of(pattern, notion)
        if role is not None:
            yield from _judged(pattern, notion, role)


def _judged(pattern: Pattern, notion: Notion, role: Role) -> Iterator[Problem]:
    around, body = opening(pattern, role), passed_over(pattern, role)
    if around is None or body is None or around.slits > 0:
        return
    reach = around.drawn_in_to(min(STRETCHED * relaxed(notion, role), around.drawn))
    if reach >= body:
        return
    piece, edge = around.parts[0]
    yield found(
        CODE,
        say(
            "With the {notion} stretched to twice its length the {role} opening is {reach}; {body_part} "
            "is {body}.",
            notion=say(notion.name.replace("_", " ")),
            role=say(role.value),
            reach=cm(reach),
            body_part=say(PASSED_OVER[role][1]),
            body=on_tape(body),
        ),
        say(
            "Cut the elastic {longer} longer, or make the casing wider.",
            longer=cm((body - reach) / STRETCHED),
        ),
        place=on_piece(piece, edge.name),
        numbers=(mm("stretched", reach), mm(PASSED_OVER[role][0], body)),
    )
