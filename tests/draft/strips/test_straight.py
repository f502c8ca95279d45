from __future__ import annotations

import pytest

from tests.draft.rings import length, only_problem, polygon

FRAME = """
recipe test-strips
drawing body
point A at the fold
point B below A by 30 cm
point C right of A by 20 cm
point D right of B by 20 cm
line hem from B to D
line side from D to C
line waist from C to A
piece skirt from body cut 1 on fold
edges A-B as middle fold, hem hem, side seam, waist seam
"""
UPRIGHT = ("bottom", "right", "top", "left")


def kinds(piece):
    return {edge.name: edge.kind.value for edge in piece.edges}


def test_rectangle(drafted):
    """
    piece flap "Pocket flap" rectangle 12 cm by 5 cm cut 2 as a pair cloth lining
    """
    assert not drafted.problems
    piece = drafted.pieces[-1]
    assert (piece.title, piece.made_as, piece.cloth) == ("Pocket flap", "rectangle", "lining")
    assert (piece.cutting.count, piece.cutting.pair) == (2, True)
    assert kinds(piece) == dict.fromkeys(UPRIGHT, "seam")
    assert all(edge.allowance == 10 for edge in piece.edges)  # the plain seam of docs/decisions.md
    assert polygon(drafted, "flap", *UPRIGHT).area == pytest.approx(120 * 50)
    assert [edge.start for edge in piece.edges] == ["bl", "br", "tr", "tl"]
    assert piece.grain[0].x == pytest.approx(piece.grain[1].x)  # upright


def test_rectangle_on_the_fold_is_drawn_as_its_half(drafted):
    """
    piece flap rectangle 12 cm by 5 cm cut 1 on fold
    """
    piece = drafted.pieces[-1]
    assert length(drafted, "flap.top") == pytest.approx(60)
    assert kinds(piece)["left"] == "fold"
    assert next(edge for edge in piece.edges if edge.name == "left").allowance == 0


def test_edges_line_replaces_the_usual_edges(drafted):
    """
    piece flap rectangle 12 cm by 5 cm cut 1
    edges bottom hem 2 cm, right seam 6 mm, top raw, left seam 6 mm
    notch top at 1/2
    inside buttonholes 1 along bl-tr long 1.5 cm
    mark "outside" at tl
    """
    assert not drafted.problems
    piece = drafted.pieces[-1]
    assert kinds(piece) == {"bottom": "hem", "right": "seam", "top": "raw", "left": "seam"}
    assert piece.edges[0].allowance == 20
    assert piece.notches[0].at == pytest.approx(60)
    assert piece.marks[0][1].y == pytest.approx(50)


def test_allowances_of_the_recipe_hold(drafted):
    """
    allowances seam 7 mm
    piece flap rectangle 12 cm by 5 cm cut 1
    """
    assert all(edge.allowance == 7 for edge in drafted.pieces[-1].edges)


def test_strips_are_sewn_like_other_pieces(drafted):
    """
    piece band rectangle 40 cm by 8 cm cut 1 on fold
    sew skirt.waist to band.bottom
    """
    assert not drafted.problems
    assert drafted.seams[0].second[0].piece == "band"


def test_bias_strip(drafted):
    """
    piece binding bias strip 45 cm by 3 cm cut 2
    """
    piece = drafted.pieces[-1]
    assert piece.made_as == "bias"
    way = piece.grain[1] - piece.grain[0]
    assert way.x == pytest.approx(way.y)  # 45 degrees to the strip
    assert polygon(drafted, "binding", *UPRIGHT).area == pytest.approx(450 * 30)


def test_band_is_as_long_as_its_run(drafted):
    """
    run round_hem = skirt.hem then skirt.side
    piece band band along round_hem by 4 cm cut 1 on fold
    piece plain band along skirt.waist by 4 cm cut 1
    piece drawn band along body.hem by 4 cm cut 1
    """
    assert not drafted.problems
    # The skirt's half is drawn, so is the band's: opened out both are twice as long.
    assert length(drafted, "band.top") == pytest.approx(200 + 300)
    assert length(drafted, "plain.top") == pytest.approx(200)
    assert length(drafted, "drawn.top") == pytest.approx(200)
    assert drafted.pieces[1].made_as == "band"


def test_each_strip_is_a_step_on_its_own_sheet(drafted):
    """
    piece flap rectangle 12 cm by 5 cm cut 1
    piece binding bias strip 45 cm by 3 cm cut 2
    piece band band along skirt.waist by 4 cm cut 1
    """
    told = [(step.kind, step.sheet) for step in drafted.steps[-3:]]
    assert told == [("piece.rectangle", "flap"), ("piece.bias", "binding"), ("piece.band", "band")]
    assert drafted.steps[-3].formula == "12 cm"


def test_no_size(drafted):
    """
    piece flap rectangle 12 cm - 12 cm by 5 cm cut 1
    """
    problem = only_problem(drafted)
    assert problem.code == "strip-without-size"
    assert [number.value for number in problem.numbers] == pytest.approx([0, 50])


def test_name_of_a_piece(drafted):
    """
    piece skirt rectangle 12 cm by 5 cm cut 1
    """
    assert only_problem(drafted).code == "name-taken"


def test_name_of_a_drawing(drafted):
    """
    piece body rectangle 12 cm by 5 cm cut 1
    """
    assert only_problem(drafted).code == "name-taken"


def test_band_along_nothing(drafted):
    """
    piece band band along skirt.wasit by 4 cm cut 1
    """
    assert only_problem(drafted).code == "name-not-known"


def test_the_sheet_in_hand_stays_in_hand(drafted):
    """
    piece flap rectangle 12 cm by 5 cm cut 1
    point E below A by 10 cm
    """
    assert not drafted.problems
    assert "body.E" in drafted.points
