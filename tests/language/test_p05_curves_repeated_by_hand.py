"""5. Curves can be repeated by hand: ends, directions, a depth; through points; arcs; parallels; guide points."""

from __future__ import annotations

from math import cos, hypot, pi, radians, sin, tan
from typing import TYPE_CHECKING

import pytest

from tests.language.drafting import FRAME as BASE
from tests.language.drafting import draft_of, only, said

if TYPE_CHECKING:
    from littlefold.draft.model import Draft
    from littlefold.geometry import Path

FRAME = BASE


def curve(line: str) -> Path:
    drawn = draft_of(FRAME + line)
    assert not drawn.problems, drawn.problems
    return drawn.lines["s.c"].path


def heading(path: Path, *, end: bool) -> tuple[float, float]:
    way = path.end_tangent if end else path.start_tangent
    return (round(way.x, 6) + 0.0, round(way.y, 6) + 0.0)


def beside(path: Path, share: float) -> float:
    """How far the curve lies left of its chord, square to it, at a share of the chord [cm]; by bisection."""
    start, chord = path.start, path.end - path.start
    low, high = 0.0, path.length()
    for _ in range(60):
        middle = (low + high) / 2
        ahead = (path.at_length(middle) - start).dot(chord) / chord.length**2
        low, high = (middle, high) if ahead < share else (low, middle)
    return chord.unit().cross(path.at_length(low) - start) / 10


def test_a_depth_from_the_chord_at_its_middle_and_on_which_side() -> None:
    assert beside(curve("curve c from A to B depth 2 cm upward"), 0.5) == pytest.approx(2, abs=1e-4)
    assert beside(curve("curve c from A to B depth 2 cm nearer C"), 0.5) == pytest.approx(-2, abs=1e-4)


def test_a_depth_from_a_named_corner_along_its_bisector() -> None:
    """Between A and D about the corner B the bisector runs at half a right angle from B."""
    path = curve("curve c from A going right, to D going down, passing 2 cm from corner B")
    bisector = [(120 - 20 * cos(pi / 4), -20 * sin(pi / 4))]
    gap = min(hypot(p.x - x, p.y - y) for x, y in bisector for p in path.flatten(0.0005))
    assert gap < 0.3  # a point of the flattened curve lies that near to it [mm]
    assert curve("curve c from A to D, passing 2 cm from corner B").start_tangent.x == pytest.approx(1)


DIRECTIONS = {
    "going right": (1, 0),
    "going up": (0, 1),
    "towards D": (0.8, -0.6),
    "square to A-C": (1, 0),
    "along top": (1, 0),
    "tangent to top": (1, 0),
    "at 30 degrees clockwise from A-B": (cos(radians(30)), -sin(radians(30))),
}


@pytest.mark.parametrize("direction", DIRECTIONS)
def test_directions_at_the_ends(direction: str) -> None:
    path = curve(f"curve c from A {direction}, to D going down")
    assert heading(path, end=False) == pytest.approx(DIRECTIONS[direction], abs=1e-5)
    assert heading(path, end=True) == pytest.approx((0, -1))


def test_through_points_with_end_directions() -> None:
    path = curve("point M right of C by 5 cm\ncurve c through A, M, D starting going down ending going right")
    assert heading(path, end=False) == (0, -1)
    assert heading(path, end=True) == (1, 0)
    assert path.nearest(draft_of(FRAME + "point M right of C by 5 cm").points["s.M"].at).distance < 1e-6


def test_arcs() -> None:
    """By radius: a chord of 12 and a radius of 10 cm rise 2 cm.  Three points; a right corner rounded."""
    assert beside(curve("arc c from A to B radius 10 cm upward"), 0.5) == pytest.approx(2, abs=1e-6)
    through = curve("arc c through A, B, D")
    assert through.length() == pytest.approx(pi * 75)  # the right angle at B stands on a diameter of 15 cm
    rounded = curve("arc c rounding A-B-D by 2 cm")
    assert rounded.length() == pytest.approx(pi / 2 * 20)
    assert rounded.start.distance(draft_of(FRAME).points["s.B"].at) == pytest.approx(20 / tan(pi / 4))


def test_parallel_by_one_distance_and_by_two() -> None:
    frame = FRAME + "arc k from A to B radius 10 cm upward\n"
    one = draft_of(frame + "curve c parallel to k by 2 cm upward")
    # A parallel to an arc is an arc about the same centre: 12 cm instead of 10.
    assert one.lines["s.c"].path.length() == pytest.approx(one.lines["s.k"].path.length() * 1.2, rel=1e-6)
    two = draft_of(frame + "curve c parallel to k by 2 cm at its beginning and 3 cm at its end upward")
    k, c = two.lines["s.k"].path, two.lines["s.c"].path
    assert c.start.distance(k.start) == pytest.approx(20, abs=1e-3)
    assert c.end.distance(k.end) == pytest.approx(30, abs=1e-3)


def test_an_end_direction_left_unsaid_has_one_rule() -> None:
    """The mirror image of the other end; with a depth alone, even; with neither, refused."""
    path = curve("curve c from A going up, to B")
    assert heading(path, end=True) == (0, -1)
    even = curve("curve c from A to B depth 2 cm upward")
    assert beside(even, 0.25) == pytest.approx(beside(even, 0.75), abs=1e-4)
    problem = only(FRAME + "curve c from A to B")
    assert problem.code == "curve-not-told"
    assert "Give a direction at an end, a depth, or a corner" in problem.message


@pytest.mark.parametrize(
    "line",
    [
        "curve c from A going right, to D going down",
        "curve c from A to D depth 2 cm upward",
        "curve c from A going right, to D going down, passing 2 cm from corner B",
        "arc c from A to D radius 10 cm upward",
        "curve c through A, C, D starting going down",
        "curve c parallel to k by 1 cm upward",
    ],
)
def test_the_sentence_has_guide_points_that_a_hand_can_plot(line: str) -> None:
    frame = FRAME + "curve k from A going right, to D going down\n" * ("to k" in line)
    drawn = draft_of(frame + line)
    assert not drawn.problems
    guides = drawn.lines["s.c"].guides
    assert [guide.at for guide in guides] == [0.25, 0.5, 0.75]
    path = drawn.lines["s.c"].path
    for guide in guides:
        assert guide.depth / 10 == pytest.approx(beside(path, guide.at), abs=0.005)
    assert "at 1/4, 1/2 and 3/4 of the way" in said(drawn, "s.c") or "at 1/2" in said(drawn, "s.c")


def test_a_corner_is_spoken_of_as_such(drafted: Draft) -> None:
    """curve c from A going right, to D going down, passing 2 cm from corner B"""
    assert "passing 2 cm from the corner B" in said(drafted, "s.c")


def test_what_cannot_be_drawn_is_told_with_its_numbers() -> None:
    problem = only(FRAME + "arc c from A to D radius 3 cm upward")
    assert problem.code == "radius-too-short"
    assert [number.value for number in problem.numbers] == pytest.approx([30, 75])
    problem = only(FRAME + "arc k from A to B radius 10 cm upward\ncurve c parallel to k by 11 cm nearer C")
    assert problem.code == "parallel-too-far"
    assert problem.numbers[0].value == pytest.approx(110)
