"""Openings as worn: folds, pairs, laps and slits."""

from __future__ import annotations

from dataclasses import replace

import pytest

from littlefold.check.roles import Role, role_of
from littlefold.check.worn import opening
from littlefold.draft.model import Cutting
from littlefold.draft.worn import girth_as_worn
from littlefold.pattern.trace import trace
from tests.check.examples import PLAIN, band, inside
from tests.check.garments import block, draft, half_top, leg, sew, sleeve, sleeved_top, spoiled, top, trousers

NECK = {"hem": ("hem", 20.0), "side": ("seam", 10.0), "neck": ("bound", 0.0), "middle": ("fold", 0.0)}


def square_top(cutting: Cutting, kinds: dict = NECK, **more: object):
    """Front and back of 15 by 30 cm: the top edge is the neck."""
    return trace(draft(tuple(block(n, 150.0, 300.0, kinds, cutting, **more) for n in ("front", "back"))))


def test_a_neck_on_the_fold_counts_four_halves():
    assert opening(square_top(Cutting(on_fold=True)), Role.NECK).closed == pytest.approx(600.0)


def test_a_pair_counts_both_pieces():
    pair = square_top(Cutting(count=2, pair=True), {**NECK, "middle": ("seam", 10.0)})
    assert opening(pair, Role.NECK).closed == pytest.approx(600.0)


def test_laps_are_taken_off_and_buttons_undone_open_the_neck():
    kinds = {**NECK, "middle": ("button", 10.0)}
    lapped = tuple(
        spoiled(block(n, 150.0, 300.0, kinds, Cutting(2, pair=True)), "middle", lap=15.0)
        for n in ("front", "back")
    )
    neck = opening(trace(draft(lapped)), Role.NECK)
    assert neck.closed == pytest.approx(600.0 - 4 * 15.0)
    assert neck.slits == pytest.approx(4 * 300.0)


def test_a_slit_on_the_fold_adds_twice_its_length_and_one_beside_it_four_times():
    on_fold = top(half_top("front", slit=inside("slit", (0, 300), (0, 240), at="neck")))
    beside = top(half_top("front", slit=inside("slit", (40, 310), (40, 250), at="neck")))
    assert opening(on_fold, Role.NECK).slits == pytest.approx(120.0)
    assert opening(beside, Role.NECK).slits == pytest.approx(240.0)


def test_a_buttonhole_does_not_open_the_neck():
    assert (
        opening(
            top(half_top("front", slit=inside("buttonhole", (0, 300), (0, 240), at="neck"))), Role.NECK
        ).slits
        == 0
    )


def test_an_armhole_is_that_of_one_side():
    around = opening(top(), Role.ARMHOLE)
    front = half_top("front").edges[2].path.length()
    assert around.closed == pytest.approx(2 * front)


def test_the_end_of_a_sleeve_and_of_a_trouser_leg_are_those_of_one_limb():
    assert opening(sleeved_top(sleeve(hem=180.0)), Role.WRIST).closed == pytest.approx(180.0)
    assert opening(
        trousers(leg("front", hem=110.0), leg("back", hem=130.0)), Role.LEG
    ).closed == pytest.approx(240.0)


def test_a_gathered_neck_is_as_long_as_the_band_it_is_drawn_up_to():
    strip = replace(band({**PLAIN, "long": ("seam", 10.0)}, width=250.0), name="neckband")
    pieces = tuple(block(n, 150.0, 300.0, NECK, Cutting(on_fold=True)) for n in ("front", "back"))
    around = trace(draft((*pieces, strip), (sew("neckband.long", "front.neck+back.neck", gather=True),)))
    seam = around.seams[0]
    shrunk = 600.0 * seam.first_length / seam.second_length
    assert opening(around, Role.NECK).closed == pytest.approx(shrunk)


def test_a_casing_can_be_drawn_in():
    cased = square_top(Cutting(on_fold=True), {**NECK, "neck": ("casing", 20.0)})
    assert opening(cased, Role.NECK).casings == pytest.approx(600.0)
    assert opening(cased, Role.NECK).drawn_in_to(320.0) == pytest.approx(320.0)
    assert opening(square_top(Cutting(on_fold=True)), Role.NECK).casings == 0


