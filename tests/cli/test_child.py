"""Cards on the command line: from the first reading to the last."""

from __future__ import annotations

import json
from datetime import date
from math import ceil
from pathlib import Path  # noqa: TC003 - fixtures are read at run time

import pytest
from typer.testing import CliRunner

from littlefold.body.measurements import Origin
from littlefold.body.register import REGISTER
from littlefold.cli.ages import read_age, read_day
from littlefold.cli.asked import Asked
from littlefold.cli.main import app
from littlefold.cli.understood import Understood, understand
from littlefold.pipeline import fulfil
from littlefold.problem import Problem
from littlefold.web.recent import Recent, keep_recent, read_recent


@pytest.fixture(autouse=True)
def room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("LITTLEFOLD_DATA", str(tmp_path / "data"))
    monkeypatch.delenv("LITTLEFOLD_DATABASE", raising=False)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def say(*words: str, ends: int = 0) -> str:
    done = CliRunner().invoke(app, list(words))
    assert done.exit_code == ends, (done.output, done.exception)
    return done.output


def card(name: str) -> dict:
    return json.loads(say("child", "show", name, "--data"))


def add_mina() -> None:
    say("child", "add", "Mina", "--born", "2022-08-14", "--girl")
    say("child", "measure", "Mina", "stature=104cm", "chest=21 5/8in", "--day", "2026-11-20", "--by", "Edda")


def test_a_card_is_made_measured_and_shown() -> None:
    add_mina()
    record = card("mina")
    assert record["born"] == "2022-08-14"
    assert record["sex"] == "girl"
    assert record["measured"] == [
        {
            "day": "2026-11-20",
            "by": "Edda",
            "over": "",
            "readings": {"stature": 1040.0, "chest": 21.625 * 25.4},
            "own": [],
        }
    ]
    assert "104 cm" in say("child", "show", "Mina")
    assert "Mina" in say("child", "list")


def test_inches_taken_for_centimetres_are_caught_before_they_are_kept() -> None:
    add_mina()
    said = say("child", "measure", "Mina", "stature=104cm", "chest=22cm", ends=1)
    assert "inches" in said
    assert len(card("Mina")["measured"]) == 1
    say("child", "measure", "Mina", "stature=104cm", "chest=22cm", "--anyway")
    assert len(card("Mina")["measured"]) == 2
    say("child", "check", "Mina", ends=1)


def test_a_second_reading_of_a_day_replaces_its_measurement_alone() -> None:
    add_mina()
    said = say("child", "measure", "Mina", "chest=56cm", "--day", "2026-11-20")
    assert "1 reading of 2026-11-20 kept, with 1 other of that day." in said
    first, second = card("Mina")["measured"]
    assert second == first | {"readings": {"stature": 1040.0, "chest": 560.0}}
    found = json.loads(say("draft", "bodice", "--child", "Mina", "--data").split("\n", 1)[1])
    assert found["measurements"]["chest"] == {"mm": 560.0, "origin": "given"}


def test_a_measurement_given_twice_and_a_day_that_cannot_be_are_refused() -> None:
    add_mina()
    assert "twice" in say("child", "measure", "Mina", "chest=56cm", "chest=57cm", ends=2)
    assert "still to come" in say("child", "measure", "Mina", "chest=56cm", "--day", "2926-11-20", ends=2)
    assert "was born on" in say("child", "measure", "Mina", "chest=56cm", "--day", "2022-08-13", ends=2)
    assert len(card("Mina")["measured"]) == 1
    assert "measured on 2026-11-20" in say("child", "correct", "Mina", "--born", "2026-11-21", ends=2)
    assert card("Mina")["born"] == "2022-08-14"


