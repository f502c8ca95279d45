"""The outlines of a piece, with what is wrong with them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.geometry import Path
from littlefold.pattern import trouble
from littlefold.pattern.allowance import width
from littlefold.pattern.cutting_line import closed, closed_up, strips
from littlefold.pattern.margin import Margin
from littlefold.pattern.model import Outline
from littlefold.pattern.simple import polygon, self_meeting, widened
from littlefold.pattern.unfold import Half, cutting_lines, fold_edges, stitch_lines

if TYPE_CHECKING:
    from littlefold.draft.model import DraftPiece
    from littlefold.pattern.cutting_line import Strip
    from littlefold.problem import Problem


@dataclass(frozen=True, slots=True)
class Outlines:
    """The outline as drawn, the half that is to be unfolded, if it is one, and the problems found on the way."""

    drawn: Outline
    half: Half | None
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class Cut:
    """The cutting line as its rules make it, round the stitch line; None with the problems that stand against it."""

    outline: Outline | None
    chain: tuple[Strip, ...]
    problems: tuple[Problem, ...]


def outlines(piece: DraftPiece) -> Outlines:
    """Stitch and cutting outline of a piece.

    Where the corners cannot be cut as their rules say, the cutting line is a plain margin all round, as wide
    as the widest allowance, and a problem says so.
    """
    stitch = closed_up(Path.joined(*(edge.path for edge in piece.edges)))
    cut = _cut(piece, stitch)
    drawn = cut.outline or Outline(stitch, widened(stitch, _plain_margin(piece)))
    half, more = _half(piece, cut)
    return Outlines(drawn, half, (*cut.problems, *more))


def _cut(piece: DraftPiece, stitch: Path) -> Cut:
    margins = [Margin.of(edge) for edge in piece.edges]
    found = [margin for margin in margins if margin is not None]
    within = polygon(stitch)
    if not within.is_valid:
        return Cut(None, (), (trouble.stitch_crosses(piece, self_meeting(within.exterior)),))
    if len(found) < len(margins):
        return Cut(None, (), _too_tight(piece, margins))
    chain, corners = strips(found)
    problems = (*_overlaps(piece, chain), *trouble.short_neighbours(piece, corners))
    path = closed(chain)
    outline = None if path is None else Outline.round_simple(stitch, path, within)
    if outline is not None and not outline.is_round():
        return Cut(None, chain, (*problems, trouble.cut_crosses(piece)))
    return Cut(outline, chain, problems)


def _too_tight(piece: DraftPiece, margins: list[Margin | None]) -> tuple[Problem, ...]:
    pairs = zip(piece.edges, margins, strict=True)
    return tuple(trouble.too_tight(piece, edge) for edge, margin in pairs if margin is None)


def _overlaps(piece: DraftPiece, chain: tuple[Strip, ...]) -> list[Problem]:
    over = [strip for strip in chain if strip.along is None]
    return [trouble.corners_overlap(piece, strip.edge, strip.overlap) for strip in over]


def _plain_margin(piece: DraftPiece) -> float:
    return max(1.0, *(width(edge) for edge in piece.edges))


def _half(piece: DraftPiece, cut: Cut) -> tuple[Half | None, tuple[Problem, ...]]:
    """What is to be unfolded, with a plain margin where the drawn outline has one."""
    folds = fold_edges(piece.edges)
    if not folds:
        return None, ()
    if len(folds) > 1 or not folds[0].path.is_straight:
        return None, (trouble.unfoldable(piece, len(folds)),)
    chain = () if cut.outline is None else cut.chain
    fold = folds[0]
    lines = stitch_lines(piece.edges, fold), cutting_lines(chain, fold)
    return Half(fold, *lines, _plain_margin(piece)), ()
