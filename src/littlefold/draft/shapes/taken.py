"""What an operation takes from the desk: the outline it works on, and lines and points named in the statement."""

from __future__ import annotations

from contextlib import contextmanager
from typing import TYPE_CHECKING

from littlefold.draft.outline import closed, counter_clockwise, snapped
from littlefold.draft.refusal import Missing
from littlefold.draft.shapes.shape import Marks
from littlefold.problem import say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from littlefold.draft.desk import Desk
    from littlefold.draft.model import DraftLine
    from littlefold.draft.shapes.shape import Shape
    from littlefold.geometry import Path, Point


def outline_taken(name: tree.Name, desk: Desk) -> Shape:
    """An outline made before, with the points and lines of its sheet that lie in it.

    Raises:
        Missing: There is no outline of that name.
    """
    if name.text not in desk.outlines:
        raise desk.missing(say("outline"), name, desk.outlines)
    laid = desk.outlines[name.text]
    return laid.shape.gaining(marks_of(name.text, desk, since=laid.step))


def ringed(paths: list[Path], names: tuple[str, ...], spots: list[tree.Spot]) -> tuple[tuple[str, Path], ...]:
    """Lines in order as the edges of an outline: cut where neighbours meet, counter-clockwise, the first one first.

    Raises:
        Refusal: Two neighbours do not meet.
    """
    drawn = snapped(closed(paths, names, spots))
    named = list(zip(names, drawn, strict=True))
    if not counter_clockwise(drawn):
        named = [(name, path.reversed()) for name, path in (named[0], *reversed(named[1:]))]
    return tuple(named)


def marks_of(sheet: str, desk: Desk, since: int = 0) -> Marks:
    """All points and lines of a sheet that a step of this number or a later one made, by their names on it."""
    front = f"{sheet}."
    points = {
        full.removeprefix(front): point.at
        for full, point in desk.points.items()
        if full.startswith(front) and point.step >= since
    }
    lines = {
        full.removeprefix(front): line.path
        for full, line in desk.lines.items()
        if full.startswith(front) and line.step >= since
    }
    return Marks(points, lines)


@contextmanager
def on_sheet(sheet: str, desk: Desk) -> Iterator[None]:
    """Names are looked up, and steps written down, on another sheet for a while."""
    in_hand, desk.sheet = desk.sheet, sheet
    try:
        yield
    finally:
        desk.sheet = in_hand


def line_named(ref: tree.LineRef, outline: tree.Name, desk: Desk) -> Path:
    """A line by its name on the outline's own sheet, or else on the sheet in hand."""
    try:
        with on_sheet(outline.text, desk):
            return desk.line(ref)
    except Missing:
        return desk.line(ref)


def point_named(name: tree.Name, outline: tree.Name, desk: Desk) -> Point:
    """A point by its name on the outline's own sheet, or else on the sheet in hand."""
    try:
        with on_sheet(outline.text, desk):
            return desk.point(name)
    except Missing:
        return desk.point(name)


def noting(shape: Shape, refs: Sequence[tree.LineRef], outline: tree.Name, desk: Desk) -> Shape:
    """The outline with those points that a statement names, or at which its lines end, so that they go along."""
    points: dict[str, Point] = {}
    for ref in refs:
        for name, place in _ends(ref, outline, desk):
            if name:
                points.setdefault(name, place)
    return shape.gaining(Marks(points))


def _ends(ref: tree.LineRef, outline: tree.Name, desk: Desk) -> list[tuple[str, Point]]:
    """The named points of a line, with their names."""
    if isinstance(ref, tree.Name):
        line = _drawn(ref, outline, desk)
        return [(line.start, line.path.start), (line.end, line.path.end)]
    names = (ref.start, ref.end) if isinstance(ref, tree.Span) else (ref.start, ref.corner, ref.end)
    return [(name.text.rpartition(".")[2], point_named(name, outline, desk)) for name in names]


def _drawn(name: tree.Name, outline: tree.Name, desk: Desk) -> DraftLine:
    try:
        with on_sheet(outline.text, desk):
            return desk.named_line(name)
    except Missing:
        return desk.named_line(name)


def short(ref: tree.LineRef) -> str:
    """The name of a line without the sheets it was named with: `laid.neckline` becomes `neckline`."""
    return "-".join(part.rpartition(".")[2] for part in str(ref).split("-"))
