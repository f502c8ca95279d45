"""Size runs of everything on the shelf: seams meet, outlines are sound, lines and numbers can be told apart."""

from __future__ import annotations

from dataclasses import astuple
from itertools import pairwise
from math import pi
from typing import TYPE_CHECKING

import pytest
import shapely

from littlefold.body.chart import SIZES
from littlefold.body.measurements import Measurements
from littlefold.draft.suits import stature_range
from littlefold.drawing import Label, Meaning, Stroke, look
from littlefold.geometry import Vector
from littlefold.grading import SizeRun, grade, moves, stacked
from littlefold.grading.grade import grade_bodies
from littlefold.grading.numbers import MOST, size_numbers
from littlefold.grading.stack import KINDS, WORDS_OF, kind_of
from littlefold.pattern.simple import line_string, polygon
from littlefold.pipeline import on_the_shelf
from littlefold.problem import Severity
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names

if TYPE_CHECKING:
    from littlefold.recipe.recipe import Recipe

STATURES = range(62, 153)


def suiting(recipe: Recipe) -> tuple[int, ...]:
    low, high = stature_range(recipe)
    return tuple(size for size in SIZES if size in STATURES and low <= 10 * size <= high)


def shelf(name: str) -> Recipe:
    recipe = on_the_shelf(name)
    assert recipe is not None
    return recipe


@pytest.fixture(scope="module")
def bodice() -> SizeRun:
    return grade(shelf("bodice"), (92, 98, 104, 110, 116), shelf=on_the_shelf)


@pytest.mark.parametrize("name", shipped_names())
def test_every_recipe_in_every_size_it_suits(name: str) -> None:
    recipe = shelf(name)
    sizes = suiting(recipe)
    if stature_range(recipe)[0] < 1520:
        assert sizes, "a recipe for children suits some size"
    run = grade(recipe, sizes, shelf=on_the_shelf)
    for size in run.sizes:
        assert all(seam.matched for seam in size.pattern.seams), size.label
        for piece in size.pattern.pieces:
            for outline in (piece.outline, piece.unfolded):
                assert polygon(outline.stitch).is_valid, (size.label, piece.name)
                assert polygon(outline.cut).is_valid, (size.label, piece.name)
                assert outline.cut.is_closed
                assert outline.stitch.signed_area() > 0
    assert not [problem for problem in run.problems if problem.severity is Severity.ERROR]


def test_a_seam_that_does_not_meet_in_one_size_is_named_with_the_size() -> None:
    text = (
        "recipe odd\nmeasure chest, stature\ndrawing body\npoint A at the fold\npoint B right of A by chest / 2\n"
        "point C below B by 20 cm\npoint D below A by 20 cm + (stature - 92 cm) / 4\n"
        'piece body "Body" from body cut 2\nedges A-D as left seam, D-C as hem hem, C-B as right seam, B-A as top seam\n'
        "grain along A-D\nsew body.left to body.right\n"
    )
    run = grade(parse(text, "odd"), (92, 98))
    unmatched = [problem for problem in run.problems if problem.code == "seam-lengths-differ"]
    assert len(unmatched) == 1, run.problems
    assert unmatched[0].message.startswith("Size 98: body.left is 215.0 mm long, body.right 200.")


def test_the_first_point_stands_still_and_girths_grow(bodice: SizeRun) -> None:
    ways = {move.point: move for move in moves(bodice)}
    assert ways["back.A"].whole == Vector(0.0, 0.0)
    assert all(step.x > 0 for step in ways["front.C"].steps)
    assert all(step.y < 0 for step in ways["front.W"].steps)


def test_moves_add_up_to_the_way_from_the_smallest_to_the_largest(bodice: SizeRun) -> None:
    first, last = (bodice.sizes[k].pattern.draft.points for k in (0, -1))
    for move in moves(bodice):
        whole = last[move.point].at - first[move.point].at
        assert move.whole.x == pytest.approx(whole.x)
        assert move.whole.y == pytest.approx(whole.y)


def test_neighbours_are_told_apart_in_black_and_white() -> None:
    looks = [look(kind_of(number)) for number in range(2 * len(KINDS))]
    for one, other in pairwise(looks):
        thick, thin = max(one.width, other.width), min(one.width, other.width)
        assert one.dash != other.dash or thick >= 1.45 * thin
    first = looks[: len(KINDS)]
    assert len({(one.dash, one.width) for one in first}) == len(KINDS)


