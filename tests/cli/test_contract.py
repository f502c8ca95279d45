"""The data contract, held against every shipped recipe; its schema stands in `contract.py`."""

from __future__ import annotations

import re
import subprocess
import sys
from math import hypot
from pathlib import Path

import numpy as np
import pytest
from shapely import LineString, Polygon

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.geometry import Arc, Cubic, Line
from littlefold.pattern.trace import trace
from littlefold.pipeline import on_the_shelf
from littlefold.recipe.shelf import shipped_names
from tests.cli.contract import ANY_NAME, DRAFT, PAIR, RECIPES, RING, faults, one_document

NEAR = 0.02


def test_the_schema_can_fail():
    assert faults({"number": "1"}, {"number": int}) == [".number: '1' is no (<class 'int'>,)"]
    assert faults({"number": True}, {"number": int})
    assert faults({}, {"number": int}) == [".number: missing"]
    assert faults({"number": 1, "colour": "red"}, {"number": int}) == [".colour: not in the contract"]
    assert faults([[0, 1, 2]], RING)
    assert faults({"a": [1, "2"]}, {ANY_NAME: PAIR})
    assert faults("blue", {"red"})


def test_recipes(say):
    said = say("recipes", "--data")
    assert said.status == 0
    document = one_document(said.out)
    titled = {**RECIPES[0]["choices"][0], "title": str}
    assert faults(document, [{**RECIPES[0], "choices": [titled]}]) == []
    for recipe in document:
        for choice in recipe["choices"]:
            if choice["values"]:
                assert choice["default"] in choice["values"]
                assert (choice["min"], choice["max"], choice["unit"]) == (None, None, None)
            else:
                assert choice["min"] <= choice["default"] <= choice["max"]
                assert choice["unit"] in {"mm", "ratio", "degrees"}


@pytest.fixture(params=shipped_names())
def document(request, say):
    said = say("draft", request.param, "--size", "104", "--data")
    assert said.status == 0
    assert said.err == ""
    return one_document(said.out)


def test_a_draft_keeps_to_the_schema(document):
    assert faults(document, DRAFT) == []
    assert document["recipe"]["name"] in shipped_names()
    assert re.fullmatch(r"[0-9a-f]{64}", document["recipe"]["hash"])
    assert [step["number"] for step in document["steps"]] == list(range(1, len(document["steps"]) + 1))
    assert all(step["source"] for step in document["steps"] if step["formula"])


def test_lines_join_the_points_they_name(document):
    """`from` and `to` are keys of the points; a straight line is as long as its points are apart."""
    checked = 0
    for name, line in document["lines"].items():
        ends = [document["points"].get(line[end]) for end in ("from", "to") if line[end]]
        assert None not in ends, name
        if line["kind"] == "line" and len(ends) == 2 and not line["guides"]:
            apart = hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1])
            assert line["length_mm"] >= apart - 0.001
            checked += line["length_mm"] == pytest.approx(apart, abs=0.001)
        for guide in line["guides"]:
            assert 0 < guide["at"] < 1
    assert checked or not document["lines"]


def exact(segment, count=400):
    """Points of a segment by the formula of its kind, from its own numbers alone."""
    t = np.linspace(0, 1, count)
    if isinstance(segment, Line):
        ends = (segment.start, segment.end)
        return [
            (ends[0].x + s * (ends[1].x - ends[0].x), ends[0].y + s * (ends[1].y - ends[0].y)) for s in (0, 1)
        ]
    if isinstance(segment, Arc):
        turn = segment.start_angle + t * segment.sweep
        x = segment.centre.x + segment.radius * np.cos(turn)
        y = segment.centre.y + segment.radius * np.sin(turn)
        return list(zip(x, y, strict=True))
    assert isinstance(segment, Cubic)
    points = [(p.x, p.y) for p in (segment.start, segment.control1, segment.control2, segment.end)]
    weights = ((1 - t) ** 3, 3 * (1 - t) ** 2 * t, 3 * (1 - t) * t**2, t**3)
    x, y = (sum(w * p[k] for w, p in zip(weights, points, strict=True)) for k in (0, 1))
    return list(zip(x, y, strict=True))


def test_outlines_run_round_once_within_two_hundredths_of_the_true_curve(document):
    readings = {name: reading["mm"] for name, reading in document["measurements"].items()}
    body, _ = complete(Measurements.of(readings or {"stature": 1040.0}))
    name = document["recipe"]["name"]
    pattern = trace(evaluate(on_the_shelf(name), body, shelf=on_the_shelf))
    for record in document["pieces"]:
        piece = pattern.piece(record["name"])
        pairs = [(record, piece.outline), (record["unfolded"], piece.unfolded)]
        for told, outline in pairs:
            for key, path, area in (
                ("stitch_outline", outline.stitch, told["areas"]["stitch"]),
                ("cut_outline", outline.cut, told["areas"]["cut"]),
            ):
                ring = told[key]
                assert ring[0] != ring[-1]
                shape = Polygon(ring)
                assert shape.is_valid
                assert shape.exterior.is_ccw
                assert area > 0
                assert shape.area == pytest.approx(area, abs=shape.length * NEAR)
                curve = LineString([point for segment in path.segments for point in exact(segment)])
                # Both ways: every vertex on the curve, and every sample of the curve on the polygon.
                assert max(curve.distance(point) for point in map(_point, ring)) <= NEAR
                assert max(shape.exterior.distance(point) for point in map(_point, curve.coords)) <= NEAR


