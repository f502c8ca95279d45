"""The growth picture: readings where they belong, WHO's curves through WHO's numbers, the band round the forecast."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from itertools import pairwise

import pytest

from littlefold.body.growth import Forecast, forecast
from littlefold.body.measurements import Measurements, Reading
from littlefold.body.room import Room, room_to_grow
from littlefold.booklet.card_sheet import SMALL_SIZE, CardSheet, card_sheet, sheet_data
from littlefold.booklet.growth_picture import LARGE, WORDS, Taken, growth_picture
from littlefold.draft.sentence import Speech
from littlefold.drawing import Dot, Drawing, Label, Meaning, Stroke, mark_bounds

DAY = date(2026, 11, 20)


def taken(*pairs: tuple[float, float]) -> tuple[Taken, ...]:
    return tuple(
        Taken(
            DAY, Measurements.of({"stature": mm, "chest": 560.0}, age_months=age, sex="girl", nickname="Mina")
        )
        for age, mm in pairs
    )


def later(some: tuple[Taken, ...], age: float) -> Forecast:
    found = forecast(some[-1].body, age)
    assert isinstance(found, Forecast)
    return found


def named(picture: Drawing, name: str, kind: type = Stroke) -> list:
    return [mark for mark in picture.marks if mark.name == name and isinstance(mark, kind)]


def scale(picture: Drawing) -> tuple[float, float]:
    """Paper [mm] for a month, and for a millimetre of height, from the lines of the grid."""
    across = [stroke.path.start.x for stroke in named(picture, "age")]
    up = [stroke.path.start.y for stroke in named(picture, "length")]
    numbers = [float(label.text.split()[0]) * 10 for label in named(picture, "length", Label)]
    months = [_months(label.text) for label in named(picture, "age", Label)]
    return (across[1] - across[0]) / (months[1] - months[0]), (up[1] - up[0]) / (numbers[1] - numbers[0])


def _months(said: str) -> int:
    """Of `4 y 3 m`."""
    numbers = dict(zip(said.split()[1::2], map(int, said.split()[::2]), strict=True))
    return 12 * numbers.get("y", 0) + numbers.get("m", 0)


def test_curves_go_through_the_published_numbers() -> None:
    """WHO 2006, girls: P3, P50 and P97 of height at 48 months are 94.6, 102.7 and 110.8 cm; at 60 months P50 is 109.4."""
    some = taken((48.0, 1027.0))
    picture = growth_picture(some, later(some, 60.0))
    month, mm = scale(picture)
    (dot,) = named(picture, "reading", Dot)

    def height_at(curve: str, age: float) -> float:
        x = dot.at.x + (age - 48.0) * month
        path = named(picture, curve)[-1].path
        points = path.flatten()
        low, high = next(pair for pair in pairwise(points) if pair[0].x <= x <= pair[1].x)
        y = low.y + (high.y - low.y) * (x - low.x) / (high.x - low.x)
        return 1027.0 + (y - dot.at.y) / mm

    assert height_at("P3", 48.0) == pytest.approx(946, abs=1.5)
    assert height_at("P50", 48.0) == pytest.approx(1027, abs=1.0)
    assert height_at("P97", 48.0) == pytest.approx(1108, abs=1.5)
    assert height_at("P50", 60.0) == pytest.approx(1094, abs=1.5)


def test_the_forecast_begins_at_the_reading_and_stays_within_its_band() -> None:
    some = taken((36.0, 950.0), (48.0, 1010.0))
    picture = growth_picture(some, later(some, 72.0))
    (middle,), (low, high) = named(picture, "forecast"), named(picture, "forecast.range")
    newest = named(picture, "reading", Dot)[-1].at
    for line in (low, middle, high):
        assert line.path.start.distance(newest) < 1e-6
    assert low.path.end.y < middle.path.end.y < high.path.end.y


@pytest.mark.parametrize(
    ("age", "mm"), [(0.5, 540.0), (9.0, 700.0), (24.0, 860.0), (100.0, 1290.0), (220.0, 1640.0)]
)
@pytest.mark.parametrize("name", ["stature", "chest"])
def test_all_lines_lie_within_the_field(age: float, mm: float, name: str) -> None:
    some = taken((age, mm))
    picture = growth_picture(some, later(some, age + 8.0), name)
    for mark in picture.marks:
        if not isinstance(mark, Label):
            box = mark_bounds(mark)
            assert box.left >= -1e-6
            assert box.bottom >= -1e-6
            assert box.right <= LARGE[0] + 1e-6
            assert box.top <= LARGE[1] + 1e-6


def test_the_step_from_lying_to_standing_is_shown_as_a_gap() -> None:
    some = taken((20.0, 830.0))
    picture = growth_picture(some, later(some, 32.0))
    first, second = named(picture, "P50")
    assert first.path.end.y > second.path.start.y, "standing is 0.7 cm less"


# WHO 2006 [cm]: girl of 48 months, head P50 49.33 and P97 52.00; upper arm P50 16.25, P97 19.24.
@pytest.mark.parametrize(("name", "middle", "high"), [("head", 493.3, 520.0), ("upper_arm", 162.5, 192.4)])
def test_head_and_arm_have_percentiles_by_age(name: str, middle: float, high: float) -> None:
    body = Measurements.of({"stature": 1027.0, name: middle}, age_months=48.0, sex="girl")
    some = (Taken(DAY, body),)
    picture = growth_picture(some, later(some, 54.0), name)
    _, mm = scale(picture)
    (dot,) = named(picture, "reading", Dot)

    def above(curve: str) -> float:
        points = named(picture, curve)[-1].path.flatten()
        one, other = next(pair for pair in pairwise(points) if pair[0].x <= dot.at.x <= pair[1].x)
        share = (dot.at.x - one.x) / (other.x - one.x)
        return (one.y + share * (other.y - one.y) - dot.at.y) / mm

    assert above("P50") == pytest.approx(0.0, abs=1.0)
    assert above("P97") == pytest.approx(high - middle, abs=1.0)


def test_the_head_has_no_percentiles_beyond_five_years() -> None:
    body = Measurements.of({"stature": 1220.0, "head": 515.0}, age_months=84.0, sex="girl")
    picture = growth_picture((Taken(DAY, body),), later((Taken(DAY, body),), 96.0), "head")
    assert not named(picture, "P50")


def test_units_and_language_are_the_makers() -> None:
    some = taken((48.0, 1027.0))
    picture = growth_picture(some, later(some, 60.0), speech=Speech("in", None, "de"))
    said = [label.text for label in named(picture, "length", Label)]
    assert all(text.endswith(" Zoll") for text in said), said
    assert "40 7/16 Zoll" in [
        label.text for label in named(picture, "reading", Label)
    ]  # 102.7 cm are 40.43 in
    assert {label.text[-1] for label in named(picture, "age", Label)} <= {"J", "M"}
    assert picture.title.startswith("Körpergröße")
    room = room_to_grow(some[-1].body, 60.0)
    assert isinstance(room, Room)
    data = sheet_data(CardSheet(some, room, (), DAY, Speech("in", None, "de")))
    assert data["then"] == "5 Jahre"
    assert data["rows"][0]["now"] == "40 7/16"
    assert data["words"]["table"] == "Messungen und Platz zum Wachsen, in Zoll"
    assert card_sheet(CardSheet(some, room, (), DAY, Speech("in", None, "de"))).startswith(b"%PDF")


def test_other_measurements_have_no_percentiles_of_age() -> None:
    some = taken((48.0, 1027.0))
    picture = growth_picture(some, later(some, 60.0), "chest")
    assert not named(picture, "P50")
    assert named(picture, "reading", Dot)
    assert any(mark.meaning is Meaning.NEW for mark in picture.marks)


def test_the_card_sheet_tells_what_was_measured_and_what_was_not() -> None:
    some = taken((48.0, 1027.0))
    room = room_to_grow(some[-1].body, 60.0)
    assert isinstance(room, Room)
    data = sheet_data(CardSheet(some, room, ("no labels",), DAY))
    rows = {row["title"]: row for row in data["rows"]}
    assert rows["Height"]["measured"]
    assert rows["Height"]["now"] == "102.7"
    assert not rows["Neck girth"]["measured"]
    assert rows["Neck girth"]["readings"] == [""]
    assert data["notes"] == ["no labels"]
    assert [picture["title"] for picture in data["small"]] == ["Chest girth"]


def test_what_recipes_ask_for_as_their_own_stands_on_the_card_sheet_with_its_words() -> None:
    (one,) = taken((48.0, 1027.0))
    read = replace(one, body=one.body.with_reading("bib_height", Reading(215.0)))
    room = room_to_grow(read.body, 60.0)
    assert isinstance(room, Room)
    own = (("bib_height", "Down to the *waist* tape"),)
    data = sheet_data(CardSheet((one, read), room, (), DAY, own=own))
    assert data["own"] == [
        {"title": "bib height", "how": "Down to the *waist* tape", "readings": ["", "21.5"]}
    ]
    assert card_sheet(CardSheet((one, read), room, (), DAY, own=own)).startswith(b"%PDF")


def test_numbers_of_readings_are_not_printed_over_each_other() -> None:
    near = taken((48.0, 1027.0), (48.2, 1029.0), (48.4, 1030.0))
    numbers = named(growth_picture(near, later(near, 60.0)), "reading", Label)
    assert [label.text for label in numbers] == ["103 cm"]
    far = taken((36.0, 950.0), (48.4, 1030.0))
    assert len(named(growth_picture(far, later(far, 60.0)), "reading", Label)) == 2


def test_numbers_of_many_readings_keep_a_line_between_them() -> None:
    ten = taken(*((24.0 + 4 * k, 920.0 + 22 * k) for k in range(10)))
    numbers = named(growth_picture(ten, later(ten, 84.0)), "reading", Label)
    assert len(numbers) >= 4
    for one, other in pairwise(numbers):
        beside = other.at.x - one.at.x >= 0.55 * WORDS * len(one.text)
        assert beside or other.at.y - one.at.y >= 1.5 * WORDS, (
            f"{other.text} stands too close over {one.text}"
        )


def _box(label: Label) -> tuple[float, float, float, float]:
    """Left, foot, right and top of some words that begin at their place; `109.4 cm` was measured 14.3 mm wide in print."""
    assert label.anchor == "start"
    wide = 14.3 / 8 / WORDS * label.height * len(label.text)
    return label.at.x, label.at.y, label.at.x + wide, label.at.y + label.height


@pytest.mark.parametrize("head", range(460, 540, 4))
def test_the_number_of_a_reading_does_not_stand_on_the_label_of_a_percentile(head: int) -> None:
    """The curves of the head end at five years, where the newest reading may stand."""
    body = Measurements.of({"stature": 1094.0, "head": float(head)}, age_months=60.5, sex="girl")
    some = (Taken(DAY, body),)
    picture = growth_picture(some, later(some, 72.0), "head", SMALL_SIZE)
    (number,) = named(picture, "reading", Label)
    for name in ("P3", "P15", "P50", "P85", "P97"):
        (label,) = named(picture, name, Label)
        left, foot, right, top = _box(label)
        from_, down, to, up = _box(number)
        assert to <= left or right <= from_ or up <= foot or top <= down, f"{number.text} stands on {name}"
