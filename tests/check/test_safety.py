"""The limits of the safety rules, from ../shared/reference/standards.md section 7, items 14 and 17 to 21."""

from __future__ import annotations

import pytest

from littlefold.check import Circumstances, check
from littlefold.check.cords import cords
from littlefold.check.safety.sleepwear_burns import is_infant_length
from littlefold.check.safety.small_parts import fits_cylinder
from littlefold.draft.model import EdgeKind, Notion
from littlefold.problem import Severity
from tests.check.garments import body, leg, spoiled, top_with, trousers
from tests.check.safety_examples import aged, nightshirt, older, sleep_bag

TACKED = "bar tacked, secured"


def us(size: str = "") -> Circumstances:
    return Circumstances(region="us", us_size=size)


def codes(
    pattern, circumstances: Circumstances | None = None, severity: Severity = Severity.ERROR
) -> set[str]:
    found = check(pattern, circumstances)
    return {p.code for p in found if p.severity is severity and (p.rule or p.code.startswith("cord"))}


def cord_at(place: str, remark: str = "", length: float = 800.0, **more) -> Notion:
    return Notion("cord", length, remark=remark, where=place, **more)


# Item 17: US drawstrings.


@pytest.mark.parametrize("size", ["2T", "4", "6X", "10", "12"])
def test_a_hood_cord_in_us_sizes_2t_to_12_is_an_error(size):
    assert "cord-at-neck-us" in codes(older(1400.0, cord_at("hood")), us(size))


def test_a_hood_cord_in_us_size_14_is_no_longer_one():
    assert "cord-at-neck-us" not in codes(older(1560.0, cord_at("hood", "loop", 140.0)), us("14"))


@pytest.mark.parametrize(("out", "wrong"), [(76.0, False), (76.2, False), (77.0, True)])
def test_a_waist_cord_hangs_out_3_inches_at_most(out, wrong):
    cord = cord_at("waist", fixed=True, free_end=out)
    assert ("cord-at-waist-us" in codes(older(1400.0, cord), us("10"))) is wrong


def test_a_knot_at_the_free_end_is_an_error():
    assert "cord-at-waist-us" in codes(
        older(1400.0, cord_at("waist", "knot", fixed=True, free_end=70.0)), us("10")
    )


def test_a_one_piece_string_that_is_not_tacked_is_an_error():
    assert "cord-at-waist-us" in codes(older(1400.0, cord_at("waist", free_end=70.0)), us("10"))


def test_trousers_are_outside_the_us_rule():
    assert "cord-at-waist-us" not in codes(
        older(1400.0, cord_at("waist", free_end=200.0), garment="trousers"), us("10")
    )


def test_the_us_rules_are_silent_elsewhere():
    assert "cord-at-neck-us" not in codes(older(1400.0, cord_at("hood")))


# Item 18: EN 14682.


@pytest.mark.parametrize("place", ["hood", "neck"])
@pytest.mark.parametrize("region", ["eu", "uk", "us", "elsewhere"])
def test_a_cord_at_hood_or_neck_at_134_cm_is_an_error_everywhere(place, region):
    found = check(older(1340.0, cord_at(place, "loop", 100.0)), Circumstances(region=region))
    [young] = [p for p in found if p.code == "cord-at-neck-young"]
    assert young.severity is Severity.ERROR
    assert young.rule == "EN 14682"


@pytest.mark.parametrize(("loop", "wrong"), [(150.0, False), (151.0, True)])
def test_at_140_cm_a_loop_of_150_mm_passes(loop, wrong):
    found = codes(older(1400.0, cord_at("hood", "loop", loop)))
    assert ("cord-at-neck-older" in found) is wrong
    assert "cord-at-neck-young" not in found


def test_at_140_cm_free_ends_at_the_neck_are_an_error():
    assert "cord-at-neck-older" in codes(older(1400.0, cord_at("neck", free_end=20.0)))


@pytest.mark.parametrize(
    ("sex", "stature", "wrong"), [("girl", 1770.0, False), ("boy", 1770.0, True), ("boy", 1830.0, False)]
)
def test_older_children_are_girls_to_176_and_boys_to_182_cm(sex, stature, wrong):
    found = codes(older(stature, cord_at("hood", free_end=20.0), sex=sex))
    assert ("cord-at-neck-older" in found) is wrong


@pytest.mark.parametrize(("out", "wrong"), [(140.0, False), (141.0, True)])
def test_free_ends_at_the_waist_are_140_mm_at_most(out, wrong):
    assert ("cord-ends-too-long" in codes(older(1400.0, cord_at("waist", fixed=True, free_end=out)))) is wrong


@pytest.mark.parametrize(("out", "wrong"), [(360.0, False), (361.0, True)])
def test_a_sash_is_360_mm_from_its_fixing_at_most(out, wrong):
    sash = Notion("sash", out, 2, where="waist")
    assert ("cord-ends-too-long" in codes(older(1100.0, sash, garment="dress"))) is wrong


