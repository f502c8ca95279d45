"""A collar is as long as the neck it is sewn to, less the gap at the closing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.check.roles import Role, is_collar, role_of
from littlefold.check.worn import opening
from littlefold.draft.model import EdgeKind
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "collar-length"
GAP = 25.0  # mm: how much shorter a collar may be where the neck closes
OVER = 5.0  # mm: how much longer it may be, eased in


@rule(
    code=CODE,
    title="A collar is as long as the neck, less at most 2.5 cm for the closing",
    why="A short collar gapes at the front, a long one laps over and stands off.",
    source="trueing rule 7, collar length is the neck less the closing gap; a collar smaller than "
    "drafted (AKrams Ideas); the limits are common practice, no source",
)
def collar_length(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Collars whose neck edge is not as long as the neck as worn."""
    neck = opening(pattern, Role.NECK)
    if neck is None:
        return
    for piece in pattern.pieces:
        for edge in piece.edges if is_collar(piece) else ():
            length = edge.path.length() * (2 if piece.cutting.on_fold or piece.cutting.pair else 1)
            off = length - neck.closed
            if _is_neck_edge(piece, edge) and not -GAP <= off <= OVER:
                yield _problem(piece, edge, length, neck.closed)


def _is_neck_edge(piece: Piece, edge: DraftEdge) -> bool:
    return role_of(piece, edge) is Role.NECK and edge.kind is not EdgeKind.FOLD


def _problem(piece: Piece, edge: DraftEdge, length: float, neck: float) -> Problem:
    return found(
        CODE,
        say(
            'The edge "{edge}" of the collar "{piece}" is {length} long as worn; the neck is {neck}, and '
            "a collar may be {gap} shorter or {over} longer.",
            edge=edge.name,
            piece=piece.name,
            length=cm(length),
            neck=cm(neck),
            gap=cm(GAP),
            over=cm(OVER),
        ),
        say("Draw the collar on the neck of front and back laid together at the shoulder."),
        place=on_piece(piece, edge.name),
        numbers=(mm("collar", length), mm("neck", neck)),
        severity=Severity.WARNING,
    )
