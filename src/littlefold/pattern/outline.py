"""The outlines of a piece, as drawn and unfolded, with what is wrong with them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.geometry import Path
from littlefold.pattern import trouble
from littlefold.pattern.allowance import width
from littlefold.pattern.cutting_line import closed, closed_up, strips
from littlefold.pattern.margin import Margin
from littlefold.pattern.model import Outline
from littlefold.pattern.simple import is_round, polygon, widened
from littlefold.pattern.unfold import fold_edges, unfolded_cut, unfolded_stitch

if TYPE_CHECKING:
    from littlefold.draft.model import DraftEdge, DraftPiece
    from littlefold.pattern.cutting_line import Strip
    from littlefold.problem import Problem


@dataclass(frozen=True, slots=True)
class Outlines:
    """The outline as drawn, the whole one, and the problems found on the way."""

    drawn: Outline
    whole: Outline
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class Cut:
    """The cutting line as its rules make it, or None with the problems that stand against it."""

    path: Path | None
    chain: tuple[Strip, ...]
    problems: tuple[Problem, ...]


def outlines(piece: DraftPiece) -> Outlines:
    """Stitch and cutting outline of a piece.

    Where the corners cannot be cut as their rules say, the cutting line is a plain margin all round, as wide
    as the widest allowance, and a problem says so.
    """
    stitch = closed_up(Path.joined(*(edge.path for edge in piece.edges)))
    cut = _cut(piece, stitch)
    drawn = Outline(stitch, cut.path or _plain_margin(piece, stitch))
    whole, more = _whole(piece, cut, drawn)
    return Outlines(drawn, whole, (*cut.problems, *more))


def _cut(piece: DraftPiece, stitch: Path) -> Cut:
    margins = [Margin.of(edge) for edge in piece.edges]
    found = [margin for margin in margins if margin is not None]
    within = polygon(stitch)
    if not within.is_valid:
        return Cut(None, (), (trouble.stitch_crosses(piece),))
    if len(found) < len(margins):
        return Cut(None, (), _too_tight(piece, margins))
    chain, corners = strips(found)
    problems = (*_overlaps(piece, chain), *trouble.short_neighbours(piece, corners))
    path = closed(chain)
    if path is not None and not is_round(polygon(path), within):
        return Cut(None, chain, (*problems, trouble.cut_crosses(piece)))
    return Cut(path, chain, problems)


def _too_tight(piece: DraftPiece, margins: list[Margin | None]) -> tuple[Problem, ...]:
    pairs = zip(piece.edges, margins, strict=True)
    return tuple(trouble.too_tight(piece, edge) for edge, margin in pairs if margin is None)


def _overlaps(piece: DraftPiece, chain: tuple[Strip, ...]) -> list[Problem]:
    over = [strip for strip in chain if strip.along is None]
    return [trouble.corners_overlap(piece, strip.edge, strip.overlap) for strip in over]


def _plain_margin(piece: DraftPiece, stitch: Path) -> Path:
    return widened(stitch, max(1.0, *(width(edge) for edge in piece.edges)))


def _whole(piece: DraftPiece, cut: Cut, drawn: Outline) -> tuple[Outline, tuple[Problem, ...]]:
    """The unfolded outline, with a plain margin where the drawn one has one."""
    folds = fold_edges(piece.edges)
    if not folds:
        return drawn, ()
    if len(folds) > 1 or not folds[0].path.is_straight:
        return drawn, (trouble.unfoldable(piece, len(folds)),)
    return _unfolded(piece, cut, folds[0]), ()


def _unfolded(piece: DraftPiece, cut: Cut, fold: DraftEdge) -> Outline:
    stitch = unfolded_stitch(piece.edges, fold)
    if cut.path is None:
        return Outline(stitch, _plain_margin(piece, stitch))
    return Outline(stitch, unfolded_cut(cut.chain, fold))