def test_a_draft_for_a_card_is_kept_changed_after_a_fitting_and_printed_again(room: Path) -> None:
    add_mina()
    say("draft", "bodice", "--child", "Mina", "--out", "first")
    say(
        "child",
        "fit",
        "Mina",
        "1",
        "tight round the chest",
        "--let-down",
        "2cm",
        "--choose",
        "ease=8cm",
        "--out",
        "new",
    )
    first, second = card("Mina")["drafts"]
    assert first["fittings"][0]["showed"] == "tight round the chest"
    assert first["let_down"] == 20.0
    assert second["follows"] == 1
    assert second["choices"]["ease"] == 80.0
    assert second["pattern_hash"] != first["pattern_hash"]
    assert first["measurements"]["chest"]["origin"] == "given"
    assert first["measurements"]["neck"]["origin"] == "estimated"
    say("child", "print", "Mina", "1", "--out", "again")
    old = (room / "first" / "bodice-pattern.svg").read_bytes()
    assert (room / "again" / "bodice-1-pattern.svg").read_bytes() == old
    assert (room / "new" / "bodice-pattern.svg").read_bytes() != old
    assert "no draft 3" in say("child", "print", "Mina", "3", ends=2)


def test_old_readings_are_told(room: Path) -> None:
    say("child", "add", "Kim")
    say("child", "measure", "Kim", "stature=104cm", "--day", "2020-01-01")
    assert "Measure again" in " ".join(say("draft", "bib", "--child", "Kim", "--data").split())
    assert not list(room.glob("sheets"))


def test_a_child_without_a_card_is_told() -> None:
    assert "no card" in say("draft", "bib", "--child", "Nobody", ends=2)


def test_a_forecast_is_told_drawn_and_printed(room: Path) -> None:
    add_mina()
    record = json.loads(say("child", "forecast", "Mina", "--on", "2027-11-20", "--data"))
    stature = record["measurements"]["stature"]
    assert 1040 < stature["range_mm"][0] < stature["mm"] < stature["range_mm"][1] < 1160
    told = " ".join(say("child", "forecast", "Mina", "--on", "2027-11-20").split())
    sleeve = record["measurements"]["arm"]
    tucks = ceil((sleeve["mm"] - sleeve["now_mm"]) / (2 * 10))  # each takes twice its depth of 1 cm
    assert tucks > 0
    assert "growth tucks 1 cm deep: " in told
    assert f"{REGISTER['arm'].title} {tucks}" in told
    assert record["tucks"]["depth_mm"] == 10
    assert record["tucks"]["counts"]["arm"] == tucks
    in_inches = json.loads(say("child", "forecast", "Mina", "--on", "2027-11-20", "--units", "in", "--data"))
    assert in_inches["tucks"]["depth_mm"] == pytest.approx(12.7)
    say("child", "forecast", "Mina", "--out", "mina.svg")
    say("child", "forecast", "Mina", "--out", "mina.pdf")
    assert "P50" in (room / "mina.svg").read_text()
    assert (room / "mina.pdf").read_bytes().startswith(b"%PDF")
    say("child", "forecast", "Mina", "--on", "2020-01-01", ends=2)
    say("child", "add", "Kim")
    assert "birth date" in say("child", "forecast", "Kim", ends=2)
    say("child", "add", "Lou", "--born", "2024-02-29")
    assert "never measured" in say("child", "forecast", "Lou", ends=2)
    assert "was born on 2022-08-14" in say("child", "forecast", "Mina", "--on", "2020-01-01", ends=2)
    assert ".svg or .pdf" in say("child", "forecast", "Mina", "--out", "mina.jpg", ends=2)


@pytest.mark.parametrize("ending", ["json", "csv"])
def test_a_card_goes_out_and_comes_in_again(room: Path, ending: str) -> None:
    add_mina()
    before = card("Mina")
    say("child", "export", f"cards.{ending}")
    assert (room / f"cards.{ending}").stat().st_mode & 0o77 == 0
    say("child", "import", f"cards.{ending}", ends=2)
    say("child", "erase", "Mina", "--yes")
    assert "empty" in say("child", "list")
    say("child", "import", f"cards.{ending}")
    assert card("Mina") == before


def test_erasing_asks_first() -> None:
    add_mina()
    done = CliRunner().invoke(app, ["child", "erase", "Mina"], input="n\n")
    assert done.exit_code == 1
    assert card("Mina")
    say("child", "erase", "Nobody", "--yes", ends=2)


