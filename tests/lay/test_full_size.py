"""The marker read back from its files: lines to be marked stand where the pattern has them, words have room and are large.

The place of a piece is found from the grain arrow and the outline that are drawn, not from the lay.
"""

from __future__ import annotations

import json
import re
from dataclasses import replace
from datetime import date
from functools import lru_cache
from io import BytesIO
from typing import TYPE_CHECKING

import pypdf
import pytest
import shapely
from garments import dress

from littlefold.cli.asked import Asked
from littlefold.cli.understood import understand
from littlefold.drawing import Dot, Label, Meaning, label_bounds
from littlefold.geometry import Affine, Point
from littlefold.lay.adapter import enlarged, lay_pieces
from littlefold.lay.cloth import Cloth
from littlefold.lay.full_size import HEIGHT, LEGEND, marker_drawing
from littlefold.lay.piece import InsideLine
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.sheet import marker
from littlefold.lay.shrink import NONE, Shrinkage, Treatment
from littlefold.lay.stored import read_stored, stored
from littlefold.lay.ways import Way
from littlefold.pattern.unfold import mirror
from littlefold.pipeline import fulfil
from littlefold.sheet.svg import write_svg

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from littlefold.lay.lay import Lay
    from littlefold.pattern.model import Pattern, Piece

# Curves of the lay are flattened to 0.05 mm.
NEAR = 0.11

AS_DRAWN = NONE
WASH = Shrinkage(0.04, 0.02, "as said")

Pairs = tuple[tuple[float, float], ...]

CASES = [
    (recipe, way, wash)
    for recipe in ("pinafore", "pleated-skirt", "drawers", "bodice")
    for way, wash in ((Way.FOLDED, AS_DRAWN), (Way.OPEN, WASH))
]


@lru_cache
def pattern(recipe: str) -> Pattern:
    understood = understand(Asked(recipe, size="104"), date(2026, 1, 1))
    assert not isinstance(understood, tuple), understood
    return fulfil(understood.wish).pattern


@lru_cache
def laid(recipe: str, way: Way, wash: Shrinkage) -> Lay:
    cloth = Cloth(1600, shrinkage=wash, treatment=Treatment.ENLARGE)
    prepared = prepare(enlarged(lay_pieces(pattern(recipe))[0], cloth), cloth, way)
    assert isinstance(prepared, Prepared), prepared
    return next(lays(prepared, Effort(steps=0)))


def paths(svg: str, meaning: str, name: str) -> list[Pairs]:
    """The corners of all lines of a meaning on a piece, y upward."""
    found = re.findall(rf'<path class="line {meaning}" d="([^"]*)" data-name="{name}"/>', svg)
    return [
        tuple((float(x), -float(y)) for x, y in re.findall(r"[ML](\S+) ([^MLZ]+)", commands))
        for commands in found
    ]


def drawn_at(piece: Piece, arrow: Pairs, wash: Shrinkage, *, flipped: bool) -> Affine:
    """From the paper to the marker: the arrow of the pattern comes to the arrow drawn, enlarged as the wash takes."""
    start, end = piece.grain
    level = Affine.translation(Point(0, 0) - start).then(Affine.rotation(-(end - start).angle))
    size = Affine(1 / (1 - wash.along), 0.0, 0.0, (-1 if flipped else 1) / (1 - wash.across), 0.0, 0.0)
    tail, head = (Point(*corner) for corner in arrow)
    there = Affine.rotation((head - tail).angle).then(Affine.translation(tail - Point(0, 0)))
    return level.then(size).then(there)


def taken(points: Iterable[Point], affine: Affine) -> Pairs:
    return tuple((q.x, q.y) for q in (affine.apply(point) for point in points))


