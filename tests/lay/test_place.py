from __future__ import annotations

from dataclasses import replace

import pytest
import shapely
from garments import dress, rectangle, ring, romper, top
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from littlefold.geometry import Point
from littlefold.lay.bounds import lower_bounds
from littlefold.lay.cloth import Cloth, Repeat
from littlefold.lay.lay import Lay, Placement
from littlefold.lay.nofit import PLAIN
from littlefold.lay.piece import LayPiece
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way
from littlefold.problem import Problem

SHORT = Effort(steps=60)


def prepared(pieces: tuple[LayPiece, ...], cloth: Cloth, way: Way, **more: object) -> Prepared:
    found = prepare(pieces, cloth, way, **more)  # type: ignore[arg-type]
    assert isinstance(found, Prepared), found
    return found


def best(pieces: tuple[LayPiece, ...], cloth: Cloth, way: Way, effort: Effort = SHORT) -> Lay:
    return list(lays(prepared(pieces, cloth, way), effort))[-1]


@st.composite
def shapes(draw: st.DrawFn, number: int) -> LayPiece:
    """A piece of four to six corners, sometimes hollow, on the fold, in a pair, or on the bias."""
    length, width = draw(st.floats(40, 300)), draw(st.floats(40, 200))
    hollow = draw(st.floats(0.1, 1.0))
    corners = [(0, 0), (length, 0), (length * 0.6, width * hollow), (length, width), (0, width * 0.9)]
    kind = draw(st.sampled_from(["fold", "pair", "plain", "bias"]))
    copies = 2 if kind == "pair" else draw(st.integers(1, 2))
    return LayPiece(
        f"piece{number}",
        ring(corners),
        copies,
        on_fold=kind == "fold",
        pair=kind == "pair",
        bias=kind == "bias",
    )


@st.composite
def cloths(draw: st.DrawFn) -> Cloth:
    repeat = draw(st.sampled_from([None, None, Repeat(along=50.0), Repeat(across=30.0)]))
    return Cloth(
        draw(st.floats(80, 1500)),
        selvedge=draw(st.sampled_from([0.0, 10.0])),
        nap=draw(st.booleans()),
        two_faced=draw(st.booleans()),
        repeat=repeat,
    )


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    pieces=st.integers(1, 4).flatmap(lambda n: st.tuples(*(shapes(k) for k in range(n)))),
    cloth=cloths(),
    way=st.sampled_from([way for way in Way if way not in (Way.TUBE, Way.SCRAPS)]),
    gap=st.sampled_from([0.0, 3.0]),
)
def test_random_pieces_give_a_verified_lay_or_a_refusal_in_words(
    pieces: tuple[LayPiece, ...], cloth: Cloth, way: Way, gap: float
) -> None:
    found = prepare(pieces, cloth, way, gap)
    if not isinstance(found, Prepared):
        assert found
        assert all(isinstance(problem, Problem) and len(problem.message) > 20 for problem in found)
        return
    shown = list(lays(found, Effort(steps=25)))
    assert shown, "a lay that can be cut must be shown"
    lengths = [lay.length for lay in shown]
    assert lengths == sorted(lengths, reverse=True)
    for lay in shown:
        assert verify(lay) == ()
        assert lay.length >= found.bounds.most - 1e-6
        assert lay.share_used <= 1 + 1e-9


def test_the_same_seed_and_steps_give_the_same_lays() -> None:
    runs = [
        list(lays(prepared(dress(), Cloth(1120), Way.FOLDED), Effort(steps=300, seed=7))) for _ in range(2)
    ]
    assert runs[0] == runs[1]
    assert len(runs[0]) > 1


def test_search_shortens_the_first_lay_and_stops_when_told() -> None:
    shown = list(lays(prepared(dress(), Cloth(1120), Way.FOLDED), Effort(steps=600)))
    assert shown[-1].length < shown[0].length
    assert len(list(lays(prepared(dress(), Cloth(1120), Way.FOLDED), Effort(keep_going=lambda: False)))) <= 2


