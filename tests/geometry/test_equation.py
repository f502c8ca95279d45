"""Roots of equations."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.geometry.equation import quadratic_roots, root_between, sign_changes

some = settings(max_examples=80, deadline=None)
numbers = st.floats(-1000, 1000, allow_subnormal=False)


@some
@given(numbers, numbers, st.floats(0.01, 100))
def test_a_quadratic_has_the_roots_it_was_made_of(one: float, other: float, factor: float) -> None:
    roots = quadratic_roots(factor, -factor * (one + other), factor * one * other)
    low, high = sorted((one, other))
    if high - low > 1e-3:
        assert roots == pytest.approx((low, high), abs=1e-6)


def test_small_roots_are_not_lost_to_cancellation() -> None:
    roots = quadratic_roots(1.0, -1e8, 1.0)
    assert roots == pytest.approx((1e-8, 1e8), rel=1e-12)


def test_quadratics_that_are_less() -> None:
    assert quadratic_roots(0, 2, -8) == (4,)
    assert quadratic_roots(0, 0, 1) == ()
    assert quadratic_roots(1, 0, 1) == ()
    assert quadratic_roots(1, 0, 0) == (0,)
    assert quadratic_roots(2, -4, 2) == (1,)


@some
@given(st.floats(0.001, 0.999), st.integers(1, 7))
def test_a_root_in_a_bracket_is_found(root: float, power: int) -> None:
    power = 2 * power - 1
    found = root_between(lambda x: (x - root) ** power, 0.0, 1.0, 0.0)
    assert abs(found - root) <= 1e-3 if power > 1 else abs(found - root) <= 1e-12


def test_a_bracket_without_a_sign_change_is_our_own_mistake() -> None:
    with pytest.raises(AssertionError):
        root_between(lambda x: x * x + 1, -1, 1, 0.0)


def test_sign_changes_are_listed_once() -> None:
    grid = tuple(k / 4 for k in range(5))
    assert sign_changes(lambda x: x - 0.3, grid) == ((0.25, 0.5),)
    assert sign_changes(lambda x: x - 0.5, grid) == ((0.25, 0.5),)
    assert sign_changes(lambda x: x, grid) == ((0.0, 0.25),)
    assert sign_changes(lambda x: x + 1, grid) == ()
