"""A sheet of the draft as it lies on the table: drawn at full size for the screen, every mark with its name.

Coordinates are those of the draft in millimetres with y turned over, so that what does not move stays where it is
from one redraw to the next.  Looks are the page's; a mark says only what it means and which element it belongs to.
"""

from __future__ import annotations

from functools import reduce
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape, quoteattr

from littlefold.booklet.measures import MEASURED_FROM
from littlefold.drawing import plain
from littlefold.geometry import Bounds, Path
from littlefold.sheet.svg import outline_commands
from littlefold.web.lettering import sides
from littlefold.web.piece_marks import ORIGIN, cutting, group, mark, number, stitching, whole

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from littlefold.draft.model import Step
    from littlefold.pattern.model import Piece
    from littlefold.pipeline import Glimpse
    from littlefold.web.places import Standing

EMPTY = Bounds(0.0, -100.0, 100.0, 0.0)
"""What is shown of a sheet on which nothing stands [mm]."""
BARE = 0.07
"""Bare paper round the drawing, as a part of its longer side."""
LEAST_BARE = 12.0
"""And at least so much [mm]."""


def draw_sheet(shown: Glimpse, standing: tuple[Standing, ...] | None = None) -> str:
    """The sheet as an SVG element.

    Args:
        shown: The sheet and its pieces.
        standing: The findings, each at its place; None where they are not known.
    """
    covered = _bounds(shown)
    box = _paper(covered)
    view = f"{number(box.left)} {number(-box.top)} {number(box.width)} {number(box.height)}"
    title = escape(plain(f"{shown.draft.title}: {shown.sheet}"))
    groups = (
        group("unfolded", _each(shown, whole)),
        group("allowances", _each(shown, cutting)),
        group("stitching", _each(shown, stitching)),
        group("helping", _helping(shown)),
        group("draft", _lines(shown)),
        group("points", _points(shown, max(covered.width, covered.height))),
        "" if standing is None else group("findings", _findings(shown, standing)),
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="sheet-drawing" viewBox="{view}" role="img">'
        f"<title>{title}</title>{''.join(groups)}</svg>"
    )


def _bounds(shown: Glimpse) -> Bounds:
    """What the drawing covers, cutting lines included."""
    front = f"{shown.sheet}."
    boxes = [
        *(Bounds.of_points(one.at) for name, one in shown.draft.points.items() if name.startswith(front)),
        *(one.path.bounds() for name, one in shown.draft.lines.items() if name.startswith(front)),
        *(piece.outline.cut.bounds() for piece in shown.pieces),
    ]
    return reduce(Bounds.union, boxes) if boxes else EMPTY


def _paper(box: Bounds) -> Bounds:
    return box.grown(max(LEAST_BARE, BARE * max(box.width, box.height)))


def _each(shown: Glimpse, marks: Callable[[Piece], Iterator[str]]) -> Iterator[str]:
    return (one for piece in shown.pieces for one in marks(piece))


def _helping(shown: Glimpse) -> Iterator[str]:
    for step in shown.draft.steps:
        if step.sheet == shown.sheet and step.kind in MEASURED_FROM:
            yield from _way(shown, step)


def _way(shown: Glimpse, step: Step) -> Iterator[str]:
    base = str(step.words[MEASURED_FROM[step.kind]].value)
    points = shown.draft.points
    start, made = points.get(f"{shown.sheet}.{base}") or points.get(base), points.get(step.name)
    if start is not None and made is not None and start.at.distance(made.at) > 0:
        yield mark(Path.line_through(start.at, made.at), "way", step.name)


def _lines(shown: Glimpse) -> Iterator[str]:
    front = f"{shown.sheet}."
    for name, line in shown.draft.lines.items():
        if name.startswith(front):
            commands = outline_commands(line.path, ORIGIN)
            called = quoteattr(plain(name))
            yield f'<path class="line" d="{commands}" data-name={called}/>'
            yield f'<path class="touch" d="{commands}" data-name={called}/>'


def _points(shown: Glimpse, size: float) -> Iterator[str]:
    front = f"{shown.sheet}."
    lettered = _lettered(shown, size)
    for name, point in shown.draft.points.items():
        if name.startswith(front):
            x, y, called = number(point.at.x), number(-point.at.y), quoteattr(plain(name))
            yield f'<circle class="point" cx="{x}" cy="{y}" r="1" data-name={called}/>'
            if name in lettered:
                said = escape(plain(name.removeprefix(front)))
                yield f'<text class="letter {lettered[name]}" x="{x}" y="{y}" data-name={called}>{said}</text>'


def _lettered(shown: Glimpse, size: float) -> dict[str, str]:
    """The points of the sheet's own, each with the side of its letter."""
    front, draft = f"{shown.sheet}.", shown.draft
    own = {name: one.at for name, one in draft.points.items() if _is_own(name, front)}
    lines = [line.path for name, line in draft.lines.items() if name.startswith(front)]
    return sides(own, lines, size)


def _is_own(name: str, front: str) -> bool:
    """Whether a point was drawn on the sheet itself and not laid down with a part of another."""
    return name.startswith(front) and "." not in name.removeprefix(front)


def _findings(shown: Glimpse, standing: tuple[Standing, ...]) -> Iterator[str]:
    for one in standing:
        if one.sheet != shown.sheet or one.at is None:
            continue
        x, y = number(one.at.x), number(-one.at.y)
        if one.along is not None:
            yield mark(one.along, f"glow {one.problem.severity}", f"finding-{one.number}")
        yield (
            f'<g class="pin {one.problem.severity}" data-finding="{one.number}">'
            f'<circle cx="{x}" cy="{y}" r="3"/><text x="{x}" y="{y}">{one.number}</text></g>'
        )
