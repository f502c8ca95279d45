from math import pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.drawing import Drawing, Label, label_bounds, plain, shortened, text_block, text_width, wrapped
from littlefold.geometry import Point

SENTENCE = "Lay the front on the fold; cut one of the main cloth and one of the lining."


def test_lines_fit_and_no_word_is_lost():
    lines = wrapped(SENTENCE, 60.0, 2.5)
    assert " ".join(lines) == SENTENCE
    assert all(text_width(line, 2.5) <= 60.0 for line in lines)


def test_a_word_wider_than_the_line_is_broken():
    lines = wrapped("x" * 200, 50.0, 2.5)
    assert "".join(lines) == "x" * 200
    assert all(text_width(line, 2.5) <= 50.0 for line in lines)


def test_invisible_signs_and_line_ends_go():
    assert plain("Top\n\tfor\u202e Mira\x00 \u200b2") == "Top for Mira 2"


def test_joiners_of_scripts_stay():
    assert plain("\u0915\u094d\u200d\u0937") == "\u0915\u094d\u200d\u0937"


def test_endless_words_end():
    assert len(plain("a" * 10_000)) == 300
    assert plain("a" * 10_000).endswith("…")


def test_shortened_words_end_in_an_ellipsis_only_if_needed():
    assert shortened("Bib", 50.0, 2.5) == "Bib"
    short = shortened(SENTENCE, 50.0, 2.5)
    assert short.endswith("…")
    assert text_width(short, 2.5) <= 50.0


def test_lines_of_a_block_stand_below_each_other_when_turned():
    first, second = text_block(("one", "two"), Point(0, 0), height=2.0, angle=pi / 2, name="words")
    assert second.at.x - first.at.x == pytest.approx(3.8)  # turned to the left, below is to the right
    assert first.name == second.name == "words"


def test_the_box_of_words_at_the_end_anchor_lies_before_the_point():
    box = label_bounds(Label("waist", Point(100, 0), height=3.0, anchor="end"))
    assert box.right == pytest.approx(100.0)
    assert box.left < 95.0


def test_a_drawing_knows_the_room_of_its_words():
    drawing = Drawing((Label("hip", Point(0, 0), height=3.0),))
    box = drawing.bounds()
    assert box is not None
    assert box.right > 5.0
    assert Drawing().bounds() is None


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=80), st.floats(20, 200))
def test_any_text_can_be_wrapped(text, width):
    lines = wrapped(text, width, 2.5)
    assert all(text_width(line, 2.5) <= width for line in lines)
    assert "".join(lines).replace(" ", "") == plain(text).replace(" ", "")


def test_a_number_is_never_parted_from_its_unit():
    for width in range(26, 90, 3):
        lines = wrapped("stature 104 cm, side 1 3/4 in; hem 3 cm, 2 cm deep", float(width), 2.5)
        starts = {line.split(" ")[0].strip(",;") for line in lines}
        assert not starts & {"cm", "in", "3/4"}, (width, lines)
