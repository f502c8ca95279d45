"""The whole piece, as cut from cloth, of a half that lies on the fold."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.model import EdgeKind
from littlefold.geometry import Affine, Path
from littlefold.pattern.cutting_line import closed_up, lines

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.cutting_line import Strip


def fold_edges(edges: Sequence[DraftEdge]) -> tuple[DraftEdge, ...]:
    """The edges that lie on a fold."""
    return tuple(edge for edge in edges if edge.kind is EdgeKind.FOLD)


def unfolded_stitch(edges: Sequence[DraftEdge], fold: DraftEdge) -> Path:
    """The stitch outline of a half and its mirror image, joined on a straight fold."""
    place = edges.index(fold)
    others = [*edges[place + 1 :], *edges[:place]]
    return _doubled(Path.joined(*(edge.path for edge in others)), fold)


def unfolded_cut(chain: tuple[Strip, ...], fold: DraftEdge) -> Path:
    """The cutting line of a half and its mirror image, joined on a straight fold."""
    place = next(k for k, strip in enumerate(chain) if strip.edge is fold)
    here, others = chain[place], (*chain[place + 1 :], *chain[:place])
    return _doubled(Path.joined(*here.after, *lines(others)), fold)


def mirror(fold: DraftEdge) -> Affine:
    """The mirroring in the line of a straight fold."""
    return Affine.mirror(fold.path.start, fold.path.start_tangent)


def _doubled(half: Path, fold: DraftEdge) -> Path:
    """A line from the fold round to the fold, and its mirror image back."""
    return closed_up(Path.joined(half, half.transformed(mirror(fold)).reversed()))
