from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.lay.convex import convex_parts, polygon_of
from littlefold.lay.nofit import SIGNS, Lattice, NoFitTable, Sign

L_SHAPE = polygon_of(np.array([(0, 0), (60, 0), (60, 20), (25, 20), (25, 70), (0, 70)], dtype=float))
WEDGE = polygon_of(np.array([(0, 0), (50, 5), (20, 45)], dtype=float))
SHAPES = (L_SHAPE, WEDGE)
LATTICE = Lattice(5.0, 4.0)


@pytest.fixture(scope="module")
def table() -> NoFitTable:
    return NoFitTable([convex_parts(shape) for shape in SHAPES], LATTICE)


def signed(shape: shapely.Polygon, sign: Sign) -> shapely.Polygon:
    return shapely.transform(shape, lambda xy: xy * sign.factors())


@settings(max_examples=300)
@given(
    first=st.sampled_from([0, 1]),
    second=st.sampled_from([0, 1]),
    signs=st.tuples(st.sampled_from(SIGNS), st.sampled_from(SIGNS)),
    row=st.integers(-40, 40),
    column=st.integers(-40, 40),
)
def test_a_lattice_place_is_deep_exactly_where_the_shapes_overlap(  # noqa: PLR0917 - hypothesis names them
    table: NoFitTable, first: int, second: int, signs: tuple[Sign, Sign], row: int, column: int
) -> None:
    kinds = (table.kind(first, signs[0]), table.kind(second, signs[1]))
    depth = table.region(*kinds).at(row, column)
    standing = signed(SHAPES[first], signs[0])
    way = np.array((column * LATTICE.along, row * LATTICE.across))
    moving = shapely.transform(signed(SHAPES[second], signs[1]), lambda xy: xy + way)
    overlap = standing.intersection(moving).area
    if overlap > 1e-3:
        assert depth > 0
    if overlap == 0:
        assert depth == 0


def test_depth_grows_towards_the_middle_of_the_region() -> None:
    square = polygon_of(np.array([(0, 0), (40, 0), (40, 40), (0, 40)], dtype=float))
    region = NoFitTable([convex_parts(square)], Lattice(4.0, 4.0)).region(0, 0)
    # The region of two equal squares is a square of twice the side; at its middle one is 40 mm from outside.
    assert region.at(0, 0) == pytest.approx(40.0)
    assert region.at(0, 9) == pytest.approx(4.0)
    assert region.at(0, 10) == 0.0
