"""From the pattern to pieces for the lay: the only place where the lay knows what a pattern is."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import pi
from typing import TYPE_CHECKING

from littlefold.geometry import Affine, Point, Vector
from littlefold.lay.piece import ON_FOLD, InsideLine, LayPiece
from littlefold.lay.shrink import Treatment
from littlefold.pattern.notch import marks
from littlefold.pattern.unfold import mirror
from littlefold.pattern.wording import INSIDES
from littlefold.problem import Number, Place, Problem

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from littlefold.draft.model import DraftEdge, Inside
    from littlefold.geometry import Path
    from littlefold.lay.cloth import Cloth
    from littlefold.pattern.model import Pattern, Piece

# Curves are flattened to this [mm] before they are laid; scissors do not see it, and the search is faster than
# with the finest flattening.
FLAT = 0.05

# The fold edge must run along the grain to this angle [rad] (0.3 degrees, 1 mm in 200).
ALONG = 0.005

# Mirrored across the grain.
ACROSS = Affine.mirror(Point(0.0, 0.0), Vector(1.0, 0.0))

# The longest edge of a bias piece lies at 45 degrees to the grain to this angle [rad].
BIAS = 0.01


def lay_pieces(pattern: Pattern, cloth: str = "main") -> tuple[tuple[LayPiece, ...], tuple[Problem, ...]]:
    """The pieces of a pattern that are cut from one cloth, numbered in the pattern's order.

    A piece whose fold does not run along its grain cannot lie on a lengthwise fold; it is unfolded and the maker is
    told.
    """
    pieces: list[LayPiece] = []
    problems: list[Problem] = []
    for number, piece in enumerate(pattern.pieces, start=1):
        if piece.cloth != cloth:
            continue
        laid, doubt = _laid(piece, number)
        pieces.append(laid)
        problems += () if doubt is None else (doubt,)
    return tuple(pieces), tuple(problems)


def enlarged(pieces: Sequence[LayPiece], cloth: Cloth) -> tuple[LayPiece, ...]:
    """The pieces as they must be cut: larger by the wash if the cloth is not washed first, else as they are."""
    if cloth.treatment is not Treatment.ENLARGE:
        return tuple(pieces)
    along, across = cloth.shrinkage.cut_length(1.0), cloth.shrinkage.cut_width(1.0)
    return tuple(_stretched(piece, along, across) for piece in pieces)


def _stretched(piece: LayPiece, along: float, across: float) -> LayPiece:
    """A piece stretched along and across the cloth; on the bias both are mixed, as the cloth itself is."""
    turn = Affine.rotation(pi / 4) if piece.bias else Affine.identity()
    wash = turn.then(Affine(along, 0.0, 0.0, across, 0.0, 0.0)).then(turn.inverse())
    return _moved(piece, wash)


def _moved(piece: LayPiece, affine: Affine) -> LayPiece:
    return replace(
        piece,
        ring=tuple(affine.apply(p) for p in piece.ring),
        grain=None if piece.grain is None else (affine.apply(piece.grain[0]), affine.apply(piece.grain[1])),
        match=None if piece.match is None else affine.apply(piece.match),
        notches=tuple((affine.apply(foot), affine.apply(tip)) for foot, tip in piece.notches),
        snips=tuple((affine.apply(start), affine.apply(end)) for start, end in piece.snips),
        insides=tuple(_inside_moved(line, affine) for line in piece.insides),
    )


def _inside_moved(line: InsideLine, affine: Affine) -> InsideLine:
    return replace(line, points=tuple(affine.apply(point) for point in line.points))


def frame(piece: Piece) -> Affine:
    """The map from the paper to the frame of the lay: the grain along x, the way its arrow points; a fold on y = 0.

    A fold that does not run along the grain is left where it comes.
    """
    start, end = piece.grain
    level = Affine.rotation(-(end - start).angle, about=start)
    if not _folds_along(piece, level):
        return level
    fold = _fold(piece)
    down = level.then(Affine.translation(Vector(0.0, -level.apply(fold.start).y)))
    # A half whose fold runs back is not turned end for end, its arrow must point as those of all other pieces do:
    # it is mirrored, which makes no difference as soon as it is unfolded.
    return down if level.apply_vector(fold.end - fold.start).x > 0 else down.then(ACROSS)


def _fold(piece: Piece) -> Path:
    return _fold_edge(piece).path


def _fold_edge(piece: Piece) -> DraftEdge:
    edge = next((edge for edge in piece.edges if edge.kind == "fold"), None)
    assert edge is not None, "a piece on the fold has a fold edge"  # noqa: S101 - our own mistake
    return edge


def _folds_along(piece: Piece, level: Affine) -> bool:
    """Whether a piece lies on a fold that runs along its grain."""
    if not piece.cutting.on_fold:
        return False
    way = level.apply_vector(_fold(piece).end - _fold(piece).start)
    return abs(way.y) <= ALONG * way.length


def _laid(piece: Piece, number: int) -> tuple[LayPiece, Problem | None]:
    """The piece as drawn, or unfolded where its fold does not run along its grain."""
    on_cloth = frame(piece)
    if not piece.cutting.on_fold or _folds_along(piece, on_cloth):
        ring = _ring(piece.outline.cut)
        return _of(piece, number, ring, on_cloth, on_fold=piece.cutting.on_fold), None
    off = abs(on_cloth.apply_vector(_fold(piece).end - _fold(piece).start).angle)
    told = Problem(
        "fold-across-the-grain",
        f'The fold of "{piece.name}" does not run along its grain, so it cannot lie on a lengthwise fold. It is '
        "laid out unfolded.",
        place=Place(piece=piece.name),
        numbers=(Number("angle", off * 180 / pi, "degrees"),),
    )
    laid = _of(piece, number, _ring(piece.unfolded.cut), on_cloth, on_fold=False)
    over = on_cloth.inverse().then(mirror(_fold_edge(piece))).then(on_cloth)
    return _marked_twice(laid, over), told


def _marked_twice(piece: LayPiece, over: Affine) -> LayPiece:
    """An unfolded piece with the marks of its half on the other half too, `over` the fold."""
    other = _moved(piece, over)
    return replace(piece, snips=(*piece.snips, *other.snips), insides=(*piece.insides, *other.insides))


def _of(piece: Piece, number: int, ring: tuple[Point, ...], affine: Affine, *, on_fold: bool) -> LayPiece:
    start, end = piece.grain
    laid = LayPiece(
        name=piece.name,
        ring=ring,
        copies=_copies(piece),
        on_fold=on_fold,
        pair=piece.cutting.pair,
        crossgrain=not on_fold and _is_bias([affine.apply(point) for point in ring]),
        number=number,
        title=piece.title,
        grain=(start, end),
        notches=tuple((notch.foot, notch.foot + notch.outward) for notch in piece.notches),
        snips=tuple(_snips(piece)),
        insides=tuple(_insides(piece)),
    )
    moved = _moved(laid, affine)
    moved = replace(moved, match=moved.matching(0) if moved.notches else None)
    if not on_fold:
        return moved
    ring = tuple(_on_fold(point) for point in moved.ring)
    return replace(moved, ring=ring[::-1] if affine.flips else ring)


def _is_bias(ring: list[Point]) -> bool:
    """Whether the longest edge lies at 45 degrees to the grain: either diagonal of the cloth will do then."""
    edges = [end - start for start, end in pairwise([*ring, ring[0]])]
    longest = max(edges, key=lambda edge: edge.length)
    return abs(longest.angle % (pi / 2) - pi / 4) <= BIAS


def _copies(piece: Piece) -> int:
    """How many are cut in all; a pair of an odd number means so many pairs."""
    count = piece.cutting.count
    return 2 * count if piece.cutting.pair and count % 2 else count


def _snips(piece: Piece) -> Iterator[tuple[Point, Point]]:
    """The lines of all notches, as they stand on the pattern."""
    for notch in piece.notches:
        for line in marks(notch, piece.edge(notch.edge)):
            yield line.start, line.end


def _insides(piece: Piece) -> Iterator[InsideLine]:
    """The lines inside and the points that are marked, as they stand on the pattern."""
    for inside in piece.inside:
        yield InsideLine(_words(inside), inside.path.flatten(FLAT))
    for said, at in piece.marks:
        yield InsideLine(said, (at,))


def _words(inside: Inside) -> str:
    """What a line inside is; of a plain line its own name, if the recipe gave it one."""
    own = "" if "-" in inside.name else inside.name.replace("_", " ")
    return INSIDES[inside.kind] or own


def _on_fold(point: Point) -> Point:
    """A corner of the fold edge, put exactly on the fold."""
    return Point(point.x, 0.0) if abs(point.y) <= ON_FOLD else point


def _ring(path: Path) -> tuple[Point, ...]:
    points = path.flatten(FLAT)
    return points[:-1] if points[0].distance(points[-1]) <= ON_FOLD else points
