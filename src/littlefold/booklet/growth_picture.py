"""How a child has grown and will grow, drawn: readings, percentile curves, and the band of the forecast.

Percentile curves are drawn where there are any by age: of the stature and of the head to five years (WHO), and of the
upper arm from three months on (WHO, then Mramba); other measurements show the readings and the forecast alone.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from littlefold.body.growth import Forecast, forecast
from littlefold.body.percentiles import percentile, spans
from littlefold.body.register import register_in
from littlefold.body.stature import OLDEST
from littlefold.body.tape import MM_PER, ONE_MM, say_length
from littlefold.booklet.wording import wording
from littlefold.draft.sentence import Speech
from littlefold.drawing import Dot, Drawing, Label, Mark, Meaning, Stroke
from littlefold.geometry import Path, Point
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator
    from datetime import date

    from littlefold.body.measurements import Measurements, Sex

# Percentiles and their scores on the normal curve.
CURVES: Final = (("3", -1.8808), ("15", -1.0364), ("50", 0.0), ("85", 1.0364), ("97", 1.8808))

_PLAIN: Final = Speech()

LARGE: Final = (150.0, 88.0)
"""Width and height of the field between the axes [mm]."""

WORDS: Final = 2.6
_LETTER: Final = 0.7 * WORDS  # width of a letter or figure; `109.4 cm` on a printed sheet is 14.3 mm wide
_LINE: Final = 1.6 * WORDS  # from one number to the next above it, to be read at a glance
STEPS: Final = 24  # stretches of a curve
_ROUND: Final = {
    "cm": (1, 2, 5, 10),
    "in": (1, 2, 5),
}  # from one line of the grid to the next, in the maker's units
_ROOM_ACROSS, _ROOM_UP = 19.0, 9.0  # from one number of an axis to the next, at least [mm]
_YEARS: Final = (1, 2, 3, 6, 12, 24, 48)  # likewise [months]
_UNDER: Final = 3.0  # spares below the lowest reading, where its number stands
_BEFORE: Final = 6.0  # months shown before the first reading


@dataclass(frozen=True, slots=True)
class Taken:
    """The readings of a day; the age is known."""

    day: date
    body: Measurements

    @property
    def age(self) -> float:
        """On that day [months]."""
        return self.body.age_months or 0.0


@dataclass(frozen=True, slots=True)
class _Field:
    """The part of the plane that is shown: ages [months] and lengths [mm], on a field of a size [mm]."""

    young: float
    old: float
    low: float
    high: float
    size: tuple[float, float]

    @property
    def corners(self) -> tuple[Point, Point, Point]:
        """The ends of the axes, and where they meet between them."""
        return Point(0.0, self.size[1]), Point(0.0, 0.0), Point(self.size[0], 0.0)

    def at(self, age: float, mm: float) -> Point:
        """The place on paper."""
        return Point(
            (age - self.young) / (self.old - self.young) * self.size[0],
            (mm - self.low) / (self.high - self.low) * self.size[1],
        )

    def line(self, places: Iterable[tuple[float, float]]) -> Path:
        """A line through ages and lengths."""
        return Path.line_through(*(self.at(age, mm) for age, mm in places))


def growth_picture(
    taken: tuple[Taken, ...],
    later: Forecast,
    name: str = "stature",
    size: tuple[float, float] = LARGE,
    speech: Speech = _PLAIN,
) -> Drawing:
    """The picture of one measurement.

    Args:
        taken: The sets of readings in order of their days; sets without the measurement draw no dot.
        later: The forecast that the band leads to.
        name: The measurement, of the register.
        size: Of the field between the axes [mm].
        speech: Units and language.
    """
    now, sex = later.floor.age_months or 0.0, later.floor.sex
    first = min([one.age for one in taken if name in one.body], default=now)
    young, old = max(0.0, first - _BEFORE), min(later.age_months + _BEFORE / 2, OLDEST)
    band = tuple(_band(later, now, name))
    read = [(one.age, one.body.mm(name)) for one in taken if name in one.body]
    field = _field(young, old, [mm for _, mm in read] + [mm for _, *three in band for mm in three], name, sex)
    field = replace(field, size=size)
    curves = tuple(_curves(field, name, sex))
    ends = tuple(mark for mark in curves if isinstance(mark, Label))
    marks = (*_grid(field, speech), *curves, *_forecast(field, band), *_readings(field, read, speech, ends))
    title = wording(speech.language)["growth"]["title"]
    return Drawing(marks, title.format(measurement=register_in(speech.language)[name].title))


def _band(later: Forecast, now: float, name: str) -> Iterator[tuple[float, float, float, float]]:
    """Ages with the least, the expected and the greatest length."""
    for step in range(STEPS + 1):
        age = now + (later.age_months - now) * step / STEPS
        found = forecast(later.floor, age)
        assert not isinstance(found, Problem), "the age is known and lies ahead"  # noqa: S101 - our own mistake
        low, high = found.range(name)
        yield age, low, found.body.mm(name), high


def _field(young: float, old: float, lengths: list[float], name: str, sex: Sex | None) -> _Field:
    for start, end in spans(name, young, old):
        lengths = [
            *lengths,
            percentile(name, start, sex, CURVES[0][1]),
            percentile(name, end, sex, CURVES[-1][1]),
        ]
    spare = max(0.04 * (max(lengths) - min(lengths)), 5.0)
    return _Field(young, max(old, young + 1.0), min(lengths) - _UNDER * spare, max(lengths) + spare, LARGE)


def _grid(field: _Field, speech: Speech) -> Iterator[Mark]:
    """The axes with their numbers, and a light line at each of them."""
    most = field.size[0] / _ROOM_ACROSS
    months = next((step for step in _YEARS if (field.old - field.young) / step <= most), _YEARS[-1])
    for age in range(math.ceil(field.young / months) * months, math.floor(field.old) + 1, months):
        foot = field.at(age, field.low)
        yield Stroke(Path.line_through(foot, field.at(age, field.high)), Meaning.CONSTRUCTION, "age")
        below = Point(foot.x, -2.2 * WORDS)
        yield Label(_short(age, speech.language), below, Meaning.TEXT, WORDS, 0.0, "middle", "age")
    most, unit, steps = field.size[1] / _ROOM_UP, MM_PER[speech.units], _ROUND[speech.units]
    step = unit * next(
        (step for step in steps if (field.high - field.low) / (step * unit) <= most), steps[-1]
    )
    for number in range(math.ceil(field.low / step), math.floor(field.high / step) + 1):
        left = field.at(field.young, number * step)
        yield Stroke(Path.line_through(left, Point(field.size[0], left.y)), Meaning.CONSTRUCTION, "length")
        said = speech.spelled(f"{number * step / unit:.0f} {speech.units}")
        yield Label(said, Point(-2.0, left.y - WORDS / 2), Meaning.TEXT, WORDS, 0.0, "end", "length")
    yield Stroke(Path.line_through(*field.corners), Meaning.GRAIN, "axes")


def _short(months: int, language: str) -> str:
    """An age in few letters: `9 m`, `4 y`, `4 y 6 m`."""
    words = wording(language)["growth"]
    years, rest = divmod(months, 12)
    parts = (f"{years} {words['y']}" if years else "", f"{rest} {words['m']}" if rest or not years else "")
    return " ".join(filter(None, parts))


def _curves(field: _Field, name: str, sex: Sex | None) -> Iterator[Mark]:
    """The percentiles by age, in as many parts as the curve has; nothing where there are none."""
    parts = spans(name, field.young, field.old)
    for words, score in CURVES if parts else ():
        meaning = Meaning.DRAFT if score == 0 else Meaning.OLD
        for start, end in parts:
            ages = [start + (end - start) * step / STEPS for step in range(STEPS + 1)]
            line = field.line((age, percentile(name, age, sex, score)) for age in ages)
            yield Stroke(line, meaning, f"P{words}")
        end = parts[-1][1]
        at = field.at(end, percentile(name, end, sex, score))
        yield Label(f"P{words}", Point(at.x + 1.5, at.y - WORDS / 2), Meaning.TEXT, WORDS, name=f"P{words}")


def _forecast(field: _Field, band: tuple[tuple[float, float, float, float], ...]) -> Iterator[Mark]:
    """The expected line, and the two lines between which 90 of 100 such children stay."""
    if band[-1][0] <= band[0][0]:
        return
    for side in (1, 3):
        yield Stroke(field.line((row[0], row[side]) for row in band), Meaning.STITCH, "forecast.range")
    yield Stroke(field.line((row[0], row[2]) for row in band), Meaning.NEW, "forecast")


def _readings(
    field: _Field, read: list[tuple[float, float]], speech: Speech, ends: tuple[Label, ...]
) -> Iterator[Mark]:
    """A dot for each, and its number, clear of the labels at the ends of the percentiles."""
    if len(read) > 1:
        yield Stroke(field.line(read), Meaning.GUIDE, "readings")
    for age, mm in read:
        yield Dot(field.at(age, mm), Meaning.NEW, "reading")
    kept: list[Label] = []
    for age, mm in reversed(read):  # where several stand close the newest keeps its number
        number = _number(field.at(age, mm), mm, speech, ends)
        if not any(_overlap(number, other) for other in kept):
            kept.append(number)
    yield from reversed(kept)


def _number(at: Point, mm: float, speech: Speech, ends: tuple[Label, ...]) -> Label:
    """What a reading says, below its dot on the right; elsewhere beside it where a label stands there already."""
    said = speech.spelled(say_length(mm, speech.units, ONE_MM if speech.units == "cm" else None))
    right, left = at.x + WORDS / 2, at.x - WORDS / 2 - _LETTER * len(said)
    below, above = at.y - 1.6 * WORDS, at.y + 0.6 * WORDS
    places = ((right, below), (right, above), (left, above), (left, below))
    numbers = [Label(said, Point(*place), Meaning.LETTER, WORDS, name="reading") for place in places]
    free = (one for one in numbers if not any(_overlap(one, end) for end in ends))
    return next(free, numbers[0])


def _overlap(one: Label, other: Label) -> bool:
    """Whether two numbers would be printed over each other, or too close to be read at a glance."""
    left, right = sorted((one, other), key=lambda label: label.at.x)
    return right.at.x < left.at.x + _LETTER * len(left.text) and abs(one.at.y - other.at.y) < _LINE
