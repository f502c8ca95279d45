"""Arc lengths and their inverse against scipy, fontTools and the bezier package."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

import pytest
from fontTools.misc import bezierTools
from hypothesis import given, settings
from scipy.integrate import quad

from littlefold.geometry.quadrature import MIDDLE, PAIRS
from littlefold.geometry.tolerance import LENGTH, SAME_POINT
from tests.geometry.shapes import AWKWARD, as_bezier, control_points, cubics, fractions, segments

if TYPE_CHECKING:
    from littlefold.geometry import Cubic, Segment

some = settings(max_examples=80, deadline=None)
named = pytest.mark.parametrize("cubic", AWKWARD.values(), ids=AWKWARD.keys())


def quadrature(segment: Segment, t: float = 1.0, breaks: tuple[float, ...] = (0.25, 0.5, 0.75)) -> float:
    """The length by scipy's QUADPACK, told where cusps may be."""
    inside = [b for b in breaks if b < t]
    found = quad(
        lambda u: segment.derivative(u).length,
        0,
        t,
        epsabs=1e-10,
        epsrel=1e-11,
        limit=400,
        points=inside,
        full_output=True,  # it then says how sure it is instead of warning
    )
    assert found[1] <= LENGTH / 2 * max(1.0, found[0])  # beside a near cusp rounding stops it at about 1e-7
    return found[0]


@pytest.mark.parametrize("power", range(0, 23, 2))
def test_the_nodes_integrate_polynomials_exactly(power: int) -> None:
    fine = MIDDLE[0] * (power == 0) + sum(2 * heavy * node**power for node, heavy, _ in PAIRS)
    assert fine == pytest.approx(2 / (power + 1), rel=1e-14)
    rough = MIDDLE[1] * (power == 0) + sum(2 * light * node**power for node, _, light in PAIRS)
    if power <= 13:
        assert rough == pytest.approx(2 / (power + 1), rel=1e-14)


@some
@given(cubics)
def test_length_agrees_with_scipy(cubic: Cubic) -> None:
    cusps = tuple(sorted(cubic.extremes(cubic.tangent(0.0))))
    assert cubic.length() == pytest.approx(quadrature(cubic, breaks=cusps), rel=LENGTH, abs=1e-9)


@named
def test_awkward_lengths_agree_with_scipy(cubic: Cubic) -> None:
    assert cubic.length() == pytest.approx(quadrature(cubic), rel=LENGTH)


@some
@given(cubics)
def test_length_agrees_with_fonttools(cubic: Cubic) -> None:
    theirs = bezierTools.calcCubicArcLength(*control_points(cubic), tolerance=1e-7)
    assert cubic.length() == pytest.approx(theirs, rel=1e-4, abs=1e-3)


@settings(max_examples=30, deadline=None)
@given(cubics)
def test_length_agrees_with_the_bezier_package(cubic: Cubic) -> None:
    assert cubic.length() == pytest.approx(as_bezier(cubic).length, rel=LENGTH)


def test_a_straight_curve_out_and_back_is_longer_than_its_chord() -> None:
    # x(t) = 600 t^2 - ... has its turns where x' = 0; the way is the sum of the three straight stretches.
    curve = AWKWARD["straight, out and back"]
    turns = curve.extremes(curve.end - curve.start)
    stops = [0.0, *(curve.at(t).x for t in turns), 100.0]
    assert len(turns) == 2
    assert curve.length() == pytest.approx(sum(abs(b - a) for a, b in itertools.pairwise(stops)), rel=1e-7)


@some
@given(segments, fractions)
def test_lengths_add(segment: Segment, t: float) -> None:
    before, after = segment.split(t)
    assert before.length() + after.length() == pytest.approx(segment.length(), rel=LENGTH, abs=1e-9)
    assert segment.length_to(t) == pytest.approx(before.length(), rel=LENGTH, abs=1e-7)


@some
@given(segments, fractions)
def test_the_inverse_gives_the_length_back(segment: Segment, share: float) -> None:
    wanted = share * segment.length()
    assert segment.length_to(segment.parameter_at(wanted)) == pytest.approx(wanted, abs=SAME_POINT)


@named
def test_the_inverse_holds_on_awkward_curves(cubic: Cubic) -> None:
    for k in range(21):
        wanted = cubic.length() * k / 20
        assert quadrature(cubic, cubic.parameter_at(wanted)) == pytest.approx(wanted, abs=SAME_POINT)


@some
@given(segments)
def test_the_inverse_is_clamped(segment: Segment) -> None:
    assert segment.parameter_at(-1.0) == 0
    assert segment.parameter_at(segment.length() + 1.0) == 1
