"""Findings in other languages and units: no sentence is missing, no place is lost, and nothing comes out in English."""

from __future__ import annotations

import ast
import re
from datetime import date
from importlib.resources import files
from pathlib import Path
from string import Formatter
from typing import TYPE_CHECKING

import pytest

import littlefold
from littlefold.body.measurements import Measurements
from littlefold.body.plausible import examine
from littlefold.body.register import NAMES, REGISTER, register_in
from littlefold.body.slips import SLIPS
from littlefold.booklet.needs import measurement_rows
from littlefold.booklet.spoken import findings, spoken, word
from littlefold.booklet.wording import wording
from littlefold.check import check, registered
from littlefold.draft.sentence import Speech, languages
from littlefold.problem import Measured, Problem, Saying, say
from littlefold.recipe import tree
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names, shipped_text
from littlefold.sheet.wording import sheet_words, spoken_date
from tests.booklet.flow import shipped
from tests.check.examples import EXAMPLES
from tests.check.safety_examples import SAFETY_EXAMPLES

if TYPE_CHECKING:
    from collections.abc import Iterator

DOUBTS = {
    *SLIPS,
    "reading-doubtful",
    "measure-again",
    "reading-impossible",
    "reading-unusual",
    "body-unknown",
}
"""What is said of readings: made from its numbers by its code, since English words it freely."""
OTHERS = [language for language in languages() if language != "en"]
EXAMPLES_OF_ALL = {**EXAMPLES, **SAFETY_EXAMPLES}
GERMAN = Speech(language="de")


def written_sayings() -> set[str]:
    """Every sentence that stands in the source as `say("...")`."""
    source = Path(littlefold.__file__).parent
    trees = (ast.parse(path.read_text("utf-8")) for path in source.rglob("*.py"))
    calls = (node for tree in trees for node in ast.walk(tree) if isinstance(node, ast.Call))
    said = (call.args[0] for call in calls if getattr(call.func, "id", "") == "say" and call.args)
    return {part.value for part in said if isinstance(part, ast.Constant) and isinstance(part.value, str)}


def places(pattern: str) -> set[str]:
    return {place for _, place, _, _ in Formatter().parse(pattern) if place}


@pytest.mark.parametrize("language", OTHERS)
def test_every_sentence_of_the_source_is_in_every_language(language: str) -> None:
    said = findings(language)
    wanted = written_sayings()
    assert len(wanted) > 140
    assert sorted(wanted - said.keys()) == []


@pytest.mark.parametrize("language", OTHERS)
def test_a_translation_has_the_places_of_its_original(language: str) -> None:
    sentences = {english: said for english, said in findings(language).items() if english not in DOUBTS}
    assert [english for english, said in sentences.items() if places(english) != places(said)] == []


def sayings(saying: Saying) -> Iterator[Saying]:
    """A saying and those within it; what a recipe calls its elastic or its cord may be any name."""
    yield saying
    for place, part in saying.parts:
        if isinstance(part, Saying) and place not in {"notion", "cord"}:
            yield from sayings(part)


@pytest.mark.parametrize("language", OTHERS)
@pytest.mark.parametrize("code", sorted(EXAMPLES_OF_ALL))
def test_the_failing_example_of_every_check_is_said_whole(code: str, language: str) -> None:
    example = EXAMPLES_OF_ALL[code]
    found = [one for one in check(example.fails(), example.circumstances) if one.code == code]
    assert found
    known = findings(language)
    for problem in found:
        assert problem.said
        told = [one.pattern for saying in problem.said for one in sayings(saying)]
        # What has letters outside its places is said in words, and all of those are translated.
        in_words = [
            pattern for pattern in told if any(text.strip(" ,") for text, *_ in Formatter().parse(pattern))
        ]
        assert [pattern for pattern in in_words if pattern not in known] == []
        (said,) = spoken((problem,), Speech(language=language))
        assert said.message != problem.message
        assert (said.code, said.numbers, said.place) == (problem.code, problem.numbers, problem.place)


def test_there_is_an_example_of_every_check() -> None:
    assert {rule.code for rule in registered()} == set(EXAMPLES_OF_ALL)


def one(**parts: Measured) -> Problem:
    saying = say("The armhole is {reach}.", **parts)
    return Problem("x", str(saying), said=(saying,))


@pytest.mark.parametrize(
    ("value", "speech", "words"),
    [
        (Measured(212.5), Speech(), "21.25 cm"),
        (Measured(212.5), Speech("in"), "8.37 in"),
        (Measured(212.5), GERMAN, "21,25 cm"),
        (Measured(254.0), Speech("in", language="de"), "10 Zoll"),
        (Measured(535.2, "tape"), Speech(), "53.5 cm"),
        (Measured(535.5, "estimate"), GERMAN, "53,6 cm"),
        (Measured(255.6, "tape"), Speech("in"), "10 1/16 in"),
        (Measured(253.0, "estimate"), Speech("in", language="de"), "10 Zoll"),
        (Measured(87.5, "degrees"), GERMAN, "87,5 Grad"),
        (Measured(0.4, "share"), GERMAN, "40%"),
        (Measured(1.25, "ratio"), GERMAN, "1,25"),
        (Measured(3, "count"), GERMAN, "3"),
    ],
)
def test_values_are_in_the_makers_units_and_signs(value: Measured, speech: Speech, words: str) -> None:
    (said,) = spoken((one(reach=value),), speech)
    assert said.message == f"The armhole is {words}."


