"""From shipped recipes to pieces on the cloth."""

from __future__ import annotations

from datetime import date
from functools import lru_cache
from typing import TYPE_CHECKING

import pytest
import shapely

from littlefold.cli.asked import Asked
from littlefold.cli.files import shipped_names
from littlefold.cli.understood import understand
from littlefold.lay.adapter import lay_pieces
from littlefold.lay.cloth import YARD, YARD_STEP, Cloth
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.sewn import Stitching, sewn_lengths
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way
from littlefold.pipeline import fulfil
from littlefold.problem import Problem

if TYPE_CHECKING:
    from littlefold.pattern.model import Pattern


@lru_cache
def pattern(recipe: str) -> Pattern:
    understood = understand(Asked(recipe, size="104"), date(2026, 1, 1))
    assert not isinstance(understood, tuple), understood
    return fulfil(understood.wish).pattern


@pytest.mark.parametrize("recipe", shipped_names())
def test_every_shipped_piece_keeps_its_area_and_lies_on_its_grain(recipe: str) -> None:
    pieces, problems = lay_pieces(pattern(recipe))
    assert all(isinstance(problem, Problem) for problem in problems)
    for laid in pieces:
        piece = pattern(recipe).piece(laid.name)
        drawn = shapely.Polygon([(p.x, p.y) for p in piece.unfolded.cut.flatten(0.02)])
        assert laid.whole.area == pytest.approx(drawn.area, rel=1e-3)
        start, end = laid.arrow
        assert start.y == pytest.approx(end.y, abs=1e-6)
        assert laid.copies == piece.cutting.count or piece.cutting.pair
        if laid.on_fold:
            assert laid.polygon.bounds[1] == pytest.approx(0.0, abs=1e-6)
            assert laid.fold_length > 0


@pytest.mark.parametrize("recipe", shipped_names())
def test_all_arrows_of_a_garment_point_the_same_way(recipe: str) -> None:
    """Drawn upwards on the paper, they point away from the cut end, whichever side a fold was drawn on."""
    for laid in lay_pieces(pattern(recipe))[0]:
        start, end = laid.arrow
        assert end.x > start.x
        assert shapely.LinearRing([(p.x, p.y) for p in laid.ring]).is_ccw


@pytest.mark.parametrize("recipe", shipped_names())
def test_snips_begin_at_the_scissors_and_a_back_has_two_to_a_notch(recipe: str) -> None:
    for laid in lay_pieces(pattern(recipe))[0]:
        piece = pattern(recipe).piece(laid.name)
        assert len(laid.snips) == sum(notch.count for notch in piece.notches)
        edge = shapely.LinearRing([(p.x, p.y) for p in laid.ring])
        for outer, _ in laid.snips:
            assert edge.distance(shapely.Point(outer.x, outer.y)) < 0.5  # [mm], the second of two on a curve


@pytest.mark.parametrize("recipe", ["sleeve", "yoke-frock", "pleated-skirt", "collar"])
@pytest.mark.parametrize("way", [Way.FOLDED, Way.OPEN])
def test_with_nap_the_tops_of_body_and_sleeve_lie_one_way(recipe: str, way: Way) -> None:
    """By the pattern alone: the way up of the paper, taken to the cloth, is the same for every piece."""
    pieces, _ = lay_pieces(pattern(recipe))
    prepared = prepare(pieces, Cloth(1400, nap=True), way)
    assert isinstance(prepared, Prepared)
    lay = next(lays(prepared, Effort(steps=0)))
    ups = []
    for one in lay.placements:
        drawn, laid = pattern(recipe).piece(one.piece), lay.piece(one.piece)
        assert drawn.grain[1].y > drawn.grain[0].y  # the arrow points up on the paper
        assert laid.grain is not None
        tail, head = (one.affine.apply(point) for point in laid.grain)
        ups.append(head.x > tail.x)
    assert all(ups)


@pytest.mark.parametrize("recipe", shipped_names())
@pytest.mark.parametrize("way", [Way.FOLDED, Way.OPEN])
def test_every_shipped_garment_is_laid_soundly_or_refused(recipe: str, way: Way) -> None:
    pieces, _ = lay_pieces(pattern(recipe))
    prepared = prepare(pieces, Cloth(1120), way)
    if not isinstance(prepared, Prepared):
        assert all(problem.message for problem in prepared)
        return
    shown = list(lays(prepared, Effort(steps=30)))
    assert shown
    assert all(verify(lay) == () for lay in shown)


def test_seams_are_counted_on_both_sides_of_the_body() -> None:
    found = pattern("bodice")
    sides = [seam for seam in found.seams if seam.first[0].edge == "side"]
    assert sides
    plain = sewn_lengths(found, Stitching(finishing=None))
    finished = sewn_lengths(found)
    once = sum(min(seam.first_length, seam.second_length) for seam in found.seams)
    edges = sum(s.length for s in plain) - 2 * once
    assert edges >= 0
    zigzag = sum(s.length for s in finished if s.stitch == "304")
    both = sum(seam.first_length + seam.second_length for seam in found.seams)
    assert zigzag == pytest.approx(2 * both)


@pytest.mark.parametrize(
    ("inches", "way"), [(36, Way.OPEN), (36, Way.FOLDED), (45, Way.OPEN), (45, Way.FOLDED)]
)
def test_cloth_for_the_published_drawers_is_within_15_percent_of_the_printed_amount(
    inches: int, way: Way
) -> None:
    """T2 of the drafting reference: child's drawers, 8 years, a public-domain school text, prints 1 1/4 yd."""
    pieces, _ = lay_pieces(pattern("drawers"))
    cloth = Cloth(inches * 25.4, selvedge=5.0, step=YARD_STEP, end_loss=0.0)
    prepared = prepare(pieces, cloth, way)
    assert isinstance(prepared, Prepared)
    best = list(lays(prepared, Effort(steps=600)))[-1]
    assert cloth.length_to_buy(best.cloth_length) == pytest.approx(1.25 * YARD, rel=0.15)
