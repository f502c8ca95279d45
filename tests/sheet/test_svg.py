from io import StringIO
from math import pi
from xml.etree import ElementTree as ET

import pytest
import svgelements
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.drawing import Dot, Drawing, Label, Meaning, Stroke
from littlefold.geometry import Arc, Line, Path, Point
from littlefold.sheet.svg import write_svg
from tests.drawing.paths import paths
from tests.sheet.shapes import two_pieces

NAMESPACE = "{http://www.w3.org/2000/svg}"

# Coordinates are written to 0.0001 mm, so each end of a segment may be off by half of that.
WRITTEN = 1e-3


def elements(svg, kind):
    return list(ET.fromstring(svg).iter(f"{NAMESPACE}{kind}"))  # noqa: S314 - our own output


def outlines(svg):
    """The paths of a document by name, as another library sees them, in the units of the view box."""
    return {element.get("data-name"): svgelements.Path(element.get("d")) for element in elements(svg, "path")}


def test_the_size_is_millimetres_and_a_unit_is_one():
    svg = ET.fromstring(write_svg(two_pieces(), border=3.0))  # noqa: S314 - our own output
    box = two_pieces().bounds()
    assert svg.get("width") == f"{svg.get('viewBox').split()[2]}mm"
    assert float(svg.get("width")[:-2]) == pytest.approx(box.width + 6, abs=WRITTEN)
    assert float(svg.get("height")[:-2]) == pytest.approx(box.height + 6, abs=WRITTEN)


def test_another_library_reads_the_document_at_its_true_size():
    path = Path.line_through(Point(0, 0), Point(100, 0))
    svg = svgelements.SVG.parse(StringIO(write_svg(Drawing((Stroke(path, Meaning.RULER),)))), ppi=25.4)
    (found,) = [element for element in svg.elements() if isinstance(element, svgelements.Path)]
    assert abs(found).length() == pytest.approx(100.0, abs=WRITTEN)


def test_another_library_measures_the_same_lengths():
    drawing = two_pieces()
    found = outlines(write_svg(drawing))
    strokes = [mark for mark in drawing.marks if isinstance(mark, Stroke) and mark.meaning is Meaning.CUT]
    assert len(strokes) == 2
    for stroke in strokes:
        assert found[stroke.name].length(error=1e-6) == pytest.approx(stroke.path.length(), abs=0.01)


def area_inside(path):
    """By the surveyor's formula over many points of another library's curve."""
    points = [path.point(k / 20_000) for k in range(20_000)]
    pairs = zip(points, points[1:] + points[:1], strict=True)
    return abs(sum(p.x * q.y - q.x * p.y for p, q in pairs)) / 2


def test_another_library_measures_the_same_area():
    drawing = two_pieces()
    found = outlines(write_svg(drawing))
    for stroke in drawing.only(Meaning.CUT).marks:
        assert area_inside(found[stroke.name]) == pytest.approx(abs(stroke.path.signed_area()), rel=1e-5)


def test_a_full_circle_is_a_circle():
    circle = Path((Arc(Point(50, 50), 30.0, 0.3, 2 * pi),))
    found = outlines(write_svg(Drawing((Stroke(circle, Meaning.CUT, "c"),))))["c"]
    assert found.length(error=1e-6) == pytest.approx(60 * pi, abs=0.01)
    assert area_inside(found) == pytest.approx(900 * pi, rel=1e-4)


def test_y_is_turned_over_by_the_coordinates():
    svg = write_svg(Drawing((Stroke(Path.line_through(Point(0, 0), Point(0, 100)), Meaning.CUT, "up"),)))
    found = outlines(svg)["up"]
    assert found[0].end.y - found[-1].end.y == pytest.approx(100.0)
    assert all(element.get("transform") is None for element in elements(svg, "path"))


def test_lines_arcs_and_cubics_stay_what_they_are():
    path = Path((Line(Point(0, 0), Point(50, 0)), Arc(Point(50, 10), 10.0, -pi / 2, pi / 2)))
    svg = write_svg(Drawing((Stroke(path, Meaning.CUT),)))
    (element,) = elements(svg, "path")
    assert [letter for letter in element.get("d") if letter.isalpha()] == ["M", "L", "A"]


def test_reduced_lines_get_smaller_and_words_stay_readable():
    drawing = Drawing(
        (
            Stroke(Path.line_through(Point(0, 0), Point(400, 0)), Meaning.CUT, "line"),
            Label("front", Point(0, 0), height=2.5),
        )
    )
    full, quarter = write_svg(drawing), write_svg(drawing, 0.25)
    assert outlines(quarter)["line"].length() == pytest.approx(100.0, abs=WRITTEN)
    assert float(elements(full, "text")[0].get("font-size")) * 0.645 == pytest.approx(2.5, abs=WRITTEN)
    assert float(elements(quarter, "text")[0].get("font-size")) * 0.645 >= 1.799  # 8 point


def test_every_mark_has_the_class_of_its_meaning():
    svg = write_svg(
        Drawing((Dot(Point(1, 2), Meaning.LETTER, "body.A"), Label("A", Point(1, 2), Meaning.LETTER)))
    )
    assert elements(svg, "circle")[0].get("class") == "fill letter"
    assert elements(svg, "circle")[0].get("data-name") == "body.A"
    assert elements(svg, "text")[0].get("class") == "letter"


def test_turned_words_turn_the_other_way_on_paper_that_runs_down():
    svg = write_svg(Drawing((Label("up", Point(5, 5), angle=pi / 2),)))
    assert elements(svg, "text")[0].get("transform").startswith("rotate(-90 ")


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=60), st.text(max_size=60))
def test_any_name_and_any_words_make_a_sound_document(name, words):
    path = Path.line_through(Point(0, 0), Point(9, 9))
    svg = write_svg(Drawing((Stroke(path, Meaning.CUT, name), Label(words, Point(1, 1), name=name)), words))
    (text,) = elements(svg, "text")
    assert not list(text)  # words never become elements
    assert len(elements(svg, "path")) == 1


HOSTILE = '"/><script>alert(1)</script><a b="'


def test_hostile_names_stay_inside_their_quotes():
    path = Path.line_through(Point(0, 0), Point(9, 9))
    svg = write_svg(Drawing((Stroke(path, Meaning.CUT, HOSTILE), Label(HOSTILE, Point(0, 0))), HOSTILE))
    assert elements(svg, "path")[0].get("data-name") == HOSTILE
    assert elements(svg, "text")[0].text == HOSTILE
    assert elements(svg, "title")[0].text == HOSTILE
    assert elements(svg, "script") == []
    assert "<script" not in svg


@settings(max_examples=30, deadline=None)
@given(paths(most=3))
def test_the_end_of_any_path_is_where_it_was(path):
    svg = write_svg(Drawing((Stroke(path, Meaning.CUT, "p"),)), border=0.0)
    found, box = outlines(svg)["p"], path.bounds()
    last = [segment for segment in found if not isinstance(segment, svgelements.Close)][-1]
    assert last.end.x + box.left == pytest.approx(path.end.x, abs=WRITTEN)
    assert box.top - last.end.y == pytest.approx(path.end.y, abs=WRITTEN)


def test_nothing_drawn_is_still_a_document():
    assert elements(write_svg(Drawing()), "path") == []