def _point(pair):
    from shapely import Point  # noqa: PLC0415

    return Point(pair)


def test_x_is_right_and_y_is_up(say):
    document = one_document(say("draft", "casing-top", "--size", "104", "--data").out)
    places = document["points"]
    assert places["body.B"][1] < places["body.A"][1]  # B is below A
    assert places["body.C"][0] > places["body.A"][0]  # C is right of A
    front = next(piece for piece in document["pieces"] if piece["name"] == "front")
    assert min(x for x, _ in front["stitch_outline"]) == 0  # as drawn: half, its fold on the left
    assert min(x for x, _ in front["unfolded"]["stitch_outline"]) < -100
    assert front["unfolded"]["areas"]["stitch"] == pytest.approx(2 * front["areas"]["stitch"], rel=1e-6)


def test_published_letters_are_kept(say):
    document = one_document(say("draft", "drawers", "--size", "128", "--data").out)
    assert {f"leg.{letter}" for letter in "ABCDEFGHIJ"} <= set(document["points"])


def test_seams_name_edges_of_pieces(document):
    edges = {
        f"{piece['name']}.{edge['name']}": edge["stitch_mm"]
        for piece in document["pieces"]
        for edge in piece["edges"]
    }
    for seam in document["seams"]:
        assert len(seam["edges"]) == 2
        for run, length in zip(seam["edges"], seam["lengths_mm"], strict=True):
            assert set(run) <= set(edges)
            # Pleats and slits may take a part of an edge away; nothing adds to it.
            assert length <= sum(edges[name] for name in run) + 0.001


def test_notches_lie_on_their_edges(document):
    for piece in document["pieces"]:
        lengths = {edge["name"]: edge["stitch_mm"] for edge in piece["edges"]}
        for notch in piece["notches"]:
            assert 0 <= notch["at_mm"] <= lengths[notch["edge"]]
            assert notch["count"] in {1, 2}


def test_the_place_of_a_finding_is_filled(say, tmp_path):
    """Mistakes of the text have file, line and column; findings on a piece have the piece, its edge, and their line."""
    file = tmp_path / "odd.recipe"
    file.write_text("recipe odd\ndrawing a\npoint A at the fold\npoint B below Q by 1 cm\npont\n", "utf-8")
    document = one_document(say("draft", file, "--size", "104", "--data").out)
    mistakes = [problem for problem in document["problems"] if problem["severity"] == "error"]
    assert sorted(problem["place"]["line"] for problem in mistakes) == [4, 5]
    assert all(problem["place"]["file"] == "odd" for problem in mistakes)
    assert all(problem["place"]["column"] >= 1 for problem in mistakes)
    said = say("draft", "casing-top", "--size", "104", "--choose", "closing=cord", "--data")
    (cord,) = [one for one in one_document(said.out)["problems"] if one["severity"] == "error"]
    assert said.status == 1
    assert cord["rule"] == "EN 14682"
    assert (cord["place"]["piece"], cord["place"]["edge"]) == ("front", "neckline")
    assert cord["place"]["line"] > 1
    assert {number["unit"] for number in cord["numbers"]} == {"mm"}


