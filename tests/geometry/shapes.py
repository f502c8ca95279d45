"""Shapes for the tests of geometry: strategies, awkward curves by name, and the same in other libraries."""

from __future__ import annotations

from math import tau

import bezier
import numpy as np
from hypothesis import strategies as st
from shapely.geometry import LineString

from littlefold.geometry import Affine, Arc, Cubic, Line, Path, Point, Segment, Vector

coordinates = st.floats(-500, 500, allow_subnormal=False)
points = st.builds(Point, coordinates, coordinates)
angles = st.floats(-3, 3)
fractions = st.floats(0, 1)
directions = st.builds(Vector.polar, st.floats(-3.2, 3.2))

lines = st.builds(Line, points, points).filter(lambda line: line.length() > 0.01)
arcs = st.builds(Arc, points, st.floats(0.1, 500), angles, st.floats(-6.2, 6.2)).filter(
    lambda a: a.length() > 0.01
)
cubics = st.builds(Cubic, points, points, points, points).filter(lambda cubic: cubic.polygon_length > 0.01)
segments: st.SearchStrategy[Segment] = st.one_of(lines, arcs, cubics)

motions = st.builds(
    lambda angle, way, flip: (
        Affine.rotation(angle, Point(3, 4))
        .then(Affine.translation(way))
        .then(Affine.mirror(Point(1, 2), Vector(3, 1)) if flip else Affine.identity())
    ),
    angles,
    st.builds(Vector, coordinates, coordinates),
    st.booleans(),
)

AWKWARD = {
    "cusp": Cubic(Point(0, 0), Point(100, 100), Point(0, 100), Point(100, 0)),
    "loop": Cubic(Point(0, 0), Point(150, 100), Point(-50, 100), Point(100, 0)),
    "inflection": Cubic(Point(0, 0), Point(60, 80), Point(40, -80), Point(100, 0)),
    "no handle at start": Cubic(Point(0, 0), Point(0, 0), Point(70, 60), Point(100, 0)),
    "no handle at end": Cubic(Point(0, 0), Point(30, 60), Point(100, 0), Point(100, 0)),
    "no handles": Cubic(Point(0, 0), Point(0, 0), Point(100, 40), Point(100, 40)),
    "both handles at the end": Cubic(Point(0, 0), Point(100, 40), Point(100, 40), Point(100, 40)),
    "nearly straight": Cubic(Point(0, 0), Point(30, 1e-7), Point(70, -1e-7), Point(100, 0)),
    "straight, uneven": Cubic(Point(0, 0), Point(5, 0), Point(6, 0), Point(100, 0)),
    "straight, out and back": Cubic(Point(0, 0), Point(200, 0), Point(-100, 0), Point(100, 0)),
    "tiny": Cubic(Point(500, 500), Point(500.001, 500), Point(500.002, 500.001), Point(500.002, 500.002)),
    "closed on itself": Cubic(Point(0, 0), Point(100, 0), Point(0, 100), Point(0, 0)),
    "sharp bend": Cubic(Point(0, 0), Point(100, 0.5), Point(100, -0.5), Point(0, 1)),
}


def control_points(cubic: Cubic) -> list[tuple[float, float]]:
    """The four points as pairs of numbers."""
    return [(p.x, p.y) for p in (cubic.start, cubic.control1, cubic.control2, cubic.end)]


def as_bezier(cubic: Cubic) -> bezier.Curve:
    """The curve as the bezier package has it."""
    return bezier.Curve(np.asfortranarray(np.array(control_points(cubic)).T), degree=3)


def as_shapely(path: Path, tolerance: float = 1e-4) -> LineString:
    """The path as a chain of short chords."""
    return LineString([(p.x, p.y) for p in path.flatten(tolerance)])


def circle(centre: Point, radius: float) -> Arc:
    """The whole circle."""
    return Arc(centre, radius, 0.0, tau)


def close(p: Point, q: Point, within: float = 1e-6) -> bool:
    """Whether two points are one for the purpose of a test."""
    return p.distance(q) <= within
