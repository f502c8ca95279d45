r"""Closed outlines from lines in order: cut where neighbours meet, turned counter-clockwise, stitch line found.

   neckline
A ---.        Lines as drawn often run on past each other (armhole and side), or stop at a point of each
|     \\       other; each is cut where it meets its neighbours, so that together they close.
|      | armhole
B------+
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.refusal import Refusal
from littlefold.geometry import Arc, Line, Path
from littlefold.geometry.intersection import do_meet, meet, meet_line
from littlefold.geometry.offset import offset
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.problem import Number, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.recipe.tree import Spot

# Ends that lie this near each other [mm] are one corner; a pencil cannot tell them apart.
CORNER = 0.02

# An end that lies this near to a line [mm] was drawn to a place on it: a hundred times less than a corner.
ON_IT = CORNER / 100

# How far a straight end may have to be carried on to meet its neighbour after an allowance was taken off [mm].
MOST_CARRIED_ON = 300.0


def closed(paths: Sequence[Path], names: Sequence[str], spots: Sequence[Spot]) -> tuple[Path, ...]:
    """The paths cut where neighbours meet and turned head to tail, in their order.

    Args:
        paths: The lines as drawn, in order round the outline, each in any direction.
        names: What a problem calls them.
        spots: Where they are named in the recipe.

    Raises:
        Refusal: Two neighbours do not meet.
    """
    count = len(paths)
    if count == 1:
        return _alone(paths[0], names[0], spots[0])
    corners = [_corner(paths, names, spots, index) for index in range(count)]
    return tuple(
        _cut(paths[index], corners[index - 1][1], corners[index][0], names[index], spots[index])
        for index in range(count)
    )


def _alone(path: Path, name: str, spot: Spot) -> tuple[Path, ...]:
    if not path.is_closed:
        raise Refusal(
            "outline-open",
            say("{name} alone does not close. Name the other edges too.", name=str(name)),
            spot,
        )
    return (path,)


def _corner(
    paths: Sequence[Path], names: Sequence[str], spots: Sequence[Spot], index: int
) -> tuple[float, float]:
    """Where an edge ends and the next begins: the lengths along both at which they meet."""
    following = (index + 1) % len(paths)
    first, second = paths[index], paths[following]
    options = _shared_ends(first, second)
    if not options and len(paths) > 2:  # noqa: PLR2004 - two edges meet twice, which one end does not tell
        options = _ends_on(first, second) + [(at, end) for end, at in _ends_on(second, first)]
    options = options or [(meeting.first_length, meeting.second_length) for meeting in meet(first, second)]
    if not options:
        gap = min(
            one.distance(other) for one in (first.start, first.end) for other in (second.start, second.end)
        )
        raise Refusal(
            "edges-do-not-meet",
            say(
                "{index} and {following} do not meet; between their nearest ends are {gap}. Draw the missing "
                "line, or name the edges in order round the piece.",
                index=str(names[index]),
                following=str(names[following]),
                gap=f"{gap / 10:.2f} cm",
            ),
            spots[following],
            (Number("gap", gap),),
        )
    if len(paths) == 2 and len(options) > 1:  # noqa: PLR2004 - two edges meet twice: once at each turn
        return min(options) if index == 0 else max(options)
    if len(options) == 1:
        return options[0]
    return min(options, key=lambda option: _overrun(first, option[0]) + _overrun(second, option[1]))


def _shared_ends(first: Path, second: Path) -> list[tuple[float, float]]:
    """The ends that two paths have in common, as lengths along both."""
    return [
        (first.length() if at_end else 0.0, second.length() if mate_at_end else 0.0)
        for at_end, place in enumerate((first.start, first.end))
        for mate_at_end, mate in enumerate((second.start, second.end))
        if place.distance(mate) <= CORNER
    ]


def _ends_on(path: Path, other: Path) -> list[tuple[float, float]]:
    """The ends of a path that were drawn to a place on another, as lengths along both."""
    found = [(at, other.closest(end, ON_IT)) for at, end in ((0.0, path.start), (path.length(), path.end))]
    return [(at, other.length_to(place[0], place[1])) for at, place in found if place is not None]


def _overrun(path: Path, length: float) -> float:
    """What is cut off when a path is cut there and the longer part kept."""
    return min(length, path.length() - length)


def _cut(path: Path, start: float, end: float, name: str, spot: Spot) -> Path:
    if abs(start - end) <= CORNER:
        raise Refusal(
            "edge-without-length",
            say("nothing is left of {name} between its neighbours.", name=str(name)),
            spot,
        )
    low, high = min(start, end), max(start, end)
    part = path if low == 0 and high == path.length() else path.part(low, high)
    return part if start < end else part.reversed()


def counter_clockwise(paths: tuple[Path, ...]) -> bool:
    """Whether paths that go round an outline head to tail run counter-clockwise."""
    return sum(segment.swept_area() for path in paths for segment in path.segments) > 0


def snapped(paths: tuple[Path, ...]) -> tuple[Path, ...]:
    """The paths, head to tail but for a pencil's width, with their ends in exactly the same places."""
    chain = list(paths)
    if len(chain) > 1:
        for index in range(len(chain)):
            chain[index - 1], chain[index] = _meeting(chain[index - 1], chain[index])
    return tuple(chain)


