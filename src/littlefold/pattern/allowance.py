"""How wide the cloth beyond the stitch line is, and on which lines it is folded.

The recipe gives one number for an edge.  What the scissors need follows from the kind of the edge:

- a fold has nothing beyond it;
- a seam, a gathered edge, a bound, raw or selvedge edge has just the number (0 where none was given);
- a hem, a casing, a faced or a button edge is *turned*: the cloth beyond the line is folded back on the line.
  Turned once, it has just the number.  Turned twice, the number is the finished depth, and the raw edge is
  folded in once more by `TURN_UNDER`, or by the depth where that is smaller:

```
      seam | inside of the piece
   ========+======================  stitch line = first fold
           |  finished depth
   - - - - + - - - - - - - - - - -  second fold
           |  turned under
   --------+----------------------  cut edge
```

Where the allowance was included in the drawn line, the scissors stay on that line: the turn under is then
taken out of the number.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.model import EdgeKind

if TYPE_CHECKING:
    from littlefold.draft.model import DraftEdge

# The part of a hem turned twice that is folded out of sight [mm]; common practice, no source.
TURN_UNDER = 10.0

# Edges whose allowance is folded back onto the piece, the one that is folded last first.  Common practice, no
# source: a casing is made, and a front edge turned, before the hem is turned up over their ends.
TURNED = (EdgeKind.HEM, EdgeKind.CASING, EdgeKind.BUTTON, EdgeKind.FACED)


def is_turned(edge: DraftEdge) -> bool:
    """Whether the allowance of an edge is folded back onto the piece along its stitch line."""
    return edge.kind in TURNED and edge.allowance > 0


def is_folded(edge: DraftEdge) -> bool:
    """Whether a turned edge is simply folded on its line; a faced one is stitched there before it is turned."""
    return is_turned(edge) and edge.kind is not EdgeKind.FACED


def turn_under(edge: DraftEdge) -> float:
    """How much of the cloth beyond the stitch line is folded out of sight in the second turn [mm]."""
    if not is_turned(edge) or edge.turns < 2:  # noqa: PLR2004 - turned twice
        return 0.0
    return min(TURN_UNDER, edge.allowance / 2 if edge.included else edge.allowance)


def width(edge: DraftEdge) -> float:
    """The whole width of cloth beyond the stitch line [mm]."""
    if edge.kind is EdgeKind.FOLD:
        return 0.0
    return edge.allowance if edge.included else edge.allowance + turn_under(edge)


def fold_distances(edge: DraftEdge) -> tuple[float, ...]:
    """How far beyond the stitch line each fold of a turned edge lies [mm], the first on the line itself."""
    if not is_turned(edge):
        return ()
    under = turn_under(edge)
    return (0.0, width(edge) - under) if under > 0 else (0.0,)
