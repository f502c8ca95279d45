from itertools import pairwise

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.drawing import Drawing, Label, Meaning, Stroke, mark_bounds
from littlefold.drawing.words import LONGEST
from littlefold.geometry import Affine, Bounds, Path, Point, Vector
from littlefold.problem import Problem
from littlefold.sheet.grid import Grid, cell_name, fit_grid, whole_cell
from littlefold.sheet.one_sheet import one_sheet
from littlefold.sheet.paper import Paper, read_paper
from littlefold.sheet.tile import _stands_on_top, tile
from littlefold.sheet.too_large import too_large
from tests.drawing.paths import paths
from tests.sheet.shapes import MADE, half_top, two_pieces

A4 = Paper("A4", 210.0, 297.0)
NO_LAP = Paper("A4", 210.0, 297.0, 10.0, 0.0)


def on_the_drawing(page):
    """What a page shows, laid back on the drawing."""
    return page.drawing.transformed(Affine.translation(Vector(page.corner.x, page.corner.y)))


def lines(drawings, tolerance=0.002):
    return shapely.MultiLineString(
        [
            [(p.x, p.y) for p in mark.path.flatten(tolerance)]
            for drawing in drawings
            for mark in drawing.marks
            if isinstance(mark, Stroke)
        ]
    )


def frame(left, bottom, right, top):
    corners = [(left, bottom), (right, bottom), (right, top), (left, top), (left, bottom)]
    return Stroke(Path.line_through(*(Point(x, y) for x, y in corners)), Meaning.CUT, "frame")


@settings(max_examples=40, deadline=None)
@given(st.lists(paths(most=4), min_size=1, max_size=4), st.sampled_from([A4, NO_LAP]))
def test_every_bit_of_every_stroke_is_on_some_page(outlines, paper):
    drawing = Drawing(tuple(Stroke(path, Meaning.CUT) for path in outlines))
    pages = tile(drawing, paper, MADE)
    shown = lines(on_the_drawing(page) for page in pages if page.name != "cover")
    lost = lines([drawing]).difference(shown.buffer(0.01))
    assert lost.length == pytest.approx(0.0, abs=1e-6)


@settings(max_examples=40, deadline=None)
@given(st.lists(paths(most=4), min_size=1, max_size=4))
def test_nothing_on_a_page_lies_outside_its_window(outlines):
    drawing = Drawing(tuple(Stroke(path, Meaning.CUT) for path in outlines))
    for page in tile(drawing, A4, MADE):
        if page.window is not None:
            for mark in page.drawing.marks:
                box = mark.path.bounds()
                assert page.window.grown(1e-6).contains(Point(box.left, box.bottom))
                assert page.window.grown(1e-6).contains(Point(box.right, box.top))


@settings(max_examples=40, deadline=None)
@given(st.lists(paths(most=4), min_size=1, max_size=4))
def test_a_printed_page_has_a_mark_or_is_shut_in(outlines):
    drawing = Drawing(tuple(Stroke(path, Meaning.CUT) for path in outlines))
    grid = fit_grid(drawing, A4)
    whole = lines([drawing])
    for row, column in grid.printed:
        box = grid.share((row, column))
        outer = row in (0, grid.rows - 1) or column in (0, grid.columns - 1)
        near = whole.distance(shapely.box(box.left, box.bottom, box.right, box.top))
        assert near < 0.01 or not outer


def test_bare_pages_are_left_out():
    corner = Drawing(
        (
            Stroke(Path.line_through(Point(0, 0), Point(0, 800)), Meaning.CUT),
            Stroke(Path.line_through(Point(0, 0), Point(500, 0)), Meaning.CUT),
        )
    )
    grid = fit_grid(corner, A4)
    assert (grid.rows, grid.columns) == (3, 3)
    assert len(grid.printed) == 5  # the left column and the bottom row
    assert "left out" in " ".join(
        m.text for m in tile(corner, A4, MADE)[0].drawing.marks if isinstance(m, Label)
    )


def test_paper_in_the_middle_of_a_piece_is_printed():
    grid = fit_grid(Drawing((frame(0, 0, 530, 790),)), A4)
    assert (grid.rows, grid.columns) == (3, 3)
    assert (1, 1) in grid.printed


def test_the_grid_is_moved_where_that_saves_a_page():
    # An L whose foot just fits below or beside a page edge, depending on where the grid starts.
    shape = Drawing((frame(0, 0, 170, 500), frame(172, 0, 300, 100)))
    grid = fit_grid(shape, A4)
    assert len(grid.printed) == 3
    assert len(grid.cells()) == 4


def test_neighbours_overlap_by_what_the_paper_says():
    grid = fit_grid(two_pieces(), A4)
    left, right = grid.window((0, 0)), grid.window((0, 1))
    assert left.right - right.left == pytest.approx(10.0)
    upper, lower = grid.window((0, 0)), grid.window((1, 0))
    assert lower.top - upper.bottom == pytest.approx(10.0)


