from __future__ import annotations

import numpy as np
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.lay.convex import Fan, convex_parts, outer_polygon, polygon_of


@st.composite
def stars(draw: st.DrawFn) -> shapely.Polygon:
    """Star-shaped polygons: any radii about a middle, so often hollow but never crossing."""
    radii = draw(st.lists(st.floats(20, 200), min_size=3, max_size=12))
    angles = np.linspace(0, 2 * np.pi, len(radii), endpoint=False)
    return polygon_of(np.column_stack((np.cos(angles), np.sin(angles))) * np.array(radii)[:, None])


@settings(max_examples=60)
@given(stars())
def test_convex_parts_cover_the_polygon_and_no_more(polygon: shapely.Polygon) -> None:
    parts = [shapely.Polygon(part) for part in convex_parts(polygon)]
    for part in parts:
        assert part.convex_hull.area <= part.area * (1 + 1e-9)
    assert shapely.union_all(parts).symmetric_difference(polygon).area <= 1e-6 * polygon.area


@settings(max_examples=60)
@given(stars(), stars())
def test_sum_of_convex_shapes_is_the_hull_of_all_sums_of_corners(
    a: shapely.Polygon, b: shapely.Polygon
) -> None:
    first, second = (shapely.get_coordinates(p.convex_hull)[:-1] for p in (a, b))
    corners = (first[:, None, :] + second[None, :, :]).reshape(-1, 2)
    expected = shapely.MultiPoint(corners).convex_hull
    found = shapely.Polygon(Fan.of(first).plus(Fan.of(second)))
    assert found.symmetric_difference(expected).area <= 1e-6 * expected.area


@settings(max_examples=60)
@given(stars(), st.just(0.0) | st.floats(0.01, 5), st.floats(0.1, 1))
def test_outer_polygon_covers_all_within_the_growth(
    polygon: shapely.Polygon, grow: float, tolerance: float
) -> None:
    outer = outer_polygon(polygon, grow, tolerance)
    assert outer.buffer(1e-6).covers(polygon.buffer(grow * 0.999, quad_segs=4) if grow else polygon)
