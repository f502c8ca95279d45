"""Blocks of words that pages would cut move aside within their piece."""

from __future__ import annotations

import numpy as np
import pytest

from littlefold.drawing import Drawing, Label, Meaning, Stroke, label_bounds
from littlefold.geometry import Bounds, Path, Point
from littlefold.sheet.grid import cut_words, fit_grid
from littlefold.sheet.occupied import occupied
from littlefold.sheet.paper import Paper
from littlefold.sheet.words_whole import words_whole

PAPER = Paper("small", 210.0, 297.0)


def frame(left, bottom, right, top):
    corners = ((left, bottom), (right, bottom), (right, top), (left, top), (left, bottom))
    return Stroke(Path.line_through(*(Point(x, y) for x, y in corners)), Meaning.CUT, "cut")


def block(x, y):
    return tuple(
        Label(f"line {k} of a label", Point(x, y - 6 * k), Meaning.TEXT, 3.0, name="a.label")
        for k in range(3)
    )


def boxes(drawing):
    return [label_bounds(mark) for mark in drawing.marks if isinstance(mark, Label)]


@pytest.mark.parametrize("x", [150.0, 160.0, 170.0, 175.0])
def test_a_block_across_a_join_moves_to_one_page(x):
    drawing = Drawing((frame(0, 0, 350, 200), *block(x, 120)))
    grid = fit_grid(drawing, PAPER)
    cut_before = [box for box in boxes(drawing) if cut_words(grid, (box,))]
    moved = words_whole(drawing, grid)
    assert cut_words(grid, tuple(boxes(moved))) == 0
    assert bool(cut_before) == (boxes(moved) != boxes(drawing))


def test_lines_of_a_block_keep_together():
    drawing = Drawing((frame(0, 0, 350, 200), *block(165, 120)))
    moved = words_whole(drawing, fit_grid(drawing, PAPER))
    ways = {
        (round(new.left - old.left, 6), round(new.bottom - old.bottom, 6))
        for old, new in zip(boxes(drawing), boxes(moved), strict=True)
    }
    assert len(ways) == 1


def test_a_block_stays_inside_its_own_piece_even_if_it_is_cut():
    narrow = frame(160, 60, 215, 140)
    drawing = Drawing((frame(0, 0, 350, 200), narrow, *block(165, 120)))
    moved = words_whole(drawing, fit_grid(drawing, PAPER))
    for box in boxes(moved):
        assert box.left > 160
        assert box.right < 215


def test_points_in_boxes_are_counted():
    places = np.array([(0.0, 0.0), (5.0, 5.0), (20.0, 5.0), (20.0, 30.0)])
    asked = np.array(
        [(-1.0, -1.0, 6.0, 6.0), (10.0, 0.0, 25.0, 10.0), (50.0, 50.0, 60.0, 60.0), (-9, -9, 99, 99)]
    )
    assert occupied(places).within(asked).tolist() == [2, 1, 0, 4]


def test_nothing_drawn_covers_nothing():
    box = Bounds(0.0, 0.0, 9.0, 9.0)
    asked = np.array([(box.left, box.bottom, box.right, box.top)])
    assert occupied(np.zeros((0, 2))).within(asked).tolist() == [0]
