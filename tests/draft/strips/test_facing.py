from __future__ import annotations

from math import pi

import pytest

from tests.draft.rings import length, only_problem, polygon

# Half a front: square corners but for the neck, a quarter of a circle of 6 cm about A.
FRAME = """
recipe test-facings
drawing body
point A at the fold
point B below A by 30 cm
point C right of A by 20 cm
point D right of B by 20 cm
point N below A by 6 cm
point M right of A by 6 cm
point F below C by 12 cm
line side from D to F
line armhole from F to C
arc neck about A from N to M anticlockwise
piece front "Front" from body cut 1 on fold
edges N-B as middle fold, B-D as hem hem, side seam, armhole seam 8 mm, C-M as shoulder seam, neck faced 6 mm
"""


def by_name(piece):
    return {edge.name: edge for edge in piece.edges}


def test_facing_of_one_edge(drafted):
    """
    piece lining "Neck facing" facing of front.neck by 4 cm cut 1 on fold cloth lining
    """
    assert not drafted.problems
    piece = drafted.pieces[-1]
    assert (piece.made_as, piece.title, piece.cloth) == ("facing", "Neck facing", "lining")
    edges = by_name(piece)
    assert {name: edge.kind.value for name, edge in edges.items()} == {
        "shoulder": "seam",
        "neck": "seam",
        "middle": "fold",
        "inner": "raw",
    }
    assert edges["neck"].allowance == 6  # as on the front, so that the two edges lie on each other
    # A quarter of a ring between radii of 6 cm and 10 cm.
    area = polygon(drafted, "lining", "shoulder", "neck", "middle", "inner").area
    assert area == pytest.approx(pi / 4 * (100**2 - 60**2), abs=0.5)
    assert length(drafted, "lining.inner") == pytest.approx(pi / 2 * 100, abs=1e-3)
    assert length(drafted, "lining.neck") == pytest.approx(length(drafted, "body.neck"))


def test_facing_round_a_corner(drafted):
    """
    piece lining facing of front.armhole, front.side by 3 cm cut 2
    """
    assert not drafted.problems
    edges = by_name(drafted.pieces[-1])
    assert set(edges) == {"hem", "side", "armhole", "shoulder", "inner"}
    assert edges["armhole"].allowance == 8
    assert polygon(drafted, "lining", "hem", "side", "armhole", "shoulder", "inner").area == pytest.approx(
        30 * 300
    )


def test_the_only_edge_left_out_is_cut_in_two(drafted):
    """
    piece lining facing of front.hem, front.side, front.armhole, front.shoulder, front.neck by 2 cm cut 1 on fold
    """
    assert not drafted.problems
    edges = by_name(drafted.pieces[-1])
    assert edges["middle_1"].kind.value == edges["middle_2"].kind.value == "fold"
    assert edges["middle_1"].path.length() == pytest.approx(20)
    assert edges["middle_2"].path.length() == pytest.approx(20)


def test_grain_is_that_of_the_piece(drafted):
    """
    piece back from body cut 1 on fold
    edges as front
    grain at 30 degrees to B-D
    piece lining facing of back.neck by 4 cm cut 1 on fold
    """
    back, lining = drafted.pieces[1:]
    way, own = (piece.grain[1] - piece.grain[0] for piece in (back, lining))
    assert way.cross(own) == pytest.approx(0, abs=1e-6)


def test_edges_line_replaces_the_usual_edges(drafted):
    """
    piece lining facing of front.neck by 4 cm cut 1 on fold
    edges shoulder seam, neck seam 6 mm, middle fold, inner bound
    """
    assert not drafted.problems
    assert by_name(drafted.pieces[-1])["inner"].kind.value == "bound"


def test_points_at_its_corners_keep_their_names(drafted):
    """
    piece lining facing of front.neck by 4 cm cut 1 on fold
    """
    neck = by_name(drafted.pieces[-1])["neck"]
    assert {neck.start, neck.end} == {"N", "M"}


def test_wider_than_the_edges_beside(drafted):
    """
    piece lining facing of front.neck by 16 cm cut 1 on fold
    """
    problem = only_problem(drafted)
    assert problem.code == "facing-too-wide"
    assert [number.value for number in problem.numbers] == pytest.approx([160, 140])


def test_no_width(drafted):
    """
    piece lining facing of front.neck by 0 cm cut 1 on fold
    """
    assert only_problem(drafted).code == "facing-too-wide"


def test_edges_that_do_not_follow_each_other(drafted):
    """
    piece lining facing of front.neck, front.side by 4 cm cut 1
    """
    assert only_problem(drafted).code == "edges-apart"


def test_edges_of_two_pieces(drafted):
    """
    piece back from body cut 1 on fold
    edges as front
    piece lining facing of front.neck, back.neck by 4 cm cut 1
    """
    assert only_problem(drafted).code == "facing-of-several"


def test_all_edges(drafted):
    """
    piece lining facing of front.middle, front.hem, front.side, front.armhole, front.shoulder, front.neck by 1 cm cut 1
    """
    assert only_problem(drafted).code == "facing-all-round"


def test_edge_without_its_piece(drafted):
    """
    piece lining facing of neck by 4 cm cut 1
    """
    assert only_problem(drafted).code == "edge-without-piece"


def test_no_such_piece_or_edge(drafted):
    """
    piece lining facing of frond.neck by 4 cm cut 1
    piece other facing of front.nick by 4 cm cut 1
    """
    assert [problem.code for problem in drafted.problems] == ["name-not-known", "name-not-known"]
