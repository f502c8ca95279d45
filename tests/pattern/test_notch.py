"""Notches on both edges of a seam."""

from __future__ import annotations

import pytest

from littlefold.draft.model import Cutting, DraftNotch, DraftSeam, EdgeKind, EdgeRef
from littlefold.pattern import notch
from littlefold.pattern.trace import trace
from littlefold.problem import Place
from tests.pattern.shapes import draft, edge, piece, straight

FOLD = Cutting(1, on_fold=True)


def panel(name, *, side=200.0, wide=100.0, allowance=10.0, notches=(), cutting=FOLD, mirrored=False):
    """Half a skirt with its fold on the left, or on the right where mirrored."""
    a, b, c, d = (0, side), (0, 0), (wide, 0), (wide, side)
    fold, hem, seam, waist = (a, b), (b, c), (c, d), (d, a)
    if mirrored:
        fold, hem, seam, waist = (c, d), (b, c), (a, b), (d, a)
    edges = {
        "fold": edge("fold", straight(*fold), EdgeKind.FOLD, 0.0),
        "hem": edge("hem", straight(*hem), EdgeKind.HEM, 30.0),
        "side": edge("side", straight(*seam), EdgeKind.SEAM, allowance),
        "waist": edge("waist", straight(*waist), EdgeKind.SEAM, allowance),
    }
    order = ("side", "hem", "fold", "waist") if mirrored else ("fold", "hem", "side", "waist")
    return piece(name, [edges[one] for one in order], cutting, notches)


def seam(first, second, ease=0.0, *, gather=False, tolerance=1.0):
    def refs(text):
        return tuple(EdgeRef(*one.split(".")) for one in text.split())

    return DraftSeam(refs(first), refs(second), ease, gather, tolerance, Place(file="trial", line=1))


def places(pattern, name):
    return [(n.edge, round(n.at, 6), n.count) for n in pattern.piece(name).notches]


def test_a_notch_is_repeated_from_the_end_that_meets():
    """Both panels have the fold on the left, so the side goes up on both: hem meets hem."""
    front = panel("front", notches=[DraftNotch("side", 60.0)])
    pattern = trace(draft([front, panel("rear")], [seam("front.side", "rear.side")]))
    assert places(pattern, "front") == [("side", 60.0, 1)]
    assert places(pattern, "rear") == [("side", 60.0, 1)]


def test_on_a_panel_drawn_as_its_mirror_image_it_counts_from_the_other_end():
    front = panel("front", notches=[DraftNotch("side", 60.0)])
    pattern = trace(draft([front, panel("rear", mirrored=True)], [seam("front.side", "rear.side")]))
    assert places(pattern, "rear") == [("side", 140.0, 1)]
    foot = pattern.piece("rear").notches[0].foot
    assert (foot.x, foot.y) == pytest.approx((0.0, 60.0))  # 60 above the hem, as on the front


def test_a_notch_stated_on_the_second_edge_comes_back_to_the_first():
    rear = panel("rear", notches=[DraftNotch("side", 25.0)])
    pattern = trace(draft([panel("front"), rear], [seam("front.side", "rear.side")]))
    assert places(pattern, "front") == [("side", 25.0, 1)]


def test_a_notch_stated_on_both_edges_is_one():
    front = panel("front", notches=[DraftNotch("side", 60.0)])
    rear = panel("rear", notches=[DraftNotch("side", 60.4)])
    pattern = trace(draft([front, rear], [seam("front.side", "rear.side")]))
    assert places(pattern, "front") == [("side", 60.0, 1)]
    assert len(pattern.piece("rear").notches) == 1


def test_gathers_share_the_notch_out():
    yoke = panel("yoke", wide=100.0, notches=[DraftNotch("hem", 25.0)])
    skirt = panel("skirt", wide=180.0)
    pattern = trace(draft([yoke, skirt], [seam("yoke.hem", "skirt.waist", gather=True)]))
    (found,) = pattern.piece("skirt").notches
    assert found.edge == "waist"
    assert found.foot.x == pytest.approx(25.0 * 180 / 100)  # the same fraction from the fold


def test_ease_is_shared_out_too():
    front = panel("front", side=200.0, notches=[DraftNotch("side", 50.0)])
    rear = panel("rear", side=204.0)
    pattern = trace(draft([front, rear], [seam("front.side", "rear.side", 4.0)]))
    assert places(pattern, "rear") == [("side", 51.0, 1)]


def test_a_back_has_double_notches_and_so_has_what_meets_it():
    back = panel("back", notches=[DraftNotch("side", 60.0)])
    pattern = trace(draft([back, panel("front")], [seam("back.side", "front.side")]))
    assert places(pattern, "back") == places(pattern, "front") == [("side", 60.0, 2)]


def test_the_recipe_decides_where_it_states_a_number():
    front = panel("front", notches=[DraftNotch("side", 60.0, 3)])
    assert places(trace(draft([front])), "front") == [("side", 60.0, 3)]


def test_a_run_carries_notches_over_its_joint():
    """Two half waists make one run: the band has the notch at its length along the run."""
    front = panel("front", wide=100.0, notches=[DraftNotch("waist", 30.0)])
    rear = panel("rear", wide=120.0)
    band = piece(
        "band",
        [
            edge("long", straight((0, 0), (220, 0))),
            edge("end", straight((220, 0), (220, 40)), EdgeKind.FOLD, 0.0),
            edge("top", straight((220, 40), (0, 40))),
            edge("other", straight((0, 40), (0, 0)), EdgeKind.FOLD, 0.0),
        ],
        Cutting(2),
    )
    pieces = [front, rear, band]
    pattern = trace(
        draft(pieces, [seam("front.side", "rear.side"), seam("rear.waist front.waist", "band.long")])
    )
    (found,) = pattern.piece("band").notches
    # the front's waist runs from the side seam (its start) to the fold; the rear's from the fold to the side
    assert min(found.at, 220 - found.at) == pytest.approx(220 - (120 + 30))


def test_on_a_whole_band_a_notch_of_the_half_comes_twice():
    front = panel("front", wide=100.0, cutting=FOLD, notches=[DraftNotch("waist", 30.0)])
    band = piece(
        "band",
        panel("x", wide=200.0).edges[1:2]
        + tuple(
            edge(name, path)
            for name, path in (
                ("end", straight((200, 0), (200, 40))),
                ("top", straight((200, 40), (0, 40))),
                ("other", straight((0, 40), (0, 0))),
            )
        ),
    )
    pattern = trace(draft([front, band], [seam("front.waist", "band.top")]))
    assert [round(n.at, 6) for n in pattern.piece("band").notches] == [30.0, 170.0]


@pytest.mark.parametrize(("allowance", "deep"), [(10.0, 5.0), (4.0, 3.0), (0.5, 0.0), (0.0, 0.0)])
def test_a_snip_stays_inside_the_allowance(allowance, deep):
    front = panel("front", allowance=allowance, notches=[DraftNotch("side", 60.0, 2)])
    traced = trace(draft([front])).piece("front")
    side = traced.edge("side")
    assert notch.depth(side) == deep
    lines = notch.marks(traced.notches[0], side)
    assert len(lines) == 2
    for line in lines:
        assert line.start_tangent.dot(side.path.start_tangent) == pytest.approx(0.0)  # square to the edge
        low, high = sorted((line.start.x - 100.0, line.end.x - 100.0))
        if deep:
            assert (low, high) == pytest.approx((allowance - deep, allowance))
        else:
            assert high <= 1e-9  # a pencil mark on the inside
