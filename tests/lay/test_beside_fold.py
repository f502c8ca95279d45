"""A half on the fold and a piece too deep to lie beside it: as long as by hand, never longer than any two that lie clear."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from garments import rectangle, ring
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.lay.beside_fold import CELL, least_beside
from littlefold.lay.cloth import Cloth
from littlefold.lay.deal import Cut
from littlefold.lay.piece import LayPiece, mirrored, turned
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.ways import Way

SLACK = 4 * CELL
"""How much shorter than by hand the bound may be [mm]: half a diagonal at two sides, half a step, a cell's own side."""

HALF = rectangle("half", 300, 200, on_fold=True)
HALF_OF_IT = rectangle("half", 300, 100, on_fold=True)


def leaning(deep: float, wide: float, crossgrain: bool = True) -> LayPiece:  # noqa: FBT001, FBT002
    """A strip on the bias."""
    corners = [(0.0, 0.0), (wide, 0.0), (wide + deep, deep), (deep, deep)]
    return LayPiece("strip", ring(corners), crossgrain=crossgrain)


def cuts(half: LayPiece, other: LayPiece) -> list[Cut]:
    return [Cut(half, True, 2, (0,), "either"), Cut(other, False, 1, (0,), "either")]  # noqa: FBT003


def test_two_blocks_too_deep_to_lie_side_by_side_lie_one_after_the_other() -> None:
    found = least_beside(cuts(HALF, rectangle("deep", 150, 250)), 400.0, 4.0, 300.0)
    assert (found.half, found.other) == ("half", "deep")
    assert 454 - SLACK <= found.length <= 454


def test_a_bias_strip_leans_over_the_half() -> None:
    """By hand, without a gap, on 400 of height: the half is 100 deep and 300 long, the strip 350 deep and 30 wide.

    The strip stands 50 above the fold at most and leans over the half; 50 higher, at the half's upper edge, it is at 300, so
    its foot begins at 350 and ends at 380.
    """
    found = least_beside(cuts(HALF_OF_IT, leaning(350, 30)), 400.0, 0.0, 300.0).length
    assert 380 - SLACK <= found <= 380


def test_what_lies_beside_the_half_says_nothing() -> None:
    assert least_beside(cuts(HALF_OF_IT, leaning(290, 30)), 400.0, 4.0, 320.0).length == 0.0
    assert least_beside(cuts(HALF_OF_IT, leaning(350, 30)), 400.0, 0.0, 390.0).length == 0.0
    assert least_beside(cuts(HALF, HALF_OF_IT)[:1], 400.0, 4.0, 0.0).length == 0.0


SLANTED = st.tuples(st.integers(60, 300), st.integers(40, 240), st.integers(-60, 60))


def slanted(name: str, sides: tuple[int, int, int], *, on_fold: bool) -> LayPiece:
    edge, deep, slant = sides
    return LayPiece(
        name, ring([(0, 0), (edge, 0), (edge + slant, deep), (min(slant, 0), deep)]), on_fold=on_fold
    )


@settings(max_examples=40, deadline=None)
@given(SLANTED, st.integers(80, 240), st.integers(10, 80), st.booleans(), st.integers(0, 99))
def test_no_two_that_lie_clear_are_shorter(
    sides: tuple[int, int, int],
    deep: int,
    wide: int,
    crossgrain: bool,  # noqa: FBT001
    seed: int,
) -> None:
    """Against places drawn at random, in every turn: brute force, with nothing of the bound's own reckoning."""
    half, other, height, gap = (
        slanted("half", sides, on_fold=True),
        leaning(deep, wide, crossgrain),
        250.0,
        3.0,
    )
    bound = least_beside(cuts(half, other), height, gap, 0.0).length
    rng = np.random.default_rng(seed)
    for way in (
        other.polygon,
        mirrored(other.polygon),
        turned(other.polygon),
        turned(mirrored(other.polygon)),
    ):
        corners = shapely.get_coordinates(way) - np.array(way.bounds[:2])
        xs, ys = rng.uniform(-400, 500, 1500), rng.uniform(0, height - deep, 1500)
        placed = shapely.polygons([corners + np.array(at) for at in zip(xs, ys, strict=True)])
        clear = placed[shapely.distance(placed, half.polygon) >= gap]
        left, _, right, _ = shapely.bounds(clear).T
        start, _, end, _ = half.polygon.bounds
        lengths = np.maximum(right, end) - np.minimum(left, start)
        assert clear.size
        assert lengths.min() >= bound


@settings(max_examples=15, deadline=None)
@given(SLANTED, st.integers(80, 240), st.integers(10, 80), st.booleans())
def test_no_verified_lay_is_shorter(
    sides: tuple[int, int, int],
    deep: int,
    wide: int,
    nap: bool,  # noqa: FBT001
) -> None:
    pieces = (slanted("half", sides, on_fold=True), leaning(deep, wide))
    prepared = prepare(pieces, Cloth(520, nap=nap), Way.FOLDED)
    assert isinstance(prepared, Prepared)
    assert all(lay.length >= prepared.bounds.beside_fold - 1e-6 for lay in lays(prepared, Effort(80)))


def test_it_binds_where_a_strip_on_the_bias_is_nearly_as_deep_as_the_folded_cloth() -> None:
    prepared = prepare((HALF_OF_IT, leaning(350, 30)), Cloth(820), Way.FOLDED)
    assert isinstance(prepared, Prepared)
    assert prepared.bounds.binding == "beside the fold"
    best = list(lays(prepared, Effort(300)))[-1]
    assert best.length <= 1.03 * prepared.bounds.most
    wider = prepare((HALF_OF_IT, leaning(350, 30)), Cloth(1120), Way.FOLDED)
    assert isinstance(wider, Prepared)
    assert wider.bounds.beside_fold == 0.0
    assert prepared.bounds.most == pytest.approx(prepared.bounds.beside_fold)


def test_the_pair_is_named_with_what_it_needs_and_what_would_do_without_the_fold() -> None:
    prepared = prepare((HALF_OF_IT, leaning(350, 30)), Cloth(820), Way.FOLDED)
    assert isinstance(prepared, Prepared)
    (told,) = prepared.bounds.advice()
    assert told.code == "beside-fold-binds"
    assert told.message.startswith('"strip" is too deep to lie beside the half of "half" on the fold')
    needed, without = (number.value for number in told.numbers)
    assert without == 350, "the strip as deep as it is, turned across"
    assert without < needed == prepared.bounds.beside_fold
    assert f"{needed / 10:.1f} cm" in told.message
    assert f"{without / 10:.1f} cm" in told.message
    assert " in; " in prepared.bounds.advice("in")[0].message
