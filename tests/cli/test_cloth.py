"""`littlefold cloth`: lays told, written and handed on as data; refusals in words; the search stopped."""

from __future__ import annotations

import os
import signal
import subprocess
import sys

import pytest
import shapely

from littlefold.cli.fabric import WAYS, ClothWords, Fabric, read_fabric, read_price, read_shrinkage
from littlefold.lay.cloth import YARD, Price
from littlefold.lay.shrink import Shrinkage, Treatment
from littlefold.lay.ways import Way
from littlefold.problem import Problem

QUICK = ("--size", "92", "--seconds", "0")


def test_help_explains_every_option(say):
    said = say("cloth", "--help").out
    for option in (
        "--width",
        "--lay",
        "--nap",
        "--shrink",
        "--gap",
        "--price",
        "--length",
        "--seconds",
        "--seed",
        "--also",
        "--pin",
        "--damaged",
        "--scrap",
        "--match",
        "--repeat",
        "--uneven",
        "--tilt",
        "--stored",
    ):
        line = next(line for line in said.splitlines() if line.strip().startswith(option))
        assert len(line.split()) > 3
    assert "Example" in said


def test_ways_are_compared_and_the_least_cloth_is_taken(say):
    found = say("cloth", "yoke-frock", *QUICK, "--price", "8.50 EUR", "--data").data
    done = [row for row in found["comparison"] if row["length_mm"] is not None]
    assert {row["way"] for row in found["comparison"]} == {str(way) for way in WAYS.values()} - {"tube"}
    assert len(done) > 2
    assert found["price"] == min(row["price"] for row in done)
    assert found["price"] == pytest.approx(8.5 * found["length_to_buy_mm"] / 1000)
    assert all(row["length_mm"] >= row["bound_mm"] for row in done)
    assert {row["binds"] for row in done} <= {
        "area",
        "fold",
        "longest piece",
        "wide pieces",
        "beside the fold",
    }
    refused = [row for row in found["comparison"] if row["length_mm"] is None]
    assert all(row["problems"] for row in refused)


def test_data_is_one_finite_document_of_a_verified_lay(say, finite):
    said = say("cloth", "trousers", *QUICK, "--lay", "folded", "--nap", "--data")
    found = said.data
    assert said.status == 0
    assert finite(found)
    assert found["verified"] is True
    assert found["way"] == "folded"
    assert 0 < found["share_used"] < 1
    assert found["bounds"]["most_mm"] <= found["length_mm"] <= found["length_to_buy_mm"]
    assert all(placement["sign"][0] == 1 for placement in found["placements"])  # with nap nothing is turned
    assert found["shopping"]["lines"][0]["name"] == "main"
    assert len(found["chalk"]) == len(found["placements"])


def test_outlines_lie_apart_inside_the_cloth_and_are_those_of_the_draft(say):
    """Checked from the document alone, with polygons of shapely."""
    drafted = say("draft", "trousers", "--size", "92", "--data").data
    found = say("cloth", "trousers", *QUICK, "--lay", "open", "--gap", "5mm", "--data").data
    areas = {piece["name"]: shapely.Polygon(piece["cut_outline"]).area for piece in drafted["pieces"]}
    cuts = [(one["piece"], shapely.Polygon(one["outline_mm"])) for one in found["placements"]]
    cloth = shapely.box(0, 0, found["length_mm"], found["usable_width_mm"]).buffer(0.01)
    assert len(cuts) == sum(piece["cut"] for piece in drafted["pieces"])
    for number, (name, cut) in enumerate(cuts):
        assert cloth.covers(cut)
        assert cut.area == pytest.approx(areas[name], rel=1e-3)
        assert all(cut.distance(other) >= 5 - 0.01 for _, other in cuts[:number])
    share = sum(cut.area for _, cut in cuts) / (found["length_mm"] * found["usable_width_mm"])
    assert found["share_used"] == pytest.approx(share, rel=1e-6)


