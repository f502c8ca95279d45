from math import degrees, pi, radians

import pytest

from littlefold.drawing import (
    Drawing,
    Fill,
    Label,
    Meaning,
    Stroke,
    arrow_head,
    dimension,
    fold_bracket,
    grain_arrow,
    label_along,
    ruler,
)
from littlefold.drawing.arrow import readable
from littlefold.geometry import Affine, Point, Vector


def strokes(marks, name):
    return [mark for mark in marks if isinstance(mark, Stroke) and mark.name == name]


def test_the_check_mark_is_ten_centimetres_and_four_inches():
    marks = ruler(Point(3, 4), radians(90), "check")
    (metric,), (imperial,) = strokes(marks, "check.cm"), strokes(marks, "check.in")
    assert metric.path.length() == pytest.approx(100.0, abs=1e-9)
    assert imperial.path.length() == pytest.approx(101.6, abs=1e-9)  # 4 x 25.4 mm, the legal inch


def test_the_check_mark_has_a_tick_for_every_half_centimetre_and_quarter_inch():
    marks = ruler(Point(0, 0))
    for name, step, count in (("check.cm", 5.0, 21), ("check.in", 6.35, 17)):
        (edge,), (comb,) = strokes(marks, name), strokes(marks, f"{name}.ticks")
        level = edge.path.start.y
        tips = sorted({round(p.x, 9) for p in comb.path.flatten() if abs(p.y - level) > 1.0})
        assert tips == pytest.approx([step * k for k in range(count)])


def test_an_arrow_head_points_where_it_should():
    head = arrow_head(Point(10, 0), Vector(5, 0), Meaning.GRAIN, 4.0)
    box = head.path.bounds()
    assert box.right == pytest.approx(10.0)
    assert box.left == pytest.approx(6.0)
    assert head.path.is_closed


def test_the_grain_arrow_has_a_head_at_both_ends():
    marks = grain_arrow(Point(0, 0), Point(0, 200), "grain")
    heads = [mark for mark in marks if isinstance(mark, Fill)]
    assert sorted(head.path.start.y for head in heads) == [0.0, 200.0]
    assert [mark.text for mark in marks if isinstance(mark, Label)] == ["grain"]


def test_a_dimension_line_is_as_long_as_what_it_measures_and_stands_beside_it():
    marks = dimension(Point(0, 0), Point(60, 0), "6 cm", away=6.0, name="w")
    longest = max((m for m in marks if isinstance(m, Stroke)), key=lambda mark: mark.path.length())
    assert longest.path.length() == pytest.approx(60.0)
    assert longest.path.start.y == pytest.approx(6.0)


def test_the_bracket_touches_the_fold_and_lies_to_the_left():
    marks = fold_bracket(Point(0, 300), Point(0, 0), "place on the fold")
    box = Drawing(tuple(m for m in marks if isinstance(m, Stroke))).bounds()
    assert box.left == pytest.approx(0.0)
    assert box.right == pytest.approx(9.0)
    tips = [mark.path.start for mark in marks if isinstance(mark, Fill)]
    assert all(tip.x == pytest.approx(0.0) for tip in tips)


@pytest.mark.parametrize(("turn", "shown"), [(0, 0), (45, 45), (90, 90), (135, -45), (180, 0), (-90, 90)])
def test_words_are_never_on_their_head(turn, shown):
    assert degrees(readable(radians(turn))) == pytest.approx(shown, abs=1e-4)


def test_words_along_a_line_drawn_backwards_read_forwards():
    label = label_along("waist", Point(100, 0), Point(0, 0), Meaning.TEXT)
    assert abs(label.angle) < 1e-9
    assert label.at.y > 0


def test_mirrored_words_are_not_mirrored():
    label = Label("front", Point(10, 20), angle=0.0)
    mirrored = label.transformed(Affine.mirror(Point(0, 0), Vector(0, 1)))
    assert mirrored.text == "front"
    assert mirrored.at == Point(-10, 20)
    assert abs(mirrored.angle) == pytest.approx(pi)
