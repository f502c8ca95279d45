from __future__ import annotations

import pytest

from littlefold.geometry import Path, Point
from littlefold.web.lettering import REACH, sides

SIZE = 300.0
AWAY = {"ne": (1, 1), "nw": (-1, 1), "se": (1, -1), "sw": (-1, -1)}


def test_a_letter_stands_where_a_hand_writes_it_by_habit() -> None:
    assert sides({"A": Point(0.0, 0.0)}, (), SIZE) == {"A": "ne"}
    assert sides({}, (), SIZE) == {}


@pytest.mark.parametrize("taken", AWAY)
def test_a_letter_keeps_off_a_line(taken: str) -> None:
    x, y = AWAY[taken]
    line = Path.line_through(Point(0.0, 0.0), Point(x * SIZE, y * SIZE))
    assert sides({"A": Point(0.0, 0.0)}, (line,), SIZE)["A"] != taken


def test_letters_keep_off_each_other() -> None:
    step = REACH * SIZE
    points = {"A": Point(0.0, 0.0), "B": Point(2 * step, 0.0), "C": Point(step, 2 * step)}
    found = sides(points, (), SIZE)
    places = [
        (at.x + AWAY[found[name]][0] * step, at.y + AWAY[found[name]][1] * step)
        for name, at in points.items()
    ]
    assert len(set(places)) == len(places)
    assert not {(at.x, at.y) for at in points.values()} & set(places)
