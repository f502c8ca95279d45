"""What holds for the cutting line of any piece, found out with shapely."""

from __future__ import annotations

from dataclasses import replace
from math import cos, pi, sin

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon

from littlefold.draft.model import EdgeKind
from littlefold.geometry import Cubic, Path
from littlefold.pattern.trace import trace_piece
from tests.pattern.shapes import edge, piece, point

KINDS = [
    EdgeKind.SEAM,
    EdgeKind.SEAM,
    EdgeKind.HEM,
    EdgeKind.CASING,
    EdgeKind.RAW,
    EdgeKind.BOUND,
    EdgeKind.FACED,
]


@st.composite
def pieces(draw, bend=0.12):
    """Four-sided pieces, 120 to 300 across, with sides bowed in or out, all edge kinds and widths."""
    radii = [draw(st.floats(120, 300)) for _ in range(4)]
    angles = [k * pi / 2 + draw(st.floats(-0.35, 0.35)) for k in range(4)]
    corners = [point(r * cos(a), r * sin(a)) for r, a in zip(radii, angles, strict=True)]
    edges = []
    for k, start in enumerate(corners):
        end = corners[(k + 1) % 4]
        way = end - start
        bow = way.turned_right() * draw(st.floats(-bend, bend))
        path = Path((Cubic(start, start + way * (1 / 3) + bow, start + way * (2 / 3) + bow, end),))
        kind = draw(st.sampled_from(KINDS))
        wide = 0.0 if kind in (EdgeKind.RAW, EdgeKind.BOUND) else draw(st.floats(4, 20))
        edges.append(edge(f"e{k}", path, kind, wide))
    return piece("any", edges)


def shape(path, tolerance=0.01):
    return Polygon([(p.x, p.y) for p in path.flatten(tolerance)])


@settings(max_examples=60, deadline=None)
@given(pieces())
def test_the_cutting_line_is_a_simple_line_round_the_stitch_line(drawn):
    assume(shape(Path.joined(*(e.path for e in drawn.edges))).is_valid)
    traced, problems = trace_piece(drawn)
    assert problems == ()
    cut, stitch = traced.outline.cut, traced.outline.stitch
    assert cut.is_closed
    assert cut.signed_area() >= stitch.signed_area() - 1e-6 > 0
    assert shape(cut).is_valid
    assert shape(cut).buffer(0.05).covers(shape(stitch))


@settings(max_examples=60, deadline=None)
@given(pieces(), st.floats(0.35, 0.65))
def test_along_the_middle_the_cutting_line_lies_at_the_allowance(drawn, fraction):
    traced, problems = trace_piece(drawn)
    assume(problems == ())
    ring = LineString([(p.x, p.y) for p in traced.outline.cut.flatten(0.002)])
    for one in traced.edges:
        at = one.path.length() * fraction
        foot, out = one.path.at_length(at), one.path.tangent_at_length(at).turned_right()
        opposite = foot + out * one.allowance
        assert ring.distance(Point(opposite.x, opposite.y)) < 0.02
        assert abs(ring.distance(Point(foot.x, foot.y)) - one.allowance) < 0.02


@settings(max_examples=30, deadline=None)
@given(pieces(), st.floats(0.5, 5))
def test_more_allowance_is_more_cloth(drawn, more):
    wider = replace(
        drawn,
        edges=tuple(replace(e, allowance=e.allowance + more) if e.allowance else e for e in drawn.edges),
    )
    (first, problems), (second, others) = trace_piece(drawn), trace_piece(wider)
    assume(problems == others == ())
    grown = second.outline.cut.signed_area() - first.outline.cut.signed_area()
    # all edges bend little, so the added strip is about as long as the widened edges
    length = sum(e.path.length() for e in drawn.edges if e.allowance)
    assert grown >= 0.6 * more * length
    assert grown > 0 or length == 0


@settings(max_examples=30, deadline=None)
@given(pieces(bend=0.0))
def test_straight_edges_keep_straight_cutting_lines(drawn):
    traced, problems = trace_piece(drawn)
    assume(problems == ())
    for segment in traced.outline.cut.segments:
        ends = LineString([(segment.start.x, segment.start.y), (segment.end.x, segment.end.y)])
        assert all(ends.distance(Point(p.x, p.y)) < 1e-6 for p in segment.flatten())
