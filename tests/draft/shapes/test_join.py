from __future__ import annotations

import pytest

from tests.draft.rings import length, only_problem, polygon
from tests.draft.shapes.frame import BLOCK, EDGES

FRAME = BLOCK


def test_what_was_split_is_joined_again(drafted):
    """
    line cut from P to Q
    split block along cut into inner nearer A and outer
    join inner and outer at cut as whole
    """
    assert not drafted.problems
    before, after = polygon(drafted, "block", *EDGES), polygon(drafted, "whole", *EDGES)
    assert after.symmetric_difference(before).area == pytest.approx(0, abs=1e-6)
    assert length(drafted, "whole.waist") == pytest.approx(200)


def test_the_second_is_brought_to_the_first(drafted):
    """
    drawing other
    point K at the start
    point L right of K by 18 cm and below by 24 cm
    point M right of K by 20 cm
    line side from K to L
    outline other edges side, L-M as foot, M-K as slope
    join block and other at side as whole
    """
    assert not drafted.problems
    assert drafted.points["whole.A"].at == drafted.points["block.A"].at
    # Seen from K, M lies 12 cm along K-L (the cosine is 3/5) and 16 cm left of it; K comes to C, L to D.
    corner = drafted.points["whole.M"].at
    assert (corner.x, corner.y) == pytest.approx((200 + 160, -120))
    whole = polygon(drafted, "whole", "middle", "hem", "foot", "slope", "waist")
    assert whole.area == pytest.approx(60_000 + 300 * 160 / 2)


def test_halves_drawn_alike_are_turned_over(drafted):
    """
    drawing back
    point A at the fold
    point B below A by 30 cm
    point C right of A by 6 cm
    point D right of A by 18 cm and below by 4 cm
    point E right of B by 22 cm
    point N below A by 2 cm
    line middle from N to B
    line hem from B to E
    line side from E to D
    line shoulder from D to C
    curve neck from C square to shoulder to N going left
    outline back edges middle, hem, side, shoulder, neck
    redraw back as front
    with point N below A by 6 cm
    join back and front at shoulder as laid
    """
    assert not drafted.problems
    names = ("middle_1", "hem_1", "side_1", "side_2", "hem_2", "middle_2", "neck")
    edges = ("middle", "hem", "side", "shoulder", "neck")
    areas = [polygon(drafted, sheet, *edges).area for sheet in ("back", "front")]
    whole = polygon(drafted, "laid", *names)
    assert whole.area == pytest.approx(sum(areas), rel=1e-6)
    # Necks meet at the neck end of the shoulder, and carry on smoothly there: one edge.
    necks = [length(drafted, f"{sheet}.neck") for sheet in ("back", "front")]
    assert length(drafted, "laid.neck") == pytest.approx(sum(necks), rel=1e-6)
    assert drafted.steps[-1].words["over"].value == "over"


def test_points_of_the_second_keep_their_piece(drafted):
    """
    outline other edges middle, hem, side, waist
    join block and other at side as double
    """
    assert drafted.points["double.A"].at == drafted.points["block.A"].at
    other = drafted.points["double.other.A"].at
    assert (other.x, other.y) == pytest.approx((400, 0))
    assert "double.other.C" not in drafted.points  # C and D lie on their like
    assert length(drafted, "double.waist") == pytest.approx(400)
    assert polygon(drafted, "double", "middle_1", "hem", "middle_2", "waist").area == pytest.approx(
        2 * 60_000
    )


def test_lengths_that_differ(drafted):
    """
    drawing other
    point K at the start
    point L below K by 30.3 cm
    point M right of L by 5 cm
    line side from K to L
    outline other edges side, L-M as hem, M-K as slope
    join block and other at side as double
    """
    problem = only_problem(drafted)
    assert problem.code == "joined-edges-differ"
    assert [number.value for number in problem.numbers] == pytest.approx([300, 303, 2])


def test_lengths_that_differ_a_little(drafted):
    """
    drawing other
    point K at the start
    point L below K by 30.1 cm
    point M right of L by 5 cm
    line side from K to L
    outline other edges side, L-M as foot, M-K as slope
    join block and other at side as double
    """
    assert not drafted.problems
    joined = polygon(drafted, "double", "middle", "hem", "foot", "slope", "waist")
    assert joined.area == pytest.approx(60_000 + 301 * 50 / 2, abs=0.5 * 300)  # half a millimetre is taken up


def test_edges_bent_differently(drafted):
    """
    arc bow from P to Q radius 20 cm rightward
    split block along bow into inner nearer A and outer
    drawing other
    point K at the start
    point L below K by length of inner.bow
    point M right of L by 5 cm
    line bow from K to L
    outline other edges bow, L-M as foot, M-K as slope
    join inner and other at bow as odd
    """
    problem = only_problem(drafted)
    assert problem.code == "joined-edges-bend-apart"
    assert problem.numbers[0].value > 20


def test_edge_that_one_has_not(drafted):
    """
    split block along P-Q into inner nearer A and outer
    join inner and outer at side as whole
    """
    problem = only_problem(drafted)
    assert problem.code == "name-not-known"
    assert "edge of inner" in problem.message
