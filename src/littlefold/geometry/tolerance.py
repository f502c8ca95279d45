"""Every number that says "near enough" in the geometry, with what it costs to change it.

All are millimetres unless said otherwise.  A pattern is some 1000 mm wide and is cut by hand to about 0.5 mm.
"""

from __future__ import annotations

# Two points nearer than this are one point.  Larger: short edges vanish.  Smaller: rounding of about 1e-13
# per operation at 1000 mm, piled up through a draft of a hundred steps, starts to tear neighbours apart.
SAME_POINT = 1e-6

# Arc lengths are right to this part of themselves.  Larger: seam partners seem to differ when they do not.
# Smaller: more speed samples for each curve, with no effect that a ruler could show.
LENGTH = 1e-6

# The Gauss-Kronrod pair may differ by this part of a curve's length before the curve is halved.  The better
# rule of the pair is nearer than the difference by two digits and more (of 1500 drafted curves none was off by more
# than 1e-10 of its length), so lengths of a metre hold to `SAME_POINT`.  Larger: they lose that (1e-7 was off by 2e-9).
# Smaller: a quarter more halvings for each digit, at cusps for nothing.
QUADRATURE = 1e-8

# Greatest distance from a chord to its curve in a flattened outline.  Larger: visible corners at full size
# and areas that are off.  Smaller: longer outlines for every polygon job; half the tolerance is 1.4 times
# the points.
FLATNESS = 0.02

# Directions nearer than this [rad] are parallel.  Larger: slow crossings of long lines are lost (1e-9 is one
# micrometre in a kilometre).  Smaller: lines that are parallel but for rounding meet kilometres away.
ANGLE = 1e-9

# Crossings are found to this distance, and two crossings nearer than ten times this are one.  Larger: notches
# move.  Smaller: tangencies, whose place is known only to the square root of the rounding, come out double.
INTERSECTION = 1e-7

# Curves that pass within this distance of each other without crossing are taken to touch.  Larger: near
# misses count as meetings.  Smaller: true tangencies are missed through rounding.
TOUCH = 1e-6

# A curve moved sideways is at its distance to this much everywhere.  Larger: allowances are visibly uneven.
# Smaller: more cubics for each offset edge; the error falls with the sixth power of their number.
OFFSET = 0.01

# Curves solved for a depth or a distance meet it to this.  Larger: printed guide points contradict the
# curve in the last place.  Smaller: nothing gained below `SAME_POINT`.
SOLVED = 1e-9
