"""One sheet of paper as it will be printed."""

from __future__ import annotations

from dataclasses import dataclass

from littlefold.drawing import Drawing
from littlefold.geometry import ORIGIN, Bounds, Point

NOTHING = Drawing()


@dataclass(frozen=True, slots=True)
class Page:
    """A page in its own coordinates: millimetres from its lower left corner, y upward.

    Attributes:
        width: Of the paper. height: Of the paper. drawing: What it shows, drawn inside `window` only.
        window: Where the drawing may be seen; None for the whole page. surround: Marks of the sheet itself,
        on top and anywhere on the page. name: Row letter and column number of a page to join, such as `B2`;
        otherwise a word. corner: The place of the page's lower left corner on the whole drawing; the origin
        where there is none.
    """

    width: float
    height: float
    drawing: Drawing
    window: Bounds | None = None
    surround: Drawing = NOTHING
    name: str = ""
    corner: Point = ORIGIN
