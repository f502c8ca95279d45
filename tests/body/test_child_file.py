"""A child's file: what is read, and what is refused in words."""

from __future__ import annotations

import json
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.body.child import age_in_months, child_from_json, unknown_measurement
from littlefold.body.register import NAMES

TODAY = date(2026, 11, 25)


def read(**entries: object) -> tuple[object, list[str]]:
    child, problems = child_from_json(json.dumps(entries), TODAY)
    return child, [problem.code for problem in problems]


def test_reads_a_child() -> None:
    text = '{"name": "Mira", "born": "2022-11-25", "sex": "girl", "measurements": {"chest": "56 cm", "hip": "22 1/2 in"}}'
    child, problems = child_from_json(text, TODAY)
    assert problems == ()
    assert child is not None
    assert child.nickname == "Mira"
    assert child.sex == "girl"
    assert child.age_months == pytest.approx(48.0, abs=0.05)
    assert child.lengths() == pytest.approx({"chest": 560.0, "hip": 571.5})


def test_bad_readings_are_left_out_and_reported_together() -> None:
    child, problems = child_from_json(
        '{"measurements": {"chest": "56 cm", "wiast": "50 cm", "hip": "1,234", "head": 500, "neck": "0 cm", "arm": null}}',
        TODAY,
    )
    assert child is not None
    assert list(child) == ["chest"]
    assert [problem.code for problem in problems] == [
        "measurement-unknown", "length-ambiguous", "unit-missing", "measurement-zero", "measurement-misshapen",
    ]  # fmt: skip
    assert "waist" in problems[0].message
    assert problems[1].message.startswith("hip:")


@pytest.mark.parametrize(
    ("entries", "code"),
    [
        ({"born": "25.11.2022"}, "birth-date-unreadable"),
        ({"born": "2027-01-01"}, "birth-date-ahead"),
        ({"sex": "f"}, "child-file-misshapen"),
        ({"weight": 12}, "child-file-misshapen"),
        ({"measurements": []}, "child-file-misshapen"),
        ({"name": "x" * 201}, "child-file-misshapen"),
    ],
)
def test_what_is_refused(entries: dict[str, object], code: str) -> None:
    assert read(**entries)[1] == [code]


@pytest.mark.parametrize("text", ["", "{", "[1]", "null", "[" * 100_000, '{"measurements": {"chest": NaN}}'])
def test_what_is_no_child_gives_problems_and_no_traceback(text: str) -> None:
    _, problems = child_from_json(text, TODAY)
    assert problems


@given(
    st.recursive(
        st.none() | st.booleans() | st.floats() | st.text(max_size=9),
        lambda inner: (
            st.lists(inner)
            | st.dictionaries(st.sampled_from(["name", "born", "sex", "measurements", "chest"]), inner)
        ),
        max_leaves=12,
    )
)
@settings(max_examples=200)
def test_any_json_gives_a_child_or_problems(entries: object) -> None:
    child, problems = child_from_json(json.dumps(entries), TODAY)
    assert child is not None or problems


@pytest.mark.parametrize("name", NAMES)
def test_a_slipped_letter_finds_its_name(name: str) -> None:
    slipped = name[1] + name[0] + name[2:]
    assert f"“{name}”?" in unknown_measurement(slipped).message


def test_a_strange_name_lists_what_there_is() -> None:
    assert "stature, head" in unknown_measurement("xyzzy").message


def test_months_are_those_of_who() -> None:
    # WHO's month is 30.4375 days; four years with one leap day are 1461 days (standards.md 1.2).
    assert age_in_months(date(2020, 1, 1), date(2024, 1, 1)) == 48.0
