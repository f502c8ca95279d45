"""How long a line is as drawn, and how long an opening is as worn.

An opening goes round the body: a neckline runs over front and back, a cuff over one sleeve, the hem of a trouser
leg over its front and back.  The pieces stand on paper as halves (on the fold), as one of a pair, or once for several
copies.  So every piece is taken as all its parts as cut, left and right of each copy, and these hang together where an
edge of the opening ends at

    a fold              left and right half of the piece
    a button edge       left and right of the pair, less what they lap
    a seam              the same side of both pieces; left and right where an edge is sewn to its own mirror image;
                        one copy and the next where a piece is sewn to itself, unless the edge goes round a limb (by the
                        words of its name): a sleeve cut twice is closed to a tube, a skirt cut twice goes round

What hangs together is one part of the opening.  Parts that are not alike are added (the neck of a top whose front and
back do not touch there); of copies (a yoke and its lining) one is taken, and of mirror images (two cuffs) too, unless
the edge goes round the body once, by the words of its name: both fronts of a jacket count in its neck.  `times_round`
is this rule; what a recipe calls `round of` and what the checks measure both follow it.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Protocol

from littlefold.draft.desk import FOLLOWS
from littlefold.draft.model import Cutting, DraftEdge, DraftPiece, DraftSeam, EdgeKind, EdgeRef, Inside
from littlefold.draft.refusal import Missing
from littlefold.draft.roles import LIMBS, ONCE, Named, role_of
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.problem import say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from littlefold.draft.desk import Desk

Part = tuple[str, str, int]
"""A piece, its side (`left`, `right`, or `` for a piece that is cut whole) and which copy."""

Edge = tuple[str, str]
"""The names of a piece and of an edge of it."""

Partners = Mapping[Edge, tuple[Edge, ...]]


class Sewn(Named, Protocol):
    """A piece, as drafted or as traced."""

    @property
    def cutting(self) -> Cutting:
        """How often and how it is cut."""


class SewnTogether(Protocol):
    """A seam, as drafted or as measured: the edges of its two runs."""

    @property
    def first(self) -> tuple[EdgeRef, ...]:
        """The first run."""

    @property
    def second(self) -> tuple[EdgeRef, ...]:
        """The second run."""


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
            raise _without_edge(name, desk)
    return girth_as_worn(desk.pieces.values(), desk.seams, texts)


def _without_edge(name: tree.Name, desk: Desk) -> Missing:
    """The refusal of an edge that no piece has; where its line or its piece failed, that was told already."""
    if desk.lost_piece or "piece" in desk.unread or desk.has_failed(name.text):
        return Missing(FOLLOWS, f"{name} could not be made.", name.spot)
    known = ", ".join(sorted({edge.name for piece in desk.pieces.values() for edge in piece.edges}))
    return Missing(
        "edge-not-known",
        say(
            'no piece has an edge "{name}" yet. Edges so far: {known}. State the piece first.',
            name=str(name),
            known=known or say("none"),
        ),
        name.spot,
    )


def girth_as_worn(pieces: Iterable[DraftPiece], seams: Iterable[DraftSeam], names: tuple[str, ...]) -> float:
    """The length of the opening made of all edges of the given names [mm]; 0 where there is none.

    Args:
        pieces: All pieces; strips and facings count only where an edge is named with its piece (`band.top`).
        seams: All seams.
        names: Names of edges, with or without their piece.
    """
    places = list(_places(pieces, names))
    counted = zip(places, times_round(places, seams), strict=True)
    return sum(_length_of(piece, index, times) for (piece, index), times in counted)


def times_round(places: Sequence[tuple[Sewn, int]], seams: Iterable[SewnTogether]) -> tuple[int, ...]:
    """How often each edge of an opening is counted when it is worn: the rule at the head of this file.

    Args:
        places: The pieces, and the indices of the edges that make the opening.
        seams: All seams.
    """
    groups = _hung_together(places, _partners(seams))
    goes_once = all(role_of(piece, piece.edges[index]) in ONCE for piece, index in places)
    kept = {_likeness(group, mirrored=not goes_once): group for group in groups}.values()
    return tuple(sum(part[0] == piece.name for group in kept for part in group) for piece, _ in places)


def _likeness(group: frozenset[Part], *, mirrored: bool) -> frozenset[tuple[Edge, ...]]:
    """What a group and its copies, and its mirror image if that is wanted, have in common: one of them is counted."""
    own = sorted((piece, side) for piece, side, _ in group)
    mirror = sorted((piece, MIRRORED[side]) for piece, side in own)
    return frozenset((tuple(own), tuple(mirror))) if mirrored else frozenset((tuple(own),))


MIRRORED = {"left": "right", "right": "left", "": ""}


def _places(pieces: Iterable[DraftPiece], names: tuple[str, ...]) -> Iterator[tuple[DraftPiece, int]]:
    """The pieces and indices of all edges of the given names."""
    for piece in pieces:
        for index, edge in enumerate(piece.edges):
            alone = edge.name in names and piece.made_as == "traced"
            if alone or f"{piece.name}.{edge.name}" in names:
                yield piece, index


def _parts(piece: Sewn) -> tuple[Part, ...]:
    cutting = piece.cutting
    sides = ("left", "right") if cutting.on_fold or cutting.pair else ("",)
    copies = cutting.count // 2 if cutting.pair else cutting.count
    return tuple((piece.name, side, copy) for copy in range(max(1, copies)) for side in sides)


def _hung_together(places: Sequence[tuple[Sewn, int]], partners: Partners) -> list[frozenset[Part]]:
    parts = {piece.name: _parts(piece) for piece, _ in places}
    groups = [frozenset((part,)) for own in parts.values() for part in own]
    for piece, index in places:
        is_limb = role_of(piece, piece.edges[index]) in LIMBS
        for neighbour in (index - 1, (index + 1) % len(piece.edges)):
            for one, other in _ties(piece, piece.edges[neighbour], partners, parts, is_limb=is_limb):
                groups = _united(groups, one, other)
    return groups


def _ties(
    piece: Sewn, edge: DraftEdge, partners: Partners, parts: Mapping[str, tuple[Part, ...]], *, is_limb: bool
) -> Iterator[tuple[Part, Part]]:
    """The parts that an edge at the end of an opening ties together."""
    own = parts[piece.name]
    if edge.kind in {EdgeKind.FOLD, EdgeKind.BUTTON}:
        yield from _mirrored(own)
        return
    for partner, partner_edge in partners.get((piece.name, edge.name), ()):
        if (partner, partner_edge) == (piece.name, edge.name):
            yield from _mirrored(own)
        if partner != piece.name:
            yield from _beside(own, parts.get(partner, ()))
        elif not is_limb:
            yield from _next(own)


def _mirrored(own: tuple[Part, ...]) -> Iterator[tuple[Part, Part]]:
    """Left and right of each copy."""
    return ((part, (part[0], MIRRORED[part[1]], part[2])) for part in own if part[1])


def _next(own: tuple[Part, ...]) -> Iterator[tuple[Part, Part]]:
    """Each copy and the one after it, on the same side."""
    return ((one, other) for one in own for other in own if one[1] == other[1] and one[2] + 1 == other[2])


def _beside(own: tuple[Part, ...], others: tuple[Part, ...]) -> Iterator[tuple[Part, Part]]:
    """The same side of two pieces, a piece cut whole on both; copy by copy, or all where one has more copies."""
    alike = {part[2] for part in own} == {part[2] for part in others}
    return (
        (one, other)
        for one in own
        for other in others
        if (one[1] == other[1] or "" in {one[1], other[1]}) and (one[2] == other[2] or not alike)
    )


def _partners(seams: Iterable[SewnTogether]) -> Partners:
    """The edges that each edge is sewn to."""
    found: dict[Edge, tuple[Edge, ...]] = {}
    for seam in seams:
        for run, other in ((seam.first, seam.second), (seam.second, seam.first)):
            beside = tuple((ref.piece, ref.edge) for ref in other)
            for ref in run:
                found[ref.piece, ref.edge] = (*found.get((ref.piece, ref.edge), ()), *beside)
    return found


def _united(groups: list[frozenset[Part]], one: Part, other: Part) -> list[frozenset[Part]]:
    """The groups with those of two parts put together, where both parts are there."""
    first = next((group for group in groups if one in group), None)
    second = next((group for group in groups if other in group), None)
    if first is None or second is None or first is second:
        return groups
    return [group for group in groups if group is not first and group is not second] + [first | second]


def _laps(piece: DraftPiece, index: int) -> float:
    """What the button edges beside an edge take from the opening."""
    count = len(piece.edges)
    return sum(
        piece.edges[i % count].lap
        for i in (index - 1, index + 1)
        if piece.edges[i % count].kind is EdgeKind.BUTTON
    )


def _length_of(piece: DraftPiece, index: int, times: int) -> float:
    """What an edge adds to an opening in which it is counted so often, slits undone [mm]."""
    edge = piece.edges[index]
    slits = (_opened(slit, piece, times) for slit in piece.inside if slit.edge == edge.name)
    return times * (edge.sewn_length - _laps(piece, index)) + sum(slits)


def _opened(slit: Inside, piece: DraftPiece, times: int) -> float:
    """What a slit adds: both its sides; one slit for two halves where it lies on the fold, one in each elsewhere."""
    if slit.kind not in OPENED or times == 0:
        return 0.0
    folds = [edge.path for edge in piece.edges if edge.kind is EdgeKind.FOLD]
    ends = (slit.path.start, slit.path.end)
    on_fold = any(all(fold.distance(end) <= SAME_POINT for end in ends) for fold in folds)
    return 2 * slit.path.length() * (max(1, times // 2) if on_fold else times)
