"""What growth asks of a garment: the size to cut, the ease to add, the hem to turn up, the tucks to sew.

Every measurement grows on its own: a child gains three times as much in the leg as in the chest.  So room is given
for each measurement, and a size is only named beside it.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from littlefold.body.chart import size_for
from littlefold.body.growth import Forecast, forecast
from littlefold.body.register import NAMES, REGISTER
from littlefold.problem import Problem

if TYPE_CHECKING:
    from littlefold.body.measurements import Measurements
    from littlefold.body.model import BodyModel

_PLACES: Final = {name: place for place, name in enumerate(NAMES)}


@dataclass(frozen=True, slots=True)
class Gain:
    """How much a measurement grows until a later age [mm].

    Attributes:
        name: The measurement.
        expected: Of this child.
        most: Of one in twenty that grows so fast.
    """

    name: str
    expected: float
    most: float

    @property
    def is_width(self) -> bool:
        """Whether it asks for ease round the body, rather than for length at a hem."""
        return REGISTER[self.name].is_girth


@dataclass(frozen=True, slots=True)
class Room:
    """Room to grow until a later age.

    Attributes:
        later: The child then.
        gains: One for each measurement of the register, in its order.
        size_now: The size by height now.
        size_then: The size by the expected height then.
        size_at_most: The size by the height of one in twenty that grows so fast.
    """

    later: Forecast
    gains: tuple[Gain, ...]
    size_now: int
    size_then: int
    size_at_most: int

    def gain(self, name: str) -> Gain:
        """Of one measurement; KeyError when the register does not hold it."""
        return self.gains[_PLACES[name]]


def room_to_grow(
    measurements: Measurements, until_age: float, model: BodyModel | None = None
) -> Room | Problem:
    """The room that a garment needs if it is to fit until an age [months]."""
    later = forecast(measurements, until_age, model)
    if isinstance(later, Problem):
        return later
    gains = tuple(_gain(later, name) for name in NAMES)
    stature = later.floor.mm("stature")
    sizes = (size_for(mm) for mm in (stature, later.body.mm("stature"), later.range("stature")[1]))
    return Room(later, gains, *sizes)


TUCKED: Final = ("back_waist", "arm", "inside_leg")
"""The lengths of a garment that growth tucks hold, in bodice, sleeve and leg; common practice, no source."""


def tucks(gain: float, depth: float) -> int:
    """How many growth tucks of this depth [mm] hold a gain in length: each takes twice its depth.

    Source: amberlanemarquis.blogspot.com/2014/03/a-growth-tuck-hem.html, where n tucks of 1/2 in take n in.
    """
    if depth <= 0:
        raise ValueError("a tuck has a depth")
    return math.ceil(max(gain, 0.0) / (2 * depth) - 1e-9)


def _gain(later: Forecast, name: str) -> Gain:
    now = later.floor.mm(name)
    return Gain(name, later.body.mm(name) - now, later.range(name)[1] - now)
