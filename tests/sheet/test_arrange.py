import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.drawing import Drawing, Meaning, Stroke
from littlefold.geometry import Path, Point
from littlefold.sheet.arrange import GAP, arrange
from littlefold.sheet.grid import fit_grid
from littlefold.sheet.paper import Paper, read_paper
from littlefold.sheet.skyline import pack
from tests.sheet.shapes import half_top

A4 = Paper("A4", 210.0, 297.0)


def rectangle(width, height, name=""):
    corners = [(0, 0), (width, 0), (width, height), (0, height), (0, 0)]
    path = Path.line_through(*(Point(x, y) for x, y in corners))
    return Drawing((Stroke(path, Meaning.CUT, name),))


def boxes(drawing):
    found = (mark.path.bounds() for mark in drawing.marks if isinstance(mark, Stroke))
    return [shapely.box(box.left, box.bottom, box.right, box.top) for box in found]


SIZES = st.lists(st.tuples(st.floats(5, 400), st.floats(5, 400)), min_size=1, max_size=8)


@settings(max_examples=60, deadline=None)
@given(SIZES)
def test_packed_boxes_never_overlap_and_stay_in_the_strip(sizes):
    spots = pack(sizes, 400.0)
    assert spots is not None
    placed = [
        shapely.box(spot.left, spot.depth, spot.left + w, spot.depth + h)
        for spot, (w, h) in zip(spots, sizes, strict=True)
    ]
    assert shapely.union_all(placed).area == pytest.approx(sum(w * h for w, h in sizes), rel=1e-6)
    assert all(
        spot.left >= 0 and spot.left + w <= 400.0 + 1e-6 for spot, (w, _) in zip(spots, sizes, strict=True)
    )


def test_a_box_wider_than_the_strip_has_no_spot():
    assert pack([(500.0, 10.0)], 400.0) is None


def test_boxes_fill_the_strip_before_they_go_deeper():
    assert [spot.left for spot in pack([(100, 50), (100, 50), (100, 50)], 300.0)] == [0, 100, 200]


@settings(max_examples=25, deadline=None)
@given(SIZES, st.booleans())
def test_pieces_keep_their_size_and_their_distance(sizes, may_turn):
    pieces = [rectangle(w, h) for w, h in sizes]
    found = boxes(arrange(pieces, A4, may_turn=may_turn).drawing)
    grown = [box.buffer(GAP / 2 - 1e-6, join_style="mitre") for box in found]
    assert shapely.union_all(grown).area == pytest.approx(sum(box.area for box in grown), rel=1e-6)
    assert sorted(box.area for box in found) == pytest.approx(sorted(w * h for w, h in sizes))


def test_pieces_stay_upright_unless_they_may_turn():
    # Four strips of 60 x 500: upright they need two rows, on their side of a landscape page as well, so only the
    # boxes tell.
    pieces = [rectangle(500, 60)] * 4
    upright = boxes(arrange(pieces, A4).drawing)
    assert all(box.bounds[2] - box.bounds[0] == pytest.approx(500) for box in upright)


def test_turning_saves_pages_where_it_can():
    roll = read_paper("roll 300mm")
    long = [rectangle(600, 100), rectangle(600, 100)]
    turned = arrange(long, roll, may_turn=True)
    assert turned.pages == 1
    assert all(box.bounds[2] - box.bounds[0] == pytest.approx(100) for box in boxes(turned.drawing))


def test_small_pieces_share_a_page():
    pieces = [rectangle(80, 120)] * 4
    assert arrange(pieces, A4).pages == 1


def test_pages_are_never_more_than_one_piece_below_the_other_needs():
    pieces = [half_top("front"), half_top("back", height=440.0), rectangle(300, 60), rectangle(60, 60)]
    found = arrange(pieces, A4, "Top")
    stacked = sum(len(fit_grid(piece, A4).printed) for piece in pieces)
    assert found.pages <= stacked
    assert len(fit_grid(found.drawing, found.paper).printed) <= found.pages
    assert found.drawing.title == "Top"


def test_the_same_pieces_always_give_the_same_sheet():
    pieces = [half_top("front"), half_top("back", height=440.0), rectangle(300, 60)]
    assert arrange(pieces, A4) == arrange(pieces, A4)


def test_a_roll_is_used_in_its_width():
    found = arrange([half_top("front"), half_top("back")], read_paper("roll 914mm"))
    box = found.drawing.bounds()
    assert box.height < 480
    assert found.paper.is_roll


def test_no_pieces_are_no_pages():
    assert arrange([], A4).pages == 0
    assert arrange([Drawing()], A4).drawing.marks == ()
