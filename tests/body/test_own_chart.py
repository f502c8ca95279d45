"""Charts of the maker's own: read, refused in words, and what is odd about them reported."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.body.chart import SIZES, chart_row
from littlefold.body.own_chart import read_own_chart
from littlefold.problem import Severity

# standards.md 2.4: a published Nordic chart, 92 to 122.  Its chest lies 3.7 to 4.7 cm over the survey's medians.
NORDIC = """size, stature (cm), chest (cm), waist (cm), hip (cm), back_waist (cm), arm (cm)
92, 92, 54, 53, 58, 22.5, 32
98, 98, 56, 54, 60, 24, 34
104, 104, 58, 55, 62, 25, 36
110, 110, 60, 56, 64, 26.5, 38
116, 116, 62, 57, 66, 28, 40
122, 122, 64, 58, 68, 29.5, 42
"""


def codes(text: str, **unit: str) -> list[str]:
    return [problem.code for problem in read_own_chart(text, **unit)[1]]  # type: ignore[arg-type]


def test_a_published_chart_is_read_and_its_room_is_noticed() -> None:
    chart, problems = read_own_chart(NORDIC)
    assert chart is not None
    assert chart.labels == ("92", "98", "104", "110", "116", "122")
    assert chart.column("back_waist") == (225, 240, 250, 265, 280, 295)
    assert chart.column("knee") == ()
    assert {problem.severity for problem in problems} == {Severity.WARNING}
    assert {problem.code for problem in problems} == {"chart-outside"}
    chest = next(problem for problem in problems if problem.message.startswith("Chest"))
    assert "size 92, 98, 104, 110:" in chest.message


def test_the_built_in_chart_passes_its_own_judgement() -> None:
    names = ("stature", "chest", "waist", "hip", "neck", "arm", "back_waist", "head")
    rows = [[str(size), *(f"{chart_row(size).mm(name):.1f} mm" for name in names)] for size in SIZES]
    chart, problems = read_own_chart("\n".join(",".join(row) for row in [["size", *names], *rows]))
    assert chart is not None
    assert problems == ()


@pytest.mark.parametrize("sign", [";", "\t", ","])
def test_signs_between_cells(sign: str) -> None:
    chart, problems = read_own_chart(NORDIC.replace(",", sign))
    assert chart is not None
    assert len(chart.bodies) == 6
    assert problems


def test_units_stand_in_the_heading_or_in_the_cell_or_are_given() -> None:
    for text in ("size,stature (in)\n104,41", 'size;stature\n104;"41 in"', "size,stature\n104,1041.4 mm"):
        chart, problems = read_own_chart(text)
        assert problems == ()
        assert chart is not None
        assert chart.bodies[0].mm("stature") == pytest.approx(1041.4)
    chart, _ = read_own_chart("size,stature\n104,104", "cm")
    assert chart is not None
    assert codes("size,stature\n104,104") == ["unit-missing"]


def test_sizes_come_in_order_of_stature() -> None:
    chart, _ = read_own_chart("size,stature (cm)\nlarge,120\nsmall,90")
    assert chart is not None
    assert chart.labels == ("small", "large")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("", ["chart-empty"]),
        ("size,stature (cm)", ["chart-empty"]),
        ("size,chst (cm)\n98,54", ["measurement-unknown"]),
        ("size,chest (cm)\n98,54", ["chart-without-stature"]),
        ("size,stature (cm),stature (cm)\n98,98,98", ["chart-column-twice"]),
        ("size,stature (ell)\n98,98", ["unit-unknown"]),
        ("size,stature (cm),chest (cm)\n98,98", ["chart-ragged"]),
        ("size,stature (cm),chest (cm)\n98,98,0", ["measurement-zero"]),
        (
            "size,stature (cm),chest (cm)\n98,98,wide\n104,x,58",
            ["length-not-understood", "length-not-understood"],
        ),
        ("size,stature (cm)\n" + "98,98\n" * 101, ["chart-empty"]),
    ],
)
def test_what_is_not_understood(text: str, expected: list[str]) -> None:
    chart, problems = read_own_chart(text)
    assert chart is None
    assert [problem.code for problem in problems] == expected


def test_a_chart_that_falls_jumps_or_keeps_another_pace() -> None:
    statures = (92, 98, 104, 110, 116)

    def judged(*chests: float) -> list[str]:
        rows = "\n".join(f"{s},{s},{c}" for s, c in zip(statures, chests, strict=True))
        return [code for code in codes("size,stature (cm),chest (cm)\n" + rows) if code != "chart-outside"]

    assert judged(50, 51.6, 53.5, 55.5, 57.7) == []  # the survey's medians, standards.md 2.1
    assert judged(50, 49, 53.5, 55.5, 57.7) == ["chart-falls"]
    assert judged(50, 51, 52, 57.5, 58.5) == ["chart-jumps"]
    assert judged(50, 50.2, 50.4, 50.6, 50.8) == ["chart-pace"]
    assert judged(47, 51, 55, 59, 63) == ["chart-pace"]


@given(st.text(alphabet="size,tauren ch(m)0123456789.\n;\"'\t", max_size=120))
@settings(max_examples=200)
def test_any_text_gives_a_chart_or_problems(text: str) -> None:
    chart, problems = read_own_chart(text, "cm")
    assert chart is not None or problems