def test_pieces_on_the_fold_lie_on_it_and_pairs_are_cut_once() -> None:
    lay = best(dress(), Cloth(1120), Way.FOLDED)
    names = sorted(placement.piece for placement in lay.placements)
    assert names == sorted(
        ["front", "skirt_front", "facing", "back", "skirt_back", "sleeve", "collar", "collar", "pocket"]
    )
    assert all(p.half == lay.piece(p.piece).on_fold for p in lay.placements)


def test_two_equal_pieces_on_the_fold_become_one_whole_piece_through_two_layers() -> None:
    lay = best(top(), Cloth(1120), Way.FOLDED)
    bodies = [p for p in lay.placements if p.piece == "body"]
    assert [(p.half, p.layers) for p in bodies] == [(False, 2)]


def test_four_layers_cut_front_and_back_at_once() -> None:
    lay = best(top(), Cloth(1120), Way.FOUR_LAYERS)
    assert [(p.half, p.layers) for p in lay.placements if p.piece == "body"] == [(True, 4)]
    assert lay.cloth_length == pytest.approx(2 * lay.length)


def test_tube_uses_both_folds() -> None:
    lay = best(romper(), Cloth(750, tube=True), Way.TUBE)
    sides = {placement.sign.across for placement in lay.placements if placement.half}
    assert sides == {1, -1}


def test_partly_folded_cloth_is_as_deep_as_its_deepest_fold_piece() -> None:
    spread = prepared(dress(), Cloth(1120), Way.PARTLY).spread
    deepest = max(piece.polygon.bounds[3] for piece in dress() if piece.on_fold)
    assert spread.zones[0].depth == pytest.approx(deepest)
    assert spread.cloth_width == pytest.approx(1100)


def test_romper_is_bound_by_its_fold_and_two_folds_are_better() -> None:
    one = prepared(romper(), Cloth(1120), Way.FOLDED)
    assert one.bounds.binding == "fold"
    assert one.bounds.advice()[0].code == "fold-row-binds"
    folded, double = (best(romper(), Cloth(1120), way).cloth_length for way in (Way.FOLDED, Way.TWO_FOLDS))
    assert double < 0.7 * folded


def test_the_row_on_the_fold_is_counted_by_edges_and_gaps() -> None:
    pieces = tuple(replace(rectangle(f"p{k}", 100, 50), on_fold=True) for k in range(3))
    found = prepared(pieces, Cloth(1000, selvedge=0), Way.FOLDED, gap=4.0)
    assert found.bounds.fold_row == pytest.approx(308)
    bounds = lower_bounds(found.question.cuts, found.spread, 4.0)
    assert bounds.area == pytest.approx(3 * 100 * 50 / 500)
    assert best(pieces, Cloth(1000, selvedge=0), Way.FOLDED).length == pytest.approx(306, abs=2)


def test_cloth_too_narrow_is_refused_with_offers() -> None:
    (problem,) = (p for p in prepare(dress(), Cloth(500), Way.OPEN) if isinstance(p, Problem))
    assert problem.code == "cloth-too-narrow"
    assert problem.place.piece == "skirt_front"
    assert "join" in problem.message
    assert "wider cloth (90 cm would do)" in problem.message
    (problem,) = prepare((rectangle("sheet", 100, 1700),), Cloth(1500), Way.OPEN)  # type: ignore[misc]
    assert "none of the usual widths" in problem.message


def test_nap_is_never_folded_crosswise() -> None:
    found = prepare(dress(), Cloth(1120, nap=True), Way.CROSSWISE)
    assert isinstance(found, tuple)
    assert found[0].code == "nap-folded-crosswise"


def test_with_nap_nothing_is_turned_end_for_end() -> None:
    lay = best(dress(), Cloth(1120, nap=True), Way.FOLDED)
    assert {placement.sign.along for placement in lay.placements} == {1}


def test_no_pieces_and_no_cloth_are_refused() -> None:
    assert prepare((), Cloth(1120), Way.OPEN)[0].code == "nothing-to-lay"  # type: ignore[index]
    assert prepare(dress(), Cloth(20), Way.OPEN)[0].code == "cloth-too-narrow"  # type: ignore[index]


