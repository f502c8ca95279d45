"""Every shipped recipe printed and read back with other programs' eyes: pypdf for pages, svgelements for the drawing."""

from __future__ import annotations

from datetime import date

import pytest
import shapely
import svgelements

from littlefold.body.measurements import Measurements
from littlefold.booklet.bundle import bundle, pieces_drawn
from littlefold.draft.sentence import Speech
from littlefold.drawing import Meaning, Stroke
from littlefold.recipe.shelf import shipped_names
from littlefold.sheet.arrange import arrange
from littlefold.sheet.paper import read_paper
from littlefold.sheet.pdf import write_pdf
from littlefold.sheet.tile import tile
from tests.journeys.soundness import drafted
from tests.sheet.reading import read
from tests.sheet.test_pdf import CHECK, OUTLINE, cut_lines, lines_of, runs
from tests.sheet.test_svg import outlines

DAY = date(2026, 3, 2)
CHILD = Measurements.of({"stature": 1040.0}, nickname="Mina")
# Lengths and areas of the drawing against those of the pattern: flattening shortens a cutting line of a metre by less
# than the first [mm], and changes its area by less than the second part.
LENGTH, AREA = 0.5, 1e-5

# So many points of each segment make the polygon whose area is taken.
POINTS = 400

pytestmark = pytest.mark.parametrize("name", shipped_names())


def cut_edge(piece) -> float:
    """How long the scissors go round a piece as drawn [mm]: all of the cutting line but the fold."""
    folds = [edge.path for edge in piece.edges if edge.kind == "fold"]
    around = shapely.LineString([(p.x, p.y) for p in piece.outline.cut.flatten()])
    for fold in folds:
        # The fold is carried on to the cutting line at both its ends.
        long = fold.extended_start(200.0).extended_end(200.0)
        along = shapely.LineString([(p.x, p.y) for p in long.flatten()]).buffer(1e-3)
        around = around.difference(along)
    return float(around.length)


def area_of(path) -> float:
    """The area inside another library's path, closed by a straight line where it is open (the fold)."""
    places = [segment.point(k / POINTS) for segment in path[1:] for k in range(POINTS + 1)]
    return shapely.Polygon([(place.x, place.y) for place in places]).area


def test_pages_put_together_are_the_pattern(name):
    outcome, paper = drafted(name, CHILD), read_paper("a4")
    arranged = arrange(pieces_drawn(outcome.pattern, Speech(), DAY), paper, "Mina")
    pages = tile(arranged.drawing, arranged.paper, DAY, "Mina", ())
    found = read(write_pdf(pages, "Mina", DAY))
    assert len(found) == len(pages) > 1
    joined = []
    for page, printed in zip(pages, found, strict=True):
        sides = sorted((printed.width, printed.height))
        assert sides == pytest.approx([210.0, 297.0], abs=0.01)
        marks = lines_of(100.0, printed)
        assert {runs(ink) for ink in marks} == {"across", "down"}
        for ink in marks:
            assert shapely.LineString(ink.points()).length == pytest.approx(100.0, abs=CHECK)
        if page is not pages[0]:
            corner = page.corner
            joined += [[(x + corner.x, y + corner.y) for x, y in ink.points()] for ink in cut_lines(printed)]
    drawn = [
        [(p.x, p.y) for p in mark.path.flatten(0.002)]
        for mark in arranged.drawing.only(Meaning.CUT).marks
        if isinstance(mark, Stroke)
    ]
    put_together, wanted = shapely.MultiLineString(joined), shapely.MultiLineString(drawn)
    assert wanted.difference(put_together.buffer(OUTLINE)).length == pytest.approx(0.0, abs=1e-6)
    assert put_together.difference(wanted.buffer(OUTLINE)).length == pytest.approx(0.0, abs=1e-6)
    scissors = sum(cut_edge(piece) for piece in outcome.pattern.pieces)
    assert wanted.length == pytest.approx(scissors, abs=LENGTH * len(outcome.pattern.pieces))


def test_the_drawing_has_the_lengths_and_areas_of_the_pattern(name):
    outcome = drafted(name, CHILD)
    sheets = bundle(outcome.pattern, outcome.problems, Speech(), read_paper("a4"), DAY)
    svg = next(sheet for sheet in sheets if sheet.name == "pattern.svg").make().decode()
    found = outlines(svg)
    for piece in outcome.pattern.pieces:
        path = found[f"{piece.name}.cut"]
        assert isinstance(path, svgelements.Path)
        assert area_of(path) == pytest.approx(piece.outline.cut.signed_area(), rel=AREA)
        assert path.length(error=1e-5) == pytest.approx(cut_edge(piece), abs=LENGTH)