def _meeting(before: Path, after: Path) -> tuple[Path, Path]:
    """Two neighbours with one joint: a line or curve is moved to an arc's end, between two arcs a short line is put."""
    here, there = before.end, after.start
    if here == there:
        return before, after
    first, last = after.segments[0], before.segments[-1]
    if not isinstance(first, Arc):
        return before, Path((first.ending(here, first.end), *after.segments[1:]))
    if not isinstance(last, Arc):
        return Path((*before.segments[:-1], last.ending(last.start, there))), after
    if here.distance(there) <= SAME_POINT:
        return before, after
    return before, Path((Line(here, there), *after.segments))


def stitch_lines(
    paths: tuple[Path, ...], insets: Sequence[float], names: Sequence[str], spots: Sequence[Spot]
) -> tuple[Path, ...]:
    """The stitch lines of edges drawn as cutting lines: each moved inward by its inset, and cut anew.

    Args:
        paths: The edges, counter-clockwise, head to tail.
        insets: How far inside each drawn line its stitch line lies [mm]; 0 where the drawn line is the stitch line.
        names: What a problem calls the edges.
        spots: Where they are named.

    Raises:
        Refusal: An allowance is wider than its edge can bear.
    """
    if not any(insets):
        return paths
    moved = []
    for path, inset, name, spot in zip(paths, insets, names, spots, strict=True):
        beside = offset(path, inset) if inset else path
        if beside is None:
            raise Refusal(
                "included-allowance-too-wide",
                say(
                    "{name}: {inset} inside the drawn line leaves nothing of it. Take a smaller allowance.",
                    name=str(name),
                    inset=f"{inset / 10:.1f} cm",
                ),
                spot,
                (Number("allowance", inset),),
            )
        moved.append(beside)
    return closed([reaching(moved, index) for index in range(len(moved))], names, spots)


def reaching(paths: list[Path], index: int) -> Path:
    """A path carried on straight at both ends as far as its neighbours, where it falls short of them."""
    path = paths[index]
    before, after = paths[index - 1], paths[(index + 1) % len(paths)]
    if not _follow(path, after):
        path = _carried_on(path, after)
    if not _follow(before, path):
        path = _carried_on(path.reversed(), before).reversed()
    return path


def _follow(before: Path, after: Path) -> bool:
    """Whether a path goes on where another ends, or meets it elsewhere."""
    return before.end.distance(after.start) <= SAME_POINT or do_meet(before, after)


def _carried_on(path: Path, neighbour: Path) -> Path:
    ray = Path((Line(path.end, path.end + path.end_tangent * MOST_CARRIED_ON),))
    found = meet(ray, neighbour) or meet_line(neighbour, path.end, path.end_tangent)
    gaps = [path.end.distance(meeting.point) for meeting in found]
    reach = min(gaps) if gaps else path.end.distance(neighbour.start)
    return path.extended_end(min(reach * 1.05 + 1.0, MOST_CARRIED_ON))
