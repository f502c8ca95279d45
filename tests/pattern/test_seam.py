"""Seams: which ends meet, and how long the runs are."""

from __future__ import annotations

from dataclasses import replace

import pytest

from littlefold.draft.model import Cutting, DraftNotch, EdgeKind
from littlefold.pattern.run import EdgeEnd
from littlefold.pattern.seam import pairing
from littlefold.pattern.trace import surroundings, trace
from tests.pattern.shapes import draft, edge, piece, polygon_edges, straight
from tests.pattern.test_notch import FOLD, panel, seam


def only_seam(pieces, *seams):
    return trace(draft(pieces, seams)).seams[0]


def test_equal_edges_match():
    found = only_seam([panel("front"), panel("rear")], seam("front.side", "rear.side"))
    assert (found.first_length, found.second_length) == (200.0, 200.0)
    assert found.matched


@pytest.mark.parametrize(
    ("side", "ease", "gather", "matched"),
    [
        (200.9, 0.0, False, True),  # within the tolerance of 1 mm
        (201.1, 0.0, False, False),
        (205.0, 5.0, False, True),
        (200.0, 5.0, False, False),
        (330.0, 0.0, True, True),
        (190.0, 0.0, True, False),  # cloth cannot be gathered to a longer edge
    ],
)
def test_ease_gathers_and_tolerance(side, ease, gather, matched):
    pieces = [panel("front"), panel("rear", side=side)]
    found = only_seam(pieces, seam("front.side", "rear.side", ease, gather=gather))
    assert found.second_length == pytest.approx(side)
    assert found.matched is matched


def test_a_run_is_as_long_as_its_edges():
    pieces = [panel("front", wide=100.0), panel("rear", wide=130.0), panel("yoke", wide=230.0)]
    found = only_seam(pieces, seam("front.waist rear.waist", "yoke.hem"))
    assert (found.first_length, found.second_length) == (230.0, 230.0)


def rectangle(name, long, cutting, *, ends=EdgeKind.SEAM):
    return piece(
        name,
        [
            edge("lower", straight((0, 0), (long, 0))),
            edge("right", straight((long, 0), (long, 40)), ends, 10.0),
            edge("upper", straight((long, 40), (0, 40))),
            edge("left", straight((0, 40), (0, 0)), ends, 10.0),
        ],
        cutting,
    )


def test_a_half_on_the_fold_is_doubled_against_a_piece_cut_whole():
    pieces = [panel("front", wide=100.0), rectangle("band", 200.0, Cutting(1))]
    found = only_seam(pieces, seam("band.lower", "front.waist"))
    assert (found.first_length, found.second_length) == (200.0, 200.0)
    assert found.matched


def test_a_side_seam_is_not_doubled_though_its_piece_lies_on_the_fold():
    pieces = [panel("front", side=200.0), rectangle("gusset", 200.0, Cutting(1))]
    found = only_seam(pieces, seam("front.side", "gusset.lower"))
    assert (found.first_length, found.second_length) == (200.0, 200.0)


def test_halves_are_compared_as_drawn():
    pieces = [
        panel("front", wide=100.0),
        panel("collar", wide=100.0),
        rectangle("sleeve", 200.0, Cutting(2, pair=True)),
    ]
    assert only_seam(pieces, seam("front.waist", "collar.hem")).first_length == 100.0
    assert only_seam(pieces, seam("front.side", "sleeve.upper")).second_length == 200.0


def test_a_pair_with_a_middle_seam_is_doubled_too():
    front = rectangle("front", 100.0, Cutting(2, pair=True))
    pieces = [front, rectangle("band", 200.0, Cutting(1))]
    seams = [seam("front.upper", "band.lower"), seam("front.left", "front.left")]
    assert only_seam(pieces, *seams).first_length == 200.0


@pytest.mark.parametrize(("mirrored", "same_way"), [(False, True), (True, False)])
def test_hem_meets_hem_whichever_way_the_back_is_drawn(mirrored, same_way):
    around = surroundings(
        draft([panel("front"), panel("rear", mirrored=mirrored)], [seam("front.side", "rear.side")])
    )
    starts, ends = pairing(around.seams[0], around).ends
    assert starts == (EdgeEnd("front", "side", at_start=True), EdgeEnd("rear", "side", at_start=same_way))
    assert ends == (EdgeEnd("front", "side", at_start=False), EdgeEnd("rear", "side", at_start=not same_way))


def test_face_to_face_where_nothing_else_decides():
    one = rectangle("one", 90.0, Cutting(1))
    other = piece("other", polygon_edges((0, 0), (90, 0), (90, 30), (0, 30)))
    around = surroundings(draft([one, other], [seam("one.lower", "other.e0")]))
    first, second = pairing(around.seams[0], around).ends[0]
    assert (first.at_start, second.at_start) in {(True, False), (False, True)}


def test_two_runs_of_several_edges_meet_in_the_order_in_which_they_are_named():
    """Front and back armhole with the front and the back of a cap: both ends look alike, the order decides."""
    front, back = rectangle("front", 60.0, Cutting(1)), rectangle("back", 60.0, Cutting(1))
    sleeve = piece("sleeve", polygon_edges((0, 0), (120, 0), (60, 50)))
    around = surroundings(
        draft([front, back, sleeve], [seam("front.lower back.lower", "sleeve.e1 sleeve.e2")])
    )
    pair = pairing(around.seams[0], around)
    assert [leg.enters.piece for leg in pair.first.legs] == ["front", "back"]
    assert [leg.enters.edge for leg in pair.second.legs] == ["e1", "e2"]


def test_a_run_goes_on_over_the_shoulder():
    """Both necks are drawn from the shoulder to the fold; as one run they go fold, shoulder, fold."""

    def yoke(name):
        return piece(
            name,
            [
                edge("fold", straight((0, 80), (0, 0)), EdgeKind.FOLD, 0.0),
                edge("hem", straight((0, 0), (100, 0)), EdgeKind.HEM, 20.0),
                edge("armhole", straight((100, 0), (100, 90)), EdgeKind.BOUND, 0.0),
                edge("shoulder", straight((100, 90), (50, 110))),
                edge("neck", straight((50, 110), (0, 80)), EdgeKind.FACED, 6.0),
            ],
            FOLD,
        )

    pieces = [yoke("front"), yoke("back"), rectangle("facing", 2 * 58.3, FOLD)]
    seams = [
        seam("back.shoulder", "front.shoulder"),
        seam("back.neck front.neck", "facing.lower", tolerance=5.0),
    ]
    around = surroundings(draft(pieces, seams))
    run = pairing(around.seams[1], around).first
    assert [leg.enters.at_start for leg in run.legs] == [False, True]
    assert run.legs[1].start == pytest.approx(run.legs[0].length)


def test_seams_of_pieces_that_are_missing_are_left_out():
    found = trace(draft([panel("front")], [seam("front.side", "rear.side")]))
    assert found.seams == ()


def test_what_pleats_fold_away_is_not_sewn():
    drawn = panel("skirt", wide=160.0, notches=[DraftNotch("waist", 80.0)])
    pleated = replace(
        drawn, edges=tuple(replace(e, folded=60.0 if e.name == "waist" else 0.0) for e in drawn.edges)
    )
    pattern = trace(draft([pleated, panel("yoke", wide=100.0)], [seam("skirt.waist", "yoke.hem")]))
    assert pattern.seams[0].first_length == pytest.approx(100.0)
    assert pattern.seams[0].matched
    assert pattern.piece("yoke").notches[0].at == pytest.approx(50.0)
