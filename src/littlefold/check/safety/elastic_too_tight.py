"""Elastic does not press."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.body import girth
from littlefold.check.notions import elastics, place_of, relaxed
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm, on_piece, on_tape
from littlefold.check.roles import Role
from littlefold.check.worn import opening
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import Notion
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "elastic-too-tight"
# The least length of a relaxed elastic, over the girth that it lies on: nothing may press on a throat.
_LEAST: Final[Mapping[Role, tuple[str, float]]] = {
    Role.NECK: ("neck", 1.0),
    Role.WAIST: ("waist", 0.8),
    Role.WRIST: ("wrist", 0.9),
    Role.LEG: ("ankle", 0.9),
}
# On these the leg ends at the thigh: thigh less 2 to 3 cm is usual, which is 0.88 of the smallest thighs.
_SHORT_LEGS: Final = frozenset({"bloomers", "nappy_cover", "drawers"})
_THIGH: Final = ("thigh", 0.85)


@rule(
    code=CODE,
    title="Drawn in by a relaxed elastic an opening is no smaller than the neck, 0.8 of the waist, 0.85 of the "
    "thigh, 0.9 of wrist or ankle",
    why="Tight elastic marks the skin and stops the blood; at the neck it presses on the throat.",
    source=COMMON_PRACTICE + "; a thin child's waist elastic is 0.9 of the waist (Oliver + S forum)",
    safety=True,
)
def elastic_too_tight(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Openings that are drawn in to less than the girth they lie on allows."""
    for notion in elastics(pattern):
        role = place_of(pattern, notion)
        if role is not None and role in _LEAST:
            yield from _judged(pattern, notion, role)


def _judged(pattern: Pattern, notion: Notion, role: Role) -> Iterator[Problem]:
    short = role is Role.LEG and pattern.draft.garment in _SHORT_LEGS
    name, share = _THIGH if short else _LEAST[role]
    body, around = girth(pattern, name), opening(pattern, role)
    if body is None or around is None:
        return
    length = around.drawn_in_to(relaxed(notion, role))
    if length < share * body:
        yield found(
            CODE,
            say(
                "With the {notion} relaxed the {role} is {length} round; the {girth} of the child is {body}, "
                "and it needs {needed}.",
                notion=say(notion.name.replace("_", " ")),
                role=say(role.value),
                length=cm(length),
                girth=say(name),
                body=on_tape(body),
                needed=on_tape(share * body),
            ),
            say(
                "Cut the elastic {longer} longer and try it on the child. {law}",
                longer=cm(share * body - length),
                law=NOT_LEGAL_ADVICE,
            ),
            place=on_piece(around.parts[0][0], around.parts[0][1].name),
            numbers=(mm("relaxed", length), mm(name, body), mm("least", share * body)),
            rule=COMMON_PRACTICE,
        )