def wanted(piece: Piece, cut: Pairs, arrow: Pairs, wash: Shrinkage) -> list[Pairs]:
    """The pattern's lines inside, taken to a cut of the marker; on a whole piece also over the fold."""
    is_whole = piece.half is not None and shapely.Polygon(cut).area > 1.5 * piece.outline.around.area
    outline = (piece.unfolded if is_whole else piece.outline).cut.flatten(0.05)
    both = (Affine.identity(), mirror(piece.half.fold)) if is_whole and piece.half else (Affine.identity(),)
    for flipped in (False, True):
        affine = drawn_at(piece, arrow, wash, flipped=flipped)
        # A half whose fold runs back is mirrored, but its arrow stands on its other side then: see which one matches.
        for over in both:
            way = over.then(affine)
            if shapely.hausdorff_distance(shapely.Polygon(taken(outline, way)), shapely.Polygon(cut)) < 0.5:
                return [
                    taken(one.path.flatten(0.05), half.then(way)) for one in piece.inside for half in both
                ]
    raise AssertionError(f"{piece.name} is nowhere on the marker")


def apart(first: Sequence[Pairs], second: Sequence[Pairs]) -> float:
    return float(shapely.hausdorff_distance(shapely.MultiLineString(first), shapely.MultiLineString(second)))


@pytest.mark.parametrize(("recipe", "way", "wash"), CASES)
def test_lines_inside_stand_where_the_pattern_has_them(recipe: str, way: Way, wash: Shrinkage) -> None:
    svg = write_svg(marker_drawing(laid(recipe, way, wash)))
    met = 0
    for piece in pattern(recipe).pieces:
        cuts, arrows = paths(svg, "cut", piece.name), paths(svg, "grain", piece.name)
        lines = [
            line for cut, arrow in zip(cuts, arrows, strict=True) for line in wanted(piece, cut, arrow, wash)
        ]
        shown = paths(svg, "inside", piece.name)
        assert len(shown) == len(lines)
        if lines:
            assert apart(shown, lines) < NEAR
            met += len(lines)
    assert met
    assert LEGEND in svg


def broken_lines(pdf: bytes) -> list[Pairs]:
    """The lines of a page that are dashed as lines inside are, in mm from its lower left corner."""
    page = pypdf.PdfReader(BytesIO(pdf)).pages[0]
    contents = page.get_contents()
    assert contents is not None
    state, kept, found = Affine.identity(), [], []
    dash: list[float] = []
    line: list[tuple[float, float]] = []
    for operands, operator in contents.operations:
        if operator == b"q":
            kept.append((state, dash))
        elif operator == b"Q":
            state, dash = kept.pop()
        elif operator == b"cm":
            state = Affine(*map(float, operands)).then(state)
        elif operator == b"d":
            dash = [float(part) * 25.4 / 72 for part in operands[0]]
        elif operator in (b"m", b"l"):
            line = [] if operator == b"m" else line
            point = state.apply(Point(float(operands[0]), float(operands[1])))
            line.append((point.x * 25.4 / 72, point.y * 25.4 / 72))
        elif operator == b"S" and dash == pytest.approx([1.6, 1.2], abs=0.01):
            found.append(tuple(line))
    return found


def test_the_copy_shop_gets_the_same_lines() -> None:
    lay = laid("pinafore", Way.OPEN, WASH)
    svg = write_svg(marker_drawing(lay))
    content = marker(lay, date(2026, 3, 2))
    assert content is not None
    drawn = [line for piece in lay.pieces for line in paths(svg, "inside", piece.name)]
    printed = broken_lines(content)
    assert len(printed) == len(drawn)
    boxes = [shapely.MultiLineString(lines).bounds for lines in (printed, drawn)]
    by = boxes[0][0] - boxes[1][0], boxes[0][1] - boxes[1][1]
    assert apart(printed, [tuple((x + by[0], y + by[1]) for x, y in line) for line in drawn]) < NEAR