def test_a_better_way_is_offered_where_the_fold_decides(say):
    words = ("cloth", "yoke-frock", "--size", "104", "--seconds", "0", "--data")
    folded = say(*words, "--lay", "folded").data
    offered = {one["code"]: one for one in folded["problems"]}
    assert folded["bounds"]["binds"] == "fold"
    assert "fold-row-binds" in offered
    better = say(*words, "--lay", offered["better-fold"]["message"].split("--lay ")[1].split(",")[0]).data
    assert better["length_to_buy_mm"] < folded["length_to_buy_mm"]
    assert offered["better-fold"]["numbers"][1]["value"] == better["length_to_buy_mm"]


def test_the_piece_that_does_not_lie_beside_the_half_is_named(say):
    """The strap of the bib on narrow cloth; laid open the least length told is the length found (the bib's own)."""
    words = ("cloth", "bib", "--size", "92", "--width", "90cm", "--seconds", "0", "--data", "--lay")
    folded, opened = say(*words, "folded").data, say(*words, "open").data
    assert folded["bounds"]["binds"] == "beside the fold"
    (told,) = (one for one in folded["problems"] if one["code"] == "beside-fold-binds")
    names = {one["piece"] for one in folded["placements"]}
    assert len(names) == 2
    assert all(f'"{name}"' in told["message"] for name in names)
    needed, without = (number["value"] for number in told["numbers"])
    assert opened["length_mm"] == pytest.approx(without)
    assert without < needed <= folded["length_mm"] + 1e-6
    casing = say("cloth", "casing-top", "--size", "104", "--seconds", "0", "--lay", "folded", "--data").data
    assert "beside-fold-binds" not in {one["code"] for one in casing["problems"]}


def test_the_same_words_give_the_same_document(say):
    words = ("cloth", "bloomers", "--size", "92", "--steps", "200", "--seed", "3", "--data")
    assert say(*words).out == say(*words).out


def test_more_steps_never_need_more_cloth(say):
    words = ("cloth", "yoke-frock", "--size", "92", "--lay", "open", "--data", "--steps")
    assert say(*words, 300).data["length_mm"] <= say(*words, 0).data["length_mm"]


def test_sheets_are_written(say, tmp_path):
    said = say("cloth", "bib", *QUICK, "--lay", "folded", "--out", "laid")
    assert said.status == 0
    names = {path.name for path in (tmp_path / "laid").iterdir()}
    assert names == {"bib-lay.pdf", "bib-marker.svg", "bib-marker.pdf", "bib-lay.json"}
    assert all(name in said.err.replace("\n", "") for name in names)
    assert (tmp_path / "laid/bib-lay.pdf").read_bytes().startswith(b"%PDF")


def test_words_tell_the_ways_the_places_and_what_to_buy(say):
    said = say("cloth", "yoke-frock", *QUICK, "--price", "8.50")
    for words in (
        "Ways to lay it",
        "taken",
        "Chalk",
        "To buy",
        "thread",
        "Verified",
        "Scissors",
        "can choke",
    ):
        assert words in said.out
    assert "% used" in said.err
    assert "% used   (" not in said.out


REFUSED = (
    (("--lay", "crosswise", "--nap"), "nap-folded-crosswise"),
    (("--width", "10cm"), "cloth-too-narrow"),
    (("--cloth", "lining"), "nothing-to-lay"),
    (("--length", "20cm", "--lay", "open"), "cloth-too-short"),
)


@pytest.mark.parametrize(("words", "code"), REFUSED)
def test_what_cannot_be_cut_is_refused_in_words(say, words, code):
    said = say("cloth", "trousers", *QUICK, *words, "--data")
    assert said.status == 1
    errors = [problem for problem in said.data["problems"] if problem["severity"] == "error"]
    assert code in {problem["code"] for problem in errors}
    assert say("cloth", "trousers", *QUICK, *words).status == 1


NOT_UNDERSTOOD = (
    ("--width", "wide"),
    ("--width", "0cm"),
    ("--lay", "sideways"),
    ("--shrink", "a bit"),
    ("--shrink", "60%x1%"),
    ("--enlarge",),
    ("--price", "cheap"),
    ("--gap", "3"),
    ("--seconds", "nan"),
    ("--seconds", "-1"),
    ("--steps", "-1"),
    ("--repeat", "checks"),
    ("--uneven", "both"),
    ("--repeat", "4x5cm", "--uneven", "upwards"),
    ("--repeat", "4x0cm", "--uneven", "both"),
    ("--repeat", "0x5cm", "--uneven", "along"),
    ("--lay", "open", "--tube"),
    ("--size", "1000"),
)


