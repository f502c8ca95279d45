"""`littlefold cloth` beyond the cloth itself: widths, prices, further cloths, pins, damage, scraps, stripes, stored lays."""

from __future__ import annotations

import json

import pytest
import shapely

from littlefold.cli.cloth_wishes import Wishes, WishWords, read_wishes
from littlefold.geometry import Point
from littlefold.lay.cloth import Price
from tests.lined import LINED

QUICK = ("--size", "92", "--seconds", "0")


def outlines(found):
    return [shapely.Polygon(one["outline_mm"]) for one in found["placements"]]


def test_widths_are_compared_in_one_run(say):
    found = say("cloth", "trousers", *QUICK, "--width", "112cm,140cm", "--price", "8", "--data").data
    assert {row["width_mm"] for row in found["comparison"]} == {1120.0, 1400.0}
    done = [row for row in found["comparison"] if row["length_mm"] is not None]
    assert found["price"] == min(row["price"] for row in done)


def test_prices_of_notions_and_thread_add_up(say):
    prices = ("--price", "10", "--price", "elastic=2", "--price", "thread=3.5")
    shopping = say("cloth", "trousers", *QUICK, "--lay", "open", *prices, "--data").data["shopping"]
    lines = {line["name"]: line for line in shopping["lines"]}
    assert lines["elastic"]["price"] == pytest.approx(2 * lines["elastic"]["amount"] / 1000)
    assert lines["thread"]["price"] == pytest.approx(3.5 * lines["thread"]["amount"])
    assert shopping["complete"]
    assert shopping["total"] == pytest.approx(sum(line["price"] for line in lines.values()))


def test_thread_goes_by_the_stitches(say):
    """Of 301 a seam takes 2.5 times its length; of 516, from memory of the trade, 20 times (both of ISO 4915)."""

    def metres(*sewn: str) -> float:
        found = say("cloth", "drawers", *QUICK, "--lay", "open", *sewn, "--data").data
        remark = next(line["remark"] for line in found["shopping"]["lines"] if line["name"] == "thread")
        return float(remark.split(" m,")[0])

    plain = metres("--sewn", "301")
    assert metres("--sewn", "516") == pytest.approx(plain * 20 / 2.5, abs=5)  # both said to the metre
    assert metres() == metres("--sewn", "301+304") > plain
    refused = say("cloth", "drawers", *QUICK, "--sewn", "301+999", "--data")
    assert refused.status == 2
    assert refused.data["problems"][0]["message"].startswith(
        '--sewn 301+999: There is no stitch class "999".'
    )


def test_a_price_of_what_the_garment_does_not_need_is_refused(say):
    done = say(
        "cloth", "trousers", *QUICK, "--lay", "open", "--price", "zip=2", "--price", "elastic=2", "--data"
    )
    (problem,) = done.data["problems"]
    assert done.status == 2
    assert problem["message"].startswith("--price zip=…: this garment needs none.")
    assert "elastic, thread" in problem["message"]


def test_all_cloths_of_a_garment_in_one_run_with_one_list(say, tmp_path):
    (tmp_path / "lined-bag.recipe").write_text(LINED)
    words = ("cloth", "lined-bag.recipe", "--seconds", "0", "--price", "8", "--data", "--out", "laid")
    found = say(*words, "--also", "lining=90cm@5").data
    assert [other["cloth"] for other in found["others"]] == ["lining"]
    assert found["others"][0]["verified"]
    assert found["others"][0]["width_mm"] == 900
    assert {one["piece"] for one in found["others"][0]["placements"]} == {"inside"}
    lines = {line["name"]: line for line in found["shopping"]["lines"]}
    assert lines["lining"]["price"] == pytest.approx(5 * lines["lining"]["amount"] / 1000)
    assert found["shopping"]["total"] >= lines["lining"]["price"] + lines["main"]["price"]
    assert (tmp_path / "laid/lined-bag-lining-lay.pdf").is_file()
    assert "another-cloth" not in {problem["code"] for problem in found["problems"]}
    alone = say(*words).data
    assert "another-cloth" in {problem["code"] for problem in alone["problems"]}


def test_a_pinned_piece_lies_where_it_was_put_and_nothing_on_the_damage(say):
    words = ("--lay", "open", "--pin", "front=30x40cm", "--damaged", "5x70cm+8x10cm", "--data")
    found = say("cloth", "trousers", *QUICK, *words).data
    assert found["verified"]
    tails = [row["start"] for row in found["chalk"] if row["number"] == 1]
    assert {"x": pytest.approx(300), "y": pytest.approx(400)} in tails
    spot = shapely.box(50, 700, 130, 800)
    assert all(not one.buffer(-0.01).intersects(spot) for one in outlines(found))


