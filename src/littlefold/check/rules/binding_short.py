"""The binding is long enough for all bound edges."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.notions import has_word
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm
from littlefold.check.worn import times
from littlefold.draft.model import EdgeKind

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
    have = sum((notion.length or 0.0) * notion.count for notion in bought)
    need = sum(
        edge.path.length() * times(piece.cutting)
        for piece in pattern.pieces
        for edge in piece.edges
        if edge.kind is EdgeKind.BOUND
    )
    if have < need:
        yield found(
            CODE,
            f"The binding is {cm(have)} long; the bound edges together are {cm(need)}.",
            f"Cut or buy at least {cm(need)}, and something for the joins.",
            numbers=(mm("binding", have), mm("edges", need)),
        )
