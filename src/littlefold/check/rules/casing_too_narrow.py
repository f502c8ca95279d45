"""A casing is wide enough for its elastic."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.notions import belongs_at, elastics, width_said
from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.check.roles import role_of
from littlefold.draft.model import EdgeKind
from littlefold.problem import say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftEdge, Notion
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "casing-too-narrow"
PLAY: Final = 6.35  # mm, 1/4 in: 1/2 in elastic in a casing of 3/4 in


@rule(
    code=CODE,
    title="A casing is 1/4 in wider than its elastic",
    why="In a tight casing the elastic rolls over and does not slide when it is threaded.",
    source=COMMON_PRACTICE + " (1/2 in elastic needs 3/4 in)",
)
def casing_too_narrow(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Casings narrower than the width named in the remark of their elastic, and 1/4 in."""
    for notion in elastics(pattern):
        width = width_said(notion)
        for piece in pattern.pieces if width else ():
            for edge in piece.edges:
                if edge.kind is EdgeKind.CASING and belongs_at(notion, role_of(piece, edge)):
                    yield from _judged(piece, edge, notion, width)


def _judged(piece: Piece, edge: DraftEdge, notion: Notion, width: float) -> Iterator[Problem]:
    if edge.allowance < width + PLAY:
        yield found(
            CODE,
            say(
                'The casing "{edge}" of the piece "{piece}" is {allowance} deep; the {notion} is {width} '
                "wide and needs {needed}.",
                edge=edge.name,
                piece=piece.name,
                allowance=cm(edge.allowance),
                notion=say(notion.name.replace("_", " ")),
                width=cm(width),
                needed=cm(width + PLAY),
            ),
            say("Make the casing deeper or the elastic narrower."),
            place=on_piece(piece, edge.name),
            numbers=(mm("casing", edge.allowance), mm("elastic", width), mm("needed", width + PLAY)),
        )