def test_notes_and_corrections() -> None:
    add_mina()
    say("child", "note", "Mina", "no scratchy labels")
    say("child", "correct", "Mina", "--to", "Mina B.", "--born", "2022-08-15")
    record = card("Mina B.")
    assert record["notes"][0]["text"] == "no scratchy labels"
    assert (record["born"], record["sex"]) == ("2022-08-15", "girl")
    say("child", "add", "Kim", "--born", "2999-01-01", ends=2)
    say("child", "add", "Mina b.", ends=2)


def test_a_size_run_is_written_size_by_size_and_stacked(room: Path) -> None:
    say("draft", "bib", "--sizes", "74..86", "--out", "run")
    written = {
        path.relative_to(room / "run").as_posix() for path in (room / "run").rglob("*") if path.is_file()
    }
    for size in (74, 80, 86):
        assert f"size-{size}/bib-{size}-pages.pdf" in written
    assert {"bib-all-sizes.svg", "bib-all-sizes-one-sheet.pdf", "bib-moves.pdf", "bib-moves.csv"} <= written
    record = json.loads(say("draft", "bodice", "--sizes", "92..98", "--data"))
    assert record["sizes"] == ["92", "98"]
    assert all(seam["matched"] for seam in record["seams"])
    assert "backwards" in say("draft", "bib", "--sizes", "98..92", ends=2)
    assert "leave --size" in say("draft", "bib", "--sizes", "92..98", "--size", "92", ends=2)


def test_a_size_run_by_the_makers_own_chart(room: Path) -> None:
    (room / "mine.csv").write_text("size,stature (cm),chest (cm)\nsmall,92,50\nlarge,104,54\n")
    record = json.loads(say("draft", "bodice", "--sizes", "mine.csv", "--data"))
    assert record["sizes"] == ["small", "large"]
    (steps,) = (move["steps_mm"] for move in record["moves"] if move["point"] == "front.A")
    assert steps == [[0.0, 0.0]]
    say("draft", "bodice", "--sizes", "mine.csv", "--out", "run")
    assert (room / "run" / "size-large" / "bodice-large-pages.pdf").is_file()
    say("draft", "bodice", "--sizes", "none.csv", ends=2)


def test_a_draft_by_age_alone_is_estimated_and_marked() -> None:
    found = [understand(Asked("bodice", age="4y", sex=sex), date(2026, 3, 1)) for sex in ("girl", "boy")]
    girl, boy = (one.wish.measurements for one in found if isinstance(one, Understood))
    # WHO 2006: the median height at 48 months is 102.7 cm for girls and 103.3 cm for boys.
    assert girl.mm("stature") == pytest.approx(1027, abs=0.6)
    assert boy.mm("stature") == pytest.approx(1033, abs=0.6)
    assert {reading.origin for _, reading in girl.readings} == {Origin.ESTIMATED}
    assert girl.nickname == "age 4 y"
    record = json.loads(say("draft", "bodice", "--age", "4y", "--girl", "--data"))
    assert {one["origin"] for one in record["measurements"].values()} == {"estimated"}
    assert "not taken on this child" in " ".join(one["message"] for one in record["problems"])
    say("draft", "bodice", "--age", "4", ends=2)


def test_a_card_without_readings_is_drafted_by_the_age_on_it() -> None:
    """As with --age: WHO 2006 gives 102.7 cm as the median height of girls at 48 months."""
    say("child", "add", "Runa", "--born", "2022-03-01", "--girl")
    found = understand(Asked("bodice", child="Runa"), date(2026, 3, 1))
    assert isinstance(found, Understood)
    assert found.wish.measurements.mm("stature") == pytest.approx(1027, abs=0.6)
    assert found.wish.measurements.nickname == "Runa"
    assert [one.code for one in found.problems] == ["never-measured"]
    say("child", "add", "Lena")
    assert "Nothing is known" in say("draft", "bodice", "--child", "Lena", "--data", ends=1)


def test_beside_an_age_what_was_measured_decides_on_the_rest() -> None:
    asked = (Asked("bodice", age="4y", sex="girl", measure=(f"chest={chest}cm",)) for chest in (50, 60))
    lean, stout = (one.wish for one in (understand(each, date(2026, 3, 1)) for each in asked))  # type: ignore[union-attr]
    assert lean.measurements.age_months == stout.measurements.age_months == 48.0
    waists = [fulfil(wish).draft.measurements.mm("waist") for wish in (lean, stout)]
    assert waists[1] - waists[0] > 30.0, "a stouter chest goes with a stouter waist"


