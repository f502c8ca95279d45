"""Hems, casings and other turned edges: fold the cut piece on its stitch line and see where the edges lie."""

from __future__ import annotations

from dataclasses import replace
from math import pi, tan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.draft.model import EdgeKind
from littlefold.geometry import Cubic, Path
from littlefold.pattern.trace import trace_piece
from tests.pattern.folding import misfit
from tests.pattern.shapes import edge, piece, point, straight

NEAR = 0.02  # the issue asks for 0.1 mm; the geometry promises 0.01 for a line beside a curve


def curve(*points):
    return Path((Cubic(*(point(*p) for p in points)),))


def skirt(kind, depth, *, left=0.0, right=0.0, turns=1, seam=12.0, included=False):
    """A panel 200 wide at the hem, its sides slanting inwards by two angles [degrees]."""
    height = 150.0
    a, b = (0.0, 0.0), (200.0, 0.0)
    c = (200.0 - height * tan(right * pi / 180), height)
    d = (height * tan(left * pi / 180), height)
    return piece(
        "panel",
        [
            edge("hem", straight(a, b), kind, depth, turns=turns, included=included),
            edge("right", straight(b, c), EdgeKind.SEAM, seam),
            edge("top", straight(c, d), EdgeKind.SEAM, 10.0),
            edge("left", straight(d, a), EdgeKind.SEAM, seam),
        ],
    )


def fits(drawn, name="hem"):
    traced, problems = trace_piece(drawn)
    assert problems == ()
    worst, count = misfit(traced, name)
    assert count > 20
    assert worst < NEAR
    return traced


@pytest.mark.parametrize("kind", [EdgeKind.HEM, EdgeKind.CASING, EdgeKind.FACED, EdgeKind.BUTTON])
@pytest.mark.parametrize(("left", "right"), [(0, 0), (12, -12), (30, 5), (-35, 35)])
def test_a_turned_edge_meets_the_seams_of_slanted_sides(kind, left, right):
    fits(skirt(kind, 30.0, left=left, right=right))


@pytest.mark.parametrize("slant", [-30, -10, 0, 10, 30])
def test_a_hem_turned_twice_meets_the_seams_at_both_turns(slant):
    traced = fits(skirt(EdgeKind.HEM, 25.0, left=slant, right=slant, turns=2))
    assert traced.outline.cut.bounds().bottom == pytest.approx(-35.0)  # 25 deep, 10 turned under


def test_a_plain_mitre_would_not_fit():
    """The oracle can fail: with the slanted side simply carried on, the hem stands off the seam."""
    drawn = skirt(EdgeKind.HEM, 30.0, left=12, right=12)
    traced, _ = trace_piece(skirt(EdgeKind.SEAM, 30.0, left=12, right=12))
    as_if = replace(traced, edges=drawn.edges)
    assert misfit(as_if, "hem")[0] > 5.0


def test_an_included_hem_keeps_to_the_drawn_line():
    traced = fits(skirt(EdgeKind.HEM, 25.0, left=8, right=8, turns=2, included=True))
    assert traced.outline.cut.bounds().bottom == pytest.approx(-25.0)


def curved_panel(kind, depth, *, bow, bulge, turns=1):
    """A panel with a bowed hem (downwards if positive) and curved sides."""
    a, b, c, d = (0, 0), (200, 0), (170, 160), (30, 160)
    return piece(
        "panel",
        [
            edge("hem", curve(a, (60, -bow), (140, -bow), b), kind, depth, turns=turns),
            edge("right", curve(b, (196 + bulge, 50), (180 + bulge, 100), c), EdgeKind.SEAM, 12.0),
            edge("top", straight(c, d), EdgeKind.SEAM, 10.0),
            edge("left", curve(d, (20 - bulge, 100), (4 - bulge, 50), a), EdgeKind.SEAM, 12.0),
        ],
    )


@pytest.mark.parametrize("kind", [EdgeKind.HEM, EdgeKind.CASING])
@pytest.mark.parametrize("turns", [1, 2])
@pytest.mark.parametrize(("bow", "bulge"), [(15, 0), (30, 10), (-20, 5), (8, -12)])
def test_a_curved_turned_edge_meets_curved_seams(kind, turns, bow, bulge):
    fits(curved_panel(kind, 25.0, bow=bow, bulge=bulge, turns=turns))


@pytest.mark.parametrize("turns", [1, 2])
@pytest.mark.parametrize(("dip", "lean"), [(40, 0), (70, 0), (40, 60), (-25, 90), (20, 90)])
def test_sides_that_stand_over_a_curved_fold(turns, dip, lean):
    """The hem arches up between its ends, or the sides lean far in: what is turned lies over the curve itself."""
    a, b, c, d = (0, 0), (200, 0), (200 - lean, 160), (lean, 160)
    hem = curve(a, (40, dip), (160, dip), b)
    edges = [
        edge("hem", hem, EdgeKind.HEM, 16.0, turns=turns),
        edge("right", straight(b, c), EdgeKind.SEAM, 1.5),
        edge("top", straight(c, d), EdgeKind.SEAM, 10.0),
        edge("left", straight(d, a), EdgeKind.SEAM, 1.5),
    ]
    fits(piece("arched", edges))


def test_the_two_hems_of_a_corner_lie_on_each_other():
    """A bib's corner: both edges hemmed; the last one folded lies on the first one's cut edge."""
    drawn = piece(
        "bib",
        [
            edge("hem", straight((0, 0), (150, 0)), EdgeKind.HEM, 20.0),
            edge("side", straight((150, 0), (150, 150)), EdgeKind.CASING, 15.0),
            edge("top", straight((150, 150), (0, 150)), EdgeKind.RAW, 0.0),
            edge("left", straight((0, 150), (0, 0)), EdgeKind.CASING, 15.0),
        ],
    )
    fits(drawn)


@settings(max_examples=25, deadline=None)
@given(
    left=st.floats(-30, 30),
    right=st.floats(-30, 30),
    depth=st.floats(8, 45),
    seam=st.just(0.0) | st.floats(1, 20),
    turns=st.sampled_from([1, 2]),
)
def test_any_slant_and_depth_fits(left, right, depth, seam, turns):
    traced, problems = trace_piece(skirt(EdgeKind.HEM, depth, left=left, right=right, seam=seam, turns=turns))
    assert problems == ()
    assert misfit(traced, "hem")[0] < NEAR
