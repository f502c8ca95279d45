"""An edge is sewn once."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.check.roles import words_of
from littlefold.problem import Number, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern, Piece, Seam
    from littlefold.problem import Problem

CODE = "edge-sewn-twice"
# Pieces that are caught in a seam between two others, or laid on its inside.
_LAYERS: Final = frozenset(
    {
        "facing",
        "lining",
        "interfacing",
        "collar",
        "binding",
        "bias",
        "frill",
        "ruffle",
        "tape",
        "tie",
        "strap",
        "stay",
    }
)


@rule(
    code=CODE,
    title="An edge is sewn to one partner, layers such as facings and collars not counted",
    why="An edge in two seams was mostly named in one of them by mistake, and its true partner is left over.",
    source=COMMON_PRACTICE,
)
def edge_sewn_twice(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Edges that more than one seam joins to a piece that is no layer."""
    for piece in pattern.pieces:
        for edge in piece.edges:
            sewn = pattern.seams_of(piece.name, edge.name)
            seams = [seam for seam in sewn if len(sewn) > 1 and not _joins_layer(pattern, seam, piece)]
            if len(seams) > 1:
                yield _problem(piece, edge, len(seams))


def _joins_layer(pattern: Pattern, seam: Seam, piece: Piece) -> bool:
    """Whether a seam joins a piece to layers only, or is one of its own as a layer."""
    names = {ref.piece for ref in (*seam.first, *seam.second)} - {piece.name}
    return _is_layer(piece) or any(_is_layer(pattern.piece(name)) for name in names)


def _is_layer(piece: Piece) -> bool:
    return piece.cloth in {"lining", "interfacing"} or not _LAYERS.isdisjoint(words_of(piece.name))


def _problem(piece: Piece, edge: DraftEdge, count: int) -> Problem:
    return found(
        CODE,
        say(
            'The edge "{edge}" of the piece "{piece}", {length} long, is sewn in {count} seams; 1 is usual.',
            edge=edge.name,
            piece=piece.name,
            length=cm(edge.path.length()),
            count=count,
        ),
        say("Look whether one of the seams means another edge."),
        place=on_piece(piece, edge.name),
        numbers=(Number("seams", count, "count"), mm("length", edge.path.length())),
        severity=Severity.WARNING,
    )
