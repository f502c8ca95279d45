"""Pieces whose cutting line cannot be made by the rules: each is a problem with a place, both numbers and a cure."""

from __future__ import annotations

from math import pi

import pytest

from littlefold.draft.model import Cutting, EdgeKind
from littlefold.geometry import Arc, Cubic, Path
from littlefold.pattern.simple import polygon
from littlefold.pattern.trace import trace, trace_piece
from littlefold.problem import Place, Severity
from tests.pattern.shapes import draft, edge, piece, point, polygon_edges, straight

SLOT = ((0, 0), (100, 0), (100, 100), (55, 100), (55, 50), (45, 50), (45, 100), (0, 100))


def only(drawn):
    traced, problems = trace_piece(drawn)
    assert traced.outline.cut.is_closed
    assert polygon(traced.outline.cut).is_valid
    (problem,) = problems
    assert problem.place.piece == drawn.name
    assert problem.cure
    assert problem.cure in problem.message
    return traced, problem


def test_corners_that_leave_nothing_of_an_edge():
    """The floor of a slot 10 mm wide, with 10 mm of allowance on both walls."""
    traced, problem = only(piece("slotted", polygon_edges(*SLOT)))
    assert problem.code == "corners-overlap"
    assert problem.place.edge == "e4"
    assert [n.value for n in problem.numbers] == pytest.approx([10.0, 10.0])
    # instead: a plain margin of the widest allowance all round
    assert traced.outline.cut.bounds().bottom == pytest.approx(-10.0)


def test_a_hollow_narrower_than_its_allowance():
    hollow = Path((Arc(point(50, 100), 15.0, 0.0, -pi),))
    edges = [
        edge("side", straight((0, 100), (0, 0), (100, 0), (100, 100), (65, 100))),
        edge("scoop", hollow, EdgeKind.SEAM, 30.0),
        edge("rest", straight((35, 100), (0, 100))),
    ]
    _, problem = only(piece("bib", edges))
    assert problem.code == "hollow-narrower-than-allowance"
    assert problem.place.edge == "scoop"
    assert problem.numbers[0].value == 30.0


def test_a_stitch_line_that_crosses_itself():
    edges = polygon_edges((0, 0), (100, 100), (100, 0), (0, 100))
    _, problem = only(piece("bow", edges))
    assert problem.code == "stitch-line-crosses"
    # The diagonals of a square of 100 cross in its middle, on the first and the third of the edges.
    assert problem.place.edge in {"e0", "e2"}
    assert [(n.name, n.value) for n in problem.numbers] == [("x", 50.0), ("y", 50.0), ("allowed", 0)]
    assert "5 cm to the right and 5 cm up" in problem.message


def test_a_hem_deeper_than_the_edge_beside_it_is_long():
    kinds = [EdgeKind.HEM, EdgeKind.SEAM, EdgeKind.SEAM, EdgeKind.SEAM, EdgeKind.SEAM]
    corners = ((0, 0), (200, 0), (200, 20), (150, 200), (0, 200))
    drawn = piece("skirt", polygon_edges(*corners, kinds=kinds, allowances=[60, 10, 10, 10, 10]))
    _, problem = only(drawn)
    assert problem.code == "hem-deeper-than-its-neighbour"
    assert problem.severity is Severity.WARNING
    assert [n.value for n in problem.numbers] == [60.0, 20.0]


def test_a_piece_that_cannot_be_cut_is_still_unfolded():
    corners = [(x + 1, y) for x, y in SLOT]
    edges = polygon_edges((0, 0), *corners[1:-1], (0, 100), kinds=[EdgeKind.SEAM] * 7 + [EdgeKind.FOLD])
    traced, problems = trace_piece(piece("half", edges, Cutting(1, on_fold=True)))
    assert [p.code for p in problems] == ["corners-overlap"]
    assert traced.unfolded.cut.signed_area() > 1.9 * traced.outline.stitch.signed_area()


def test_problems_keep_the_line_of_the_recipe():
    drawn = piece("slotted", polygon_edges(*SLOT), place=Place(file="trial", line=12, column=3))
    pattern = trace(draft([drawn]))
    assert pattern.problems[0].place == Place("trial", 12, 3, "slotted", "e4")
    assert pattern.pieces[0].place == Place("trial", 12, 3, "slotted")


def test_names_that_are_not_there():
    pattern = trace(draft([piece("square", polygon_edges((0, 0), (90, 0), (90, 90), (0, 90)))]))
    assert pattern.piece("square").edge("e0").name == "e0"
    with pytest.raises(KeyError):
        pattern.piece("front")
    with pytest.raises(KeyError):
        pattern.piece("square").edge("hem")


def test_a_hollow_that_is_too_narrow_only_at_its_end_is_cut_all_the_same():
    """An armhole whose curve is narrower than 6 mm just where the side seam meets it (met in a real draft)."""
    hollow = Path(
        (
            Cubic(
                point(110.721, -79.925), point(95.844, -79.925), point(85.236, -24.061), point(93.942, 8.431)
            ),
        )
    )
    edges = [
        edge("armhole", hollow, EdgeKind.FACED, 6.0),
        edge("shoulder", straight((93.942, 8.431), (40, 20))),
        edge("rest", straight((40, 20), (0, 0), (0, -200), (110.721, -200))),
        edge("side", straight((110.721, -200), (110.721, -79.925))),
    ]
    traced, problems = trace_piece(piece("front", edges))
    assert problems == ()
    middle = hollow.at_length(50.0)
    assert traced.outline.cut.nearest(middle).distance == pytest.approx(6.0, abs=0.03)
