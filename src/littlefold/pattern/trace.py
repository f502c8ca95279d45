"""Tracing the pieces off a draft: allowances, notches and seams."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.pattern.model import Pattern, Piece
from littlefold.pattern.notch import notches
from littlefold.pattern.outline import outlines
from littlefold.pattern.run import Surroundings
from littlefold.pattern.seam import measured, pairing
from littlefold.pattern.trouble import piece_place

if TYPE_CHECKING:
    from littlefold.draft.model import Draft, DraftPiece
    from littlefold.pattern.model import Notch
    from littlefold.problem import Problem


def trace(draft: Draft) -> Pattern:
    """The pattern of a draft: every piece with its stitch and cutting line, and the seams, measured.

    Seams of pieces that could not be drafted are left out; the draft says why they are missing.
    """
    around = surroundings(draft)
    pairings = [pairing(seam, around) for seam in around.seams]
    marked = notches(around, pairings)
    traced = [trace_piece(piece, marked[piece.name]) for piece in draft.pieces]
    return Pattern(
        draft=draft,
        pieces=tuple(piece for piece, _ in traced),
        seams=tuple(map(measured, around.seams, pairings)),
        problems=tuple(problem for _, problems in traced for problem in problems),
    )


def trace_sheet(draft: Draft, sheet: str) -> tuple[Piece, ...]:
    """The pieces of one sheet, as in the pattern, for who looks at no other sheet and measures no seam."""
    own = [piece for piece in draft.pieces if piece.sheet == sheet]
    if not own:
        return ()
    around = surroundings(draft)
    marked = notches(around, [pairing(seam, around) for seam in around.seams])
    return tuple(trace_piece(piece, marked[piece.name])[0] for piece in own)


def surroundings(draft: Draft) -> Surroundings:
    """The pieces of a draft with those seams of which every edge is there."""
    pieces = {piece.name: piece for piece in draft.pieces}
    loose = Surroundings(pieces, ())
    seams = tuple(
        s for s in draft.seams if s.first and s.second and all(map(loose.has, (*s.first, *s.second)))
    )
    return replace(loose, seams=seams)


def trace_piece(piece: DraftPiece, marked: tuple[Notch, ...] = ()) -> tuple[Piece, tuple[Problem, ...]]:
    """One piece with its outlines, and what is wrong with them."""
    found = outlines(piece)
    traced = Piece(
        name=piece.name,
        title=piece.title,
        cutting=piece.cutting,
        cloth=piece.cloth,
        edges=piece.edges,
        outline=found.drawn,
        half=found.half,
        grain=piece.grain,
        notches=marked,
        inside=piece.inside,
        marks=piece.marks,
        place=piece_place(piece),
    )
    return traced, found.problems
