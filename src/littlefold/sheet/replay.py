"""A drawing as plain data, for the typesetter: what `replay.typ` draws."""

from __future__ import annotations

from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from littlefold.drawing import LOOKS, Dot, Drawing, Fill, Label, Mark, Stroke, plain
from littlefold.geometry import Bounds, Point
from littlefold.sheet.strokes import PLACES, commands

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.geometry import Path


def looks_as_data() -> dict[str, Any]:
    """The look of every meaning, under the name `looks` in templates."""
    return {meaning.value: asdict(look) for meaning, look in LOOKS.items()}


def drawing_as_data(drawing: Drawing, window: Bounds | None = None) -> dict[str, Any]:
    """Width, height and marks [mm], right of and below the upper left corner of a window of the drawing.

    Without a window it is the rectangle round all marks.  Marks that reach out of it are not cut.
    """
    box = window or drawing.bounds() or Bounds(0.0, 0.0, 0.0, 0.0)
    home = Point(box.left, box.top)
    marks = [_mark(mark, home) for mark in drawing.marks]
    return {"width": box.width, "height": box.height, "marks": marks}


def _mark(mark: Mark, home: Point) -> Mapping[str, Any]:
    if isinstance(mark, Stroke):
        return {"kind": "stroke", "meaning": mark.meaning.value, **_path(mark.path, home)}
    if isinstance(mark, Fill):
        return {"kind": "fill", "meaning": mark.meaning.value, **_path(mark.path, home)}
    if isinstance(mark, Dot):
        return {"kind": "dot", "meaning": mark.meaning.value, "at": _at(mark.at, home)}
    return _label(mark, home)


def _path(path: Path, home: Point) -> dict[str, Any]:
    return {"path": commands(path, home), "closed": path.is_closed}


def _label(label: Label, home: Point) -> dict[str, Any]:
    return {
        "kind": "label",
        "meaning": label.meaning.value,
        "at": _at(label.at, home),
        "text": plain(label.text),
        "height": label.height,
        "angle": label.angle,
        "anchor": label.anchor,
    }


def _at(point: Point, home: Point) -> tuple[float, float]:
    return round(point.x - home.x, PLACES), round(home.y - point.y, PLACES)
