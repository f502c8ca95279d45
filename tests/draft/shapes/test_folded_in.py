"""Pleats are tested as a hand would: the outline is folded, and what comes out must be the outline it was."""

from __future__ import annotations

import pytest
from shapely import Polygon, box
from shapely.affinity import affine_transform
from shapely.ops import unary_union

from tests.draft.rings import length, only_problem, polygon
from tests.draft.shapes.frame import AREA, BLOCK, EDGES

# The same block with a slanting waist and a round hem.
SLANTED = """
point W above C by 5 cm
point U below B by 4 cm
curve round_hem from U going right to D going up
line slant from A to W
point P2 above P by 10 cm
point Q2 below Q by 10 cm
line cut from P2 to Q2
outline slanted edges A-U as middle, round_hem as hem, W-D as side, slant as waist
"""
FRAME = BLOCK + SLANTED


def strip(shape: Polygon, start: float, end: float) -> Polygon:
    return shape.intersection(box(start, -1000, end, 1000))


def mirrored(shape: Polygon, at: float) -> Polygon:
    return affine_transform(shape, [-1, 0, 0, 1, 2 * at, 0])


def shifted(shape: Polygon, by: float) -> Polygon:
    return affine_transform(shape, [1, 0, 0, 1, by, 0])


def folded(shape: Polygon, at: float, depth: float, *, rightward: bool) -> tuple[Polygon, Polygon]:
    """The paper with one fold laid, seen from above, and what lies under the outer fold."""
    near, far = strip(shape, -1000, at), shifted(strip(shape, at + 2 * depth, 2000), -2 * depth)
    first, second = strip(shape, at, at + depth), strip(shape, at + depth, at + 2 * depth)
    if rightward:
        under = (mirrored(first, at), shifted(second, -2 * depth))
    else:
        under = (first, shifted(mirrored(second, at + 2 * depth), -2 * depth))
    assert under[0].symmetric_difference(under[1]).area == pytest.approx(0, abs=0.1)
    return unary_union([near, far, *under]), under[0]


@pytest.mark.parametrize("rightward", [True, False])
def test_folded_pleat_is_the_outline_again(drafted, rightward):
    """
    pleats in slanted along cut as left depth 2 cm leftward
    pleats in slanted along cut as right depth 2 cm rightward
    """
    assert not drafted.problems
    before = polygon(drafted, "slanted", *EDGES)
    pleated = polygon(drafted, "right" if rightward else "left", *EDGES)
    after, under = folded(pleated, 80, 20, rightward=rightward)
    assert after.symmetric_difference(before).area == pytest.approx(0, abs=0.5)
    covered = strip(before, 60, 80) if rightward else strip(before, 80, 100)
    assert under.symmetric_difference(covered).area == pytest.approx(0, abs=0.5)


def test_several_pleats(drafted):
    """
    pleats in slanted along cut as pleated depth 2 cm count 3 apart 3 cm rightward
    """
    shape = polygon(drafted, "pleated", *EDGES)
    for place in (80 + 2 * 70, 80 + 70, 80):  # 3 cm and the 4 cm of a pleat; the furthest is folded first
        shape, _ = folded(shape, place, 20, rightward=True)
    assert shape.symmetric_difference(polygon(drafted, "slanted", *EDGES)).area == pytest.approx(0, abs=0.5)


def test_inverted_pleat(drafted):
    """
    pleats in slanted along cut as inverted_one depth 2 cm inverted
    """
    shape = polygon(drafted, "inverted_one", *EDGES)
    shape, _ = folded(shape, 120, 20, rightward=False)
    shape, _ = folded(shape, 80, 20, rightward=True)
    assert shape.symmetric_difference(polygon(drafted, "slanted", *EDGES)).area == pytest.approx(0, abs=0.5)
    places = {
        name: drafted.lines[f"inverted_one.{name}"].path.start.x for name in ("fold_1", "lay_1", "fold_2")
    }
    assert places == pytest.approx({"fold_1": 80, "lay_1": 120, "fold_2": 160})


