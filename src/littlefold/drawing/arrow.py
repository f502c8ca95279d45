"""Arrows: the head, the double arrow of the grain, the dimension line."""

from __future__ import annotations

from math import pi

from littlefold.drawing.marks import Fill, Label, Mark, Meaning, Stroke
from littlefold.geometry import Path, Point, Vector

# Beyond this direction words would stand on their head, so they are turned round.  A little over a quarter
# turn, so that words which run straight up stay as they are whatever the rounding.
UPSIDE_DOWN = pi / 2 + 1e-6


def arrow_head(tip: Point, way: Vector, meaning: Meaning, length: float = 3.5, name: str = "") -> Fill:
    """A slim head whose tip points along a way; `length` [mm]."""
    along = way.unit()
    foot, waist = tip + along * -length, tip + along * (-0.8 * length)
    side = along.turned_left() * (length * 0.2)
    corners = (tip, foot + side, waist, foot + -side, tip)
    return Fill(Path.line_through(*corners), meaning, name)


def grain_arrow(start: Point, end: Point, words: str = "", name: str = "") -> tuple[Mark, ...]:
    """The double arrow laid parallel to the selvedge, with words beside its middle if there are any."""
    way = end - start
    arrow = (
        Stroke(Path.line_through(start, end), Meaning.GRAIN, name),
        arrow_head(end, way, Meaning.GRAIN, name=name),
        arrow_head(start, -way, Meaning.GRAIN, name=name),
    )
    if not words:
        return arrow
    return (*arrow, label_along(words, start, end, Meaning.GRAIN, name=name))


def dimension(start: Point, end: Point, words: str, away: float = 6.0, name: str = "") -> tuple[Mark, ...]:
    """A dimension line beside the way from start to end, `away` mm to its left (to its right if negative)."""
    way = (end - start).unit()
    left = way.turned_left()
    p, q = start + left * away, end + left * away
    past = 1.0 if away >= 0 else -1.0
    head = min(2.5, start.distance(end) / 3)
    witness_lines = tuple(
        Stroke(Path.line_through(foot + left * past, top + left * past), Meaning.GUIDE, name)
        for foot, top in ((start, p), (end, q))
    )
    return (
        *witness_lines,
        Stroke(Path.line_through(p, q), Meaning.GUIDE, name),
        arrow_head(q, way, Meaning.GUIDE, head, name),
        arrow_head(p, -way, Meaning.GUIDE, head, name),
        label_along(words, p, q, Meaning.GUIDE, height=2.2, name=name),
    )


def label_along(
    words: str, start: Point, end: Point, meaning: Meaning, *, height: float = 2.5, name: str = ""
) -> Label:
    """Words over the middle of a line and turned with it, never on their head."""
    angle = readable((end - start).angle)
    up = Vector.polar(angle + pi / 2, height * 0.5)
    return Label(words, start.towards(end, 0.5) + up, meaning, height, angle, "middle", name)


def readable(angle: float) -> float:
    """The same direction or its opposite [rad], whichever lets words be read from below or the right."""
    turned = (angle + pi) % (2 * pi) - pi
    if turned > UPSIDE_DOWN or turned <= -UPSIDE_DOWN + 2e-6:
        return turned - pi if turned > 0 else turned + pi
    return turned