@pytest.mark.parametrize("speech", [Speech(), Speech("in"), GERMAN], ids=["cm", "in", "de"])
def test_the_note_on_measurements_says_what_the_instruction_sheet_says(speech: Speech) -> None:
    pattern, problems = shipped("sleeve")
    rows = [
        row for row in measurement_rows(pattern.draft, wording(speech.language), speech) if not row["certain"]
    ]
    assert len(rows) > 5
    (note,) = spoken((one for one in problems if one.code == "measurements-estimated"), speech)
    assert all(f" {row['value']} (" in note.message for row in rows), note.message


def test_the_widest_head_is_said_as_a_tape_shows_it() -> None:
    """The growth references give fractions of a millimetre, which nobody measures on a head."""
    _, problems = shipped("sleeve")
    (neck,) = (one for one in problems if one.code == "neck-passes-head")
    found = re.search(r"one of 33 such children has (\S+) cm or more", neck.message)
    assert found
    assert float(found[1]) * 10 == round(float(found[1]) * 10)
    (said,) = spoken((neck,), Speech("in"))
    assert re.search(r"one of 33 such children has \d+( \d/\d)? in or more", said.message)


def test_a_name_of_the_recipe_is_never_read_as_a_sentence() -> None:
    saying = say("{words}", words="{reach} and {0} and }{")
    (said,) = spoken((Problem("x", str(saying), said=(saying,)),), GERMAN)
    assert said.message == "{reach} and {0} and }{"


def test_a_name_of_a_page_is_shortened() -> None:
    saying = say("{name} is {value} long.", name="z" * 3000, value=Measured(10.0))
    (said,) = spoken((Problem("x", str(saying), said=(saying,)),), GERMAN)
    assert len(said.message) < 100


def test_english_in_centimetres_is_as_the_checks_say_it() -> None:
    problem = one(reach=Measured(212.5))
    assert spoken((problem,), Speech()) == (problem,)


@pytest.mark.parametrize("language", OTHERS)
def test_every_measurement_has_its_words(language: str) -> None:
    said = register_in(language)
    for name in NAMES:
        mine, english = said[name], REGISTER[name]
        assert mine.title != english.title
        assert mine.how_standing != english.how_standing
        assert mine.how_lying != english.how_lying
        assert word(name.replace("_", " "), language) != name.replace("_", " ") or language == "en"
    assert said["chest"].iso_term == REGISTER["chest"].iso_term


@pytest.mark.parametrize("language", OTHERS)
def test_every_word_of_the_sheets_is_there(language: str) -> None:
    mine, english = sheet_words(language), sheet_words("en")

    def shape(value: object) -> object:
        if isinstance(value, dict):
            return {key: shape(part) for key, part in value.items()}
        return len(value) if isinstance(value, list) else places(str(value))

    assert shape(mine) == shape(english)
    assert files("littlefold.sheet").joinpath("words", f"{language}.toml").is_file()


def test_a_date_in_german() -> None:
    assert spoken_date(date(2026, 3, 5), "de") == "5. März 2026"
    assert spoken_date(date(2026, 3, 5)) == "5 Mar 2026"


@pytest.mark.parametrize("language", OTHERS)
def test_what_the_shipped_recipes_need_beside_the_cloth_has_a_word(language: str) -> None:
    recipes = (parse(shipped_text(name) or "") for name in shipped_names())
    lines = [line for recipe in recipes for line in recipe.all_of(tree.NotionLine)]
    names = {
        part.text.replace("_", " ") for line in lines for part in (line.name, line.at) if part is not None
    }
    assert names
    assert sorted(names - findings(language).keys()) == []


# Readings of a child of 104 cm [mm], and a word that the doubt about them has in German.
ODD = {
    "half": ({"chest": 268.0, "waist": 500.0, "hip": 560.0}, "Hälfte"),
    "in millimetres": ({"chest": 53.5, "waist": 500.0}, "Brustumfang 5,35 cm"),
    "impossible": ({"neck": 900.0, "chest": 540.0, "waist": 505.0}, "Halsumfang 90 cm"),
}


@pytest.mark.parametrize("kind", ODD)
def test_doubts_about_readings_in_german(kind: str) -> None:
    readings, said = ODD[kind]
    doubts = examine(Measurements.of({"stature": 1040.0, **readings}))
    assert doubts
    told = spoken(doubts, GERMAN)
    assert all(mine.message != theirs.message for mine, theirs in zip(told, doubts, strict=True))
    assert any(said in one.message for one in told)


@pytest.mark.parametrize("language", OTHERS)
def test_every_doubt_about_a_reading_has_its_words(language: str) -> None:
    assert sorted(DOUBTS - findings(language).keys()) == []
