"""The arc length of a polynomial curve by adaptive Gauss-Kronrod quadrature.

Nodes and weights of the pair G7, K15 are those of QUADPACK (Piessens, de Doncker-Kapenga, Uberhuber, Kahaner:
QUADPACK, Springer 1983, routine QK15); the tests integrate polynomials of degree 22 with them exactly.
"""

from __future__ import annotations

from math import sqrt
from typing import NamedTuple

# Node, weight in K15, weight in G7 (0 where the node is not one of the seven), for the right half of -1..1.
PAIRS = (
    (0.991455371120812639206854697526329, 0.022935322010529224963732008058970, 0.0),
    (
        0.949107912342758524526189684047851,
        0.063092092629978553290700663189204,
        0.129484966168869693270611432679082,
    ),
    (0.864864423359769072789712788640926, 0.104790010322250183839876322541518, 0.0),
    (
        0.741531185599394439863864773280788,
        0.140653259715525918745189590510238,
        0.279705391489276667901467771423780,
    ),
    (0.586087235467691130294144838258730, 0.169004726639267902826583426598550, 0.0),
    (
        0.405845151377397166906606412076961,
        0.190350578064785409913256402421014,
        0.381830050505118944950369775488975,
    ),
    (0.207784955007898467600689403773245, 0.204432940075298892414161999234649, 0.0),
)
MIDDLE = (0.209482141084727828012999174891714, 0.417959183673469387755102040816327)

# Where the speed falls below the mean by this factor, the pair may agree by chance, and is not trusted.
# Larger: lengths of parts that end at a cusp do not add up.  Smaller: many halvings on harmless curves.
KINK = 30.0

# Halving ends here: the widest gap at a cusp is then a billionth of the curve.
DEEPEST = 30


class Speed(NamedTuple):
    """The derivative of a cubic as two quadratics: x' = (ax t + bx) t + cx, y' likewise."""

    ax: float
    bx: float
    cx: float
    ay: float
    by: float
    cy: float

    def at(self, t: float) -> float:
        """How fast the point moves at a parameter [mm]."""
        u = (self.ax * t + self.bx) * t + self.cx
        v = (self.ay * t + self.by) * t + self.cy
        return sqrt(u * u + v * v)

    def time(self, t: float, way: float) -> float:
        """How much further the parameter is when a way [mm] has been gone, as far as speed and acceleration tell."""
        x, y = (self.ax * t + self.bx) * t + self.cx, (self.ay * t + self.by) * t + self.cy
        square = x * x + y * y
        if square == 0:
            return 0.0
        plain = way / sqrt(square)
        faster = (x * (2 * self.ax * t + self.bx) + y * (2 * self.ay * t + self.by)) / square
        bent = plain * (1 - faster * plain / 2)
        return bent if bent * plain > 0 else plain

    def way(self, t0: float, t1: float, slack: float) -> float:
        """The arc length between two parameters [mm], to about this much; negative backwards."""
        return self._way(t0, t1, slack, DEEPEST)

    def _way(self, t0: float, t1: float, slack: float, depth: int) -> float:
        """By the pair; by halves where it disagrees, or the point almost stops and the speed has a kink."""
        fine, rough, slowest = self._pair(t0, t1)
        sure = abs(fine - rough) <= slack and slowest * KINK * abs(t1 - t0) >= abs(fine)
        if sure or abs(fine) <= slack or depth == 0:
            return fine
        middle = (t0 + t1) / 2
        return self._way(t0, middle, slack / 2, depth - 1) + self._way(middle, t1, slack / 2, depth - 1)

    def _pair(self, t0: float, t1: float) -> tuple[float, float, float]:
        """The length by K15 and by G7, and the lowest speed met."""
        ax, bx, cx, ay, by, cy = self
        middle, half = (t0 + t1) / 2, (t1 - t0) / 2
        slowest = self.at(middle)
        fine, rough = slowest * MIDDLE[0], slowest * MIDDLE[1]
        for node, heavy, light in PAIRS:
            step = half * node
            t = middle - step
            u, v = (ax * t + bx) * t + cx, (ay * t + by) * t + cy
            before = sqrt(u * u + v * v)
            t = middle + step
            u, v = (ax * t + bx) * t + cx, (ay * t + by) * t + cy
            after = sqrt(u * u + v * v)
            fine += heavy * (before + after)
            rough += light * (before + after)
            if before < slowest or after < slowest:
                slowest = min(before, after)
        return fine * half, rough * half, slowest