@pytest.mark.parametrize("words", NOT_UNDERSTOOD)
def test_what_is_not_understood_ends_with_2_and_a_document(say, words):
    said = say("cloth", "trousers", *words, "--data")
    assert said.status == 2
    assert said.data["format"] == "littlefold-cloth/1"
    assert said.data["verified"] is False
    assert said.data["problems"]
    said = say("cloth", "trousers", *words)
    assert said.status == 2
    assert said.out == ""
    assert said.err


def test_all_that_was_misspoken_comes_back_together(say):
    found = say("cloth", "trousers", "--width", "wide", "--lay", "sideways", "--size", "odd", "--data").data
    assert len(found["problems"]) == 3


def test_a_document_that_was_refused_has_the_fields_of_a_lay(say):
    laid = say("cloth", "bib", *QUICK, "--lay", "open", "--data").data
    assert set(say("cloth", "bib", "--width", "x", "--data").data) == set(laid)
    assert set(say("cloth", "bib", *QUICK, "--width", "3cm", "--data").data) == set(laid)


@pytest.mark.skipif(os.name == "nt", reason="Windows sends no such signal to a child")
def test_ctrl_c_takes_the_best_lay_so_far():
    run = "from littlefold.cli.main import run; run()"
    words = ("cloth", "yoke-frock", "--size", "92", "--lay", "open", "--seconds", "300", "--data")
    command = [sys.executable, "-c", run, *words]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as child:
        assert child.stderr is not None
        assert "used" in child.stderr.readline()  # the first lay is there
        child.send_signal(signal.SIGINT)
        out, _ = child.communicate(timeout=60)
    assert child.returncode == 0
    assert '"verified": true' in out


@pytest.mark.parametrize(
    ("text", "price"),
    [
        ("8.50", Price(8.5)),
        ("8,50 eur", Price(8.5, "EUR")),
        ("8.50€", Price(8.5, "€")),
        ("6.90/yd", Price(6.9, "", YARD)),
        ("12 EUR/m", Price(12.0, "EUR")),
    ],
)
def test_prices_are_read(text, price):
    assert read_price(text) == price


def test_a_bare_price_is_for_a_yard_where_cloth_is_sold_by_the_yard():
    found = read_fabric(ClothWords(price="7", by_yard=True))
    assert isinstance(found, Fabric)
    assert found.cloth.cost(YARD - found.cloth.end_loss) == pytest.approx(7.0)


@pytest.mark.parametrize("text", ["", "x", "-3", "8.50 EURO PER METRE", "1e3", "nan"])
def test_no_price_is_guessed(text):
    assert isinstance(read_price(text), Problem)


def test_shrinkage_is_read_as_shares_fibre_or_square():
    shares, square, fibre = (
        read_shrinkage(text) for text in ("3%x1%", "20x20cm=19.4x19.8cm", "Woven cotton")
    )
    assert isinstance(shares, Shrinkage)
    assert isinstance(square, Shrinkage)
    assert isinstance(fibre, Shrinkage)
    assert (shares.along, shares.across) == (0.03, 0.01)
    assert (square.along, square.across) == pytest.approx((0.03, 0.01))
    assert "memory" in fibre.origin


def test_the_cloth_is_washed_or_the_pieces_are_enlarged():
    washed, cut_large = (read_fabric(ClothWords(shrink="3%x1%", enlarge=large)) for large in (False, True))
    assert isinstance(washed, Fabric)
    assert isinstance(cut_large, Fabric)
    assert washed.cloth.treatment is Treatment.WASH
    assert cut_large.cloth.treatment is Treatment.ENLARGE
    assert washed.cloth.usable_width < cut_large.cloth.usable_width


def test_a_tube_has_no_selvedge_and_one_way_to_lie():
    found = read_fabric(ClothWords(width="75cm", tube=True))
    assert isinstance(found, Fabric)
    assert found.way is Way.TUBE
    assert found.cloth.usable_width == 750.0