LISTS = ("steps", "pieces", "seams", "notions", "work")
NOT_UNDERSTOOD = {
    # What is asked: words that have to be in the sentence.
    ("no-such",): ('no recipe "no-such"', "Shipped recipes", "name a file"),
    ("bodise", "--size", "104"): ('Did you mean "bodice"?',),
    ("missing.recipe",): ("missing.recipe", "cannot be read"),
    ("folder.recipe",): ("folder.recipe", "cannot be read"),
    ("binary.recipe",): ("binary.recipe", "no text file in UTF-8"),
    ("bodice", "--child", "missing.json"): ("missing.json", "cannot be read"),
    ("bodice", "--child", "broken.json"): ("not JSON", "line 1, column"),
    ("bodice", "--child", "list.json"): ("something else than a card", '"chest": "56 cm"'),
    ("bodice", "--child", "strange.json"): ("no “shoes”", "It has: name, born, sex, measurements"),
    ("bodice", "--child", "less.json"): ("less than nothing",),
    ("bodice", "--child", "unknown.json"): ("no measurement “wist”", "Did you mean “waist”?"),
    ("bodice", "--size", "104", "--paper", "a9"): ('no paper "a9"', "A4"),
    ("bodice", "--size", "104", "--tape", "1/7in"): ("1/7in", "1/8in"),
    ("bodice", "--size", "104", "--units", "ells"): ("--units ells", "cm, in"),
    ("bodice", "--size", "104", "--language", "xx"): ("--language xx", "de, en"),
    ("bodice", "--size", "104", "--choose", "eas=10cm"): ('no choice "eas"', 'Did you mean "ease"?'),
    ("bodice", "--size", "104", "--choose", "ease=10"): ("“10” of what?", "10 cm or 10 in"),
    ("bodice", "--size", "104", "--choose", "ease"): ('"=" and a value',),
    ("casing-top", "--size", "104", "--choose", "closing=rope"): ("rope", "elastic, press_studs, cord"),
    ("bodice", "--measure", "abc=56cm"): ("no measurement “abc”", "chest"),
    ("bodice", "--measure", "chest=-5cm"): ("less than nothing",),
    ("bodice", "--measure", "chest=0cm"): ("more than nothing",),
    ("bodice", "--measure", "chest=1e9cm"): ("1e9cm", "like 56 cm"),
    ("bodice", "--measure", "chest=99999999cm"): ("100 m", "look at the unit"),
    ("bodice", "--measure", "chest=56"): ("“56” of what?",),
    ("bodice", "--size", "103"): ("“103”", "98, 104"),
    ("bodice", "--size", "big"): ("“big”", "98, 104"),
}


@pytest.mark.parametrize("words", NOT_UNDERSTOOD, ids=" ".join)
def test_exit_2_says_what_is_wrong_and_what_to_write_with_empty_lists(say, tmp_path, words):
    (tmp_path / "folder.recipe").mkdir()
    (tmp_path / "binary.recipe").write_bytes(bytes(range(128, 256)) * 9)
    files = {
        "broken": '{"name": ',
        "list": "[1]",
        "strange": '{"shoes": 1}',
        "less": '{"measurements": {"chest": "-5 cm"}}',
        "unknown": '{"measurements": {"wist": "50 cm"}}',
    }
    for name, text in files.items():
        (tmp_path / f"{name}.json").write_text(text, "utf-8")
    said = say("draft", *words, "--data", "--out", tmp_path / "out")
    assert said.status == 2
    document = one_document(said.out)
    assert faults(document, DRAFT) == []
    assert [document[name] for name in LISTS] == [[]] * len(LISTS)
    assert document["points"] == document["lines"] == {}
    told = " ".join(problem["message"] for problem in document["problems"])
    assert [part for part in NOT_UNDERSTOOD[words] if part not in told] == []
    assert not (tmp_path / "out").exists()


LITTLEFOLD = Path(sys.executable).with_name("littlefold")


@pytest.mark.parametrize(("words", "part"), [(("bodice", "--sparkle"), "--sparkle"), ((), "recipe")])
def test_words_that_no_command_has(words, part):
    """What the reader of the command line refuses before any command begins: to the real program."""
    ran = subprocess.run([LITTLEFOLD, "draft", *words, "--data"], capture_output=True, check=False)
    assert ran.returncode == 2
    document = one_document(ran.stdout.decode("utf-8", "strict"))
    assert faults(document, DRAFT) == []
    assert part in document["problems"][0]["message"]


IMPOSSIBLE = {
    # What is asked: the code, and the numbers [mm] that have to be told.
    ("bodice", "--size", "104", "--choose", "ease=90cm"): ("choice-out-of-bounds", {900, 40, 140}),
    ("bodice",): ("measurement-missing", set()),
    ("empty.recipe",): ("nothing-drawn", set()),
    ("comment.recipe",): ("nothing-drawn", set()),
}


@pytest.mark.parametrize("words", IMPOSSIBLE, ids=" ".join)
def test_exit_1_keeps_the_shape(say, tmp_path, words):
    (tmp_path / "empty.recipe").write_text("", "utf-8")
    (tmp_path / "comment.recipe").write_text("# nothing\n", "utf-8")
    said = say("draft", *words, "--data")
    code, numbers = IMPOSSIBLE[words]
    assert said.status == 1
    document = one_document(said.out)
    assert faults(document, DRAFT) == []
    problem = next(one for one in document["problems"] if one["code"] == code)
    assert problem["severity"] == "error"
    assert numbers <= {number["value"] for number in problem["numbers"]}


def test_in_german_the_document_keeps_its_shape_and_its_messages_are_german(say):
    said = say("draft", "bodice", "--size", "104", "--language", "de", "--data")
    document = one_document(said.out)
    assert faults(document, DRAFT) == []
    assert document["steps"][0]["sentence"].endswith("markieren.")
    assert any("Maßen wurden nicht an diesem Kind genommen" in one["message"] for one in document["problems"])
