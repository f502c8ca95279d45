"""Roots of equations in one unknown."""

from __future__ import annotations

from itertools import pairwise
from math import comb, sqrt
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

# A bracket is halved at most this often; 60 halvings use up the digits of a float.
HALVINGS = 80

# Newton's method ends where the unknown, from 0 to 1, moves by less than this.
STILL = 1e-13

# By degree n: what a power p of the unknown adds to the Bernstein coefficient k of a polynomial, C(k, p) / C(n, p).
SHARES = tuple(
    tuple(tuple(comb(k, p) / comb(n, p) for p in range(k + 1)) for k in range(n + 1)) for n in range(6)
)


def quadratic_roots(a: float, b: float, c: float) -> tuple[float, ...]:
    """The real roots of a x^2 + b x + c, rising; without cancellation, and a may be zero."""
    if a == 0 or abs(a) < 1e-14 * abs(b):
        return (-c / b,) if b != 0 else ()
    square = b * b - 4 * a * c
    if square < 0:
        return ()
    q = -(b + sqrt(square)) / 2 if b >= 0 else -(b - sqrt(square)) / 2
    if q == 0:
        return (0.0,)
    first, second = q / a, c / q
    return (min(first, second), max(first, second)) if first != second else (first,)


def root_between(function: Callable[[float], float], low: float, high: float, near: float) -> float:
    """The root of a continuous function that changes sign between two numbers.

    The Illinois form of the rule of false position: the secant, with the weight of an end halved when it
    stays, so that the bracket closes from both sides; every fourth step halves the bracket in any case.

    Args:
        function: The function.
        low: One end of the bracket.
        high: The other end, where the function has the other sign (or is zero at one of them).
        near: The function counts as zero at or below this size.
    """
    f_low, f_high = function(low), function(high)
    if abs(f_low) <= near:
        return low
    if abs(f_high) <= near:
        return high
    assert (f_low < 0) != (f_high < 0), "the bracket holds no change of sign"  # noqa: S101 - our own mistake
    middle = low
    for step in range(HALVINGS):
        middle = (low * f_high - high * f_low) / (f_high - f_low)
        if step % 4 == 0 or middle in (low, high):
            middle = (low + high) / 2
        value = function(middle)
        if abs(value) <= near or middle in (low, high):
            break
        if (value < 0) != (f_high < 0):
            low, f_low = high, f_high
        else:
            f_low /= 2
        high, f_high = middle, value
    return middle


def sign_changes(
    function: Callable[[float], float], grid: tuple[float, ...]
) -> tuple[tuple[float, float], ...]:
    """The steps of a grid over which a function changes its sign or reaches zero."""
    values = [function(x) for x in grid]
    return tuple(
        (grid[k], grid[k + 1])
        for k in range(len(grid) - 1)
        if values[k] * values[k + 1] < 0
        or (values[k + 1] == 0 and values[k] != 0)
        or (k == 0 and values[0] == 0)
    )


def roots_from_0_to_1(coefficients: tuple[float, ...]) -> tuple[float, ...]:
    """Where a polynomial changes its sign between 0 and 1, rising; the coefficient of the highest power first.

    Between two neighbouring roots of its derivative a polynomial has one root at most, so none is overlooked, however
    near they lie to each other.
    """
    degree = len(coefficients) - 1
    if degree <= 2:  # noqa: PLR2004 - solved in closed form
        a, b, c = (0.0,) * (2 - degree) + coefficients
        return tuple(root for root in quadratic_roots(a, b, c) if 0 < root < 1)
    most = _most_roots(coefficients)
    if most == 0:
        return ()
    slope = tuple(c * (degree - k) for k, c in enumerate(coefficients[:-1]))
    is_one = most == 1 and coefficients[-1] * sum(coefficients) < 0  # the ends lie on different sides
    stops = (0.0, 1.0) if is_one else (0.0, *roots_from_0_to_1(slope), 1.0)
    values = [_polynomial(coefficients, t) for t in stops]
    return tuple(
        _root(coefficients, slope, stops[k], stops[k + 1], rising=values[k] < 0)
        for k in range(len(stops) - 1)
        if (values[k] < 0) != (values[k + 1] < 0)
    )


def _most_roots(coefficients: tuple[float, ...]) -> int:
    """How many roots a polynomial has between 0 and 1 at most: the changes of sign among its Bernstein coefficients.

    (Descartes' rule of signs for the Bernstein basis, from memory.)
    """
    degree = len(coefficients) - 1
    signs = []
    for k in range(degree + 1):
        value = 0.0
        for power in range(k + 1):
            value += coefficients[degree - power] * SHARES[degree][k][power]
        if value != 0:
            signs.append(value > 0)
    return sum(one is not other for one, other in pairwise(signs))


def _polynomial(coefficients: tuple[float, ...], t: float) -> float:
    value = 0.0
    for c in coefficients:
        value = value * t + c
    return value


def _root(
    coefficients: tuple[float, ...], slope: tuple[float, ...], low: float, high: float, *, rising: bool
) -> float:
    """The root of a polynomial that rises or falls through zero: Newton's method, in a bracket."""
    t = (low + high) / 2
    for _ in range(HALVINGS):
        value, ahead = _polynomial(coefficients, t), _polynomial(slope, t)
        if (value < 0) == rising:
            low = t
        else:
            high = t
        guess = t - value / ahead if ahead != 0 else low
        if not low < guess < high:
            guess = (low + high) / 2
        if abs(guess - t) <= STILL:
            break
        t = guess
    return t