def test_scraps_are_cut_and_nothing_is_bought_for_them(say):
    scraps = ("--scrap", "60x40cm", "--scrap", "0x0 45x0 45x30 0x40cm")
    said = say("cloth", "bib", "--seconds", "0", *scraps, "--data")
    assert said.status == 0
    assert said.data["way"] == "scraps"
    assert said.data["length_to_buy_mm"] == 0
    assert "main" not in {line["name"] for line in said.data["shopping"]["lines"]}
    first = shapely.box(0, 0, 600, 400)
    second = shapely.Polygon([(610, 0), (1060, 0), (1060, 300), (610, 400)])
    room = shapely.union_all([first, second]).buffer(0.01)
    assert all(room.covers(one) for one in outlines(said.data))


def test_scraps_that_are_too_small_are_told(say):
    said = say("cloth", "trousers", *QUICK, "--scrap", "30x30cm", "--data")
    assert said.status == 1
    assert {problem["code"] for problem in said.data["problems"]} & {"scraps-too-small", "cloth-too-narrow"}


def test_seams_meet_the_stripes_by_themselves_and_the_data_say_which(say):
    words = ("cloth", "trousers", *QUICK, "--lay", "open", "--repeat", "4x5cm")
    seams = {tuple(one["seam"][0]): one for one in say(*words, "--data").data["stripes"]}
    side, inside = seams["front", "side"], seams["front", "inseam"]
    assert max(side["along_off_mm"], side["across_off_mm"]) < 0.01
    assert inside["across_off_mm"] > 1
    assert side["not_matched_because"] is None
    told = " ".join(say(*words).out.split())
    assert "Crosswise stripes meet notch to notch: Front, side with Back, side" in told
    assert "Lengthwise stripes cannot meet as well" in told
    plain = say("cloth", "trousers", *QUICK, "--lay", "open", "--data").data
    assert plain["stripes"] == []


def test_uneven_stripes_lie_one_way_up_and_are_told_in_words(say, tmp_path):
    words = ("cloth", "trousers", *QUICK, "--lay", "open", "--repeat", "4x5cm", "--uneven")
    laid = {way: say(*words, way, "--data").data for way in ("along", "across", "both")}
    for way, found in laid.items():
        assert found["verified"]
        assert found["repeat"] == {
            "along_mm": 40.0,
            "across_mm": 50.0,
            "uneven_along": way != "across",
            "uneven_across": way != "along",
        }
        assert {place["sign"][0] for place in found["placements"]} == {1}
    crotch = {way: _across_off(found, "crotch") for way, found in laid.items()}
    assert crotch["along"] == pytest.approx(0.0, abs=0.01)
    assert crotch["across"] > 1
    told = " ".join(say(*words, "both", "--out", str(tmp_path)).out.split())
    assert "as with a one-way print" in told
    assert "no mirror image" in told
    again = ("cloth", "trousers", *QUICK, "--stored", str(tmp_path / "trousers-lay.json"))
    assert "uneven along and across" in " ".join(say(*again).out.split())
    assert say(*again, "--repeat", "4x5cm").status == 2
    assert say(*again, "--repeat", "4x5cm", "--uneven", "both", "--data").data["verified"]


def test_uneven_stripes_are_not_folded_across(say):
    words = ("--repeat", "4x0cm", "--uneven", "along", "--lay", "crosswise", "--data")
    refused = say("cloth", "trousers", *QUICK, *words)
    assert refused.status == 1
    assert "stripes-folded-crosswise" in {one["code"] for one in refused.data["problems"]}


def test_the_seam_in_which_stripes_meet_may_be_chosen(say):
    words = ("cloth", "trousers", *QUICK, "--lay", "open", "--repeat", "4x5cm", "--data")
    assert _across_off(say(*words).data, "inseam") > 1
    chosen = say(*words, "--match", "front = inseam").data
    assert chosen["verified"]
    assert _across_off(chosen, "inseam") == pytest.approx(0.0, abs=0.01)
    wrong = say(*words, "--match", "front=cuff")
    assert wrong.status == 1
    assert "seam-not-matched" in {problem["code"] for problem in wrong.data["problems"]}


def _across_off(found, edge):
    return next(one["across_off_mm"] for one in found["stripes"] if one["seam"][0] == ["front", edge])


def test_the_chosen_notches_of_all_pieces_meet_the_stripes(say):
    words = ("--lay", "open", "--repeat", "4x0cm", "--match", "front=2", "--match", "back=1", "--data")
    found = say("cloth", "trousers", *QUICK, *words)
    assert found.status == 0
    assert found.data["verified"]
    free = say(
        "cloth", "trousers", *QUICK, "--lay", "open", "--repeat", "4x0cm", "--match", "front=0", "--data"
    )
    assert free.data["verified"]
    wrong = say("cloth", "trousers", *QUICK, "--match", "front=99", "--data").data
    assert "notch-unknown" in {problem["code"] for problem in wrong["problems"]}


