"""From the pattern to pieces for the lay: the only place where the lay knows what a pattern is."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import pi
from typing import TYPE_CHECKING

from littlefold.geometry import Affine, Point, Vector
from littlefold.lay.piece import ON_FOLD, LayPiece
from littlefold.lay.shrink import Treatment
from littlefold.problem import Number, Place, Problem

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.geometry import Path
    from littlefold.lay.cloth import Cloth
    from littlefold.pattern.model import Notch, Pattern, Piece

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
        laid = _laid(piece, number)
        if isinstance(laid, Problem):
            problems.append(laid)
            laid = _unfolded(piece, number)
        pieces.append(laid)
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
    )


def _laid(piece: Piece, number: int) -> LayPiece | Problem:
    """The piece as drawn, its grain turned along x; a half with its fold edge on y = 0."""
    start, end = piece.grain
    level = Affine.rotation(-(end - start).angle, about=start)
    if not piece.cutting.on_fold:
        ring = _ring(piece.outline.cut)
        return _of(piece, number, ring, level, on_fold=False)
    fold = next((edge for edge in piece.edges if edge.kind == "fold"), None)
    assert fold is not None, "a piece on the fold has a fold edge"  # noqa: S101 - our own mistake
    way = level.apply_vector(fold.path.end - fold.path.start)
    if abs(way.y) > ALONG * way.length:
        return Problem(
            "fold-across-the-grain",
            f'The fold of "{piece.name}" does not run along its grain, so it cannot lie on a lengthwise fold. It is '
            "laid out unfolded.",
            place=Place(piece=piece.name),
            numbers=(Number("angle", abs(way.angle) * 180 / pi, "degrees"),),
        )
    down = level.then(Affine.translation(Vector(0.0, -level.apply(fold.path.start).y)))
    if way.x < 0:
        # Not turned end for end: its arrow must point as those of all other pieces do.  The half is its own mirror
        # image as soon as it is unfolded.
        down = down.then(ACROSS)
    return _of(piece, number, _ring(piece.outline.cut), down, on_fold=True)


def _unfolded(piece: Piece, number: int) -> LayPiece:
    start, end = piece.grain
    level = Affine.rotation(-(end - start).angle, about=start)
    return _of(piece, number, _ring(piece.unfolded.cut), level, on_fold=False)


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
        match=piece.notches[0].foot if piece.notches else None,
        grain=(start, end),
        notches=tuple(_tick(notch) for notch in piece.notches),
    )
    moved = _moved(laid, affine)
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


def _tick(notch: Notch) -> tuple[Point, Point]:
    """The notch as a short line at the cutting edge's side of the stitch line; 6 mm long."""
    length = 6.0
    return notch.foot, notch.foot + notch.outward.unit() * length


def _on_fold(point: Point) -> Point:
    """A corner of the fold edge, put exactly on the fold."""
    return Point(point.x, 0.0) if abs(point.y) <= ON_FOLD else point


def _ring(path: Path) -> tuple[Point, ...]:
    points = path.flatten(FLAT)
    return points[:-1] if points[0].distance(points[-1]) <= ON_FOLD else points