@pytest.mark.parametrize("way", [Way.OPEN, Way.FOLDED])
def test_stripes_bind_the_matching_points(way: Way) -> None:
    pieces = tuple(replace(piece, match=Point(60.0, 40.0)) for piece in dress())
    cloth = Cloth(1120, repeat=Repeat(along=36.0, across=24.0))
    lay = best(pieces, cloth, way)
    for placement in lay.placements:
        at = placement.affine.apply(lay.piece(placement.piece).match)  # type: ignore[arg-type]
        assert abs(at.x / 36 - round(at.x / 36)) < 1e-4
        if not placement.half:
            assert abs(at.y / 24 - round(at.y / 24)) < 1e-4


def test_stripes_at_two_folds_are_refused() -> None:
    cloth = Cloth(750, tube=True, repeat=Repeat(across=30.0))
    assert prepare(romper(), cloth, Way.TUBE)[0].code == "stripes-at-two-folds"  # type: ignore[index]


def test_a_pinned_piece_stays_and_the_others_go_round_it() -> None:
    pin = Placement("skirt_front", half=True, layers=2, degrees=0.0, sign=PLAIN, at=Point(123.4, 0.0))
    found = prepared(dress(), Cloth(1120), Way.FOLDED, pins=(pin,))
    for lay in lays(found, SHORT):
        placed = next(p for p in lay.placements if p.piece == "skirt_front")
        assert (placed.at.x, placed.at.y) == (pytest.approx(123.4), 0.0)


def test_a_pin_off_the_fold_is_refused() -> None:
    pin = Placement("front", half=True, layers=2, degrees=0.0, sign=PLAIN, at=Point(0.0, 50.0))
    found = prepare(dress(), Cloth(1120), Way.FOLDED, pins=(pin,))
    assert isinstance(found, tuple)
    assert found[0].code == "pin-not-possible"


def test_a_bias_piece_lies_at_45_degrees() -> None:
    strip = replace(rectangle("binding", 300, 40), bias=True)
    lay = best((strip, rectangle("body", 300, 300)), Cloth(1120), Way.OPEN)
    bound = next(p for p in lay.placements if p.piece == "binding")
    assert abs(bound.degrees) == 45
    left, low, right, high = lay.shape(bound).bounds
    assert right - left == pytest.approx((300 + 40) / 2**0.5)
    assert high - low == pytest.approx((300 + 40) / 2**0.5)


def test_an_exact_fit_is_found() -> None:
    pieces = (rectangle("wide", 200, 1000), rectangle("strip", 300, 500, 2))
    exact = prepared(pieces, Cloth(1000, selvedge=0), Way.OPEN, gap=0.0)
    assert list(lays(exact, Effort(steps=200)))[-1].length == pytest.approx(500, abs=1e-3)


def test_an_outline_that_crosses_itself_is_refused() -> None:
    bow = LayPiece("bow", ring([(0, 0), (100, 100), (100, 0), (0, 100)]))
    found = prepare((bow,), Cloth(1000), Way.OPEN)
    assert isinstance(found, tuple)
    assert found[0].code == "outline-crosses-itself"


def test_stripes_with_no_place_across_are_refused() -> None:
    piece = replace(rectangle("wide", 100, 990), match=Point(0.0, 20.0))
    found = prepare((piece,), Cloth(1000, selvedge=0, repeat=Repeat(across=100.0)), Way.OPEN)
    assert isinstance(found, tuple)
    assert found[0].code == "stripes-do-not-fit"


def test_a_damaged_spot_is_left_out() -> None:
    spot = shapely.box(100, 100, 180, 160)
    found = prepared(dress(), Cloth(1120), Way.FOLDED, holes=(spot,))
    for lay in lays(found, SHORT):
        assert all(lay.shape(placement).intersection(spot).area < 1.0 for placement in lay.placements)
        assert verify(lay) == ()