def test_a_stored_lay_is_taken_up_exactly(say, tmp_path):
    words = ("cloth", "trousers", "--size", "92", "--data")
    first = say(*words, "--steps", "100", "--lay", "open", "--out", "laid")
    assert (tmp_path / "laid/trousers-lay.json").is_file()
    again = say(*words, "--stored", "laid/trousers-lay.json")
    assert again.status == 0
    assert again.data["placements"] == first.data["placements"]
    assert again.data["length_mm"] == first.data["length_mm"]
    other = say("cloth", "trousers", "--size", "98", "--data", "--stored", "laid/trousers-lay.json")
    assert other.status == 1
    assert "lay-of-other-pieces" in {problem["code"] for problem in other.data["problems"]}
    json.dumps(other.data)


def test_a_stored_lay_with_a_piece_too_few_is_not_taken_even_if_it_says_so(say, tmp_path):
    words = ("cloth", "trousers", "--size", "92", "--seconds", "0", "--lay", "open", "--data")
    say(*words, "--out", "laid")
    kept = json.loads((tmp_path / "laid" / "trousers-lay.json").read_text())
    one = kept["pieces"][0] | {"copies": 1, "pair": False}
    cuts = (place for place in kept["placements"] if place["piece"] == one["name"])
    mirrored = next(place for place in cuts if place["along"] * place["across"] < 0)
    places = [place for place in kept["placements"] if place is not mirrored]
    spoilt = kept | {"pieces": [one, *kept["pieces"][1:]], "placements": places}
    (tmp_path / "spoilt.json").write_text(json.dumps(spoilt))
    found = say(*words, "--stored", "spoilt.json")
    assert found.status == 1
    assert not found.data["verified"]
    assert [problem["code"] for problem in found.data["problems"]] == ["lay-of-other-pieces"]


CONTRARY = (
    (("--width", "140cm"), "--width"),
    (("--width", "112cm,140cm"), "--width"),
    (("--lay", "folded"), "--lay"),
    (("--nap",), "--nap"),
    (("--two-faced",), "--two-faced"),
    (("--repeat", "4x5cm"), "--repeat"),
    (("--selvedge", "2cm"), "--selvedge"),
    (("--shrink", "3%x1%"), "--shrink"),
    (("--gap", "5mm"), "--gap"),
    (("--pin", "front=12x30cm"), "--pin"),
    (("--damaged", "3x2cm+5x4cm"), "--damaged"),
    (("--scrap", "60x40cm"), "--scrap"),
    (("--match", "front=2"), "--match"),
    (("--tilt", "2mm"), "--tilt"),
)


@pytest.fixture
def kept(say):
    """A small lay that was stored: trousers on open cloth of 112 cm."""
    say("cloth", "trousers", *QUICK, "--lay", "open", "--out", "laid", "--price", "8")
    return "laid/trousers-lay.json"


def test_what_differs_from_the_stored_lays_own_cloth_is_refused(say, kept):
    for words, option in CONTRARY:
        said = say("cloth", "trousers", "--size", "92", "--stored", kept, *words, "--data")
        assert said.status == 2, words
        (problem,) = said.data["problems"]
        assert problem["message"].startswith(f"{option}: ")
        assert "leave --stored out" in problem["message"]
        assert said.data["placements"] == []


def test_a_stored_lay_says_that_it_brings_its_own_cloth(say, kept):
    words = ("cloth", "trousers", "--size", "92", "--stored", kept)
    same = say(*words, "--width", "112cm", "--lay", "open", "--data")
    assert same.status == 0
    notes = [one["message"] for one in same.data["problems"] if one["code"] == "stored-lay-own-cloth"]
    assert len(notes) == 1
    assert "112 cm wide, laid open" in notes[0]
    assert same.data["price"] == pytest.approx(8 * same.data["length_to_buy_mm"] / 1000)
    dearer = say(*words, "--price", "9", "--length", "5cm", "--data")
    assert dearer.data["price"] == pytest.approx(9 * same.data["length_to_buy_mm"] / 1000)
    assert dearer.status == 1
    assert "cloth-too-short" in {one["code"] for one in dearer.data["problems"]}


def test_a_file_that_is_no_lay_is_not_understood(say, tmp_path, kept):
    (tmp_path / "empty.json").write_text("{}")
    (tmp_path / "torn.json").write_text((tmp_path / kept).read_text()[:500])
    (tmp_path / "drawing.json").write_bytes(bytes([255, 254, 0, 1]))
    for name in ("empty.json", "torn.json", "drawing.json", "nowhere.json"):
        said = say("cloth", "trousers", "--size", "92", "--stored", name, "--data")
        assert said.status == 2, name
        assert len(said.data["problems"]) == 1
        assert said.data["problems"][0]["message"]