def test_the_shares_of_the_cells_cover_the_grid_once():
    grid = fit_grid(two_pieces(), A4)
    boxes = [shapely.box(s.left, s.bottom, s.right, s.top) for s in map(grid.share, grid.cells())]
    union = shapely.union_all(boxes)
    assert union.area == pytest.approx(sum(box.area for box in boxes), rel=1e-9)
    box = two_pieces().bounds()
    assert union.covers(shapely.box(box.left, box.bottom, box.right, box.top))


def marks_of(page, name):
    home = Vector(page.corner.x, page.corner.y)
    moved = page.surround.transformed(Affine.translation(home))
    return [mark for mark in moved.marks if mark.name == name]


def test_the_two_halves_of_every_boat_meet_on_the_mast():
    # Independent of how pages are placed: where a boat ends on the joining line of one page, one ends on the
    # other page, too, once both lie on the drawing.
    pages = [page for page in tile(two_pieces(), A4, MADE) if page.name != "cover"]
    ends = [
        (round(p.x, 6), round(p.y, 6))
        for page in pages
        for boat in marks_of(page, "boat")
        for p in (boat.path.start, boat.path.end)
    ]
    masts = {end for end in ends if ends.count(end) == 2}
    assert len(masts) == 3 * 7  # a sail and two ends of a hull on each of the 7 joints of 2 rows of 3 pages


def test_every_page_names_its_neighbours():
    for page in tile(two_pieces(), A4, MADE)[1:]:
        named = {
            m.text for m in page.surround.marks if isinstance(m, Label) and m.name == "join" and m.height > 3
        }
        row, column = "AB".index(page.name[0]), int(page.name[1])
        near = {(row - 1, column), (row + 1, column), (row, column - 1), (row, column + 1)}
        assert named == {f"{'AB'[r]}{c}" for r, c in near if r in (0, 1) and c in (1, 2, 3)}


@pytest.mark.parametrize("paper", ["a4", "letter", "a3", "a4 landscape"])
def test_what_the_sheet_adds_stays_inside_the_margins(paper):
    sheet = read_paper(paper)
    for page in tile(two_pieces(), sheet, MADE):
        room = Bounds(0, 0, page.width, page.height).grown(-sheet.margin + 1e-6)
        marks = (*page.surround.marks, *(page.drawing.marks if page.name == "cover" else ()))
        for mark in marks:
            box = mark_bounds(mark)
            assert room.left <= box.left, (page.name, mark)
            assert box.right <= room.right, (page.name, mark)
            assert room.bottom <= box.bottom, (page.name, mark)
            assert box.top <= room.top, (page.name, mark)


def test_check_marks_and_captions_do_not_lie_on_each_other():
    for page in tile(two_pieces(), A4, MADE)[1:]:
        groups = {}
        for mark in page.surround.marks:
            group = (
                ".".join(mark.name.split(".")[:2])
                if mark.name.startswith("check")
                else mark.name.split(".")[0]
            )
            if group in ("check.across", "check.down", "page"):
                box = mark_bounds(mark)
                groups[group] = groups[group].union(box) if group in groups else box
        assert set(groups) == {"check.across", "check.down", "page"}
        boxes = list(groups.values())
        assert not any(a.overlaps(b) for a, b in pairwise([*boxes, boxes[0]]))


def test_words_stand_whole_on_one_page_only_when_that_page_lies_on_top():
    page_words = [
        (page.name, mark.text)
        for page in tile(two_pieces(), A4, MADE)[1:]
        for mark in page.drawing.marks
        if isinstance(mark, Label)
    ]
    assert len({words for _, words in page_words}) == len(
        {m.text for m in two_pieces().marks if hasattr(m, "text")}
    )


def test_the_cover_maps_every_printed_page():
    pages = tile(two_pieces(), A4, MADE)
    on_the_map = [m.text for m in pages[0].drawing.marks if isinstance(m, Label) and m.name == "map.page"]
    assert on_the_map == [page.name for page in pages[1:]]


def test_one_page_needs_no_cover():
    small = Drawing((frame(0, 0, 150, 200),))
    assert [page.name for page in tile(small, A4, MADE)] == [""]


@pytest.mark.parametrize(
    ("cell", "name"), [((0, 0), "A1"), ((25, 9), "Z10"), ((26, 0), "AA1"), ((51, 0), "AZ1")]
)
def test_rows_are_letters_and_columns_numbers(cell, name):
    assert cell_name(cell) == name


def test_the_last_of_the_pages_that_show_words_whole_is_found():
    grid = Grid(0.0, 0.0, 190.0, 277.0, 10.0, 2, 2)
    assert whole_cell(Bounds(10, -20, 60, -10), grid) == (0, 0)
    assert whole_cell(Bounds(181, -20, 188, -10), grid) == (0, 1)
    assert whole_cell(Bounds(150, -20, 250, -10), grid) is None


def test_a_sheet_that_is_too_small_says_how_large_it_must_be():
    problem = one_sheet(two_pieces(), A4, MADE)
    assert isinstance(problem, Problem)
    box = two_pieces().bounds()
    assert problem.numbers[0].value == pytest.approx(box.width + 22, abs=1.0)


