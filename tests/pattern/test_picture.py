"""What is drawn on a piece."""

from __future__ import annotations

from dataclasses import replace

import pytest
from shapely import Polygon, box

from littlefold.body.measurements import Measurements
from littlefold.draft.model import Cutting, DraftNotch, EdgeKind, Inside
from littlefold.drawing import Label, Meaning, Stroke, label_bounds
from littlefold.geometry import Path
from littlefold.pattern.block import Labelling, cutting_words, label_lines
from littlefold.pattern.picture import draw_pattern, draw_piece
from littlefold.pattern.trace import trace
from littlefold.pattern.wording import ENGLISH
from tests.pattern.shapes import draft, edge, piece, point, polygon_edges, straight
from tests.pattern.test_notch import panel

HOW = Labelling(date="25 November 2026")


def one(drawn, how=HOW):
    made = replace(
        draft([drawn]), title="Loose top", measurements=Measurements.of({"stature": 980.0}, nickname="Meena")
    )
    pattern = trace(made)
    return pattern.pieces[0], pattern, draw_piece(pattern.pieces[0], pattern, how)


def front(**more):
    drawn = panel("front", notches=[DraftNotch("side", 60.0)], **more)
    return replace(
        drawn,
        grain=(point(40, 40), point(40, 160)),
        inside=(Inside("opening", "placket", straight((60, 150), (60, 190))),),
        marks=(("pocket", point(60, 80)),),
    )


def block(drawing, name):
    return [mark for mark in drawing.marks if isinstance(mark, Label) and mark.name == f"{name}.label"]


def said(drawing, name):
    return " ".join(label.text for label in block(drawing, name))


def test_the_label_says_all_that_a_cutter_must_know():
    _, _, drawing = one(front())
    words = said(drawing, "front")
    for part in (
        "Front", "Loose top", "Meena", "98 cm", "Cut 1", "on the fold", "main cloth",
        "hem 3 cm", "side, waist 1 cm", "25 November 2026", "1:1",
    ):  # fmt: skip
        assert part in words, part


def test_words_follow_the_units_and_the_language():
    german = replace(ENGLISH, cut="{count}x zuschneiden", on_fold="im Bruch", allowances="Zugaben: {list}")
    traced, pattern, _ = one(front())
    lines = label_lines(traced, pattern, Labelling(units="in", wording=german))
    assert "1x zuschneiden, im Bruch, main cloth" in lines
    assert any(line.startswith("Zugaben:") and "in" in line for line in lines)


@pytest.mark.parametrize(
    ("cutting", "words"),
    [
        (Cutting(1), "Cut 1, main cloth"),
        (Cutting(2, pair=True), "Cut 2: a mirrored pair, main cloth"),
        (Cutting(4, pair=True), "Cut 4: 2 mirrored pairs, main cloth"),
        (Cutting(1, side="left"), "Cut 1, for the wearer's left, main cloth"),
    ],
)
def test_how_it_is_cut(cutting, words):
    traced, _, _ = one(piece("any", polygon_edges((0, 0), (90, 0), (90, 90), (0, 90)), cutting))
    assert cutting_words(traced, ENGLISH) == words


def test_a_hem_turned_twice_names_both_numbers():
    edges = polygon_edges((0, 0), (150, 0), (150, 90), (0, 90))
    hem = replace(edges[0], kind=EdgeKind.HEM, allowance=20.0, turns=2)
    _, _, drawing = one(piece("any", [hem, *edges[1:]]))
    assert "e0 3 cm, turned twice: 2 cm deep" in said(drawing, "any")


@pytest.mark.parametrize(
    ("width", "height"), [(300, 400), (120, 90), (60, 200), (400, 30), (30, 400), (90, 60), (60, 55)]
)
def test_the_label_lies_inside_the_piece_and_touches_no_sign(width, height):
    drawn = piece("part", polygon_edges((0, 0), (width, 0), (width, height), (0, height)))
    middle = point(width / 2, height / 2)
    end = point(width / 2, height - 10) if height > width else point(width - 10, height / 2)
    drawn = replace(drawn, grain=(middle, end))
    traced, _, drawing = one(drawn)
    shape = Polygon([(p.x, p.y) for p in traced.outline.stitch.flatten()])
    boxes = [label_bounds(label) for label in block(drawing, "part")]
    rectangles = [box(b.left, b.bottom, b.right, b.top) for b in boxes]
    assert rectangles
    assert all(shape.contains(r) for r in rectangles)
    grain = box(*_bounds(Path.line_through(middle, end)))
    assert not any(r.intersects(grain) for r in rectangles)


def _bounds(path):
    b = path.bounds()
    return b.left, b.bottom, b.right, b.top


