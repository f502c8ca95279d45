"""The check mark of every sheet: a short tape with 10 cm on one edge and 4 in on the other."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from littlefold.drawing.marks import Label, Mark, Meaning, Stroke
from littlefold.geometry import Path, Point, Vector

CM = 10.0
INCH = 25.4  # exact by definition

BREADTH = 5.6
"""From the centimetre edge of the tape to its inch edge [mm]."""
LENGTH = 114.0
"""How long the tape is with the words behind it [mm]."""
LONG, SHORT = 2.2, 1.1
"""The length of its ticks [mm]."""


def ruler(start: Point, angle: float = 0.0, name: str = "check") -> tuple[Mark, ...]:
    """A tape from a lower left corner along a direction [rad]: 100 mm above, 101.6 mm (4 in) below.

    The two edges are strokes named `<name>.cm` and `<name>.in`; whatever reads the sheet can measure them.
    """
    along, up = Vector.polar(angle), Vector.polar(angle + pi / 2)
    top = start + up * BREADTH
    zero = Stroke(Path.line_through(start, top), Meaning.RULER, f"{name}.zero")
    metric = _scale(top, along, -up, Scale(f"{name}.cm", CM / 2, 20, 2))
    imperial = _scale(start, along, up, Scale(f"{name}.in", INCH / 4, 16, 4))
    behind = start + along * (4 * INCH + 1.2)
    words = (
        Label("10 cm", behind + up * (BREADTH - 2.0), Meaning.RULER, 2.0, angle, name=f"{name}.words"),
        Label("4 in", behind, Meaning.RULER, 2.0, angle, name=f"{name}.words"),
    )
    return (zero, *metric, *imperial, *words)


@dataclass(frozen=True, slots=True)
class Scale:
    """One edge of the tape: `count` steps of a length [mm], every `whole` steps a long tick."""

    name: str
    step: float
    count: int
    whole: int


def _scale(start: Point, along: Vector, inwards: Vector, scale: Scale) -> tuple[Stroke, Stroke]:
    """The edge itself, and its ticks as one line like a comb."""
    end = start + along * (scale.step * scale.count)
    teeth = (
        _tooth(start + along * (scale.step * k), inwards, k % scale.whole) for k in range(scale.count + 1)
    )
    comb = Path.line_through(*(point for tooth in teeth for point in tooth))
    return (
        Stroke(Path.line_through(start, end), Meaning.RULER, scale.name),
        Stroke(comb, Meaning.RULER, f"{scale.name}.ticks"),
    )


def _tooth(foot: Point, inwards: Vector, part: int) -> tuple[Point, Point, Point]:
    """To the end of a tick and back: a long one for a whole unit, where nothing is left over."""
    return foot, foot + inwards * (SHORT if part else LONG), foot