def test_at_an_ankle_hem_the_cord_is_inside():
    inside = cord_at("hem", "continuous, inside")
    assert "cord-at-low-hem" not in codes(older(1400.0, inside, garment="trousers"))
    assert "cord-at-low-hem" in codes(older(1400.0, cord_at("hem", free_end=50.0), garment="trousers"))


def test_a_bib_is_outside_the_cord_rules_but_warned_of():
    bib = top_with(Notion("tapes", 250.0, 2, where="neck"), garment="bib")
    assert codes(bib) == set()
    assert "tapes-near-neck" in codes(bib, severity=Severity.WARNING)


def test_a_child_of_unknown_stature_is_taken_for_young():
    measured = aged(150.0).without("stature")
    assert "cord-at-neck-young" in codes(top_with(cord_at("neck"), measurements=measured))


def test_elastic_and_binding_are_no_cords():
    sewn = top_with(
        Notion("elastic", 320.0, where="neck"), Notion("bias_tape", 900.0), Notion("elastic_cord", 320.0)
    )
    assert list(cords(sewn)) == []


def test_a_neck_cord_that_says_nothing_more_is_read_with_care():
    [cord] = cords(top_with(Notion("drawstring", 700.0)))
    assert (cord.place, cord.free_end, cord.is_loop) == ("neck", 350.0, False)


# Item 19: infant sleepwear in the United States.


@pytest.mark.parametrize(
    ("length", "one_piece", "outside"),
    [(648.0, True, True), (649.0, True, False), (400.0, False, True), (401.0, False, False)],
)
def test_infant_sleepwear_is_short(length, one_piece, outside):
    assert is_infant_length(length, is_one_piece=one_piece) is outside


@pytest.mark.parametrize(
    ("length", "months", "pieces", "severity"),
    [
        (648.0, 8.0, "one_piece", Severity.NOTE),
        (649.0, 8.0, "one_piece", Severity.WARNING),
        (400.0, 8.0, "two_piece", Severity.NOTE),
        (401.0, 8.0, "two_piece", Severity.WARNING),
        (600.0, 12.0, "one_piece", Severity.WARNING),
    ],
)
def test_only_small_infant_sleepwear_is_a_note(length, months, pieces, severity):
    [caution] = [p for p in check(nightshirt(length, months, pieces)) if p.code == "sleepwear-burns"]
    assert caution.severity is severity
    assert caution.rule == "16 CFR 1615 and 1616"


# Item 20: the small-parts cylinder.


def test_a_button_of_11_mm_fits_into_the_cylinder_and_one_of_35_does_not():
    assert fits_cylinder(11.0)
    assert not fits_cylinder(35.0)


@pytest.mark.parametrize(
    ("months", "remark", "warned"), [(20.0, "11 mm", True), (20.0, "35 mm", False), (40.0, "11 mm", False)]
)
def test_buttons_for_children_under_three_are_warned_of_as_good_practice(months, remark, warned):
    sewn = top_with(Notion("buttons", None, 4, remark), measurements=aged(months))
    found = [p for p in check(sewn) if p.code == "small-parts"]
    assert bool(found) is warned
    assert all(p.severity is Severity.WARNING and "1501.3(d)" in p.rule for p in found)


# Item 21: sleep bags.


@pytest.mark.parametrize(
    ("neck", "months", "wrong"),
    [(300.0, 4.0, False), (340.0, 4.0, True), (340.0, 8.0, True), (380.0, 8.0, False), (380.0, 4.0, True)],
)
def test_the_neck_of_a_sleep_bag(neck, months, wrong):
    found = [p for p in check(sleep_bag(neck, months)) if p.code == "sleep-bag-neck"]
    assert bool(found) is wrong
    assert all(p.rule == "BS 8510" for p in found)


# Elastic: common practice, no source.


@pytest.mark.parametrize(
    ("garment", "length", "tight"),
    [("trousers", 140.0, False), ("bloomers", 140.0, True), ("bloomers", 290.0, False)],
)
def test_leg_elastic_is_held_against_the_thigh_where_the_leg_ends_there(garment, length, tight):
    """Ankle 15 cm and thigh 31.2 cm at 104 cm (Snyder et al. 1977); thigh less 2 cm is usual."""
    halves = tuple(spoiled(leg(n), "hem", kind=EdgeKind.CASING, allowance=20.0) for n in ("front", "back"))
    bands = (Notion("elastic", 470.0, where="waist"), Notion("elastic", length, 2, where="leg"))
    sewn = trousers(*halves, garment=garment, notions=bands, measurements=body(thigh=312.0))
    assert ("elastic-too-tight" in {p.code for p in check(sewn)}) is tight
