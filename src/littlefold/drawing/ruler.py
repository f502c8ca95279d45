"""The check mark of every sheet: a short tape with 10 cm on one edge and 4 in on the other."""

from __future__ import annotations

from math import pi

from littlefold.drawing.marks import Label, Mark, Meaning, Stroke
from littlefold.geometry import Path, Point, Vector

CM = 10.0
INCH = 25.4  # exact by definition

BREADTH = 5.6
"""From the centimetre edge of the tape to its inch edge [mm]."""
LENGTH = 114.0
"""How long the tape is with the words behind it [mm]."""


def ruler(start: Point, angle: float = 0.0, name: str = "check") -> tuple[Mark, ...]:
    """A tape from a lower left corner along a direction [rad]: 100 mm above, 101.6 mm (4 in) below.

    The two edges are strokes named `<name>.cm` and `<name>.in`; whatever reads the sheet can measure them.
    """
    along, up = Vector.polar(angle), Vector.polar(angle + pi / 2)
    top = start + up * BREADTH
    metric = _scale(top, along, -up, tuple(CM / 2 * k for k in range(21)), f"{name}.cm")
    imperial = _scale(start, along, up, tuple(INCH / 4 * k for k in range(17)), f"{name}.in")
    behind = start + along * (4 * INCH + 1.2)
    words = (
        Label("10 cm", behind + up * (BREADTH - 2.0), Meaning.RULER, 2.0, angle, name=f"{name}.words"),
        Label("4 in", behind, Meaning.RULER, 2.0, angle, name=f"{name}.words"),
    )
    return (*metric, *imperial, *words)


def _scale(
    start: Point, along: Vector, inwards: Vector, places: tuple[float, ...], name: str
) -> tuple[Stroke, ...]:
    """One edge of the tape with ticks: the whole units long, the parts short."""
    parts = 2 if len(places) == 21 else 4  # noqa: PLR2004 - half centimetres, quarter inches
    edge = Stroke(Path.line_through(start, start + along * places[-1]), Meaning.RULER, name)
    ticks = tuple(
        Stroke(
            Path.line_through(start + along * u, start + along * u + inwards * (1.1 if k % parts else 2.2)),
            Meaning.RULER,
            f"{name}.tick",
        )
        for k, u in enumerate(places)
    )
    return (edge, *ticks)
