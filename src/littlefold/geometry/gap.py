"""The way from a point to a cubic, and where it is shortest."""

from __future__ import annotations

from dataclasses import dataclass

# The steps in which the nearest place is looked for before it is refined.  More: slower.  Fewer: of two
# places almost equally near on a tight curve the farther may be found.
STEPS = 16
GRID = tuple(k / STEPS for k in range(STEPS + 1))

# So many of the nearest stretches are refined; a cubic has five places square to a point at most, three of
# them valleys.
VALLEYS = 3

# Refining ends where the parameter moves by less than this, a billionth of a millimetre, or after so many
# Newton steps; each doubles the digits, so five are usual.
STILL, NEWTON = 1e-12, 40

Coefficients = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Gap:
    """The way from a point to a cubic [mm]: x and y as polynomials, the highest power first."""

    x: Coefficients
    y: Coefficients

    def square(self, t: float) -> float:
        """The square of its length [mm2]."""
        a, b, c, d = self.x
        u = ((a * t + b) * t + c) * t + d
        a, b, c, d = self.y
        v = ((a * t + b) * t + c) * t + d
        return u * u + v * v

    def shortest(self) -> float:
        """The parameter from 0 to 1 at which it is shortest: the best of a row of places, refined."""
        squares = [self.square(t) for t in GRID]
        valleys = [
            k
            for k in range(STEPS + 1)
            if (k == 0 or squares[k] <= squares[k - 1]) and (k == STEPS or squares[k] <= squares[k + 1])
        ]
        valleys.sort(key=squares.__getitem__)
        found = [self._valley(k) for k in valleys[:VALLEYS]]
        return min((0.0, 1.0, *found), key=self.square)

    def _valley(self, index: int) -> float:
        """Where, within a step of a place of the row, it is square to the curve: Newton, in a bracket."""
        low, high, t = GRID[max(0, index - 1)], GRID[min(STEPS, index + 1)], GRID[index]
        for _ in range(NEWTON):
            slope, bend = self._slope(t)
            low, high = (low, t) if slope > 0 else (t, high)
            guess = t - slope / bend if bend > 0 else low
            if abs(guess - t) <= STILL:
                break
            t = guess if low < guess < high else (low + high) / 2
        return t

    def _slope(self, t: float) -> tuple[float, float]:
        """Half the first and half the second derivative of the square."""
        a, b, c, d = self.x
        u, du, ddu = ((a * t + b) * t + c) * t + d, (3 * a * t + 2 * b) * t + c, 6 * a * t + 2 * b
        a, b, c, d = self.y
        v, dv, ddv = ((a * t + b) * t + c) * t + d, (3 * a * t + 2 * b) * t + c, 6 * a * t + 2 * b
        return u * du + v * dv, du * du + dv * dv + u * ddu + v * ddv
