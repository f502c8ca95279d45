"""The four kinds of mark, and what a mark can mean.

A stage never says how thick or dashed a line is.  It says what the line means, and the style table
(`littlefold.drawing.style`) gives every meaning one look that can be told apart in black and white.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING, Literal

from littlefold.geometry.point import Vector

if TYPE_CHECKING:
    from littlefold.geometry import Affine, Path, Point


class Meaning(StrEnum):
    """What a mark means on a pattern, a draft or a sheet of paper."""

    CUT = "cut"
    """Where the scissors go."""
    STITCH = "stitch"
    """Where the needle goes."""
    FOLD = "fold"
    """Laid on the fold of the cloth or paper."""
    TURN = "turn"
    """Where a hem or casing is folded over."""
    GRAIN = "grain"
    """Parallel to the selvedge."""
    NOTCH = "notch"
    """A short cut or mark at which two edges meet."""
    INSIDE = "inside"
    """A line inside a piece: slit, placket, buttonhole, dart, pleat."""
    CONSTRUCTION = "construction"
    """A helping line of the draft."""
    DRAFT = "draft"
    """A final line of the draft."""
    NEW = "new"
    """The element that a step adds."""
    OLD = "old"
    """What stood before the step, receding."""
    GUIDE = "guide"
    """A dimension line, or the plotted guide of a curve."""
    LETTER = "letter"
    """The letter of a point."""
    TEXT = "text"
    """Words on a piece or sheet."""
    TITLE = "title"
    """The name of a piece or sheet."""
    CAUTION = "caution"
    """A warning that must be read."""
    FRAME = "frame"
    """The edge of a sheet, or a joining line between two."""
    RULER = "ruler"
    """A check mark of known length."""
    FINDING = "finding"
    """The place that a finding is about."""
    CLOTH = "cloth"
    """The edge of a cloth in a lay."""
    SIZE_1 = "size-1"
    """The cutting line of one size among several on one sheet, in the first of eight line kinds."""
    SIZE_2 = "size-2"
    """The second."""
    SIZE_3 = "size-3"
    """The third."""
    SIZE_4 = "size-4"
    """The fourth."""
    SIZE_5 = "size-5"
    """The fifth."""
    SIZE_6 = "size-6"
    """The sixth."""
    SIZE_7 = "size-7"
    """The seventh."""
    SIZE_8 = "size-8"
    """The eighth."""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line drawn along a path; `name` ties it to an element such as `body.side`."""

    path: Path
    meaning: Meaning
    name: str = ""

    def transformed(self, affine: Affine) -> Stroke:
        """The same line, moved."""
        return replace(self, path=self.path.transformed(affine))


@dataclass(frozen=True, slots=True)
class Fill:
    """A closed path filled in, such as the head of an arrow."""

    path: Path
    meaning: Meaning
    name: str = ""

    def transformed(self, affine: Affine) -> Fill:
        """The same shape, moved."""
        return replace(self, path=self.path.transformed(affine))


@dataclass(frozen=True, slots=True)
class Dot:
    """A point made visible; its size is a matter of style, not of scale."""

    at: Point
    meaning: Meaning
    name: str = ""

    def transformed(self, affine: Affine) -> Dot:
        """The same dot, moved."""
        return replace(self, at=affine.apply(self.at))


@dataclass(frozen=True, slots=True)
class Label:
    """Words at a place.

    `height` is the height of a capital letter on the final paper [mm]; it does not change when a drawing is
    reduced, so that text stays readable.  `angle` [rad] turns the words about `at`; `anchor` says which
    part of the words stands there.  Words never come out mirrored: a mirroring moves and turns them only.
    """

    text: str
    at: Point
    meaning: Meaning = Meaning.TEXT
    height: float = 2.5
    angle: float = 0.0
    anchor: Literal["start", "middle", "end"] = "start"
    name: str = ""

    def transformed(self, affine: Affine) -> Label:
        """The same words at the moved place, turned with it."""
        way = affine.apply_vector(Vector.polar(self.angle))
        return replace(self, at=affine.apply(self.at), angle=way.angle)


Mark = Stroke | Fill | Dot | Label
