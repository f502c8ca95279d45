"""The outlines of a piece, as drawn and unfolded, with what is wrong with them."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.geometry import Path
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.pattern.allowance import width
from littlefold.pattern.cutting_line import closed, strips
from littlefold.pattern.model import Outline
from littlefold.pattern.simple import is_simple, lies_within, widened
from littlefold.pattern.unfold import fold_edges, unfolded_cut, unfolded_stitch
from littlefold.problem import Number, Place, Problem, Severity

if TYPE_CHECKING:
    from littlefold.draft.model import DraftPiece
    from littlefold.pattern.corner import Corner
    from littlefold.pattern.cutting_line import Strip


@dataclass(frozen=True, slots=True)
class Outlines:
    """The outline as drawn, the whole one, and the problems found on the way."""

    drawn: Outline
    whole: Outline
    problems: tuple[Problem, ...]


def outlines(piece: DraftPiece) -> Outlines:
    """Stitch and cutting outline of a piece.

    Where the corners cannot be cut as their rules say, the cutting line is a plain margin all round, as wide
    as the widest allowance, and a problem says so.
    """
    chain, corners = strips(piece.edges)
    stitch = Path.joined(*(edge.path for edge in piece.edges))
    problems = [*_overlaps(piece, chain), *_short_neighbours(piece, corners)]
    cut = closed(chain)
    if cut is not None and not (is_simple(cut) and lies_within(stitch, cut)):
        problems.append(_crossing(piece))
        cut = None
    drawn = Outline(stitch, cut or _plain_margin(piece, stitch))
    whole, more = _whole(piece, chain, drawn, exact=cut is not None)
    return Outlines(drawn, whole, (*problems, *more))


def _plain_margin(piece: DraftPiece, stitch: Path) -> Path:
    return widened(stitch, max(1.0, *(width(edge) for edge in piece.edges)))


def _whole(
    piece: DraftPiece, chain: tuple[Strip, ...], drawn: Outline, *, exact: bool
) -> tuple[Outline, tuple[Problem, ...]]:
    """The unfolded outline; without exact strips it is a plain margin again."""
    folds = fold_edges(piece.edges)
    if not folds:
        return drawn, ()
    if len(folds) > 1 or not folds[0].path.is_straight:
        return drawn, (_unfoldable(piece, len(folds)),)
    stitch = unfolded_stitch(piece.edges, folds[0])
    cut = unfolded_cut(chain, folds[0]) if exact else _plain_margin(piece, stitch)
    return Outline(stitch, cut), ()


def piece_place(piece: DraftPiece, edge: str | None = None) -> Place:
    """Where a piece, or an edge of it, stands in the recipe and on the pattern."""
    return replace(piece.place or Place(), piece=piece.name, edge=edge)


def _overlaps(piece: DraftPiece, chain: tuple[Strip, ...]) -> list[Problem]:
    return [
        Problem(
            "corners-overlap",
            f"On {piece.title}, the edge {strip.edge.name} is {strip.edge.path.length():.1f} mm long, but the"
            f" allowances of its neighbours leave nothing of its cutting line: they overlap by"
            f" {strip.overlap:.1f} mm. A plain margin is drawn instead."
            " Make the edge longer or the allowances of its"
            " neighbours smaller.",
            place=piece_place(piece, strip.edge.name),
            numbers=(Number("edge", strip.edge.path.length()), Number("overlap", strip.overlap)),
            cure="Make the edge longer or the allowances of its neighbours smaller.",
        )
        for strip in chain
        if strip.overlap > SAME_POINT
    ]


def _short_neighbours(piece: DraftPiece, corners: tuple[Corner, ...]) -> list[Problem]:
    """A hem that is deeper than the edge beside it is long lies over more than that edge."""
    following = [*piece.edges[1:], piece.edges[0]]
    short = [
        pair
        for pair, corner in zip(zip(piece.edges, following, strict=True), corners, strict=True)
        if corner.short
    ]
    return [
        Problem(
            "hem-deeper-than-its-neighbour",
            f"On {piece.title}, at the corner of {before.name} and {after.name}, the turned cloth is"
            f" {max(width(before), width(after)):.1f} mm deep, but the edge it is turned over is only"
            f" {min(before.path.length(), after.path.length()):.1f} mm long. Choose a smaller depth.",
            severity=Severity.WARNING,
            place=piece_place(piece, before.name),
            numbers=(
                Number("depth", max(width(before), width(after))),
                Number("edge", min(before.path.length(), after.path.length())),
            ),
            cure="Choose a smaller depth.",
        )
        for before, after in short
    ]


def _crossing(piece: DraftPiece) -> Problem:
    widest = max(width(edge) for edge in piece.edges)
    return Problem(
        "cutting-line-crosses",
        f"The cutting line of {piece.title} crosses itself or its stitch line: an edge bends or ends too sharply"
        f" for its allowance (the widest is {widest:.1f} mm). A plain margin is drawn instead. Make the allowances smaller"
        " or the shape rounder.",
        place=piece_place(piece),
        numbers=(Number("widest allowance", widest),),
        cure="Make the allowances smaller or the shape rounder.",
    )


def _unfoldable(piece: DraftPiece, folds: int) -> Problem:
    return Problem(
        "fold-not-straight" if folds == 1 else "several-folds",
        f"{piece.title} cannot be unfolded: "
        + ("its fold is not a straight line." if folds == 1 else f"it has {folds} folds.")
        + " Cloth is folded once, along a straight line.",
        place=piece_place(piece),
        numbers=(Number("folds", folds, "count"),),
        cure="Give the piece one straight edge on the fold.",
    )
