"""Widths and heights of pieces, measured square to and along their grain."""

from __future__ import annotations

from dataclasses import replace
from math import cos, pi, sin, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.check.across import across, along, height, width_at
from littlefold.draft.model import Cutting
from littlefold.geometry import Arc, Path, Point
from littlefold.geometry.tolerance import FLATNESS
from littlefold.pattern.trace import trace
from tests.check.garments import draft, edge, half_top, piece, top

RADIUS = 100.0


def disc(angle: float, *, half: bool = False):
    """A disc of 10 cm radius about the origin whose grain runs at an angle; or the right half of it on the fold."""
    way = Point(RADIUS / 2 * cos(angle), RADIUS / 2 * sin(angle))
    arc = Path((Arc(Point(0, 0), RADIUS, -pi / 2, pi if half else 2 * pi),))
    edges = [edge("hem", "hem", arc, 10.0)]
    if half:
        edges.append(edge("middle", "fold", Path.line_through(arc.end, arc.start)))
    whole = piece("disc", tuple(edges), Cutting(on_fold=half))
    return trace(draft((replace(whole, grain=(Point(-way.x, -way.y), way)),))).piece("disc")


@settings(max_examples=40, deadline=None)
@given(st.floats(0, 2 * pi), st.floats(-95, 95))
def test_a_chord_of_a_disc_has_the_length_that_the_circle_gives_it(angle: float, away: float):
    """At a distance from the middle, along the grain, the chord is 2 sqrt(r2 - d2)."""
    place = Point(away * cos(angle), away * sin(angle))
    assert width_at(disc(angle), place) == pytest.approx(2 * sqrt(RADIUS**2 - away**2), abs=1.5)


@pytest.mark.parametrize("away", [-80.0, 0.0, 60.0])
def test_a_half_on_the_fold_is_as_wide_as_the_whole(away: float):
    place = Point(0.0, away)
    assert width_at(disc(pi / 2, half=True), place) == pytest.approx(2 * sqrt(RADIUS**2 - away**2), abs=1.5)


def test_a_half_whose_grain_crosses_the_fold_is_measured_unfolded():
    assert width_at(disc(0.0, half=True), Point(60.0, 0.0)) == pytest.approx(160.0, abs=1.5)


def test_heights_and_places_follow_the_grain():
    sideways = disc(0.0)
    assert along(sideways, Point(30, 5)) - along(sideways, Point(10, 80)) == pytest.approx(20.0)
    assert abs(across(sideways, Point(30, 5)) - across(sideways, Point(10, 80))) == pytest.approx(75.0)
    assert height(sideways) == pytest.approx(2 * RADIUS, abs=2 * FLATNESS)


def test_a_top_is_as_high_as_from_hem_to_neck_point():
    assert height(top().piece("front")) == pytest.approx(half_top("front").edges[3].path.end.y)


def test_a_grain_without_a_direction_is_taken_as_upright():
    nowhere = replace(disc(0.0), grain=(Point(1, 1), Point(1, 1)))
    assert width_at(nowhere, Point(0, 0)) == pytest.approx(200.0, abs=0.5)
