"""What can be wrong with the outlines of a piece, in words."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.pattern.allowance import width
from littlefold.problem import Measured, Number, Place, Problem, Saying, Severity, say

if TYPE_CHECKING:
    from littlefold.draft.model import DraftEdge, DraftPiece
    from littlefold.geometry import Point
    from littlefold.pattern.corner import Corner

_INSTEAD = say("A plain margin is drawn instead.")


def piece_place(piece: DraftPiece, edge: str | None = None) -> Place:
    """Where a piece, or an edge of it, stands in the recipe and on the pattern."""
    return replace(piece.place or Place(), piece=piece.name, edge=edge)


def _told(
    code: str, what: Saying, cure: Saying, place: Place, *numbers: Number, severity: Severity = Severity.ERROR
) -> Problem:
    said = (what, cure)
    return Problem(code, " ".join(map(str, said)), severity, place, numbers, cure=str(cure), said=said)


def stitch_crosses(piece: DraftPiece, at: Point) -> Problem:
    """The stitch outline is no simple shape, so it has no inside to add an allowance to; it meets itself at a point."""
    edge = min(piece.edges, key=lambda one: one.path.distance(at))
    return _told(
        "stitch-line-crosses",
        say(
            "The stitch line of {piece} crosses or touches itself {x} to the right and {y} up from the origin of its "
            "drawing, on the edge {edge}; it may do so 0 times. {instead}",
            piece=piece.title,
            x=Measured(at.x),
            y=Measured(at.y),
            edge=edge.name,
            instead=_INSTEAD,
        ),
        say(
            "List the edges once round, counter-clockwise, and draw them so that they meet at their ends only."
        ),
        piece_place(piece, edge.name),
        Number("x", at.x),
        Number("y", at.y),
        Number("allowed", 0, "count"),
    )


def too_tight(piece: DraftPiece, edge: DraftEdge) -> Problem:
    """A hollow is narrower than its allowance is wide."""
    return _told(
        "hollow-narrower-than-allowance",
        say(
            "On {piece}, the edge {edge} bends so tightly that an allowance of {allowance} has no room beside it. {instead}",
            piece=piece.title,
            edge=edge.name,
            allowance=Measured(width(edge)),
            instead=_INSTEAD,
        ),
        say("Make the allowance smaller or the curve rounder."),
        piece_place(piece, edge.name),
        Number("allowance", width(edge)),
        Number("edge", edge.path.length()),
    )


def corners_overlap(piece: DraftPiece, edge: DraftEdge, overlap: float) -> Problem:
    """The corners at both ends of an edge leave nothing of its cutting line."""
    long = edge.path.length()
    return _told(
        "corners-overlap",
        say(
            "On {piece}, the edge {edge} is {length} long, but the corners at its ends leave nothing of its cutting "
            "line: they overlap by {overlap}. {instead}",
            piece=piece.title,
            edge=edge.name,
            length=Measured(long),
            overlap=Measured(overlap),
            instead=_INSTEAD,
        ),
        say("Make the edge longer or the allowances of its neighbours smaller."),
        piece_place(piece, edge.name),
        Number("edge", long),
        Number("overlap", overlap),
    )


def cut_crosses(piece: DraftPiece) -> Problem:
    """The cutting line is no simple shape round the stitch line."""
    widest = max(width(edge) for edge in piece.edges)
    return _told(
        "cutting-line-crosses",
        say(
            "The cutting line of {piece} crosses itself or its stitch line: an edge bends or ends too sharply for its "
            "allowance (the widest is {widest}). {instead}",
            piece=piece.title,
            widest=Measured(widest),
            instead=_INSTEAD,
        ),
        say("Make the allowances smaller or the shape rounder."),
        piece_place(piece),
        Number("widest allowance", widest),
    )


def short_neighbours(piece: DraftPiece, corners: tuple[Corner, ...]) -> tuple[Problem, ...]:
    """Hems deeper than the edges beside them are long; `corners` has the corner after each edge."""
    following = [*piece.edges[1:], piece.edges[0]]
    found = zip(piece.edges, following, corners, strict=True)
    return tuple(_short(piece, before, after) for before, after, corner in found if corner.short)


def _short(piece: DraftPiece, before: DraftEdge, after: DraftEdge) -> Problem:
    deep = max(width(before), width(after))
    long = min(before.path.length(), after.path.length())
    return _told(
        "hem-deeper-than-its-neighbour",
        say(
            "On {piece}, at the corner of {before} and {after}, the turned cloth is {deep} deep, but the edge it is "
            "turned over is only {long} long.",
            piece=piece.title,
            before=before.name,
            after=after.name,
            deep=Measured(deep),
            long=Measured(long),
        ),
        say("Choose a smaller depth."),
        piece_place(piece, before.name),
        Number("depth", deep),
        Number("edge", long),
        severity=Severity.WARNING,
    )


def unfoldable(piece: DraftPiece, folds: int) -> Problem:
    """The piece has several folds, or a curved one."""
    one = folds == 1
    why = say("its fold is not a straight line") if one else say("it has {folds} folds", folds=folds)
    return _told(
        "fold-not-straight" if one else "several-folds",
        say(
            "{piece} cannot be unfolded: {why}. Cloth is folded once, along a straight line.",
            piece=piece.title,
            why=why,
        ),
        say("Give the piece one straight edge on the fold."),
        piece_place(piece),
        Number("folds", folds, "count"),
    )
