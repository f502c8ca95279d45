"""Where a goal is searched."""

from __future__ import annotations

from math import sin

from hypothesis import given
from hypothesis import strategies as st

from littlefold.draft.bracket import STRIDES, bracket

starts = st.floats(0, 40)


@given(starts, st.floats(0.1, 39.9))
def test_a_goal_that_is_met_once_is_met_between(start: float, root: float) -> None:
    """Bounds of 40: a stride is 1."""
    found = bracket(lambda x: (x - root) * (x + 60), 0, 40, start)
    assert found is not None
    assert found[0] <= root <= found[1]


@given(st.floats(0.5, 30), st.floats(5, 20), starts)
def test_of_two_solutions_the_nearer_is_found(first: float, apart: float, start: float) -> None:
    roots = (first, min(first + apart, 40.0))
    gaps = sorted(abs(root - start) for root in roots)
    found = bracket(lambda x: (x - roots[0]) * (x - roots[1]), 0, 40, start)
    assert found is not None
    nearest = min(roots, key=lambda root: abs(root - start))
    if gaps[1] - gaps[0] > 1:
        assert found[0] <= nearest <= found[1]


def test_a_start_that_fits_is_the_solution() -> None:
    assert bracket(lambda x: x - 5, 0, 40, 5) == (5, 5)


def test_no_sign_change_is_none_and_every_stride_was_looked_at_once() -> None:
    asked: list[float] = []

    def gap(x: float) -> float:
        asked.append(x)
        return 1 + x * x

    assert bracket(gap, -20.0, 20.0, 0.0) is None
    assert sorted(asked) == [float(x) for x in range(-20, 21)]
    assert STRIDES == 40


def test_solutions_between_long_leaps_are_found_in_the_end() -> None:
    """A short dip far from the start: 0.9 strides wide, between 10 and 11."""
    found = bracket(lambda x: -1.0 if 10.5 < x < 11.4 else 1.0, 0, 40, 0)
    assert found == (10, 11)


def test_values_that_cannot_be_drawn_are_passed_over() -> None:
    found = bracket(lambda x: None if x < 7 else x - 9.5, 0, 40, 3)
    assert found == (9, 10)


def test_a_goal_that_is_nearly_straight_takes_few_trials() -> None:
    asked: list[float] = []

    def gap(x: float) -> float:
        asked.append(x)
        return x + sin(x / 20) - 30.5

    found = bracket(gap, 0, 40, 2)
    assert found is not None
    assert found[0] < 30.5 - sin(1.5) < found[1]
    assert len(asked) <= 16