def test_bands_facings_and_linings_are_not_counted_again():
    facing = block("front_facing", 150.0, 40.0, NECK, Cutting(on_fold=True))
    lining = block("inner", 150.0, 300.0, NECK, Cutting(on_fold=True), cloth="lining")
    strip = block("edging", 150.0, 40.0, NECK, Cutting(on_fold=True), made_as="band")
    pieces = (
        *(block(n, 150.0, 300.0, NECK, Cutting(on_fold=True)) for n in ("front", "back")),
        facing,
        lining,
        strip,
    )
    assert opening(trace(draft(pieces)), Role.NECK).closed == pytest.approx(600.0)


def test_a_garment_without_such_edges_has_no_opening():
    assert opening(trousers(), Role.NECK) is None


@pytest.mark.parametrize(
    ("build", "role", "names"),
    [
        (top, Role.NECK, ("neck",)),
        (top, Role.ARMHOLE, ("armhole",)),
        (sleeved_top, Role.NECK, ("neck",)),
        (sleeved_top, Role.WRIST, ("sleeve.hem",)),
        (trousers, Role.WAIST, ("waist",)),
        (trousers, Role.LEG, ("hem",)),
    ],
)
def test_it_agrees_with_the_round_of_an_edge_that_a_recipe_speaks_of(build, role, names):
    pattern = build()
    girth = girth_as_worn(pattern.draft.pieces, pattern.draft.seams, names)
    assert opening(pattern, role).opened == pytest.approx(girth)


ROUND = {"hem": ("hem", 20.0), "right": ("seam", 10.0), "waist": ("seam", 10.0), "left": ("seam", 10.0)}
HALF = {"hem": ("hem", 20.0), "side": ("seam", 10.0), "waist": ("seam", 10.0), "middle": ("fold", 0.0)}
YOKE = {"lower": ("seam", 10.0), "side": ("seam", 10.0), "neck": ("seam", 10.0), "middle": ("fold", 0.0)}


@pytest.mark.parametrize(
    ("piece", "seams", "role", "names", "times"),
    [
        # four panels of a skirt, each sewn to the next, go round the body
        (
            block("panel", 150.0, 300.0, ROUND, Cutting(4)),
            (sew("panel.left", "panel.right"),),
            Role.WAIST,
            ("waist",),
            4,
        ),
        # front and back of a skirt alike, each half drawn, sewn at the sides
        (
            block("skirt", 150.0, 300.0, HALF, Cutting(2, on_fold=True)),
            (sew("skirt.side", "skirt.side"),),
            Role.HEM,
            ("hem",),
            4,
        ),
        # a yoke and its lining, cut alike, lie on each other
        (block("yoke", 150.0, 90.0, YOKE, Cutting(2, on_fold=True)), (), Role.NECK, ("neck",), 2),
        # two sleeves that are their own mirror image are closed to two tubes
        (
            block("sleeve", 150.0, 300.0, ROUND, Cutting(2)),
            (sew("sleeve.left", "sleeve.right"),),
            Role.WRIST,
            ("sleeve.hem",),
            1,
        ),
        (
            block("sleeve", 150.0, 300.0, HALF, Cutting(2, on_fold=True)),
            (sew("sleeve.side", "sleeve.side"),),
            Role.WRIST,
            ("sleeve.hem",),
            2,
        ),
        # both fronts of a jacket count in its neck, sewn at the middle or not
        (block("front", 150.0, 300.0, NECK, Cutting(2, pair=True)), (), Role.NECK, ("neck",), 2),
    ],
)
def test_recipe_and_checks_count_a_piece_that_is_cut_several_times_alike(piece, seams, role, names, times):
    pattern = trace(draft((piece,), seams))
    assert opening(pattern, role).closed == pytest.approx(times * 150.0)
    assert girth_as_worn(pattern.draft.pieces, pattern.draft.seams, names) == pytest.approx(times * 150.0)


@pytest.mark.parametrize(
    ("name", "role"),
    [
        ("neckline", Role.NECK),
        ("back_neck", Role.NECK),
        ("armhole2", Role.ARMHOLE),
        ("hem-line", Role.HEM),
        ("waist", Role.WAIST),
        ("side", None),
    ],
)
def test_roles_are_read_from_the_words_of_a_name(name, role):
    kinds = {name: ("bound", 0.0), "b": ("seam", 10.0), "c": ("seam", 10.0), "d": ("seam", 10.0)}
    traced = trace(draft((block("part", 100.0, 100.0, kinds, Cutting()),))).piece("part")
    assert role_of(traced, traced.edges[0]) is role
