"""One child's measurements as a value: each number with where it came from and how sure it is."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING, Literal, overload

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

Sex = Literal["girl", "boy"]


class Origin(StrEnum):
    """Where a number came from: a tape, a size chart, or an estimate from other numbers."""

    GIVEN = "given"
    CHART = "chart"
    ESTIMATED = "estimated"


@dataclass(frozen=True, slots=True)
class Reading:
    """One number on the card.

    Attributes:
        mm: The measurement [mm].
        origin: Where it came from.
        spread_mm: One standard deviation of what is not known about it [mm]; 0 for a tape reading.
    """

    mm: float
    origin: Origin = Origin.GIVEN
    spread_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class Measurements:
    """What is known of one child's body, by the short names of the register.

    Recipes may ask for measurements of their own, so any name may stand here.

    Attributes:
        readings: Pairs of short name and reading, each name once.
        age_months: Age on the day of measuring, where known [months].
        sex: 'girl' or 'boy', where known.
        nickname: What the sheets call the child; may be empty.
    """

    readings: tuple[tuple[str, Reading], ...] = ()
    age_months: float | None = None
    sex: Sex | None = None
    nickname: str = ""

    def __post_init__(self) -> None:
        names = [name for name, _ in self.readings]
        if len(names) != len(set(names)):
            raise ValueError(f"a measurement stands twice: {names}")

    @classmethod
    def of(
        cls,
        lengths: Mapping[str, float],
        *,
        origin: Origin = Origin.GIVEN,
        age_months: float | None = None,
        sex: Sex | None = None,
        nickname: str = "",
    ) -> Measurements:
        """Measurements of one origin, from short names and millimetres."""
        readings = tuple((name, Reading(float(mm), origin)) for name, mm in lengths.items())
        return cls(readings, age_months, sex, nickname)

    @overload
    def get(self, name: str) -> Reading | None: ...
    @overload
    def get(self, name: str, default: Reading) -> Reading: ...
    def get(self, name: str, default: Reading | None = None) -> Reading | None:
        """The reading of that name, or the default."""
        for known, reading in self.readings:
            if known == name:
                return reading
        return default

    def mm(self, name: str) -> float:
        """The measurement in millimetres; KeyError when it is not there."""
        reading = self.get(name)
        if reading is None:
            raise KeyError(name)
        return reading.mm

    def __contains__(self, name: object) -> bool:
        return any(known == name for known, _ in self.readings)

    def __iter__(self) -> Iterator[str]:
        return (name for name, _ in self.readings)

    def with_reading(self, name: str, reading: Reading) -> Measurements:
        """The same child with this reading put in, or put in place of the one of that name."""
        if name not in self:
            return replace(self, readings=(*self.readings, (name, reading)))
        pairs = tuple((known, reading if known == name else old) for known, old in self.readings)
        return replace(self, readings=pairs)

    def without(self, *names: str) -> Measurements:
        """The same child without the readings of these names."""
        return replace(self, readings=tuple(pair for pair in self.readings if pair[0] not in names))

    def only(self, *origins: Origin) -> Measurements:
        """The same child with only the readings of these origins."""
        return replace(self, readings=tuple(pair for pair in self.readings if pair[1].origin in origins))

    def lengths(self) -> dict[str, float]:
        """All measurements as short name to millimetres."""
        return {name: reading.mm for name, reading in self.readings}