def test_inches_and_yards_are_said_throughout(say):
    said = say("cloth", "trousers", *QUICK, "--lay", "open", "--units", "in").out
    assert "Chalk: in from the cut end" in said
    assert " yd" in said
    assert "3/4 in (2 cm) wide" in said
    assert " cm" not in said.replace("(2 cm)", "")
    said = say("cloth", "yoke-frock", *QUICK, "--lay", "folded", "--units", "in").out
    assert "would do instead of" in said
    assert " cm" not in said
    narrow = " ".join(
        say("cloth", "trousers", *QUICK, "--width", "8in", "--lay", "open", "--units", "in").out.split()
    )
    assert "in across the grain" in narrow
    assert " cm" not in narrow


def test_a_tilt_of_more_than_three_millimetres_is_refused(say):
    found = say("cloth", "trousers", *QUICK, "--lay", "folded", "--tilt", "1cm", "--data").data
    assert "tilt-too-large" in {problem["code"] for problem in found["problems"]}


@pytest.mark.parametrize(
    "words",
    [
        WishWords(prices=("elastic=much",)),
        WishWords(also=("lining",)),
        WishWords(also=("lining=140cm@dear",)),
        WishWords(pins=("front=here",)),
        WishWords(damaged=("10x10cm",)),
        WishWords(damaged=("10x10cm+0x5cm",)),
        WishWords(scraps=("60cm",)),
        WishWords(scraps=("0x0 10x10cm",)),
        WishWords(scraps=("0x0 10x10 10x0 0x10cm",)),
        WishWords(scraps=("",)),
        WishWords(match=("front=2.5",)),
        WishWords(match=("=side",)),
        WishWords(tilt="a bit"),
    ],
)
def test_wishes_that_cannot_be_meant_are_told_in_words(words):
    found = read_wishes(words)
    assert isinstance(found, tuple)
    assert [one.code for one in found] == ["option-not-understood"]


def test_wishes_are_read():
    found = read_wishes(
        WishWords(
            prices=("thread=2.50 EUR",),
            also=("lining=140cm@6.50",),
            pins=("front=12x30cm",),
            scraps=("60x40cm",),
            match=("front=2", "Front skirt = side"),
        )
    )
    assert isinstance(found, Wishes)
    assert found.prices == {"thread": Price(2.5, "EUR", 100_000.0)}
    assert (found.also[0].name, found.also[0].width, found.also[0].price) == ("lining", 1400.0, Price(6.5))
    assert found.pins[0].at == Point(120, 300)
    assert found.scraps[0][2] == Point(600, 400)
    assert found.match == (("front", 2), ("front_skirt", "side"))


def test_front_and_back_are_cut_together_in_four_layers(say) -> None:
    words = ("cloth", "casing-top", *QUICK, "--lay", "four-layers", "--data")
    assert say(*words).data["verified"] is False  # one of each on the fold leaves two layers over
    found = say(*words, "--together").data
    assert found["verified"]
    on_fold = [one for one in found["placements"] if one["on_fold"]]
    assert [(one["piece"], one["layers"]) for one in on_fold] == [("back", 4)]
    assert "front" not in {one["piece"] for one in found["placements"]}
    assert any("cut together" in caution for caution in found["cautions"])


def test_what_is_cut_together_is_stored_and_read_back_striped_cloth_too(say, tmp_path) -> None:
    words = ("cloth", "casing-top", *QUICK, "--lay", "four-layers", "--repeat", "5x0cm", "--together")
    assert say(*words, "--out", str(tmp_path)).status == 0
    found = say(
        "cloth", "casing-top", *QUICK, "--stored", str(tmp_path / "casing-top-lay.json"), "--data"
    ).data
    assert found["verified"]
    assert any("cut together" in caution for caution in found["cautions"])


def test_where_nothing_is_cut_together_that_is_said(say) -> None:
    found = say("cloth", "trousers", *QUICK, "--together", "--data").data
    assert found["verified"]
    assert "no-twins" in {problem["code"] for problem in found["problems"]}


@pytest.mark.parametrize("words", [("--damaged", "5x7cm+8x10cm"), ("--pin", "front=30x40cm")])
def test_a_place_on_the_cloth_needs_a_way_of_laying(say, words) -> None:
    found = say("cloth", "casing-top", *QUICK, *words, "--data")
    assert found.status == 2
    assert "--lay is not said" in found.data["problems"][0]["message"]


def test_damaged_spots_that_lie_on_each_other_are_one() -> None:
    found = read_wishes(WishWords(damaged=("10x10cm+5x5cm", "12x12cm+5x5cm", "30x10cm+5x5cm")))
    assert isinstance(found, Wishes)
    shared = 900  # the first two have 3 cm by 3 in common [mm2]
    assert sorted(round(spot.area) for spot in found.holes) == [2500, 2 * 2500 - shared]