def test_a_stack_holds_every_cutting_line_once_in_its_kind(bodice: SizeRun) -> None:
    front = stacked(bodice)[0]
    for number, size in enumerate(bodice.sizes):
        piece = size.pattern.pieces[0]
        strokes = [
            mark
            for mark in front.marks
            if isinstance(mark, Stroke) and mark.meaning is kind_of(number) and mark.name.endswith(size.label)
        ]
        drawn = shapely.union_all([line_string(mark.path) for mark in strokes])
        whole = line_string(piece.outline.cut)
        fold = whole.difference(drawn.buffer(0.01))
        assert drawn.difference(whole.buffer(0.01)).length == pytest.approx(0.0, abs=0.1)
        assert fold.bounds[2] - fold.bounds[0] < 0.1, "what is missing is the fold, which is upright"


def test_numbers_stand_by_their_own_line_and_on_none(bodice: SizeRun) -> None:
    for name in ("front", "back"):
        pieces = {size.label: size.pattern.piece(name) for size in bodice.sizes}
        lines = {label: line_string(piece.outline.cut) for label, piece in pieces.items()}
        found = size_numbers([(label, piece.outline.cut) for label, piece in pieces.items()])
        assert {label.text for label in found} == set(pieces)
        for label in found:
            up = Vector.polar(label.angle + pi / 2, label.height / 2)
            centre = shapely.Point(*astuple(label.at + up))
            distances = {size: line.distance(centre) for size, line in lines.items()}
            assert min(distances, key=distances.__getitem__) == label.text
            assert min(distances.values()) >= label.height / 2, "no line runs through it"


def test_no_outline_has_more_numbers_than_can_be_read(bodice: SizeRun) -> None:
    lines = [(size.label, size.pattern.pieces[0].outline.cut) for size in bodice.sizes]
    found = [label.text for label in size_numbers(lines)]
    assert all(1 <= found.count(size.label) <= MOST for size in bodice.sizes)


def test_words_name_all_sizes_and_not_one_child(bodice: SizeRun) -> None:
    front = stacked(bodice)[0]
    words = [mark.text for mark in front.marks if isinstance(mark, Label) and mark.meaning in WORDS_OF]
    assert any("sizes 92 to 116" in text for text in words)
    assert not any("stature" in text for text in words)


def test_the_list_of_line_kinds_names_every_size(bodice: SizeRun) -> None:
    kinds = stacked(bodice)[-1]
    samples = {mark.name: mark.meaning for mark in kinds.marks if isinstance(mark, Stroke)}
    assert samples == {f"size.{size.label}": kind_of(k) for k, size in enumerate(bodice.sizes)}
    assert {mark.text for mark in kinds.marks if isinstance(mark, Label)} >= {"92", "116"}


def test_a_piece_that_is_the_same_in_all_sizes_is_drawn_once() -> None:
    run = grade(shelf("bib"), (68, 80, 92), shelf=on_the_shelf)
    bib = stacked(run)[0]
    assert not [mark for mark in bib.marks if mark.meaning in KINDS]
    assert [mark for mark in bib.marks if mark.meaning is Meaning.CUT]


def test_no_size_and_one_size(bodice: SizeRun) -> None:
    assert stacked(SizeRun("nothing", ())) == ()
    assert moves(SizeRun("nothing", ())) == ()
    one = SizeRun(bodice.title, bodice.sizes[:1])
    assert all(move.steps == () for move in moves(one))
    assert any(mark.meaning is Meaning.SIZE_1 for mark in stacked(one)[0].marks)


def test_bodies_of_the_makers_own_chart() -> None:
    bodies = (("small", Measurements.of({"chest": 500.0})), ("large", Measurements.of({"chest": 600.0})))
    recipe = parse(
        "recipe line\nmeasure chest\ndrawing d\npoint A at the fold\npoint B right of A by chest\n", "line"
    )
    (_, move) = moves(grade_bodies(recipe, bodies))
    assert move.steps == (Vector(100.0, 0.0),)
