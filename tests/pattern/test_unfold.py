"""Pieces on the fold, opened out."""

from __future__ import annotations

import pytest
from shapely import Polygon

from littlefold.draft.model import Cutting, EdgeKind
from littlefold.geometry import Affine, Cubic, Path, Vector
from littlefold.pattern.trace import trace_piece
from tests.pattern.shapes import edge, piece, point, polygon_edges, straight

ON_FOLD = Cutting(1, on_fold=True)


def half(turn=0.0):
    """Half of a bib-like shape with a curved hem, its fold turned by an angle."""
    a, b, c, d = point(0, 200), point(0, 0), point(90, 20), point(70, 190)
    hem = Path((Cubic(b, point(40, 0), point(70, 5), c),))
    edges = [
        edge("fold", Path.line_through(a, b), EdgeKind.FOLD, 0.0),
        edge("hem", hem, EdgeKind.HEM, 20.0),
        edge("side", Path.line_through(c, d), EdgeKind.SEAM, 12.0),
        edge("neck", Path.line_through(d, a), EdgeKind.FACED, 6.0),
    ]
    spin = Affine.rotation(turn, point(13, 7))
    turned = [edge(e.name, e.path.transformed(spin), e.kind, e.allowance) for e in edges]
    return piece("bib", turned, ON_FOLD)


@pytest.mark.parametrize("turn", [0.0, 0.7, -2.0])
def test_the_whole_piece_is_twice_the_half_and_its_own_mirror_image(turn):
    traced, problems = trace_piece(half(turn))
    assert problems == ()
    fold = traced.edge("fold").path
    mirror = Affine.mirror(fold.start, Vector(fold.end.x - fold.start.x, fold.end.y - fold.start.y))
    for whole, drawn in (
        (traced.unfolded.stitch, traced.outline.stitch),
        (traced.unfolded.cut, traced.outline.cut),
    ):
        assert whole.is_closed
        assert whole.signed_area() == pytest.approx(2 * drawn.signed_area(), rel=1e-9)
        shape = Polygon([(p.x, p.y) for p in whole.flatten()])
        image = Polygon([(p.x, p.y) for p in whole.transformed(mirror).flatten()])
        assert shape.is_valid
        assert shape.symmetric_difference(image).area < 1e-3


def test_a_piece_without_a_fold_is_its_own_whole():
    traced, _ = trace_piece(piece("square", polygon_edges((0, 0), (100, 0), (100, 100), (0, 100))))
    assert traced.unfolded == traced.outline


def test_a_curved_fold_is_a_problem_with_a_place():
    bow = Path((Cubic(point(0, 100), point(-10, 60), point(-10, 40), point(0, 0)),))
    edges = [
        edge("fold", bow, EdgeKind.FOLD, 0.0),
        edge("rest", straight((0, 0), (100, 50), (0, 100))),
    ]
    traced, problems = trace_piece(piece("odd", edges, ON_FOLD))
    assert [p.code for p in problems] == ["fold-not-straight"]
    assert problems[0].place.piece == "odd"
    assert traced.unfolded == traced.outline


def test_two_folds_are_a_problem():
    kinds = [EdgeKind.FOLD, EdgeKind.SEAM, EdgeKind.SEAM, EdgeKind.FOLD]
    drawn = piece("quarter", polygon_edges((0, 0), (100, 0), (100, 100), (0, 100), kinds=kinds), ON_FOLD)
    _, problems = trace_piece(drawn)
    assert [p.code for p in problems] == ["several-folds"]
