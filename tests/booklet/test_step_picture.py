"""Pictures of steps: what is new stands out, what was there recedes, what comes later is not shown."""

from __future__ import annotations

import io
from datetime import date

import pytest
from pypdf import PdfReader

from littlefold.booklet.draft_picture import draft_picture
from littlefold.booklet.scene import EDGE, stage
from littlefold.booklet.step_pages import step_pages
from littlefold.booklet.step_picture import ROOM, stage_scene, step_picture
from littlefold.draft.sentence import Speech
from littlefold.drawing import Dot, Label, Meaning, Stroke, label_bounds
from littlefold.sheet.paper import Paper, read_paper
from tests.booklet.flow import of_text, shipped

MADE = date(2026, 11, 25)

SQUARE = """recipe square
title "Square"
drawing s
point A at the start
point B right of A by 40 cm
point C above A by 40 cm
line base from A to B
curve arch from B to C depth 5 cm upward
"""


def test_the_new_point_stands_out_and_later_ones_are_not_there() -> None:
    draft = of_text(SQUARE)[0].draft
    dots = {mark.name: mark.meaning for mark in step_picture(draft, 2).marks if isinstance(mark, Dot)}
    assert dots == {"s.A": Meaning.OLD, "s.B": Meaning.NEW}


def test_the_picture_keeps_the_shape_at_one_scale() -> None:
    """A square of 40 cm is as wide as high on every picture of its steps."""
    draft = of_text(SQUARE)[0].draft
    for number in (3, 4, 5):
        places = {m.name: m.at for m in step_picture(draft, number).marks if isinstance(m, Dot) and m.name}
        across = places["s.A"].distance(places["s.B"])
        assert across == pytest.approx(places["s.A"].distance(places["s.C"]))
        assert across == pytest.approx(400 / stage_scene(draft, number).divisor)


def test_what_is_measured_carries_its_dimension() -> None:
    draft = of_text(SQUARE)[0].draft
    words = [mark.text for mark in step_picture(draft, 2).marks if isinstance(mark, Label)]
    assert "40 cm" in words
    words = [mark.text for mark in step_picture(draft, 2, Speech("in")).marks if isinstance(mark, Label)]
    assert "15 3/4 in" in words  # 400 / 25.4 = 15.748


def test_a_curve_shows_its_guide_points() -> None:
    draft = of_text(SQUARE)[0].draft
    where, line = stage_scene(draft, 5), draft.lines["s.arch"]
    dots = [m.at for m in step_picture(draft, 5).marks if isinstance(m, Dot) and m.meaning is Meaning.GUIDE]
    assert len(dots) == len(line.guides) == 3
    for dot in dots:
        assert line.path.transformed(where.affine).nearest(dot).distance < 1e-3


@pytest.mark.parametrize("name", ["casing-top", "bodice", "sleeve"])
def test_letters_do_not_cover_each_other(name: str) -> None:
    draft = shipped(name)[0].draft
    for step in draft.steps:
        boxes = [
            label_bounds(mark) for mark in step_picture(draft, step.number).marks if isinstance(mark, Label)
        ]
        crowded = [1 for k, box in enumerate(boxes) for other in boxes[:k] if box.overlaps(other)]
        assert len(crowded) <= 1, step.name  # letters are never left out, so a crowd may keep one pair


def test_the_window_of_a_picture_fits_its_room() -> None:
    draft = shipped("yoke-frock")[0].draft
    for step in draft.steps:
        window = stage_scene(draft, step.number).window
        assert window.width <= ROOM[0] + 1e-6
        assert window.height <= ROOM[1] + 1e-6
        assert min(window.width, window.height) >= 2 * EDGE


def test_a_stage_ends_where_another_sheet_is_taken() -> None:
    draft = of_text(SQUARE + "drawing t\npoint A at the start\ncontinue s\npoint E below A by 1 cm\n")[
        0
    ].draft
    assert [stage(draft, step.number) for step in draft.steps] == [5, 5, 5, 5, 5, 6, 7]


def test_the_whole_draft_is_drawn_at_a_scale_a_pupil_can_use() -> None:
    """40 cm in a room of 150 mm less its edges: 1:3 is 133 mm and just does not fit 1:2."""
    picture = draft_picture(
        of_text(SQUARE)[0].draft, "s", room=(400 / 3 + 2 * EDGE + 15, 400 / 3 + 2 * EDGE + 15)
    )
    assert any(isinstance(m, Label) and "1 : 3" in m.text for m in picture.marks)
    base = next(m for m in picture.marks if isinstance(m, Stroke) and m.name == "s.base")
    assert base.path.length() == pytest.approx(400 / 3)


@pytest.mark.parametrize(("across", "pages"), [(1, 5), (2, 2)])
def test_pictures_for_a_class(across: int, pages: int) -> None:
    paper = read_paper("US Letter")
    assert isinstance(paper, Paper)
    pdf = step_pages(of_text(SQUARE)[0].draft, Speech(), paper, MADE, across)
    reader = PdfReader(io.BytesIO(pdf))
    assert len(reader.pages) == pages
    assert "From A measure 40 cm" in " ".join(" ".join(p.extract_text() for p in reader.pages).split())


def test_a_strip_shows_its_width_and_height_and_no_letters() -> None:
    text = (
        SQUARE
        + 'piece band "Band" rectangle 48 cm by 5 cm cut 1\nedges top raw, right raw, bottom raw, left raw\n'
    )
    draft = of_text(text)[0].draft
    words = [m.text for m in step_picture(draft, len(draft.steps)).marks if isinstance(m, Label)]
    assert sorted(words) == ["48 cm", "5 cm"]
