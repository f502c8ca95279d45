"""Whatever the block and wherever it is cut: outlines stay closed, simple and counter-clockwise, or are refused."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.body.measurements import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.recipe.parse import parse
from tests.draft.rings import length, polygon

EDGES = ("middle", "hem", "side", "armhole", "shoulder", "neck")
STARTS = {"middle": "N", "hem": "B", "side": "D", "armhole": "E", "shoulder": "C", "neck": "M"}
CODES = {"no-room-for-folds", "way-along-line", "stand-too-wide"}

centimetres = st.integers(0, 40).map(lambda tenths: tenths / 10)


def drawn(sizes, lines):
    """A front with curves and an arc, and statements after it."""
    width, flare, neck, drop = sizes
    text = f"""
recipe test-any
drawing body
point A at the fold
point B below A by 30 cm
point C right of A by {14 + width} cm and below by {drop} cm
point D right of B by {16 + width + flare} cm
point E right of A by {16 + width} cm and below by 14 cm
point N below A by {3 + neck} cm
point M right of A by 5 cm
line middle from N to B
curve hem from B going right to D going right
line side from D to E
curve armhole from E going left to C going up
line shoulder from C to M
arc neck from M to N radius 9 cm downward
outline front edges {", ".join(EDGES)}
"""
    return evaluate(parse(text + "\n".join(lines)), Measurements.of({"stature": 1040}))


sizes = st.tuples(centimetres, centimetres, centimetres, centimetres)
eighths = st.integers(1, 7)
two_edges = st.tuples(st.sampled_from(EDGES), st.sampled_from(EDGES)).filter(lambda pair: pair[0] != pair[1])


def across(edges, shares):
    """A line from one edge to another, at shares of their lengths."""
    one, other = edges
    return [
        f"point U on {one} at {shares[0]}/8 from {STARTS[one]}",
        f"point V on {other} at {shares[1]}/8 from {STARTS[other]}",
        "line cut from U to V",
    ]


def codes(draft):
    return {problem.code for problem in draft.problems}


@settings(max_examples=25, deadline=None)
@given(sizes, two_edges, st.tuples(eighths, eighths))
def test_split_and_joined_again(size, edges, shares):
    lines = across(edges, shares)
    draft = drawn(
        size,
        [*lines, "split front along cut into one nearer U and other", "join one and other at cut as whole"],
    )
    if (
        codes(draft) <= {"line-not-across", "line-outside", "answers-alike", "name-not-known"}
        and draft.problems
    ):
        return  # the line leaves the hollow of an armhole or neck; or both parts are equally near
    assert not draft.problems
    before, after = polygon(draft, "front", *EDGES), polygon(draft, "whole", *EDGES)
    assert after.symmetric_difference(before).area == pytest.approx(0, abs=1)


@settings(max_examples=25, deadline=None)
@given(sizes, two_edges, st.tuples(eighths, eighths), st.integers(1, 30))
def test_slash_keeps_every_edge_that_is_not_opened(size, edges, shares, opening):
    lines = across(edges, shares)
    draft = drawn(size, [*lines, f"slash front along cut as wide opening {opening} mm at {edges[0]}"])
    if codes(draft) & {"line-not-across", "line-outside"}:
        return
    if codes(draft) == {"opening-too-wide"}:
        assert draft.lines["body.cut"].path.length() * 2**0.5 < opening
        return
    assert not draft.problems
    for edge in EDGES:
        grown = length(draft, f"wide.{edge}") - length(draft, f"front.{edge}")
        if edge == edges[0]:
            assert grown >= opening - 1e-3  # the way across is no shorter than straight
        else:
            assert grown == pytest.approx(0, abs=0.01)
    assert polygon(draft, "wide", *EDGES).area > polygon(draft, "front", *EDGES).area


@settings(max_examples=25, deadline=None)
@given(
    sizes,
    two_edges,
    st.tuples(eighths, eighths),
    st.sampled_from(("leftward", "upward", "boxed", "inverted")),
)
def test_pleats_fold_away_what_they_add(size, edges, shares, way):
    lines = across(edges, shares)
    draft = drawn(size, [*lines, f"pleats in front along cut as pleated depth 8 mm {way}"])
    if codes(draft) & ({"line-not-across", "line-outside"} | CODES):
        return
    assert not draft.problems
    for edge in EDGES:
        line = draft.lines[f"pleated.{edge}"]
        assert line.path.length() - line.folded == pytest.approx(length(draft, f"front.{edge}"), abs=0.01)
    folds = 1 if way in {"leftward", "upward"} else 2
    assert draft.lines["pleated.fold_1"].path.length() > 0
    assert sum(draft.lines[f"pleated.{edge}"].folded > 0 for edge in EDGES) >= 1
    assert f"pleated.fold_{folds}" in draft.lines


@settings(max_examples=20, deadline=None)
@given(sizes, st.sampled_from(EDGES), st.integers(11, 30))
def test_gathers_meet_their_ratio(size, edge, tenths):
    draft = drawn(size, [f"gathers in front across {edge} as full by ratio {tenths / 10}"])
    assert not draft.problems
    assert length(draft, f"full.{edge}") == pytest.approx(
        length(draft, f"front.{edge}") * tenths / 10, abs=0.01
    )
    assert polygon(draft, "full", *EDGES).area > polygon(draft, "front", *EDGES).area
