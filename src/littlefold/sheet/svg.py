"""SVG, at full size or reduced: one user unit is one millimetre, and y is turned over by the coordinates.

Lines, arcs and cubics become L, A and C commands, so whatever reads the file gets the same lengths.  Every
mark has the class of its meaning and carries its name in `data-name`.
"""

from __future__ import annotations

from math import ceil, degrees, pi
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape, quoteattr

from littlefold.drawing import LOOKS, Dot, Drawing, Fill, Label, Look, Mark, Meaning, Stroke, plain
from littlefold.geometry import Affine, Arc, Bounds, Cubic, Point
from littlefold.sheet.reduced import shrunk

if TYPE_CHECKING:
    from littlefold.geometry import Path, Segment

CAP_HEIGHT = 0.645
"""The height of a capital as part of the size of the text face, and nearly so of those that stand in."""

BORDER = 3.0
"""Bare paper round the drawing [mm], so that wide lines are not cut at the edge."""

# An arc that turns further is written in parts: a full circle has no direction of its own in SVG.
WIDEST = pi * 0.75

# Coordinates are written to a ten-thousandth of a millimetre, a hundredth of what is promised.
PLACES = 4

_FACES = {"upright": "", "slanted": ";font-style:italic", "heavy": ";font-weight:700"}


def write_svg(drawing: Drawing, scale: float = 1.0, border: float = BORDER) -> str:
    """An SVG element whose width and height are millimetres on paper, for a file or a page of HTML.

    Args:
        drawing: What to draw.
        scale: Lines are drawn at this scale; below 1 words stay readable and off each other, as in `shrunk`.
        border: Bare paper all round [mm].
    """
    small = shrunk(drawing, 1 / scale) if scale < 1.0 else drawing.transformed(Affine.scale(scale))
    box = (small.bounds() or Bounds(0.0, 0.0, 1.0, 1.0)).grown(border)
    home = Point(box.left, box.top)
    width, height = _n(box.width), _n(box.height)
    size = f'width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}"'
    lines = (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="littlefold" {size}>',
        f"<title>{escape(plain(drawing.title))}</title>",
        f"<style>{STYLE}</style>",
        *(_mark(mark, home) for mark in small.marks),
        "</svg>",
    )
    return "\n".join(lines) + "\n"


def _mark(mark: Mark, home: Point) -> str:
    tail = f" data-name={quoteattr(plain(mark.name))}" if mark.name else ""
    if isinstance(mark, Stroke):
        return f'<path class="line {mark.meaning}" d="{outline_commands(mark.path, home)}"{tail}/>'
    if isinstance(mark, Fill):
        return f'<path class="fill {mark.meaning}" d="{outline_commands(mark.path, home)}"{tail}/>'
    if isinstance(mark, Dot):
        radius = _n(LOOKS[mark.meaning].dot / 2)
        x, y = _place(mark.at, home)
        return f'<circle class="fill {mark.meaning}" cx="{x}" cy="{y}" r="{radius}"{tail}/>'
    return _words(mark, home, tail)


def _words(label: Label, home: Point, tail: str) -> str:
    x, y = _place(label.at, home)
    turn = f' transform="rotate({_n(-degrees(label.angle))} {x} {y})"' if label.angle else ""
    return (
        f'<text class="{label.meaning}" x="{x}" y="{y}" font-size="{_n(label.height / CAP_HEIGHT)}" '
        f'text-anchor="{label.anchor}"{turn}{tail}>{escape(plain(label.text))}</text>'
    )


def outline_commands(path: Path, home: Point) -> str:
    """The commands of an SVG path; `home` becomes the origin, y is turned over."""
    parts = (f"M{_pair(path.start, home)}", *(_command(segment, home) for segment in path.segments))
    return "".join(parts) + ("Z" if path.is_closed else "")


def _command(segment: Segment, home: Point) -> str:
    if isinstance(segment, Arc):
        return _arc(segment, home)
    if isinstance(segment, Cubic):
        handles = (segment.control1, segment.control2, segment.end)
        return "C" + " ".join(_pair(point, home) for point in handles)
    return "L" + _pair(segment.end, home)


def _arc(arc: Arc, home: Point) -> str:
    """Parts of less than half a turn, so that the flag for the longer way round is never needed.

    Turning y over makes counter-clockwise what SVG calls a negative angle: sweep flag 0.
    """
    count = max(1, ceil(abs(arc.sweep) / WIDEST))
    radius, flag = _n(arc.radius), 0 if arc.sweep > 0 else 1
    ends = (arc.at(k / count) for k in range(1, count + 1))
    return "".join(f"A{radius} {radius} 0 0 {flag} {_pair(end, home)}" for end in ends)


def _place(point: Point, home: Point) -> tuple[str, str]:
    return _n(point.x - home.x), _n(home.y - point.y)


def _pair(point: Point, home: Point) -> str:
    return " ".join(_place(point, home))


def _n(number: float) -> str:
    """A number without needless zeros and without a negative nought."""
    text = f"{number:.{PLACES}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _rules(meaning: Meaning, look: Look) -> str:
    level = round(look.grey * 255)
    ink = f"#{level:02x}{level:02x}{level:02x}"
    dash = f";stroke-dasharray:{' '.join(_n(part) for part in look.dash)}" if look.dash else ""
    return (
        f".littlefold .line.{meaning}{{stroke:{ink};stroke-width:{_n(look.width)}{dash}}}"
        f".littlefold .fill.{meaning},.littlefold text.{meaning}{{fill:{ink}{_FACES[look.face]}}}"
    )


STYLE = (
    # The rules of all meanings, for a page that forbids styles of its own in what it takes in.
    ".littlefold .line{fill:none;stroke-linejoin:round}"
    ".littlefold text{font-family:'Libertinus Serif','Linux Libertine',Georgia,'Times New Roman',serif}"
    + "".join(_rules(meaning, look) for meaning, look in LOOKS.items())
)