def test_one_large_sheet_shows_everything():
    page = one_sheet(two_pieces(), read_paper("a0"), MADE)
    assert lines([two_pieces()]).difference(
        lines([on_the_drawing(page)]).buffer(0.01)
    ).length == pytest.approx(0.0)


def test_many_pages_of_one_piece_have_the_title_asked_for():
    page = tile(half_top(), A4, MADE, "Summer top")[1]
    assert "Summer top" in [mark.text for mark in page.surround.marks if isinstance(mark, Label)]


@pytest.mark.parametrize(
    ("left", "shown"),
    [(20.0, ["A1"]), (178.0, ["A1"]), (179.5, ["A1", "A2"]), (181.0, ["A2"]), (200.0, ["A2"])],
)
def test_words_whole_on_the_page_that_lies_on_top_are_left_out_below_it(left, shown):
    grid = Grid(0.0, 0.0, 190.0, 277.0, 10.0, 1, 2)  # the second window begins at 180
    label = Label("i", Point(left, -50), height=3.0)  # about 1.4 mm wide
    boxed = (label, mark_bounds(label))
    pages = [
        cell_name(cell)
        for cell in grid.cells()
        if boxed[1].overlaps(grid.window(cell)) and not _stands_on_top(boxed, cell, grid)
    ]
    assert pages == shown


CAUTIONS = (
    "Cords and drawstrings at the neck can strangle a child: none for a child up to 134 cm (EN 14682).",
    "This sheet is no legal advice; the rules of your country decide.",
)


def cautions_on(pages):
    return [
        (page.name, mark.text)
        for page in pages
        for mark in (*page.drawing.marks, *page.surround.marks)
        if isinstance(mark, Label) and mark.meaning is Meaning.CAUTION
    ]


def test_cautions_stand_whole_on_the_cover():
    found = cautions_on(tile(two_pieces(), A4, MADE, cautions=CAUTIONS))
    assert {name for name, _ in found} == {"cover"}
    assert " ".join(words for _, words in found) == " ".join(CAUTIONS)


def test_a_long_caution_is_never_cut_short():
    long = " ".join(f"{number} buttons come off." for number in range(40))
    assert len(long) > LONGEST
    page = one_sheet(two_pieces(), read_paper("a0"), MADE, cautions=(long,))
    for sheets in ([page], tile(two_pieces(), A4, MADE, cautions=(long,))):
        assert " ".join(words for _, words in cautions_on(sheets)) == long


def test_cautions_stand_on_the_page_itself_where_there_is_no_cover():
    page = one_sheet(two_pieces(), read_paper("a0"), MADE, cautions=CAUTIONS)
    assert " ".join(words for _, words in cautions_on([page])) == " ".join(CAUTIONS)
    boxes = [mark_bounds(m) for m in page.surround.marks if m.name == "caution"]
    others = [mark_bounds(m) for m in page.surround.marks if m.name != "caution"]
    assert not any(a.overlaps(b) for a in boxes for b in others)


@pytest.mark.parametrize("paper", ["a4", "a4 landscape", "letter", "150x160mm"])
def test_any_number_of_cautions_finds_room_on_as_many_covers_as_it_takes(paper):
    sheet = read_paper(paper)
    pages = [page for page in tile(two_pieces(), sheet, MADE, cautions=CAUTIONS * 30) if "cover" in page.name]
    assert len(pages) > 1
    assert " ".join(words for _, words in cautions_on(pages)) == " ".join(CAUTIONS * 30)
    for page in pages:
        for mark in page.drawing.marks:
            box = mark_bounds(mark)
            assert box.bottom >= sheet.margin, mark
            assert box.top <= page.height - sheet.margin, mark
            assert box.right <= page.width - sheet.margin, mark
    assert any(mark.name == "map.page" for mark in pages[-1].drawing.marks)


def test_nothing_drawn_makes_no_page():
    assert tile(Drawing(), A4, MADE) == ()
    assert isinstance(one_sheet(Drawing(), A4, MADE), Problem)


def test_a_drawing_beyond_all_measure_is_a_problem():
    slip = Drawing((Stroke(Path.line_through(Point(0, 0), Point(1e9, 1e9)), Meaning.CUT),))
    problem = too_large(slip, A4)
    assert isinstance(problem, Problem)
    assert problem.numbers[0].value > 1000
    endless = Drawing((Stroke(Path.line_through(Point(0, 0), Point(float("inf"), 0)), Meaning.CUT),))
    assert too_large(endless, A4).code == "sheet-endless"
    assert too_large(two_pieces(), A4) is None
    with pytest.raises(ValueError, match="more than 1000"):
        tile(slip, A4, MADE)


def test_one_sheet_may_lie_on_its_side():
    wide = Drawing((frame(0, 0, 1000, 700),))
    page = one_sheet(wide, read_paper("a0"), MADE)
    assert (page.width, page.height) == (1189.0, 841.0)


def test_one_sheet_begins_at_the_upper_left():
    page = one_sheet(Drawing((frame(500, 500, 700, 650),)), Paper("A1", 594.0, 841.0), MADE)
    box = page.drawing.bounds()
    assert box.left < 10 + 2
    assert box.top > page.height - 10 - 2
