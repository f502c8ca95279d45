"""Random paths of lines, arcs and cubics for property tests."""

from __future__ import annotations

from math import pi

from hypothesis import strategies as st

from littlefold.geometry import Arc, Cubic, Line, Path, Point, Vector

COORDINATE = st.floats(-300, 300, allow_nan=False).map(lambda x: round(x, 3))
POINT = st.builds(Point, COORDINATE, COORDINATE)
SHAPE = st.tuples(
    st.sampled_from(["line", "arc", "cubic"]),
    POINT,
    POINT,
    POINT,
    st.floats(5, 200),
    st.floats(-pi, pi),
    st.floats(0.2, 2 * pi - 0.1),
    st.booleans(),
)


def _segment(start, shape):
    kind, p, q, r, radius, angle, sweep, left = shape
    if kind == "arc":
        centre = start + Vector.polar(angle + pi, radius)
        return Arc(centre, radius, angle, sweep if left else -sweep)
    if kind == "cubic":
        return Cubic(start, p, q, r)
    end = p if p.distance(start) > 1 else start + Vector(1.0, 2.0)
    return Line(start, end)


@st.composite
def paths(draw, most=5):
    start = draw(POINT)
    segments = []
    for shape in draw(st.lists(SHAPE, min_size=1, max_size=most)):
        segments.append(_segment(start, shape))
        start = segments[-1].end
    return Path(tuple(segments))
