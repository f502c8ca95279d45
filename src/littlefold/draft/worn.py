"""How long a line is as drawn, and how long an opening is as worn.

An opening goes round the body: a neckline runs over front and back, a cuff over one sleeve, the hem of a trouser
leg over its front and back.  The pieces stand on paper as halves (on the fold) or as one of a pair.  So every
piece is taken as a left and a right half, and the halves hang together where an edge of the opening ends at

    a fold              left and right half of the piece
    a button edge       left and right of the pair, less what they lap
    a seam              the same side of both pieces; left and right where an edge is sewn to its own mirror image

What hangs together is one part of the opening.  Parts that are not each other's mirror image are added (the neck of
a top whose front and back do not touch there); of two mirror images (two cuffs) one is taken.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.model import DraftPiece, DraftSeam, EdgeKind, Inside
from littlefold.draft.refusal import Missing
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from littlefold.draft.desk import Desk

Half = tuple[str, str]
"""A piece and its side: `left`, `right`, or `` for a piece that is cut whole."""

OPENED = ("slit", "placket", "opening")
"""Lines inside a piece that make an opening larger, by twice their length."""


def drawn_length(ref: tree.LineRef, desk: Desk) -> float:
    """The length of a line as drawn [mm]: of a named line, of A-B, of a run, or of an edge of a piece."""
    if isinstance(ref, tree.Name):
        run = desk.run(ref.text)
        if run:
            return sum(drawn_length(part, desk) for part in run)
        edge = _edge(ref.text, desk)
        if edge is not None and ref.text not in desk.lines:
            return edge
    return desk.line(ref).length()


def sewn_length(name: tree.Name, desk: Desk) -> float:
    """The length at which a run, a line or an edge of a piece is sewn [mm]: as drawn, less what is folded away."""
    if name.text in desk.runs:
        return sum(sewn_length(part, desk) for part in desk.runs[name.text])
    return drawn_length(name, desk) - _folded(name, desk)


def _folded(name: tree.Name, desk: Desk) -> float:
    piece, _, edge_name = name.text.rpartition(".")
    if name.text not in desk.lines and piece in desk.pieces:
        return sum(edge.folded for edge in desk.pieces[piece].edges if edge.name == edge_name)
    return desk.folded(name)


def _edge(name: str, desk: Desk) -> float | None:
    """The length of `piece.edge`, or None where there is no such edge."""
    piece, _, edge_name = name.rpartition(".")
    if piece not in desk.pieces:
        return None
    return next((edge.path.length() for edge in desk.pieces[piece].edges if edge.name == edge_name), None)


def worn_length(names: tuple[tree.Name, ...], desk: Desk) -> float:
    """The length of an opening as worn [mm], from the pieces and seams stated so far.

    Raises:
        Missing: No piece has an edge of that name.
    """
    edges = tuple(part for name in names for part in desk.edges_of_run(name))
    texts = tuple(name.text for name in edges)
    for name in edges:
        if not any(True for _ in _places(desk.pieces.values(), (name.text,))):
            known = ", ".join(sorted({edge.name for piece in desk.pieces.values() for edge in piece.edges}))
            raise Missing(
                "edge-not-known",
                f'no piece has an edge "{name}" yet. Edges so far: {known or "none"}. State the piece first.',
                name.spot,
            )
    return girth_as_worn(desk.pieces.values(), desk.seams, texts)


def girth_as_worn(pieces: Iterable[DraftPiece], seams: Iterable[DraftSeam], names: tuple[str, ...]) -> float:
    """The length of the opening made of all edges of the given names [mm]; 0 where there is none.

    Args:
        pieces: All pieces; strips and facings count only where an edge is named with its piece (`band.top`).
        seams: All seams.
        names: Names of edges, with or without their piece.
    """
    places = list(_places(pieces, names))
    parts = {_one_of_two(group): group for group in _hung_together(places, list(seams))}
    return sum(_length_of(group, places) for group in parts.values())


MIRRORED = {"left": "right", "right": "left", "": ""}


def _one_of_two(group: set[Half]) -> frozenset[frozenset[Half]]:
    """What a group and its mirror image have in common, so that one of them is counted."""
    mirror = frozenset((piece, MIRRORED[side]) for piece, side in group)
    return frozenset((frozenset(group), mirror))


def _places(pieces: Iterable[DraftPiece], names: tuple[str, ...]) -> Iterator[tuple[DraftPiece, int]]:
    """The pieces and indices of all edges of the given names."""
    for piece in pieces:
        for index, edge in enumerate(piece.edges):
            alone = edge.name in names and piece.made_as == "traced"
            if alone or f"{piece.name}.{edge.name}" in names:
                yield piece, index


def _halves(piece: DraftPiece) -> tuple[Half, ...]:
    if piece.cutting.on_fold or piece.cutting.pair:
        return ((piece.name, "left"), (piece.name, "right"))
    return ((piece.name, ""),)


def _hung_together(places: list[tuple[DraftPiece, int]], seams: list[DraftSeam]) -> list[set[Half]]:
    groups = [
        {half} for piece in {piece.name: piece for piece, _ in places}.values() for half in _halves(piece)
    ]
    for piece, index in places:
        for neighbour in (index - 1, (index + 1) % len(piece.edges)):
            for one, other in _ties(piece, neighbour, seams):
                groups = _united(groups, one, other)
    return groups


def _ties(piece: DraftPiece, index: int, seams: list[DraftSeam]) -> Iterator[tuple[Half, Half]]:
    """The halves that the edge with this index ties together."""
    edge = piece.edges[index]
    mirror = ((piece.name, "left"), (piece.name, "right"))
    if edge.kind in {EdgeKind.FOLD, EdgeKind.BUTTON}:
        yield mirror
        return
    for partner, partner_edge in _partners(piece.name, edge.name, seams):
        if (partner, partner_edge) == (piece.name, edge.name):
            yield mirror
        for side in ("left", "right", ""):
            yield (piece.name, side), (partner, side)
            yield (piece.name, side), (partner, "")
            yield (piece.name, ""), (partner, side)


def _partners(piece: str, edge: str, seams: list[DraftSeam]) -> Iterator[tuple[str, str]]:
    for seam in seams:
        for run, other in ((seam.first, seam.second), (seam.second, seam.first)):
            if any((ref.piece, ref.edge) == (piece, edge) for ref in run):
                yield from ((ref.piece, ref.edge) for ref in other)


def _united(groups: list[set[Half]], one: Half, other: Half) -> list[set[Half]]:
    """The groups with those of two halves put together, where both halves are there."""
    first = next((group for group in groups if one in group), None)
    second = next((group for group in groups if other in group), None)
    if first is None or second is None or first is second:
        return groups
    return [group for group in groups if group is not first and group is not second] + [first | second]


def _length_of(group: set[Half], places: list[tuple[DraftPiece, int]]) -> float:
    total = 0.0
    for piece, index in places:
        halves = sum(half in group for half in _halves(piece))
        total += halves * (piece.edges[index].sewn_length - _laps(piece, index))
        total += sum(
            _opened(slit, piece, halves) for slit in piece.inside if slit.edge == piece.edges[index].name
        )
    return total


def _laps(piece: DraftPiece, index: int) -> float:
    """What the button edges beside an edge take from the opening."""
    count = len(piece.edges)
    return sum(
        piece.edges[i % count].lap
        for i in (index - 1, index + 1)
        if piece.edges[i % count].kind is EdgeKind.BUTTON
    )


def _opened(slit: Inside, piece: DraftPiece, halves: int) -> float:
    """What a slit adds: both its sides; one slit where it lies on the fold, one in each half elsewhere."""
    if slit.kind not in OPENED:
        return 0.0
    folds = [edge.path for edge in piece.edges if edge.kind is EdgeKind.FOLD]
    ends = (slit.path.start, slit.path.end)
    on_fold = any(all(fold.nearest(end).distance <= SAME_POINT for end in ends) for fold in folds)
    return 2 * slit.path.length() * (min(halves, 1) if on_fold else halves)
