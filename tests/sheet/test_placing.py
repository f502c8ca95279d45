import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.geometry import Bounds
from littlefold.sheet.placing import ground, least_disturbing, places_in

ROOM = Bounds(10.0, 10.0, 200.0, 287.0)
NOTHING = np.zeros((0, 2))
PLACES = st.lists(st.tuples(st.floats(0, 210), st.floats(0, 297)), max_size=60)


def row(y, left, right):
    return [(x, y) for x in np.arange(left, right, 4.0)]


@settings(max_examples=60, deadline=None)
@given(PLACES, st.floats(5, 150), st.floats(5, 150))
def test_a_figure_always_lies_in_the_room_in_its_size(places, width, height):
    below = ground(np.array(places or [(0.0, 0.0)]))
    box = least_disturbing(width, height, ROOM, below)
    assert abs(box.width - width) < 1e-9
    assert abs(box.height - height) < 1e-9
    slack = ROOM.grown(1e-9)
    assert slack.left <= box.left
    assert box.right <= slack.right
    assert slack.bottom <= box.bottom
    assert box.top <= slack.top


def test_a_free_edge_is_found_beside_a_drawing():
    places = np.array([place for y in range(10, 240, 4) for place in row(y, 10, 200)])
    box = least_disturbing(114.0, 8.0, ROOM, ground(places))
    assert len(places_in(box, places)) == 0
    assert box.bottom > 238


def test_another_figure_is_worse_than_any_drawing():
    crowded = np.array([place for y in range(10, 287, 4) for place in row(y, 10, 200)])
    first = least_disturbing(114.0, 8.0, ROOM, ground(crowded))
    second = least_disturbing(114.0, 8.0, ROOM, ground(crowded).with_taken(first))
    assert not first.overlaps(second)


def test_bare_paper_outside_of_a_piece_is_better_than_inside():
    piece = Bounds(10.0, 10.0, 200.0, 200.0)
    box = least_disturbing(50.0, 10.0, ROOM, ground(NOTHING, NOTHING, (piece,)))
    assert not box.overlaps(piece)


def test_inside_a_piece_is_better_than_across_its_line():
    piece = Bounds(0.0, 0.0, 210.0, 250.0)
    places = np.array([place for y in (255, 262, 269, 276, 283) for place in row(y, 0, 210)])
    box = least_disturbing(50.0, 10.0, ROOM, ground(places, NOTHING, (piece,)))
    assert len(places_in(box, places)) == 0


def test_a_line_that_scissors_follow_is_crossed_last_of_all():
    words = np.array([place for y in range(10, 287, 2) for place in row(y, 10, 200) if y < 200])
    cut = np.array([place for y in (215, 230, 245, 260, 275) for place in row(y, 10, 200)])
    box = least_disturbing(50.0, 60.0, ROOM, ground(np.vstack([words, cut]), cut))
    assert len(places_in(box, cut)) == 0


def test_a_figure_keeps_air_where_there_is_room():
    line = np.array(row(40.0, 10.0, 200.0))
    box = least_disturbing(50.0, 25.0, Bounds(10.0, 10.0, 200.0, 80.0), ground(line, line))
    assert box.bottom - 40.0 >= 3.0 or 40.0 - box.top >= 3.0
