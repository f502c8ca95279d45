"""The instruction sheet read back by a reader that did not write it."""

from __future__ import annotations

import io
import re
from datetime import date

import pytest
from pypdf import PdfReader

from littlefold.body.tape import EIGHTH
from littlefold.booklet.formula import worked_out
from littlefold.booklet.instructions import instruction_sheet, sheet_data
from littlefold.draft.sentence import Speech, sentence
from littlefold.problem import Problem, Severity
from littlefold.sheet.paper import Paper, read_paper
from tests.booklet.flow import of_text, shipped

MADE = date(2026, 11, 25)
A4 = read_paper("A4")
LETTER = read_paper("US Letter")
assert isinstance(A4, Paper)
assert isinstance(LETTER, Paper)
POINT = 25.4 / 72  # one unit of a PDF page in mm (ISO 32000-1, 8.3.2.3)


def squeezed(text: str) -> str:
    """The letters alone: how a reader joins lines and hyphens is its own affair."""
    return re.sub(r"[\s\u00ad\u2010-]+", "", text)


def read(pdf: bytes) -> str:
    return squeezed(" ".join(page.extract_text() for page in PdfReader(io.BytesIO(pdf)).pages))


@pytest.mark.parametrize("name", ["casing-top", "collar", "circle-skirt"])
def test_it_says_every_step(name: str) -> None:
    pattern, problems = shipped(name)
    speech = Speech()
    text = read(instruction_sheet(pattern, problems, speech, A4, MADE))
    assert pattern.draft.steps
    for step in pattern.draft.steps:
        assert squeezed(sentence(step, speech)) in text, step.name
    for words in (*pattern.draft.work, *pattern.draft.cautions, pattern.draft.title, "25 Nov 2026", "Runa"):
        assert squeezed(words) in text


@pytest.mark.parametrize("paper", [A4, LETTER], ids=lambda paper: paper.name)
def test_pages_have_the_size_of_the_paper(paper: Paper) -> None:
    pattern, problems = shipped("bib")
    pages = PdfReader(io.BytesIO(instruction_sheet(pattern, problems, Speech(), paper, MADE))).pages
    assert pages
    for page in pages:
        size = (float(page.mediabox.width) * POINT, float(page.mediabox.height) * POINT)
        assert size == pytest.approx((paper.width, paper.height), abs=0.01)


def test_the_formula_has_the_numbers_of_the_child() -> None:
    """A chest of 56 cm: 56 / 4 + 1.27 = 15.27 cm (half an inch is 1.27 cm)."""
    pattern, problems = shipped("casing-top")
    numbers = {row["name"]: row for row in sheet_data(pattern, problems, Speech(), A4, MADE)["numbers"]}
    assert numbers["scye"]["formula"] == "chest / 4 + 1/2 in = 56 cm / 4 + 1.27 cm"  # 1 in is 2.54 cm
    assert numbers["scye"]["value"] == "15.27 cm"


def test_a_tape_speaks_its_marks() -> None:
    """15.27 cm are 6.012 in: on a tape of eighths 6 in, and the draft is drawn so (LANGUAGE.md, tape rounding)."""
    pattern, problems = shipped("casing-top", EIGHTH)
    speech = Speech("in", EIGHTH)
    steps = [
        step
        for sheet in sheet_data(pattern, problems, speech, LETTER, MADE)["sheets"]
        for step in sheet["steps"]
    ]
    down = next(step for step in steps if step["formula"].startswith("scye"))
    assert down["sentence"] == "From C measure 6 in straight down and mark E."
    drawn = pattern.draft.points["body.C"].at.distance(pattern.draft.points["body.E"].at)
    assert drawn == pytest.approx(6 * 25.4)


def test_estimates_are_marked() -> None:
    """Only stature and chest were measured; the neck was not."""
    pattern, problems = shipped("casing-top")
    rows = {row["title"]: row for row in sheet_data(pattern, problems, Speech(), A4, MADE)["measurements"]}
    assert rows["Chest girth"]["certain"]
    assert rows["Chest girth"]["origin"] == "measured"
    assert not rows["Neck girth"]["certain"]
    assert "estimated" in rows["Neck girth"]["origin"]
    assert rows["Neck girth"]["how"]


def test_findings_come_with_errors_first_and_rules_among_the_cautions() -> None:
    pattern, _ = shipped("casing-top")
    problems = (
        Problem("a-note", "A note.", Severity.NOTE),
        Problem("an-error", "An error.", Severity.ERROR),
        Problem("a-rule", "A cord at the neck.", Severity.ERROR, rule="EN 14682"),
    )
    data = sheet_data(pattern, problems, Speech(), A4, MADE)
    assert [finding["message"] for finding in data["findings"]] == ["An error.", "A note."]
    assert data["cautions"][0] == {
        "severity": "Must be put right",
        "grave": True,
        "message": "A cord at the neck.",
        "rule": "EN 14682",
    }
    text = read(instruction_sheet(pattern, problems, Speech(), A4, MADE))
    assert text.index("Acordattheneck.") < text.index("Whattomeasure")
    for words in ("EN14682", "nolegaladvice", "Localrules", "Scissors,needlesandpins"):
        assert words in text


HOSTILE = '#panic("no") $x$ *b* @preview/a:1 \\u{41} </script> [c] <d> _e_ // f'


