"""The display list: marks in the order in which they are drawn."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, sin
from typing import TYPE_CHECKING

from littlefold.drawing.marks import Dot, Label, Mark, Meaning
from littlefold.geometry import Bounds

if TYPE_CHECKING:
    from collections.abc import Iterable

    from littlefold.geometry import Affine

# A capital letter of the text face is about this much wider than high; only used to keep words inside a page.
LETTER_WIDTH = 0.78


@dataclass(frozen=True, slots=True)
class Drawing:
    """Marks with a meaning, in millimetres, y upward; `title` names the whole."""

    marks: tuple[Mark, ...] = ()
    title: str = ""

    def with_marks(self, more: Iterable[Mark]) -> Drawing:
        """This drawing with more marks on top."""
        return Drawing((*self.marks, *more), self.title)

    def only(self, *meanings: Meaning) -> Drawing:
        """The marks of the given meanings."""
        return Drawing(tuple(mark for mark in self.marks if mark.meaning in meanings), self.title)

    def without(self, *meanings: Meaning) -> Drawing:
        """All marks but those of the given meanings."""
        return Drawing(tuple(mark for mark in self.marks if mark.meaning not in meanings), self.title)

    def transformed(self, affine: Affine) -> Drawing:
        """The drawing moved, turned, mirrored or scaled as a whole."""
        return Drawing(tuple(mark.transformed(affine) for mark in self.marks), self.title)

    def bounds(self) -> Bounds | None:
        """The rectangle round all marks, words included by estimate; None when there is nothing drawn."""
        boxes = [_box(mark) for mark in self.marks]
        if not boxes:
            return None
        whole = boxes[0]
        for box in boxes[1:]:
            whole = whole.union(box)
        return whole


def _box(mark: Mark) -> Bounds:
    if isinstance(mark, Dot):
        return Bounds(mark.at.x, mark.at.y, mark.at.x, mark.at.y)
    if isinstance(mark, Label):
        return _label_box(mark)
    return mark.path.bounds()


def _label_box(label: Label) -> Bounds:
    """A box about the words that is right for level words and generous for turned ones."""
    width = len(label.text) * label.height * LETTER_WIDTH
    shift = {"start": 0.0, "middle": -0.5, "end": -1.0}[label.anchor] * width
    c, s = cos(label.angle), sin(label.angle)
    corners = [(shift, 0.0), (shift + width, 0.0), (shift, label.height), (shift + width, label.height)]
    xs = [label.at.x + u * c - v * s for u, v in corners]
    ys = [label.at.y + u * s + v * c for u, v in corners]
    return Bounds(min(xs), min(ys), max(xs), max(ys))
