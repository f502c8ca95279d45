"""The drawn figure shows every measurement where the register says it is taken."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.body.chart import chart_row
from littlefold.body.figure import tape_figure
from littlefold.body.figure.form import HEIGHT, View, form
from littlefold.body.register import NAMES, REGISTER, Kind
from littlefold.drawing import Label, Meaning, Stroke

if TYPE_CHECKING:
    from littlefold.geometry import Path


def tapes(name: str) -> list[Path]:
    return [
        mark.path
        for mark in tape_figure(name).marks
        if isinstance(mark, Stroke) and mark.meaning is Meaning.NEW
    ]


@pytest.mark.parametrize("name", NAMES)
def test_every_measurement_has_a_figure_with_its_views_named(name: str) -> None:
    figure = tape_figure(name)
    views = [mark.text for mark in figure.marks if isinstance(mark, Label)]
    assert figure.title == REGISTER[name].title
    assert 1 <= len(views) <= 3
    assert set(views) <= {view.value for view in View}
    assert len(tapes(name)) == len(views)
    box = figure.bounds()
    assert box is not None
    assert box.top - box.bottom < 110


@pytest.mark.parametrize("name", NAMES)
def test_a_tape_that_goes_round_runs_behind_the_body_too(name: str) -> None:
    behind = [
        mark
        for mark in tape_figure(name).marks
        if isinstance(mark, Stroke) and mark.meaning is Meaning.INSIDE
    ]
    assert bool(behind) == (REGISTER[name].kind is Kind.GIRTH)


# The chart of size 104 gives the lengths; the drawn form is 0.9 mm for a hundredth of the height.
@pytest.mark.parametrize(
    "name", ["stature", "back_waist", "shoulder", "arm", "inside_leg", "outside_leg", "across_back"]
)
def test_drawn_lengths_are_in_proportion(name: str) -> None:
    drawn = tapes(name)[0].length() / (0.9 * HEIGHT)
    assert drawn == pytest.approx(chart_row(104).mm(name) / 1040, rel=0.17)


@pytest.mark.parametrize("view", View)
def test_the_form_stands_on_the_floor_and_is_as_high_as_it_says(view: View) -> None:
    boxes = [stroke.path.bounds() for stroke in form(view)]
    assert min(box.bottom for box in boxes) == pytest.approx(0.0, abs=0.6)
    assert max(box.top for box in boxes) == pytest.approx(HEIGHT, abs=0.6)


def test_front_and_back_are_even() -> None:
    boxes = [stroke.path.bounds() for stroke in form(View.FRONT)]
    assert min(box.left for box in boxes) == pytest.approx(-max(box.right for box in boxes))


def test_an_unknown_name_is_our_own_mistake() -> None:
    with pytest.raises(KeyError):
        tape_figure("nose")
