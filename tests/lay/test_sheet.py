"""The page to follow: one page, the largest drawing that leaves room, every figure on it; the marker at full size."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import lru_cache
from io import BytesIO

import pypdf
import pytest
import shapely
from garments import dress

from littlefold.draft.model import Notion
from littlefold.drawing import Label, Meaning, Stroke
from littlefold.lay import spoken
from littlefold.lay.chalk import chalk_table
from littlefold.lay.cloth import YARD_STEP, Cloth, Price, Repeat
from littlefold.lay.compare import best_of, compare
from littlefold.lay.draw import lay_drawing
from littlefold.lay.full_size import marker_drawing
from littlefold.lay.leftover import leftovers
from littlefold.lay.place import Effort
from littlefold.lay.sheet import (
    LayPlan,
    cautions_of,
    lay_sheet,
    lettered,
    marker,
    sheet_values,
    with_leftovers,
)
from littlefold.lay.shopping import shopping_list
from littlefold.lay.shrink import Shrinkage
from littlefold.lay.ways import Way
from littlefold.sheet.paper import LONGEST, read_paper

DAY = date(2026, 3, 2)
POINT = 72 / 25.4
CLOTH = Cloth(1120, price=Price(8.5, "EUR"), shrinkage=Shrinkage(0.03, 0.01, "as said"))


def paper(name: str = "a4"):
    found = read_paper(name)
    assert not hasattr(found, "code")
    return found


@lru_cache
def plan(*cautions: str) -> LayPlan:
    rows = tuple(compare(dress(), CLOTH, Effort(steps=0), (Way.OPEN, Way.FOLDED, Way.TWO_FOLDS)))
    best = best_of(rows)
    assert best is not None
    assert best.lay is not None
    return LayPlan("Dress for Ada", best.lay, rows, shopping_list([best.lay], (), 60_000.0), cautions)


def read(pdf: bytes) -> tuple[pypdf.PdfReader, str]:
    reader = pypdf.PdfReader(BytesIO(pdf))
    return reader, " ".join(" ".join(page.extract_text().split()) for page in reader.pages)


@pytest.mark.parametrize("name", ["a4", "letter", "a3"])
def test_a_garment_is_told_on_one_page(name):
    reader, words = read(lay_sheet(plan("Keep cords short."), paper(name), DAY))
    assert len(reader.pages) == 1
    assert float(reader.pages[0].mediabox.width) == pytest.approx(paper(name).width * POINT, abs=0.1)
    for told in (
        "Dress for Ada",
        "EUR",
        "Chalk",
        "To buy",
        "Ways compared",
        "Left over",
        "Keep cords short.",
    ):
        assert told in words
    assert "Wash, dry and iron it before cutting" in words


def test_every_cut_stands_in_the_chalk_table_with_its_distances():
    _, words = read(lay_sheet(plan(), paper(), DAY))
    rows = chalk_table(plan().lay)
    assert len(rows) == len(plan().lay.placements)
    for row in rows:
        assert (
            f"{row.start.x / 10:.1f} {row.start.y / 10:.1f} {row.end.x / 10:.1f} {row.end.y / 10:.1f}"
            in words
        )


def test_the_typesetter_chooses_among_usual_scales_the_largest_first():
    widths = [drawing["width"] for drawing in sheet_values(plan(), paper(), DAY)["drawings"]]
    assert widths == sorted(widths, reverse=True)
    assert widths[0] <= paper().width - 20


def test_words_of_a_maker_stay_words():
    odd = LayPlan("#panic() *x*", plan().lay, (), plan().shopping, ("#eval(1)",))
    _, words = read(lay_sheet(odd, paper(), DAY))
    assert "#panic() *x*" in words
    assert "#eval(1)" in words


def test_a_long_caution_is_told_to_its_last_word():
    long = (
        " ".join(f"Sentence {k} of a rule that is long and must be read." for k in range(12)) + " Last word."
    )
    _, words = read(lay_sheet(plan(long), paper(), DAY))
    assert "Sentence 11" in words
    assert "Last word." in words


def test_in_inches_the_whole_page_is_in_inches():
    inches = replace(plan(), units="in", lay=replace(plan().lay, cloth=replace(CLOTH, step=YARD_STEP)))
    shopping = shopping_list(
        [inches.lay], (Notion("elastic", 480.0), Notion("bias binding", 1000.0)), 60_000.0
    )
    _, words = read(lay_sheet(replace(inches, shopping=shopping), paper(), DAY))
    assert "Inches from the cut end" in words
    assert " yd" in words
    assert "44 in wide" in words
    assert " cm" not in words.replace("15 cm", "")
    assert spoken.spot(chalk_table(inches.lay)[0].start, "in").split(" / ")[0] in words


@pytest.mark.parametrize(
    ("traits", "said"),
    [
        ({}, False),
        ({"nap": True}, True),
        ({"repeat": Repeat(40.0, 50.0, uneven_along=True)}, True),
        ({"repeat": Repeat(40.0, 50.0, uneven_across=True)}, False),
    ],
)
def test_the_page_says_where_all_arrows_must_point_one_way(traits, said):
    lay = replace(plan().lay, cloth=replace(CLOTH, **traits))
    words = sheet_values(replace(plan(), lay=lay), paper(), DAY)["figures"][0][1]
    assert ("all arrows one way" in words) is said


@pytest.mark.parametrize(
    ("mm", "said"), [(914.4, "1 yd"), (571.5, "5/8 yd"), (1257.3, "1 3/8 yd"), (114.3, "1/8 yd")]
)
def test_yards_are_said_in_eighths(mm, said):
    assert spoken.cloth(mm, "in") == said


def test_numbers_of_small_pieces_stand_clear_of_their_arrow():
    drawing = lay_drawing(plan().lay, divisor=8.0)
    numbers = [mark for mark in drawing.marks if isinstance(mark, Label) and mark.text.isdecimal()]
    arrows = [m for m in drawing.marks if isinstance(m, Stroke) and m.meaning is Meaning.GRAIN]
    assert numbers
    for number in numbers:
        at = shapely.Point(number.at.x, number.at.y)
        near = min(
            shapely.distance(at, shapely.LineString([(p.x, p.y) for p in arrow.path.flatten(1.0)]))
            for arrow in arrows
        )
        assert near > 1.0
        assert any(shapely.contains(plan().lay.shape(one), at) for one in plan().lay.placements)


def test_the_same_plan_and_day_give_the_same_page():
    assert lay_sheet(plan(), paper(), DAY) == lay_sheet(plan(), paper(), DAY)


def test_cautions_come_once_and_scissors_are_among_them():
    told = cautions_of(plan("Keep cords short."))
    assert told[0] == "Keep cords short."
    assert len(set(told)) == len(told)
    assert "Scissors" in told[-1]


def test_left_over_pieces_are_drawn_with_the_letters_of_the_list():
    rests = leftovers(plan().lay)
    marks = with_leftovers(plan().lay, rests).marks
    letters = [mark.text for mark in marks if isinstance(mark, Label) and mark.meaning is Meaning.LETTER]
    assert letters == [letter for letter, _ in lettered(rests)]
    assert len(letters) == len(rests)


def test_a_number_stays_where_a_title_has_no_room():
    lay = plan().lay
    for divisor in (1.0, 20.0):
        marks = lay_drawing(lay, divisor).marks
        titles = [mark.text for mark in marks if isinstance(mark, Label) and mark.meaning is Meaning.TITLE]
        numbers = sorted(int(text.split()[0]) for text in titles)
        assert numbers == sorted(lay.piece(placement.piece).number for placement in lay.placements)
    assert any(" " not in text for text in titles)


def test_the_marker_is_the_lay_at_full_size():
    lay = plan().lay
    content = marker(lay, DAY)
    assert content is not None
    reader, _ = read(content)
    cuts = [
        mark for mark in marker_drawing(lay).marks if isinstance(mark, Stroke) and mark.meaning is Meaning.CUT
    ]
    assert len(cuts) == len(lay.placements)
    assert len(reader.pages) == 1
    page = reader.pages[0].mediabox
    box = marker_drawing(lay).bounds()
    assert box is not None
    assert float(page.width) == pytest.approx((box.width + 20) * POINT, abs=0.1)
    assert float(page.width) > lay.length * POINT


def test_the_marker_shows_the_whole_drawing_with_both_its_dimensions_and_a_bare_border():
    """Read back by another program: every word of the drawing is on the page, none at its very edge."""
    lay = plan().lay
    content = marker(lay, DAY)
    assert content is not None
    reader, _ = read(content)
    words = reader.pages[0].extract_text()
    for label in (mark for mark in marker_drawing(lay).marks if isinstance(mark, Label)):
        assert label.text.replace(" ", "") in words.replace(" ", "").replace("\n", "")
    starts = []

    def note(text, ctm, matrix, _font, _size):
        if text.strip():
            starts.append(matrix[4] * ctm[0] + matrix[5] * ctm[2] + ctm[4])

    reader.pages[0].extract_text(visitor_text=note)
    page = reader.pages[0].mediabox
    assert min(starts) >= 9 * POINT
    assert max(starts) <= float(page.width)


def test_no_page_is_as_long_as_a_bolt():
    assert marker(replace(plan().lay, length=LONGEST), DAY) is None
