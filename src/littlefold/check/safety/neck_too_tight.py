"""A closed neck does not press on the throat."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.body import girth
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import NOT_LEGAL_ADVICE, cm, found, mm, on_piece, on_tape
from littlefold.check.roles import Role
from littlefold.check.stretch import stretch
from littlefold.check.worn import opening
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "neck-too-tight"
# A bib and a collar end before they have gone round the neck, and a hat has its edge elsewhere.
_NOT_ROUND_NECK: Final = frozenset({"bib", "collar", "hat"})


@rule(
    code=CODE,
    title="A closed neck is at least as large as the child's neck",
    why="A neckline smaller than the neck presses on the throat; on paper it looks like any other curve.",
    source="neckline at least the neck girth, as a check over surveyed children (Snyder et al. 1977); no "
    "standard "
    "was read",
    safety=True,
)
def neck_too_tight(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Necks that are smaller than the child's neck when they are closed, the stretch of the cloth used up."""
    neck, throat = opening(pattern, Role.NECK), girth(pattern, "neck")
    if neck is None or throat is None or pattern.draft.garment in _NOT_ROUND_NECK:
        return
    reach = neck.closed * (1 + stretch(pattern, circumstances))
    if reach < throat:
        piece, edge = neck.parts[0]
        yield found(
            CODE,
            say(
                'The neck is {reach} round when closed (edge "{edge}" of the piece "{piece}" and those '
                "beside it); the child's neck is {throat}.",
                reach=cm(reach),
                edge=edge.name,
                piece=piece.name,
                throat=on_tape(throat),
            ),
            say(
                "Draw the neck {longer} longer, wider or lower in front. {law}",
                longer=cm(throat - reach),
                law=NOT_LEGAL_ADVICE,
            ),
            place=on_piece(piece, edge.name),
            numbers=(mm("opening", reach), mm("neck", throat)),
            rule=COMMON_PRACTICE,
        )