def test_boxed_pleat(drafted):
    """
    pleats in slanted along cut as boxed_one depth 2 cm boxed
    """
    shape = polygon(drafted, "boxed_one", *EDGES)
    shape, under_right = folded(shape, 140, 20, rightward=True)
    shape, under_left = folded(shape, 60, 20, rightward=False)
    assert shape.symmetric_difference(polygon(drafted, "slanted", *EDGES)).area == pytest.approx(0, abs=0.5)
    assert shifted(under_right, -40).bounds[0] == pytest.approx(80)  # both undersides meet under the line
    assert under_left.bounds[2] == pytest.approx(80)


def test_lengths_as_sewn(drafted):
    """
    pleats in slanted along cut as pleated depth 2 cm count 3 apart 3 cm leftward
    piece pleated cut 1 on fold
    edges middle fold, hem hem, side seam, waist seam
    inside pleat fold_1
    inside pleat fold_3
    """
    assert not drafted.problems
    waist = next(edge for edge in drafted.pieces[0].edges if edge.name == "waist")
    assert waist.path.length() > length(drafted, "slanted.waist") + 3 * 40
    assert waist.sewn_length == pytest.approx(length(drafted, "slanted.waist"))
    hem = next(edge for edge in drafted.pieces[0].edges if edge.name == "hem")
    assert hem.sewn_length == pytest.approx(length(drafted, "slanted.hem"), abs=1e-3)


def test_band_along_a_pleated_edge_is_as_long_as_it_is_sewn(drafted):
    """
    pleats in block along P-Q as pleated depth 2 cm leftward
    piece band band along pleated.waist by 4 cm cut 1 on fold
    """
    assert length(drafted, "band.top") == pytest.approx(200)


def test_level_edges_grow_by_twice_the_depth(drafted):
    """
    tucks in block along P-Q as tucked depth 1 cm count 2 apart 4 cm rightward
    """
    assert length(drafted, "tucked.hem") == pytest.approx(240)
    assert drafted.lines["tucked.hem"].folded == pytest.approx(40)
    assert polygon(drafted, "tucked", *EDGES).area == pytest.approx(AREA + 40 * 300)
    names = ("stitch_1", "fold_1", "stitch_2", "stitch_3", "fold_2", "stitch_4")
    places = [drafted.lines[f"tucked.{name}"].path.start.x for name in names]
    assert places == pytest.approx([80, 90, 100, 140, 150, 160])
    assert all(length(drafted, f"tucked.{name}") == pytest.approx(300) for name in names)


def test_folds_along_a_level_line(drafted):
    """
    point V below A by 10 cm
    point X below C by 10 cm
    tucks in block along V-X as tucked depth 1 cm downward
    """
    assert not drafted.problems
    assert length(drafted, "tucked.side") == pytest.approx(320)


def test_way_along_the_line(drafted):
    """
    pleats in block along P-Q as pleated depth 2 cm upward
    """
    problem = only_problem(drafted)
    assert problem.code == "way-along-line"
    assert "leftward or rightward" in problem.message


def test_no_depth(drafted):
    """
    pleats in block along P-Q as pleated depth 0 cm leftward
    """
    assert only_problem(drafted).code == "fold-without-depth"


def test_part_of_a_pleat(drafted):
    """
    pleats in block along P-Q as pleated depth 1 cm count 2.5 apart 3 cm leftward
    """
    problem = only_problem(drafted)
    assert problem.code == "fold-count"
    assert [number.value for number in problem.numbers] == [2.5, 50]


def test_boxes_that_overlap(drafted):
    """
    pleats in block along P-Q as pleated depth 2 cm count 2 apart 4 cm boxed
    """
    problem = only_problem(drafted)
    assert problem.code == "folds-too-near"
    assert [number.value for number in problem.numbers] == pytest.approx([40, 40])


def test_no_room(drafted):
    """
    pleats in block along P-Q as pleated depth 1 cm count 4 apart 5 cm leftward
    """
    problem = only_problem(drafted)
    assert problem.code == "no-room-for-folds"
    assert problem.numbers[1].value == 4  # 12 cm lie beside the line: room for folds at 0, 5 and 10 cm


def test_line_that_bends(drafted):
    """
    arc bow from P to Q radius 40 cm rightward
    pleats in block along bow as pleated depth 1 cm leftward
    """
    assert only_problem(drafted).code == "line-not-straight"


def test_tucks_cannot_be_boxed(drafted):
    """
    tucks in block along P-Q as tucked depth 1 cm boxed
    """
    assert only_problem(drafted).code == "tucks-have-one-fold"