@pytest.mark.parametrize(("recipe", "way", "wash"), CASES)
def test_names_are_inside_their_piece_and_large_where_there_is_room(
    recipe: str, way: Way, wash: Shrinkage
) -> None:
    lay = laid(recipe, way, wash)
    marks = marker_drawing(lay).marks
    words = [mark for mark in marks if isinstance(mark, Label) and mark.meaning is Meaning.TITLE]
    shapes = [lay.shape(one) for one in lay.placements]
    for label in words:
        box = label_bounds(label)
        room = shapely.box(box.left, box.bottom, box.right, box.top)
        assert any(shapely.contains(shape, room) for shape in shapes)
    named = [int(mark.text.split()[0]) for mark in words if mark.text[0].isdigit()]
    assert sorted(named) == sorted(lay.piece(one.piece).number for one in lay.placements)
    largest = max(lay.placements, key=lambda one: lay.shape(one).area).piece
    assert max(mark.height for mark in words if mark.name == largest) >= 0.6 * HEIGHT


def test_a_narrow_piece_has_its_name_upright_and_the_smallest_keeps_its_number() -> None:
    pieces = dress()
    prepared = prepare(pieces, Cloth(1120), Way.OPEN)
    assert isinstance(prepared, Prepared)
    lay = next(lays(prepared, Effort(steps=0)))
    ring = tuple(Point(0.03 * p.x, 0.03 * p.y) for p in pieces[0].ring)
    tiny = replace(lay, pieces=(replace(pieces[0], ring=ring), *pieces[1:]))
    for one in (lay, tiny):
        words = [m for m in marker_drawing(one).marks if isinstance(m, Label) and m.meaning is Meaning.TITLE]
        assert {int(m.text.split()[0]) for m in words if m.text[0].isdigit()} == {p.number for p in pieces}


def test_a_stored_lay_keeps_its_lines_and_one_without_them_is_still_read() -> None:
    lay = laid("pinafore", Way.OPEN, WASH)
    again = read_stored(stored(lay))
    assert not isinstance(again, tuple)
    assert marker_drawing(again) == marker_drawing(lay)
    kept = json.loads(stored(lay))
    for piece in kept["pieces"]:
        del piece["insides"]
    old = json.dumps(kept)
    before = read_stored(old)
    assert not isinstance(before, tuple)
    assert not any(piece.insides for piece in before.pieces)


def test_a_marked_point_is_a_dot_on_either_half() -> None:
    marked = tuple(
        replace(one, insides=(InsideLine("button", (Point(60.0, 40.0),)),) if one.name == "front" else ())
        for one in dress()
    )
    for way, count in ((Way.OPEN, 2), (Way.FOLDED, 1)):
        prepared = prepare(marked, Cloth(1120), way)
        assert isinstance(prepared, Prepared)
        drawing = marker_drawing(next(lays(prepared, Effort(steps=0)))).only(Meaning.INSIDE)
        assert sum(isinstance(mark, Dot) for mark in drawing.marks) == count
        assert [mark.text for mark in drawing.marks if isinstance(mark, Label)] == ["button"] * count


@pytest.mark.parametrize("nap", [False, True])
def test_a_pair_that_is_its_own_mirror_image_has_its_plackets_on_both_sides(nap: bool) -> None:  # noqa: FBT001
    """The skirt's backs are oblongs with a placket at one side: looked at from the hem, one left and one right."""
    cloth = Cloth(1600, nap=nap)
    prepared = prepare(lay_pieces(pattern("pleated-skirt"))[0], cloth, Way.OPEN)
    assert isinstance(prepared, Prepared)
    svg = write_svg(marker_drawing(next(lays(prepared, Effort(steps=60)))))
    sides = []
    for placket, arrow in zip(paths(svg, "inside", "back"), paths(svg, "grain", "back"), strict=True):
        tail, head, foot = Point(*arrow[0]), Point(*arrow[1]), Point(*placket[0])
        sides.append((head - tail).cross(foot - tail) > 0)
    assert sorted(sides) == [False, True]
