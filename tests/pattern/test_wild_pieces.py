"""Whatever a recipe traces, the cutting line is a simple closed line or there is a problem in words; no exception."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.draft.model import Cutting, EdgeKind
from littlefold.geometry import Cubic, Path
from littlefold.pattern.simple import polygon
from littlefold.pattern.trace import trace_piece
from tests.pattern.shapes import edge, piece, point

NUMBERS = st.integers(-300, 300)


@st.composite
def outlines(draw):
    """Closed chains of one to six lines and curves between any corners at all, with any kinds and widths."""
    count = draw(st.integers(2, 6))
    corners = [point(draw(NUMBERS), draw(NUMBERS)) for _ in range(count)]
    edges = []
    for k, start in enumerate(corners):
        end = corners[(k + 1) % count]
        if draw(st.booleans()):
            path = Path(
                (Cubic(start, point(draw(NUMBERS), draw(NUMBERS)), point(draw(NUMBERS), draw(NUMBERS)), end),)
            )
        else:
            path = Path.line_through(start, end)
        kind = draw(st.sampled_from(list(EdgeKind)))
        edges.append(
            edge(
                f"e{k}",
                path,
                kind,
                draw(st.floats(0, 60)),
                turns=draw(st.integers(1, 2)),
                included=draw(st.booleans()),
            )
        )
    return edges


def is_drawable(edges):
    """Edges of no length are refused by the draft."""
    return all(e.path.length() > 1 for e in edges)


@settings(max_examples=150, deadline=None)
@given(outlines().filter(is_drawable))
def test_any_outline_is_cut_or_refused_in_words(edges):
    fold = any(e.kind is EdgeKind.FOLD for e in edges)
    traced, problems = trace_piece(piece("wild", edges, Cutting(1, on_fold=fold)))
    assert traced.outline.cut.is_closed
    if not problems:
        assert polygon(traced.outline.cut).is_valid
        assert traced.outline.cut.signed_area() >= traced.outline.stitch.signed_area() - 1e-3
    for problem in problems:
        assert problem.message.endswith(".")
        assert problem.place.piece == "wild"
        assert problem.numbers