def test_the_chart_is_printed_with_its_origins() -> None:
    assert "Chest girth" in say("sizes", "92..104")
    rows = json.loads(say("sizes", "92..98", "--data"))
    assert [row["size"] for row in rows] == [92, 98]
    assert rows[0]["measurements"]["chest"]["source"]
    say("sizes", "93", ends=2)


@pytest.mark.parametrize(
    ("text", "months"),
    [("4y", 48), ("18m", 18), ("4y6m", 54), ("4 y 6 months", 54), ("1.5 years", 18), ("0m", 0)],
)
def test_ages_as_people_say_them(text: str, months: float) -> None:
    assert read_age(text) == months


@pytest.mark.parametrize("text", ["", "4", "four", "30y", "y", "-1y"])
def test_ages_that_are_none(text: str) -> None:
    assert isinstance(read_age(text), Problem)


def test_days_that_are_none() -> None:
    assert isinstance(read_day("31.3.2026"), Problem)


def test_a_backup_is_made_listed_and_put_back(room: Path) -> None:
    assert "no backups" in say("child", "restore")
    add_mina()
    made = " ".join(say("child", "backup").split())
    assert "1 card, 1 set of readings, 0 drafts" in made
    assert "Own recipes, settings and what lies on the table are not in it" in made
    before = card("Mina")
    say("child", "note", "Mina", "written after the backup")
    (backup,) = say("child", "restore").split()
    assert CliRunner().invoke(app, ["child", "restore", backup], input="n\n").exit_code == 1
    assert card("Mina") != before
    assert "lies in" in say("child", "restore", backup, "--yes")
    assert card("Mina") == before
    (room / "poem.json").write_text("Es war einmal")
    assert "no backup" in " ".join(say("child", "restore", "poem.json", "--yes", ends=2).split())
    assert card("Mina") == before


def test_each_measurement_is_told_with_the_recipes_that_ask_for_it() -> None:
    said = " ".join(say("measurements", "body_rise").split())
    assert "ISO 8559-1" in said
    assert "trousers" in said
    assert "bib" not in said
    rows = json.loads(say("measurements", "--data"))
    assert len(rows) > 20
    assert all(row["standing"] and row["lying"] for row in rows)
    assert "Körpergröße" in say("measurements", "stature", "--language", "de")
    say("measurements", "nose", ends=2)


def damaged(room: Path) -> Path:
    file = room / "data" / "backups" / "damaged-20260101-000000.sqlite"
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(b"SQLite format 3\0" + b"Mina" * 2000)
    return file


def erased(answers: str, *words: str) -> tuple[int, str]:
    done = CliRunner().invoke(app, ["child", "erase", "Mina", *words], input=answers)
    return done.exit_code, done.output


@pytest.mark.parametrize(("answer", "stays"), [("y", False), ("n", True)])
def test_erasing_names_damaged_boxes_and_asks_for_them(room: Path, answer: str, stays: bool) -> None:  # noqa: FBT001
    add_mina()
    file = damaged(room)
    status, said = erased(f"y\n{answer}\n")
    assert str(file) in said
    assert status == (2 if stays else 0)
    assert ("may still hold it" in " ".join(said.replace("│", " ").split())) is stays
    assert file.exists() is stays
    say("child", "show", "Mina", ends=2)


def test_damaged_boxes_are_deleted_without_asking_where_that_is_said(room: Path) -> None:
    add_mina()
    file = damaged(room)
    assert erased("", "--yes", "--damaged-too")[0] == 0
    assert not file.exists()
    assert "Erase everything" not in erased("", "--yes")[1]


def test_a_child_erased_by_command_is_off_the_table_of_the_workroom_too(room: Path) -> None:
    add_mina()
    day = date(2026, 11, 20)
    for name in ("Mina", "Jo"):
        keep_recent(room / "data", Recent("bib", (("for-name", name), ("chest", "56 cm")), day))
    say("child", "erase", "mina", "--yes")
    assert [one.who for one in read_recent(room / "data")] == ["Jo"]
