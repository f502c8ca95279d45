"""Sharp corners, where a mitre would be a spike.

The allowance of the seam that is sewn first ends square to it, at the place where its stitch line, carried
on, runs out of the cloth.  So the cut edges of two pieces meet there when they are laid face to face, and the
seam that crosses it later is as wide at the crossing as elsewhere.  (Squared seam ends are described in
../shared/reference/drafting.md, section 3 item 8, S19 and S74.)

```
            Q +-----------.  cut
              |            .
   cut -------+ P  - - - -  V----- stitch, the seam sewn first
               .           .
```
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.geometry import Path
from littlefold.pattern.corner import Corner, Rule, reach
from littlefold.pattern.crossing import crossing

if TYPE_CHECKING:
    from littlefold.pattern.margin import Margin

# A squared end reaches no further beyond the corner than this many widths (a corner of about 20 degrees);
# sharper ones are cut across.  Common practice, no source.
SQUARE_LIMIT = 3.0


def is_sharp(first: Margin, second: Margin) -> bool:
    """Whether the piece has less than a right angle at a corner."""
    a, b = first.stitch.path.start_tangent, second.stitch.path.start_tangent
    return b.cross(a) * second.inside > 0 and a.dot(b) > 0


def squared(first: Margin, second: Margin) -> Corner:
    """The end of the shorter seam, as the one sewn first, squared off; common practice, no source."""
    if first.stitch.length > second.stitch.length:
        return squared(second, first).swapped()
    corner = first.stitch.path.start
    found = crossing(first.stitch, second.cut, corner, reach(first, second))
    furthest = SQUARE_LIMIT * max(first.width, second.width)
    if found is None or not -furthest <= found.first <= 0:
        return _blunt(first, second)
    tip = second.cut.at(found.second)
    square = first.cut.foot(tip)
    between = (Path.line_through(first.cut.at(square), tip),) if first.width > 0 else ()
    return Corner(Rule.SQUARED, square, found.second, between)


def _blunt(first: Margin, second: Margin) -> Corner:
    """Both allowances cut across, as far beyond the corner as the wider one is wide."""
    beyond = max(first.width, second.width)
    across = Path.line_through(first.cut.at(-beyond), second.cut.at(-beyond))
    return Corner(Rule.BLUNT, -beyond, -beyond, (across,))
