"""What can be wrong with the outlines of a piece, in words."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.pattern.allowance import width
from littlefold.problem import Number, Place, Problem, Severity

if TYPE_CHECKING:
    from littlefold.draft.model import DraftEdge, DraftPiece
    from littlefold.pattern.corner import Corner

_INSTEAD = "A plain margin is drawn instead."


def piece_place(piece: DraftPiece, edge: str | None = None) -> Place:
    """Where a piece, or an edge of it, stands in the recipe and on the pattern."""
    return replace(piece.place or Place(), piece=piece.name, edge=edge)


def stitch_crosses(piece: DraftPiece) -> Problem:
    """The stitch outline is no simple shape, so it has no inside to add an allowance to."""
    cure = "List the edges once round, counter-clockwise, and draw them so that they meet at their ends only."
    return Problem(
        "stitch-line-crosses",
        f"The stitch line of {piece.title} crosses or touches itself. {_INSTEAD} {cure}",
        place=piece_place(piece),
        numbers=(Number("edges", len(piece.edges), "count"),),
        cure=cure,
    )


def too_tight(piece: DraftPiece, edge: DraftEdge) -> Problem:
    """A hollow is narrower than its allowance is wide."""
    cure = "Make the allowance smaller or the curve rounder."
    return Problem(
        "hollow-narrower-than-allowance",
        f"On {piece.title}, the edge {edge.name} bends so tightly that an allowance of {width(edge):.1f} mm"
        f" has no room beside it. {_INSTEAD} {cure}",
        place=piece_place(piece, edge.name),
        numbers=(Number("allowance", width(edge)), Number("edge", edge.path.length())),
        cure=cure,
    )


def corners_overlap(piece: DraftPiece, edge: DraftEdge, overlap: float) -> Problem:
    """The corners at both ends of an edge leave nothing of its cutting line."""
    cure = "Make the edge longer or the allowances of its neighbours smaller."
    long = edge.path.length()
    return Problem(
        "corners-overlap",
        f"On {piece.title}, the edge {edge.name} is {long:.1f} mm long, but the corners at its ends leave"
        f" nothing of its cutting line: they overlap by {overlap:.1f} mm. {_INSTEAD} {cure}",
        place=piece_place(piece, edge.name),
        numbers=(Number("edge", long), Number("overlap", overlap)),
        cure=cure,
    )


def cut_crosses(piece: DraftPiece) -> Problem:
    """The cutting line is no simple shape round the stitch line."""
    cure = "Make the allowances smaller or the shape rounder."
    widest = max(width(edge) for edge in piece.edges)
    return Problem(
        "cutting-line-crosses",
        f"The cutting line of {piece.title} crosses itself or its stitch line: an edge bends or ends too"
        f" sharply for its allowance (the widest is {widest:.1f} mm). {_INSTEAD} {cure}",
        place=piece_place(piece),
        numbers=(Number("widest allowance", widest),),
        cure=cure,
    )


def short_neighbours(piece: DraftPiece, corners: tuple[Corner, ...]) -> tuple[Problem, ...]:
    """Hems deeper than the edges beside them are long; `corners` has the corner after each edge."""
    following = [*piece.edges[1:], piece.edges[0]]
    found = zip(piece.edges, following, corners, strict=True)
    return tuple(_short(piece, before, after) for before, after, corner in found if corner.short)


def _short(piece: DraftPiece, before: DraftEdge, after: DraftEdge) -> Problem:
    cure = "Choose a smaller depth."
    deep = max(width(before), width(after))
    long = min(before.path.length(), after.path.length())
    return Problem(
        "hem-deeper-than-its-neighbour",
        f"On {piece.title}, at the corner of {before.name} and {after.name}, the turned cloth is {deep:.1f}"
        f" mm deep, but the edge it is turned over is only {long:.1f} mm long. {cure}",
        severity=Severity.WARNING,
        place=piece_place(piece, before.name),
        numbers=(Number("depth", deep), Number("edge", long)),
        cure=cure,
    )


def unfoldable(piece: DraftPiece, folds: int) -> Problem:
    """The piece has several folds, or a curved one."""
    cure = "Give the piece one straight edge on the fold."
    one = folds == 1
    return Problem(
        "fold-not-straight" if one else "several-folds",
        f"{piece.title} cannot be unfolded: "
        + ("its fold is not a straight line." if one else f"it has {folds} folds.")
        + f" Cloth is folded once, along a straight line. {cure}",
        place=piece_place(piece),
        numbers=(Number("folds", folds, "count"),),
        cure=cure,
    )