def test_a_piece_too_small_for_words_has_its_label_beside_it_and_a_leader():
    traced, _, drawing = one(piece("tab", polygon_edges((0, 0), (20, 0), (20, 20), (0, 20))))
    right = traced.outline.cut.bounds().right
    cut = Polygon([(p.x, p.y) for p in traced.outline.cut.flatten()])
    boxes = [label_bounds(label) for label in block(drawing, "tab")]
    beside = [one for one in boxes if one.left > right]
    within = [one for one in boxes if cut.contains(box(one.left, one.bottom, one.right, one.top))]
    assert within, "the piece bears its name when it is cut out"
    assert len(beside) > len(within)
    assert len(beside) + len(within) == len(boxes)
    leaders = [m for m in drawing.only(Meaning.GUIDE).marks if isinstance(m, Stroke)]
    assert len(leaders) == 1
    assert traced.outline.cut.contains(leaders[0].path.end)


def test_the_scissors_are_kept_off_the_fold():
    traced, _, drawing = one(front())
    cuts = [m.path for m in drawing.only(Meaning.CUT).marks]
    folds = [m.path for m in drawing.only(Meaning.FOLD).marks if isinstance(m, Stroke)]
    assert len(cuts) == len(folds) == 1
    assert folds[0].is_straight
    assert folds[0].length() == pytest.approx(200 + 30 + 10)
    whole = cuts[0].length() + folds[0].length()
    assert whole == pytest.approx(traced.outline.cut.length())
    assert {cuts[0].start, cuts[0].end} == {folds[0].start, folds[0].end}


def test_every_kind_of_line_is_there_with_its_meaning():
    _, _, drawing = one(front())
    for meaning in (Meaning.CUT, Meaning.STITCH, Meaning.FOLD, Meaning.TURN, Meaning.GRAIN, Meaning.NOTCH,
                    Meaning.INSIDE, Meaning.TITLE, Meaning.TEXT):  # fmt: skip
        assert drawing.only(meaning).marks, meaning
    stitched = {m.name for m in drawing.only(Meaning.STITCH).marks}
    assert stitched == {"front.side", "front.waist"}


def test_turn_lines_run_from_cut_edge_to_cut_edge():
    edges = polygon_edges((0, 0), (150, 0), (130, 120), (20, 120))
    hem = replace(edges[0], kind=EdgeKind.HEM, allowance=20.0, turns=2)
    traced, _, _ = one(piece("any", [hem, *edges[1:]]))
    first, second = traced.turns
    assert first.bounds().top == pytest.approx(0.0)
    assert second.bounds().top == pytest.approx(-20.0)
    for line in traced.turns:
        for end in (line.start, line.end):
            assert traced.outline.cut.nearest(end).distance < 0.02


def test_a_faced_edge_is_stitched_and_a_hem_is_folded():
    edges = polygon_edges((0, 0), (150, 0), (150, 120), (0, 120))
    kinds = (EdgeKind.HEM, EdgeKind.SEAM, EdgeKind.FACED, EdgeKind.SEAM)
    drawn = [replace(e, kind=kind) for e, kind in zip(edges, kinds, strict=True)]
    traced, _, drawing = one(piece("any", drawn))
    assert {m.name for m in drawing.only(Meaning.STITCH).marks} == {"any.e1", "any.e2", "any.e3"}
    assert len(traced.turns) == 1


def test_all_pieces_are_drawn_under_their_titles():
    pattern = trace(draft([front(), panel("rear")]))
    assert [drawing.title for drawing in draw_pattern(pattern, HOW)] == ["Front", "Rear"]


def test_hostile_titles_are_only_words():
    drawn = piece(
        "any", polygon_edges((0, 0), (200, 0), (200, 200), (0, 200)), title='#read("x")\n</svg>' * 40
    )
    _, _, drawing = one(drawn)
    assert block(drawing, "any")
    assert all("\n" not in label.text for label in block(drawing, "any"))


def test_a_closed_inside_line_and_a_grain_of_no_length_do_no_harm():
    ring = Path.line_through(*(point(*p) for p in ((40, 40), (60, 40), (60, 60), (40, 40))))
    drawn = piece("any", [edge("all", straight((0, 0), (200, 0), (100, 200), (0, 0)))])
    drawn = replace(drawn, grain=(point(1, 1), point(1, 1)), inside=(Inside("hole", "opening", ring),))
    _, _, drawing = one(drawn)
    assert any(isinstance(m, Label) and m.text == "opening: hole" for m in drawing.marks)


@pytest.mark.parametrize(
    ("name", "length", "words"),
    [
        ("back_opening", 60, "placket: back opening"),
        ("back_opening", 15, "placket"),  # no room for both
        ("A-P", 60, "placket"),  # points are lettered on the draft, not on the piece
        ("placket", 60, "placket"),
    ],
)
def test_a_line_inside_is_named(name, length, words):
    line = Inside(name, "placket", straight((60, 150), (60, 150 - length)))
    _, _, drawing = one(replace(front(), inside=(line,)))
    assert [m.text for m in drawing.marks if isinstance(m, Label) and m.meaning is Meaning.INSIDE] == [words]
