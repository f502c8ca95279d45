r"""Corners beside a hem, a casing or another turned edge.

Once the edge is turned, its cloth lies on the inside of the piece and must end where the neighbour's cut edge
lies there, neither short of it nor beyond, however the neighbour slants or curves.  So beyond the fold the
cutting line is the neighbour's cutting line reflected in the fold; turned twice, what is folded under is
reflected once more in the second fold.

```
            \\       neighbour's cutting line
             \\
   ===========X---  stitch line, the fold
             /
            /       its reflection
   --------Y        cutting line of the hem
```

The rule is common practice: ../shared/reference/drafting.md, section 3 item 8.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from scipy.optimize import brentq

from littlefold.geometry.tolerance import SAME_POINT
from littlefold.pattern.allowance import turn_under
from littlefold.pattern.corner import Corner, Rule, reach
from littlefold.pattern.crossing import crossing
from littlefold.pattern.reflection import depth, ending_at, turned_out

if TYPE_CHECKING:
    from littlefold.geometry import Path, Point
    from littlefold.pattern.margin import Margin

# The neighbour's cutting line crosses the fold no further from the corner than this many of its widths;
# beyond (slants of less than 20 degrees) a hem cannot be turned neatly.  Common practice, no source.
FOLD_LIMIT = 3.0

# The neighbour is followed inwards no further than this many depths of the hem, which is enough for slants of
# 10 degrees.  Larger: long wings at cusps.  Smaller: sharp corners are not mirrored.
DEPTH_LIMIT = 6.0

# Newton's method is given up after so many steps, or where the neighbour gains less depth than this, in
# millimetres per millimetre.
STEPS = 8
SHALLOWEST = 0.15

# A place at a depth is found to this [mm].
CLOSE = SAME_POINT / 10


def mirrored(neighbour: Margin, turned: Margin) -> Corner | None:
    """The corner between an edge and a turned one; None where the neighbour does not run inwards."""
    corner = turned.stitch.path.start
    found = crossing(neighbour.cut, turned.stitch, corner, reach(neighbour, turned))
    if found is None or found.point.distance(corner) > FOLD_LIMIT * neighbour.width + SAME_POINT:
        return None
    under = turn_under(turned.edge)
    finished = turned.width - under
    furthest = found.first + DEPTH_LIMIT * finished
    deepest = _place_at_depth(neighbour, turned, finished, (found.first, furthest))
    if deepest is None or deepest - found.first <= SAME_POINT:
        return None
    *flaps, last = _flaps(neighbour, turned, (found.first, deepest), under)
    if not _hang_together(found.point, (*flaps, last)):
        return None
    tip = turned.cut.foot(last.end)
    lines = (*flaps, ending_at(last, turned.cut.at(tip)))
    return Corner(Rule.MIRRORED, found.first, tip, lines, short=deepest > neighbour.cut.length)


def _flaps(neighbour: Margin, turned: Margin, places: tuple[float, float], under: float) -> tuple[Path, ...]:
    """The reflected lines, from the fold to the cutting line of the turned edge."""
    start, deepest = places
    finished = turned.width - under
    once = turned_out(neighbour.cut.part(start, deepest), turned, 0.0)
    if under == 0:
        return (once,)
    back = _place_at_depth(neighbour, turned, finished - under, places)
    if back is None or deepest - back <= SAME_POINT:
        return (once,)
    twice = turned_out(neighbour.cut.part(back, deepest).reversed(), turned, 2 * finished)
    return (once, twice)


def _hang_together(start: Point, lines: tuple[Path, ...]) -> bool:
    """Whether each line begins where the one before it ends, as it does unless the fold bends back on itself."""
    ends = (start, *(line.end for line in lines[:-1]))
    return all(end.distance(line.start) <= SAME_POINT for end, line in zip(ends, lines, strict=True))


def _place_at_depth(
    neighbour: Margin, turned: Margin, deep: float, between: tuple[float, float]
) -> float | None:
    """Where between two places the neighbour's cutting line lies a given depth inside the fold."""
    start, furthest = between

    def missing(place: float) -> float:
        return deep - depth(turned, neighbour.cut.at(place))

    place = _on_straight(neighbour, turned, deep)
    if place is None or place < start:
        place = _by_slope(neighbour, turned, deep, start)
    if place is not None and place <= furthest:
        return place
    if missing(start) <= 0:
        return start
    return float(brentq(missing, start, furthest, xtol=CLOSE)) if missing(furthest) <= 0 else None


def _on_straight(neighbour: Margin, turned: Margin, deep: float) -> float | None:
    """The same where both begin straight, as most do, if it lies there; exact."""
    line, fold = neighbour.cut.path, turned.stitch.path
    along, way, out = fold.start_tangent, line.start_tangent, line.start - fold.start
    slope = along.cross(way) * turned.inside
    if slope < SHALLOWEST:
        return None
    place = (deep - along.cross(out) * turned.inside) / slope
    is_there = (
        place <= neighbour.cut.straight_start()
        and along.dot(out + way * place) <= turned.stitch.straight_start()
    )
    return place if is_there else None


def _by_slope(neighbour: Margin, turned: Margin, deep: float, start: float) -> float | None:
    """The same by Newton's method: on straight lines the first step is right; None if it does not settle."""
    place = start
    for _ in range(STEPS):
        point, way = neighbour.cut.going(place)
        foot, along, _bend = turned.stitch.footing(point)
        reached, slope = along.cross(point - foot) * turned.inside, along.cross(way) * turned.inside
        if slope < SHALLOWEST:
            return None
        step = (deep - reached) / slope
        if abs(step) <= CLOSE:
            return place
        place = max(start, place + step)
    return None
