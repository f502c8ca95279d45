"""How much is sewn: the seams and edges of a pattern as lengths of stitching."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.lay.thread import SewnLength

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.draft.model import EdgeRef
    from littlefold.pattern.model import Pattern, Piece, Seam

# Edges that are stitched once on their own; the other kinds are in seams, on folds, or left raw.
STITCHED_EDGES = ("hem", "casing", "bound", "faced", "button")


def sewn_lengths(
    pattern: Pattern, joining: str = "301", finishing: str | None = "304"
) -> tuple[SewnLength, ...]:
    """All stitching of a garment [mm], by ISO 4915 class.

    Every seam is sewn once by `joining`, and the cut edges of both its sides once by `finishing` (None: not
    finished).  Hems, casings, bindings and facings are stitched once.  A seam on a half piece, or on a pair, counts
    on both sides of the body.
    """
    return tuple(_seams(pattern, joining, finishing)) + tuple(_edges(pattern, joining))


def _seams(pattern: Pattern, joining: str, finishing: str | None) -> Iterator[SewnLength]:
    for seam in pattern.seams:
        times = _times(pattern, seam)
        shorter = min(seam.first_length, seam.second_length)
        yield SewnLength(joining, shorter * times)
        if finishing is not None:
            yield SewnLength(finishing, (seam.first_length + seam.second_length) * times)


def _times(pattern: Pattern, seam: Seam) -> float:
    """How often a seam is on the body: as often as the side that is there less often.

    A piece sewn to itself, such as the two halves of a collar, uses two of its layers for each seam.
    """
    first, second = _layers(pattern, seam.first), _layers(pattern, seam.second)
    to_itself = {ref.piece for ref in seam.first} == {ref.piece for ref in seam.second}
    return first / 2 if to_itself else min(first, second)


def _layers(pattern: Pattern, run: tuple[EdgeRef, ...]) -> int:
    return min(pattern.piece(ref.piece).cutting.layers for ref in run)


def _edges(pattern: Pattern, joining: str) -> Iterator[SewnLength]:
    for piece in pattern.pieces:
        for length in _stitched(piece):
            yield SewnLength(joining, length * piece.cutting.layers)


def _stitched(piece: Piece) -> Iterator[float]:
    return (edge.path.length() for edge in piece.edges if edge.kind in STITCHED_EDGES)
