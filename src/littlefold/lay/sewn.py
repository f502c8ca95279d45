"""How much is sewn: the seams and edges of a pattern as lengths of stitching, and the thread that takes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.lay.thread import STITCHES, SewnLength, no_such_stitch, thread_length
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.draft.model import EdgeRef
    from littlefold.pattern.model import Pattern, Piece, Seam

# Edges that are stitched once on their own; the other kinds are in seams, on folds, or left raw.
STITCHED_EDGES = ("hem", "casing", "bound", "faced", "button")


@dataclass(frozen=True, slots=True)
class Stitching:
    """How a garment is sewn, by ISO 4915 class.

    Attributes:
        joining: The stitch of its seams, hems, casings, bindings and facings.
        finishing: The stitch over the cut edges of the seams; None where they are left as they are.
    """

    joining: str = "301"
    finishing: str | None = "304"


USUAL = Stitching()
"""What a household machine does: lockstitch, the edges in zigzag; common practice, no source."""


def read_stitching(text: str) -> Stitching | Problem:
    """The class of the seams and that of their cut edges, such as `301+504`; `301` alone leaves the edges as they are."""
    joining, plus, finishing = (part.strip() for part in text.partition("+"))
    for number in (joining, finishing) if plus else (joining,):
        if number not in STITCHES:
            return no_such_stitch(number)
    return Stitching(joining, finishing or None)


def thread_of(pattern: Pattern, stitching: Stitching = USUAL) -> float:
    """The thread that a garment takes, with waste [mm]."""
    thread = thread_length(sewn_lengths(pattern, stitching))
    assert not isinstance(thread, Problem), "only known stitches are chosen"  # noqa: S101 - our own mistake
    return thread


def sewn_lengths(pattern: Pattern, stitching: Stitching = USUAL) -> tuple[SewnLength, ...]:
    """All stitching of a garment [mm], by ISO 4915 class.

    Every seam is sewn once, and the cut edges of both its sides are finished once.  Hems, casings, bindings and facings
    are stitched once.  A seam on a half piece, or on a pair, counts on both sides of the body.
    """
    seams = _seams(pattern, stitching.joining, stitching.finishing)
    return (*seams, *_edges(pattern, stitching.joining))


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
