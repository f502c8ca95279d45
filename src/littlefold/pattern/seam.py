"""Seams: which ends of two runs meet, how long the runs are, and whether they fit.

Which ends meet.  Two edges sewn face to face run opposite ways round their pieces, so the end of the one lies
on the start of the other.  But a front and a back are often drawn alike, each with its fold on the left;
sewing then turns one of them over, and start lies on start.  So the surroundings are asked first: both
pairings are scored by `run.Surroundings.likeness` at their two ends.  Where that does not decide, two runs of several
edges meet in the order in which they are named (front and back armhole, front and back of the sleeve's cap), and
all others by the face to face rule.

What is compared.  Lengths as drawn, like with like: halves with halves, a sleeve with the armhole of a half.
Only where a run that reaches the middle line of the body (a fold, or the middle seam or button edge of a
pair) is sewn to a run of pieces that are cut once and whole (`Cutting.layers` is 1), the half is doubled.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from littlefold.pattern.model import Seam

if TYPE_CHECKING:
    from littlefold.draft.model import DraftSeam
    from littlefold.pattern.run import EdgeEnd, Run, Surroundings


class Pairing(NamedTuple):
    """Two runs directed so that their starts meet and their ends meet, and how often each is counted.

    Where a run is counted twice, it ends on the middle line, and goes on as its own mirror image.
    """

    first: Run
    second: Run
    first_times: int
    second_times: int

    @property
    def lengths(self) -> tuple[float, float]:
        """How long both are as sewn [mm], mirror images counted."""
        return self.first.length * self.first_times, self.second.length * self.second_times

    @property
    def ends(self) -> tuple[tuple[EdgeEnd, EdgeEnd], ...]:
        """The pairs of edge ends that meet where the seam begins and where it stops.

        Where a half is sewn to a whole piece, only the beginning is a meeting of two ends.
        """
        starts = (self.first.enters, self.second.enters)
        if (self.first_times, self.second_times) != (1, 1):
            return (starts,)
        return (starts, (self.first.leaves, self.second.leaves))


def pairing(seam: DraftSeam, around: Surroundings) -> Pairing:
    """How the two runs of a seam lie on each other."""
    first, second = around.run(seam.first), around.run(seam.second)
    first_times = 2 if _reaches_middle(first, around) and _is_whole(second, around) else 1
    second_times = 2 if _reaches_middle(second, around) and _is_whole(first, around) else 1
    if first_times == 2:  # noqa: PLR2004 - a half and its mirror image
        first = _towards_middle(first, around)
    if second_times == 2:  # noqa: PLR2004
        second = _towards_middle(second, around)
    elif _meets_reversed(first, second, around):
        second = second.reversed()
    return Pairing(first, second, first_times, second_times)


def _meets_reversed(first: Run, second: Run, around: Surroundings) -> bool:
    """Whether the start of the one lies on the end of the other."""
    alike = around.likeness(first.enters, second.enters) + around.likeness(first.leaves, second.leaves)
    opposite = around.likeness(first.enters, second.leaves) + around.likeness(first.leaves, second.enters)
    if alike != opposite:
        return opposite > alike
    if len(first.legs) > 1 and len(second.legs) > 1:
        return False  # both name their edges in the order in which they meet
    return first.enters.at_start == second.enters.at_start  # face to face


def _is_whole(run: Run, around: Surroundings) -> bool:
    cuttings = [around.pieces[leg.enters.piece].cutting for leg in run.legs]
    return all(cutting.layers == 1 and not cutting.side for cutting in cuttings)


def _reaches_middle(run: Run, around: Surroundings) -> bool:
    return any(around.is_centre(around.neighbour(end)) for end in (run.enters, run.leaves))


def _towards_middle(run: Run, around: Surroundings) -> Run:
    return run if around.is_centre(around.neighbour(run.leaves)) else run.reversed()


def measured(seam: DraftSeam, pair: Pairing) -> Seam:
    """A seam with the stitch lengths of its two runs, and whether they fit."""
    first, second = pair.lengths
    return Seam(
        first=seam.first,
        second=seam.second,
        first_length=first,
        second_length=second,
        ease=seam.ease,
        gather=seam.gather,
        tolerance=seam.tolerance,
        matched=_fits(seam, first, second),
        place=seam.place,
        ends=pair.ends,
    )


def _fits(seam: DraftSeam, first: float, second: float) -> bool:
    """Whether the second run is longer by the ease, or long enough to be drawn up."""
    if seam.gather:
        return second >= first - seam.tolerance
    return abs(second - first - seam.ease) <= seam.tolerance
