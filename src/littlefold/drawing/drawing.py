"""The display list: marks in the order in which they are drawn."""

from __future__ import annotations

from dataclasses import dataclass
from functools import reduce
from typing import TYPE_CHECKING

from littlefold.drawing.marks import Dot, Label, Mark, Meaning
from littlefold.drawing.words import label_bounds
from littlefold.geometry import Bounds

if TYPE_CHECKING:
    from collections.abc import Iterable

    from littlefold.geometry import Affine


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
        boxes = [mark_bounds(mark) for mark in self.marks]
        return reduce(Bounds.union, boxes) if boxes else None


def mark_bounds(mark: Mark) -> Bounds:
    """The rectangle round one mark: a line without its width, a dot without its size, words by estimate."""
    if isinstance(mark, Dot):
        return Bounds(mark.at.x, mark.at.y, mark.at.x, mark.at.y)
    if isinstance(mark, Label):
        return label_bounds(mark)
    return mark.path.bounds()
