"""What is made of a lay: table, drawing, left-overs, comparison, shopping list, plain values."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np
import pytest
import shapely
from garments import dress, romper
from hypothesis import given
from hypothesis import strategies as st

from littlefold.draft.model import Notion
from littlefold.drawing import Label, Meaning, Stroke
from littlefold.geometry import Point
from littlefold.lay.account import lay_values, row_values
from littlefold.lay.chalk import chalk_table, lower_edge
from littlefold.lay.cloth import YARD_STEP, Cloth, Price
from littlefold.lay.compare import ALL_WAYS, best_of, compare
from littlefold.lay.draw import lay_drawing
from littlefold.lay.leftover import Wanted, fitting, largest_rectangle, leftovers
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.shopping import shopping_list
from littlefold.lay.short import enough
from littlefold.lay.ways import Way

if TYPE_CHECKING:
    from littlefold.lay.lay import Lay


@lru_cache
def lay(way: Way = Way.FOLDED) -> Lay:
    found = prepare(dress(), Cloth(1120, price=Price(10.0, "EUR")), way)
    assert isinstance(found, Prepared)
    return list(lays(found, Effort(steps=100)))[-1]


def test_chalk_points_lie_on_the_grain_of_the_placed_piece() -> None:
    found = lay()
    shapes = [found.shape(placement).buffer(0.01) for placement in found.placements]
    for row in chalk_table(found):
        assert row.start.y == pytest.approx(row.end.y)
        points = [shapely.Point(p.x, p.y) for p in (row.start, row.end)]
        assert any(all(shape.covers(point) for point in points) for shape in shapes)
    assert len(chalk_table(found)) == len(found.placements)
    assert lower_edge(found) == "the fold"
    assert lower_edge(lay(Way.OPEN)) == "the lower edge"
    two_folds = replace(found, spread=replace(found.spread, fold_high=True))
    assert lower_edge(two_folds) == "the lower fold"


def test_chalk_table_says_how_each_piece_is_cut() -> None:
    words = {row.title: row.cut for row in chalk_table(lay())}
    assert words["front"] == "on the fold"
    assert words["sleeve"] == "through 2 layers"
    assert {row.cut for row in chalk_table(lay(Way.OPEN))} <= {"single layer", "turned over, single layer"}


def test_drawing_shows_every_cut_the_fold_and_the_length() -> None:
    drawing = lay_drawing(lay())
    cuts = [m for m in drawing.marks if isinstance(m, Stroke) and m.meaning is Meaning.CUT]
    assert sorted(m.name for m in cuts) == sorted(p.piece for p in lay().placements)
    folds = [m for m in drawing.marks if m.meaning is Meaning.FOLD]
    assert [m.path.length() for m in folds if isinstance(m, Stroke)] == [pytest.approx(lay().length)]
    words = [m.text for m in drawing.marks if isinstance(m, Label)]
    assert f"{lay().length / 10:.1f} cm" in words
    assert any(text.startswith("3 ") for text in words)


def test_leftover_rectangles_touch_nothing() -> None:
    found = leftovers(lay())
    assert found
    boxes = [shapely.box(r.x, r.y, r.x + r.length, r.y + r.width) for r in found]
    shapes = [lay().shape(p) for p in lay().placements]
    for k, box in enumerate(boxes):
        assert all(box.intersection(shape).area < 1e-6 for shape in shapes)
        assert all(box.intersection(other).area < 1e-6 for other in boxes[:k])
        assert box.bounds[3] <= lay().spread.height + 1e-6


def test_what_fits_is_counted_by_layers_and_turned_only_if_it_may_be() -> None:
    rest = replace(leftovers(lay())[0], x=0, y=0, length=300, width=100, layers=2)
    pocket = Wanted("pocket", 90, 140)
    assert fitting([rest], [pocket]) == (("pocket", 0),)
    assert fitting([rest], [replace(pocket, either_way=True)]) == (("pocket", 4),)


@given(st.lists(st.lists(st.booleans(), min_size=1, max_size=7), min_size=1, max_size=7))
def test_largest_rectangle_is_the_largest(rows: list[list[bool]]) -> None:
    width = min(map(len, rows))
    free = np.array([row[:width] for row in rows])
    by_trying = max(
        (r1 - r0) * (c1 - c0) if free[r0:r1, c0:c1].all() else 0
        for r0 in range(free.shape[0])
        for r1 in range(r0 + 1, free.shape[0] + 1)
        for c0 in range(width)
        for c1 in range(c0 + 1, width + 1)
    )
    row, column, tall, wide = largest_rectangle(free)
    assert tall * wide == by_trying
    assert free[row : row + tall, column : column + wide].all()


def test_compare_has_a_row_for_each_way_and_width_and_finds_the_better_fold() -> None:
    rows = list(compare(romper(), Cloth(1120, price=Price(10.0)), Effort(steps=40), widths=(900, 1120)))
    assert len(rows) == 2 * (len(ALL_WAYS) - 1)
    folded = next(r for r in rows if r.way is Way.FOLDED and r.width == 1120)
    assert folded.bounds is not None
    assert folded.bounds.binding == "fold"
    best = best_of(rows)
    assert best is not None
    assert best.price is not None
    assert folded.price is not None
    assert best.price < folded.price
    refused = [row for row in rows if row.lay is None]
    assert refused
    assert all(row.problems for row in refused)
    json.dumps([row_values(row) for row in rows])


def test_values_say_that_the_lay_was_verified() -> None:
    values = json.loads(json.dumps(lay_values(lay())))
    assert values["verified"] is True
    assert len(values["placements"]) == len(lay().placements)
    broken = replace(lay(), placements=lay().placements[1:])
    assert lay_values(broken)["verified"] is False


def test_cloth_in_hand_may_be_too_short() -> None:
    short = replace(lay(), cloth=replace(lay().cloth, in_hand=500.0))
    assert enough(short)[0].code == "cloth-too-short"
    assert enough(lay()) == ()
    assert enough(replace(lay(), cloth=replace(lay().cloth, in_hand=5000.0))) == ()


def test_by_the_yard_notions_are_bought_by_the_eighth_and_thread_is_told_in_yards() -> None:
    yards = replace(lay(), cloth=replace(lay().cloth, step=YARD_STEP, price=None))
    prices = {"elastic": Price(1.2, per=914.4)}
    elastic, thread = shopping_list([yards], (Notion("elastic", 480.0),), 65_000.0, prices).lines[1:]
    assert elastic.amount == pytest.approx(914.4 * 5 / 8)  # 4/8 yd are 457 mm
    assert elastic.price == pytest.approx(0.75)
    assert thread.remark == "71 yd, reels of 109 yd"


def test_a_recipes_own_centimetres_are_told_in_inches_beside_them() -> None:
    yards = replace(lay(), cloth=replace(lay().cloth, step=YARD_STEP))
    notions = (
        Notion("elastic", 480.0, remark="2 cm wide"),
        Notion("buttons", None, 3, remark="15 mm, at the back"),
    )
    elastic, buttons = shopping_list([yards], notions).lines[1:]
    assert elastic.remark == "3/4 in (2 cm) wide"  # 20 / 25.4 = 0.79
    assert buttons.remark == "5/8 in (15 mm), at the back"  # 0.59
    assert shopping_list([lay()], notions).lines[1].remark == "2 cm wide"


def test_an_unfolded_piece_shows_its_notches_on_both_halves() -> None:
    notch = (Point(60.0, 100.0), Point(60.0, 106.0))
    notched = tuple(replace(one, snips=(notch,) if one.name == "front" else ()) for one in dress())
    for way, count in ((Way.OPEN, 2), (Way.FOLDED, 1)):
        found = prepare(notched, Cloth(1120), way)
        assert isinstance(found, Prepared)
        laid = next(lays(found, Effort(0)))
        marks = lay_drawing(laid).marks
        ticks = [mark for mark in marks if isinstance(mark, Stroke) and mark.meaning is Meaning.NOTCH]
        assert len(ticks) == count
        middle = next(one for one in laid.placements if one.piece == "front").at.y
        feet = sorted(tick.path.start.y - middle for tick in ticks)
        assert [abs(foot) for foot in feet] == [pytest.approx(100.0)] * count


def test_prices_are_rounded_as_a_till_rounds_them() -> None:
    assert Price(6.9, per=914.4).of(685.8) == pytest.approx(5.18, abs=1e-9)  # 5.175
    assert Price(1.004).of(1000) == pytest.approx(1.0, abs=1e-9)
    notions = tuple(Notion(f"tape {number}", 100.0) for number in range(3))
    found = shopping_list([], notions, prices={notion.name: Price(0.44) for notion in notions})
    assert found.total == pytest.approx(0.12, abs=1e-9)  # three lines of 0.04, and not 0.132


def test_shopping_list_adds_up_and_warns() -> None:
    notions = (
        Notion("elastic", 480.0),
        Notion("buttons", None, 3),
        Notion("cord", 700.0),
        Notion("bias binding", 1000.0),
    )
    prices = {"elastic": Price(1.0), "buttons": Price(0.4, per=1.0), "thread": Price(2.5, per=100_000.0)}
    found = shopping_list([lay()], notions, thread=65_000.0, prices=prices)
    lines = {line.name: line for line in found.lines}
    assert lines["elastic"].amount == pytest.approx(500)
    assert lines["elastic"].price == pytest.approx(0.5)
    assert lines["buttons"].price == pytest.approx(1.2)
    assert lines["thread"].price == pytest.approx(2.5)
    assert "EN 14682" in lines["cord"].caution
    assert "16 CFR 1501" in lines["buttons"].caution
    assert lines["bias binding"].amount == pytest.approx(180)
    assert lines["bias binding"].steps
    known = [line.price for line in found.lines if line.price is not None]
    assert found.total == pytest.approx(sum(known))
    assert not found.complete
    assert found.currency == "EUR"