def test_hostile_words_come_out_as_words() -> None:
    said = HOSTILE.replace("\\", "/").replace('"', "'")
    pattern, problems = of_text(
        f"""recipe hostile
title "{said}"
drawing s
point A at the start
point B right of A by 4 cm "{said}"
line l from A to B
work "{said}"
caution "{said}"
"""
    )
    text = read(instruction_sheet(pattern, problems, Speech(), A4, MADE))
    assert pattern.draft.title == said
    assert text.count(squeezed(said)) >= 4


def test_the_same_draft_makes_the_same_bytes() -> None:
    pattern, problems = shipped("bib")
    one, two = (instruction_sheet(pattern, problems, Speech(), A4, MADE) for _ in range(2))
    assert one == two


def test_a_draft_without_steps_still_makes_a_sheet() -> None:
    pattern, problems = of_text('recipe empty\ntitle "Nothing yet"\n')
    assert "Nothingyet" in read(instruction_sheet(pattern, problems, Speech(), A4, MADE))


def test_paper_is_named_as_folded_where_it_is() -> None:
    """The published bib is drawn on paper of 15 by 11 in, folded lengthwise (School Needlework, Child's Bib)."""
    pattern, problems = shipped("bib")
    papers = sheet_data(pattern, problems, Speech("in"), LETTER, MADE)["papers"]
    found = re.match(r"bib: ([\d /]+) in by ([\d /]+) in, folded in half$", papers[0])
    assert found, papers
    assert found[2] == "15"


def test_a_piece_without_allowances_says_so_once() -> None:
    pattern, problems = shipped("bib")
    rows = {row["title"]: row for row in sheet_data(pattern, problems, Speech(), A4, MADE)["allowances"]}
    assert rows["Neck binding and strap"]["bare"]
    assert not rows["Bib"]["bare"]


def test_another_language_says_steps_and_headings() -> None:
    pattern, problems = shipped("casing-top")
    speech = Speech(language="de")
    text = read(instruction_sheet(pattern, problems, speech, A4, MADE))
    assert "DasSchnittmusterzeichnen" in text
    for step in pattern.draft.steps:
        assert squeezed(sentence(step, speech)) in text, step.name


def test_a_step_done_again_in_the_same_way_has_no_second_picture() -> None:
    pattern, problems = shipped("casing-top")
    data = sheet_data(pattern, problems, Speech(), A4, MADE)
    told = [
        ((step["sentence"], step["guide"], step["formula"]), step["picture"], sheet["name"])
        for sheet in data["sheets"]
        for step in sheet["steps"]
    ]
    bare = [number for number, (_, picture, _) in enumerate(told) if picture is None]
    assert bare
    for number in bare:
        assert any(
            said == told[number][0] and picture and name != told[number][2]
            for said, picture, name in told[:number]
        )


def test_a_measurement_of_the_recipes_own_says_how_it_is_taken() -> None:
    text = (
        'title "Bag"\nown measure strap "over the shoulder to the hip" or else 60 cm\n'
        "drawing bag\npoint A at the fold\npoint B right of A by strap / 4\nline top from A to B\n"
    )
    pattern, problems = of_text(text)
    rows = sheet_data(pattern, problems, Speech(), A4, MADE)["measurements"]
    assert [(row["title"], row["how"]) for row in rows] == [("strap", "over the shoulder to the hip")]


@pytest.mark.parametrize("name", ["chest", "größe", "Ärmel", "गला", "คอเสื้อ"])
def test_a_name_in_any_script_gets_its_number(name):
    assert worked_out(f"{name} / 4 + 1 cm", {name: "56 cm"}, "15 cm", Speech()).endswith(
        "56 cm / 4 + 1 cm = 15 cm"
    )


@pytest.mark.parametrize(
    ("formula", "units", "said"),
    [
        ("chest / 4 + 1/2 in", "cm", "60 / 4 + 1.27 cm"),  # 1 in is 2.54 cm
        ("chest * 2 - 1 1/2 in", "cm", "60 \u00d7 2 \u2212 3.81 cm"),
        ("chest + 2.54 cm + 1/4 in", "in", "60 + 1 in + 1/4 in"),
        ("chest + 127 mm", "in", "60 + 5 in"),
        ("chest + 12 mm", "cm", "60 + 12 mm"),  # both on a metric ruler
    ],
)
def test_the_numbers_are_all_on_one_ruler(formula: str, units: str, said: str) -> None:
    assert worked_out(formula, {"chest": "60"}, "", Speech(units)).split(" = ")[1] == said


def test_paper_is_asked_for_what_is_drawn_on_it_and_by_its_own_name() -> None:
    """Wholes and flats of the frock are only cut apart; both skirts are far wider than what they are slashed from."""
    pattern, problems = shipped("yoke-frock")
    papers = sheet_data(pattern, problems, Speech(), A4, MADE)["papers"]
    widths = {row.partition(":")[0]: float(row.partition(": ")[2].partition(" cm")[0]) for row in papers}
    assert set(widths) == {"back", "front", "front yoke", "front skirt", "back skirt", "back yoke"}
    assert min(widths["front skirt"], widths["back skirt"]) > 1.5 * max(
        widths["front yoke"], widths["back yoke"]
    )
