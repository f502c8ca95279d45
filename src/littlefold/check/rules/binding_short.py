"""The binding is long enough for all bound edges."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.notions import has_word
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.check.worn import times
from littlefold.draft.model import EdgeKind
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "binding-short"
BINDINGS: Final = frozenset({"bias", "binding"})


@rule(
    code=CODE,
    title="The binding is as long as all bound edges together",
    why="A binding that is stretched to reach draws the neck or the armhole in.",
    source=COMMON_PRACTICE,
)
def binding_short(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Bias or binding in the list of notions that is shorter than the bound edges."""
    bought = [n for n in pattern.draft.notions if has_word(n, BINDINGS) and n.length is not None]
    if not bought:
        return
    bound = [(p, e) for p in pattern.pieces for e in p.edges if e.kind is EdgeKind.BOUND]
    have = sum((notion.length or 0.0) * notion.count for notion in bought)
    need = sum(edge.path.length() * times(piece.cutting) for piece, edge in bound)
    if have < need:
        yield found(
            CODE,
            say(
                "The binding is {have} long; the bound edges together are {need}.",
                have=cm(have),
                need=cm(need),
            ),
            say("Cut or buy at least {need}, and something for the joins.", need=cm(need)),
            place=on_piece(bound[0][0], bound[0][1].name),
            numbers=(mm("binding", have), mm("edges", need)),
        )
