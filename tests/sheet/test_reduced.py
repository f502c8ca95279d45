from itertools import combinations, pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.drawing import Drawing, Label, Meaning, Stroke, label_bounds, text_block
from littlefold.geometry import Path, Point
from littlefold.sheet.paper import read_paper
from littlefold.sheet.reduced import READABLE, picture_page, picture_room, scale_bar, shrunk
from littlefold.sheet.words_apart import words_apart
from tests.sheet.shapes import MADE, half_top

NO_LINES = np.zeros((0, 2))


def words(drawing, name=None):
    return [m for m in drawing.marks if isinstance(m, Label) and (name is None or m.name == name)]


def stroke(drawing, name):
    (found,) = [mark for mark in drawing.marks if isinstance(mark, Stroke) and mark.name == name]
    return found


@pytest.mark.parametrize("divisor", [1, 4, 5])
def test_lines_are_reduced_exactly(divisor):
    full, small = stroke(half_top(), "front.cut"), stroke(shrunk(half_top(), divisor), "front.cut")
    assert small.path.length() * divisor == pytest.approx(full.path.length(), rel=1e-9)


@pytest.mark.parametrize(("divisor", "stands_for"), [(1, 100), (4, 100), (5, 100), (10, 200), (50, 1000)])
def test_the_scale_bar_is_as_long_as_it_says(divisor, stands_for):
    bar, said = scale_bar(shrunk(half_top(), divisor), divisor)
    assert bar.path.bounds().width * divisor == pytest.approx(stands_for)
    assert said.text == f"{stands_for // 10} cm    scale 1 : {divisor}"


@pytest.mark.parametrize("divisor", [2, 4, 5, 10])
def test_words_stay_readable_and_keep_off_each_other(divisor):
    found = words(shrunk(half_top(), divisor))
    assert all(label.height >= READABLE for label in found)
    for one, other in combinations(found, 2):
        if one.name != other.name or one.name == "":
            assert not label_bounds(one).overlaps(label_bounds(other)), (one.text, other.text)


def test_no_word_of_a_piece_is_lost_at_a_quarter():
    before = {label.text for label in words(half_top())}
    after = {label.text for label in words(shrunk(half_top(), 4))}
    assert before <= after


def test_letters_are_kept_even_where_there_is_no_room():
    crowd = [Label("ABCDEFGH"[k], Point(0.1 * k, 0), Meaning.LETTER, 3.0) for k in range(8)] * 4
    assert len(words_apart(crowd, NO_LINES)) == len(crowd)


def test_lines_of_a_block_stay_together_and_in_order():
    block = text_block(("one", "two", "three"), Point(0, 0), name="piece.words")
    close = shrunk(Drawing(block), 10)
    found = [label for label in words(close) if label.name == "piece.words"]
    assert [label.text for label in found] == ["one", "two", "three"]
    gaps = {round(a.at.y - b.at.y, 6) for a, b in pairwise(found)}
    assert gaps == {round(READABLE * 1.9, 6)}


@settings(max_examples=30, deadline=None)
@given(st.lists(st.tuples(st.floats(0, 60), st.floats(0, 60), st.sampled_from("ABCDEFG")), max_size=12))
def test_words_that_may_go_never_overlap(places):
    labels = [Label(text, Point(x, y), Meaning.TEXT, 2.0) for x, y, text in places]
    found = words_apart(labels, NO_LINES)
    assert not any(label_bounds(a).overlaps(label_bounds(b)) for a, b in combinations(found, 2))


@pytest.mark.parametrize("paper", ["a4", "letter", "a3 landscape", "roll 300mm"])
def test_a_picture_stands_within_its_page_below_the_caption(paper):
    sheet = read_paper(paper)
    room = picture_room(sheet)
    edge = Stroke(Path.line_through(Point(7, 9), Point(7 + room.width, 9 + room.height)), Meaning.CUT, "line")
    page = picture_page(Drawing((edge,)), sheet, MADE, "A top")
    box = stroke(page.drawing, "line").path.bounds()
    assert (box.left, box.bottom) == pytest.approx((room.left, room.bottom))
    assert room.right <= page.width - sheet.margin + 1e-9
    assert min(label.at.y for label in words(page.drawing)) > room.top


def test_the_scale_bar_speaks_the_inches_of_the_maker():
    drawing = Drawing((Stroke(Path.line_through(Point(0, 0), Point(100, 0)), Meaning.CUT),))
    bar, said = scale_bar(drawing, 4, "in")
    assert said.text.startswith("4 in")
    assert abs(bar.path.bounds().width - 4 * 25.4 / 4) < 1e-9
