"""The whole piece, as cut from cloth, of a half that lies on the fold."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.draft.model import EdgeKind
from littlefold.geometry import Affine, Path
from littlefold.pattern.cutting_line import closed_up, lines
from littlefold.pattern.model import Outline
from littlefold.pattern.simple import widened

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.cutting_line import Strip


def fold_edges(edges: Sequence[DraftEdge]) -> tuple[DraftEdge, ...]:
    """The edges that lie on a fold."""
    return tuple(edge for edge in edges if edge.kind is EdgeKind.FOLD)


@dataclass(frozen=True, slots=True)
class Half:
    """The half of a piece that lies on a straight fold.

    Attributes:
        fold: The edge on the fold.
        stitch: The stitch lines from the fold round to the fold, in order.
        cut: The cutting lines likewise; none where the corners cannot be cut as their rules say.
        margin: How wide the plain margin is that is cut instead [mm].
    """

    fold: DraftEdge
    stitch: tuple[Path, ...]
    cut: tuple[Path, ...]
    margin: float

    def unfolded(self) -> Outline:
        """The half and its mirror image, joined on the fold."""
        stitch = _doubled(self.stitch, self.fold)
        return Outline(stitch, _doubled(self.cut, self.fold) if self.cut else widened(stitch, self.margin))


def stitch_lines(edges: Sequence[DraftEdge], fold: DraftEdge) -> tuple[Path, ...]:
    """The stitch lines from a fold round to the fold."""
    place = edges.index(fold)
    return tuple(edge.path for edge in (*edges[place + 1 :], *edges[:place]))


def cutting_lines(chain: tuple[Strip, ...], fold: DraftEdge) -> tuple[Path, ...]:
    """The cutting lines from a fold round to the fold; none where there is no chain."""
    place = next((k for k, strip in enumerate(chain) if strip.edge is fold), 0)
    here, others = chain[place : place + 1], (*chain[place + 1 :], *chain[:place])
    return (*(path for strip in here for path in strip.after), *lines(others))


def mirror(fold: DraftEdge) -> Affine:
    """The mirroring in the line of a straight fold."""
    return Affine.mirror(fold.path.start, fold.path.start_tangent)


def _doubled(half: tuple[Path, ...], fold: DraftEdge) -> Path:
    """Lines from the fold round to the fold, and their mirror image back."""
    line = Path.joined(*half)
    return closed_up(Path.joined(line, line.transformed(mirror(fold)).reversed()))
