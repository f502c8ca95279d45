"""The data contract, word by word: fields, types, exit status, and what lies on standard output."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from shapely import LineString, Polygon

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.pattern.trace import trace
from littlefold.pipeline import on_the_shelf
from littlefold.recipe.shelf import shipped_names

NUMBER = (int, float)
FIELDS = {
    "format": str,
    "recipe": dict,
    "measurements": dict,
    "choices": dict,
    "tape": (str, type(None)),
    "points": dict,
    "lines": dict,
    "steps": list,
    "pieces": list,
    "seams": list,
    "notions": list,
    "work": list,
    "problems": list,
}
STEP = {
    "number": int,
    "name": str,
    "line": int,
    "sentence": str,
    "formula": (str, type(None)),
    "value_mm": (*NUMBER, type(None)),
    "source": (str, type(None)),
}
PIECE = {
    "name": str,
    "title": str,
    "cut": int,
    "on_fold": bool,
    "cloth": str,
    "edges": list,
    "stitch_outline": list,
    "cut_outline": list,
    "areas": dict,
    "unfolded": dict,
    "grain": list,
    "notches": list,
}
EDGE = {"name": str, "kind": str, "from": str, "to": str, "stitch_mm": NUMBER, "allowance_mm": NUMBER}
SEAM = {
    "edges": list,
    "lengths_mm": list,
    "ease_mm": NUMBER,
    "gather": bool,
    "tolerance_mm": NUMBER,
    "matched": bool,
}
PROBLEM = {"code": str, "severity": str, "message": str, "rule": str, "place": dict, "numbers": list}
PLACE = {"file", "line", "column", "piece", "edge", "point"}
# Outlines lie so near the true curve [mm], and numbers are printed to so many.
NEAR, PRINTED = 0.02, 0.001


def typed(value, fields):
    """Fields that are missing or of another type."""
    return [name for name, kind in fields.items() if name not in value or not isinstance(value[name], kind)]


@pytest.fixture(params=shipped_names())
def drafted(request, say):
    return request.param, say("draft", request.param, "--size", "104", "--data")


def test_recipes(say):
    said = say("recipes", "--data")
    assert said.status == 0
    assert [record["name"] for record in said.data] == list(shipped_names())
    for record in said.data:
        assert (
            typed(record, {"name": str, "title": str, "suits_mm": list, "measures": list, "choices": list})
            == []
        )
        low, high = record["suits_mm"]
        assert 0 < low < high
        for choice in record["choices"]:
            assert {"name", "default", "min", "max", "values", "unit"} <= choice.keys()
            if choice["values"]:
                assert choice["default"] in choice["values"]
            else:
                assert choice["min"] <= choice["default"] <= choice["max"]


def test_every_field_has_its_type(drafted, finite):
    name, said = drafted
    document = said.data
    assert said.status == 0
    assert document["format"] == "littlefold-draft/1"
    assert typed(document, FIELDS) == []
    assert document["recipe"].keys() >= {"name", "title", "hash"}
    assert document["recipe"]["name"] == name
    assert finite(document)
    for step in document["steps"]:
        assert typed(step, STEP) == []
        assert step["sentence"]
    assert [step["number"] for step in document["steps"]] == list(range(1, len(document["steps"]) + 1))
    for piece in document["pieces"]:
        assert typed(piece, PIECE) == []
        assert all(typed(edge, EDGE) == [] for edge in piece["edges"])
        assert all(
            typed(notch, {"edge": str, "at_mm": NUMBER, "count": int}) == [] for notch in piece["notches"]
        )
        assert piece["unfolded"].keys() >= {"stitch_outline", "cut_outline", "areas"}
    assert all(typed(seam, SEAM) == [] for seam in document["seams"])
    assert all(typed(notion, {"name": str, "count": int}) == [] for notion in document["notions"])
    assert all(isinstance(words, str) for words in document["work"])
    for problem in document["problems"]:
        assert typed(problem, PROBLEM) == []
        assert problem["severity"] in {"error", "warning", "note"}
        assert problem["place"].keys() == PLACE
        assert all(typed(n, {"name": str, "value": NUMBER, "unit": str}) == [] for n in problem["numbers"])
    for reading in document["measurements"].values():
        assert reading["origin"] in {"given", "chart", "estimated"}
        assert reading["mm"] > 0
    for line in document["lines"].values():
        assert line["kind"] in {"line", "arc", "curve"}
        assert line.keys() >= {"from", "to", "length_mm", "guides"}
        assert all(guide.keys() == {"at", "depth_mm"} for guide in line["guides"])


def test_outlines_run_round_once_and_lie_on_the_true_curve(drafted):
    name, said = drafted
    body, _ = complete(Measurements.of({key: r["mm"] for key, r in said.data["measurements"].items()}))
    pattern = trace(evaluate(on_the_shelf(name), body, shelf=on_the_shelf))
    for record in said.data["pieces"]:
        piece = pattern.piece(record["name"])
        for key, path in (("stitch_outline", piece.outline.stitch), ("cut_outline", piece.outline.cut)):
            ring = record[key]
            assert ring[0] != ring[-1]
            shape = Polygon(ring)
            assert shape.is_valid
            assert shape.exterior.is_ccw
            true = LineString([(p.x, p.y) for p in path.flatten(0.0005)])
            assert (
                shape.exterior.hausdorff_distance(true) <= NEAR + 0.002
            )  # both are flattened, points are rounded
            area = record["areas"]["stitch" if key == "stitch_outline" else "cut"]
            assert abs(path.signed_area()) == pytest.approx(area, abs=1.0 + shape.length * NEAR)


def test_nothing_but_the_document_and_no_files(say, tmp_path):
    said = say("draft", "bib", "--size", "86", "--data")
    assert said.out.startswith("{")
    assert said.out.count("\n}\n") == 1
    assert list(tmp_path.iterdir()) == []


def test_files_only_with_out(say, tmp_path):
    said = say("draft", "bib", "--size", "86", "--data", "--out", tmp_path / "mina")
    assert said.status == 0
    assert said.data["pieces"]
    written = {path.name for path in (tmp_path / "mina").iterdir()}
    assert {"bib-pattern.svg", "bib-pages.pdf", "bib-one-sheet.pdf", "bib-instructions.pdf"} <= written


def test_an_error_in_the_draft_is_exit_1_with_the_same_shape(say):
    said = say("draft", "casing-top", "--size", "104", "--choose", "closing=cord", "--data")
    assert said.status == 1
    assert typed(said.data, FIELDS) == []
    assert {"EN 14682"} <= {problem["rule"] for problem in said.data["problems"]}


def test_a_choice_out_of_its_bounds_is_an_error_with_both_numbers(say):
    said = say("draft", "bodice", "--size", "104", "--choose", "ease=90cm", "--data")
    assert said.status == 1
    [problem] = [problem for problem in said.data["problems"] if problem["severity"] == "error"]
    assert 900.0 in [number["value"] for number in problem["numbers"]]


def test_a_recipe_with_mistakes_is_exit_1_with_the_same_shape(say, tmp_path):
    file = tmp_path / "odd.recipe"
    file.write_text("recipe odd\ndrawing a\npoint A at the fold\npoint B below A by chest / 4 + 1\n", "utf-8")
    said = say("draft", file, "--size", "104", "--data")
    assert said.status == 1
    assert typed(said.data, FIELDS) == []
    assert said.data["pieces"] == []
    assert any(problem["place"]["line"] == 4 for problem in said.data["problems"])


@pytest.mark.parametrize(
    "words",
    [
        ("no-such-recipe",),
        ("bib", "--size", "105"),
        ("bib", "--size", "nan"),
        ("bib", "--measure", "chest=wide"),
        ("bib", "--measure", "chest=nan cm"),
        ("bib", "--measure", "chest=1e400cm"),
        ("bib", "--measure", "chest"),
        ("bib", "--measure", "girth=56cm"),
        ("bodice", "--choose", "ease=inf"),
        ("bodice", "--choose", "sparkle=1cm"),
        ("casing-top", "--choose", "closing=rope"),
        ("bib", "--tape", "1/7in"),
        ("bib", "--units", "ell"),
        ("bib", "--paper", "papyrus"),
        ("bib", "--paper", "0x0mm"),
        ("bib", "--region", "moon"),
        ("bib", "--child", "nobody"),
        ("bib", "--child", "nobody.json"),
    ],
)
def test_what_is_not_understood_is_exit_2_with_the_same_shape(say, tmp_path, words):
    said = say("draft", *words, "--data", "--out", tmp_path / "out")
    assert said.status == 2
    document = said.data
    assert typed(document, FIELDS) == []
    assert [document[key] for key in ("steps", "pieces", "seams", "notions", "work")] == [[]] * 5
    assert document["problems"]
    assert all(len(problem["message"]) > 15 for problem in document["problems"])
    assert not (tmp_path / "out").exists()


def test_a_child_file_and_hostile_child_files(say, tmp_path):
    file = tmp_path / "mina.json"
    file.write_text('{"name": "Mina", "born": "2023-04-01", "measurements": {"chest": "56 cm"}}', "utf-8")
    assert say("draft", "bodice", "--child", file, "--data").data["measurements"]["chest"] == {
        "mm": 560.0,
        "origin": "given",
    }
    for text in (
        "",
        "[]",
        '{"measurements": {"chest": NaN}}',
        '{"measurements": {"chest": "-5 cm"}}',
        "{" * 5000,
    ):
        file.write_text(text, "utf-8")
        said = say("draft", "bodice", "--child", file, "--data")
        assert said.status == 2
        assert typed(said.data, FIELDS) == []


HOSTILE = {
    "binary": lambda path: path.write_bytes(bytes(range(256)) * 40),
    "huge": lambda path: path.write_bytes(b"x\n" * 3_000_000),
    "empty": lambda path: path.write_bytes(b""),
    "missing": lambda _path: None,
    "directory": lambda path: path.mkdir(),
    "nul": lambda path: path.write_bytes(b"recipe a\0b\n"),
}


@pytest.mark.parametrize("kind", HOSTILE)
@pytest.mark.parametrize("command", ["draft", "check", "format"])
def test_hostile_recipe_files_are_refused_in_words(say, tmp_path, kind, command):
    path = tmp_path / "odd.recipe"
    HOSTILE[kind](path)
    said = say(command, path, *(["--data"] if command == "draft" else []))
    if kind in {"empty", "nul"}:  # text at least: laid out as it is, and what cannot be read is told of
        assert said.status == {"format": int(kind == "nul"), "draft": 1}.get(command, said.status)
        assert command == "format" or "recipe has no name" in said.out
    else:
        assert said.status == 2
        assert said.err or command == "draft"
    if command == "draft":
        assert typed(said.data, FIELDS) == []
        assert said.data["problems"]


LITTLEFOLD = Path(sys.executable).with_name("littlefold")


def test_as_a_program():
    """A few words to the real command: one document in UTF-8, and the exit status reaches the shell."""
    for words, status in ((("recipes", "--data"), 0), (("draft", "nothing", "--data"), 2), (("dance",), 2)):
        ran = subprocess.run([LITTLEFOLD, *words], capture_output=True, check=False)
        assert ran.returncode == status
        assert b"Traceback" not in ran.stderr
        if "--data" in words:
            ran.stdout.decode("utf-8", "strict")
            assert ran.stdout.endswith(b"\n")
