"""Notches: marks at which edges meet, on both edges of a seam at matching stitch lengths.

The recipe states a notch on one edge; it is repeated on the edge that is sewn to it, at the same stitch
length from the ends that meet.  Where the seam has ease or gathers, the longer edge shares them out: its
notch lies at the same fraction.  Both edges carry the same mark, single or double; a notch stated on a back
is double, as the trade marks front and back of an armhole (../shared/reference/drafting.md, section 6, S109).
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.draft.model import DraftNotch
from littlefold.geometry import Path
from littlefold.pattern.allowance import width
from littlefold.pattern.model import Notch

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from littlefold.draft.model import DraftEdge, DraftPiece, DraftSeam
    from littlefold.pattern.run import Run, Surroundings
    from littlefold.pattern.seam import Pairing

# A notch is a snip into the allowance, this deep [mm] but `CLEARANCE` short of the stitch line, so that it
# never shows in the seam.  Common practice, no source.
DEEPEST = 5.0
CLEARANCE = 1.0

# Where there is no room for a snip the notch is a pencil mark this long on the inside of the stitch line
# [mm].
PENCIL = 3.0

# The marks of a double notch stand this far apart [mm]; common practice, no source.
SPACING = 4.0

# Two notches of an edge nearer than this are one [mm].  Larger: true neighbours of a double mark merge.
# Smaller: a notch stated on both edges of a seam with some slack comes out twice.
SAME_NOTCH = 2.0

DOUBLE = 2


def notches(around: Surroundings, pairings: Sequence[Pairing]) -> dict[str, tuple[Notch, ...]]:
    """The notches of each piece by its name, in order round it; `pairings` say how the runs of each seam meet."""
    stated = {
        name: [_counted(notch, piece) for notch in piece.notches] for name, piece in around.pieces.items()
    }
    repeated: dict[str, list[DraftNotch]] = {name: [] for name in stated}
    for seam, pair in zip(around.seams, pairings, strict=True):
        for name, notch in _across(pair, stated, shares=_shares(seam)):
            repeated[name].append(notch)
    return {name: _placed(piece, [*stated[name], *repeated[name]]) for name, piece in around.pieces.items()}


def _counted(notch: DraftNotch, piece: DraftPiece) -> DraftNotch:
    """The notch with its number of marks: what the recipe says if more than one, else two on a back."""
    words = f"{piece.name} {piece.title}".lower().replace("_", " ").replace("-", " ").split()
    return replace(notch, count=DOUBLE) if notch.count == 1 and "back" in words else notch


def _across(
    pair: Pairing, stated: dict[str, list[DraftNotch]], *, shares: bool
) -> Iterator[tuple[str, DraftNotch]]:
    """What the notches stated on either run of a seam become on the other, with the name of the piece."""
    back = _turned_about(pair)
    for there in (pair, back):
        for leg in there.first.legs:
            for notch in stated[leg.enters.piece]:
                if notch.edge == leg.enters.edge:
                    yield from _repeated(leg.on_run(notch.at), notch.count, there, shares=shares)


def _turned_about(pair: Pairing) -> Pairing:
    return type(pair)(pair.second, pair.first, pair.second_times, pair.first_times)


def _shares(seam: DraftSeam) -> bool:
    """Whether the runs differ in length on purpose, so that places are compared as fractions."""
    return seam.gather or seam.ease != 0


def _repeated(place: float, count: int, pair: Pairing, *, shares: bool) -> Iterator[tuple[str, DraftNotch]]:
    whole, other = pair.lengths
    scale = other / whole if shares else 1.0
    for there in {place, whole - place} if pair.first_times > 1 else {place}:
        yield _on(
            pair.second,
            min(there * scale, other - there * scale) if pair.second_times > 1 else there * scale,
            count,
        )


def _on(run: Run, place: float, count: int) -> tuple[str, DraftNotch]:
    leg = run.leg_at(place)
    return leg.enters.piece, DraftNotch(leg.enters.edge, leg.on_edge(place), count)


def _placed(piece: DraftPiece, wanted: list[DraftNotch]) -> tuple[Notch, ...]:
    """Notches standing on their edges in order; of several at one place the first, so what is stated wins."""
    placed: list[Notch] = []
    for edge in piece.edges:
        kept: list[DraftNotch] = []
        for notch in (n for n in wanted if n.edge == edge.name):
            if all(abs(notch.at - other.at) >= SAME_NOTCH for other in kept):
                kept.append(notch)
        placed.extend(_standing(edge, notch) for notch in sorted(kept, key=lambda n: n.at))
    return tuple(placed)


def _standing(edge: DraftEdge, notch: DraftNotch) -> Notch:
    at = min(max(notch.at, 0.0), edge.path.length())
    index, t = edge.path.locate(at)
    segment = edge.path.segments[index]
    return Notch(edge.name, at, notch.count, segment.at(t), segment.tangent(t).turned_right())


def depth(edge: DraftEdge) -> float:
    """How deep a notch is cut into the allowance of an edge [mm]; 0 where there is no room."""
    return max(0.0, min(DEEPEST, width(edge) - CLEARANCE))


def marks(notch: Notch, edge: DraftEdge) -> tuple[Path, ...]:
    """The lines of a notch: snips from the cut edge inwards, or pencil marks where there is no allowance."""
    along = notch.outward.turned_left() * SPACING
    snip = depth(edge)
    outer, inner = (width(edge), width(edge) - snip) if snip > 0 else (0.0, -PENCIL)
    middle = (notch.count - 1) / 2
    feet = [notch.foot + along * (k - middle) for k in range(notch.count)]
    return tuple(
        Path.line_through(foot + notch.outward * outer, foot + notch.outward * inner) for foot in feet
    )
