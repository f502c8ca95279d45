"""One sheet of a draft brought to the size of a picture: where everything lies, and what lies there."""

from __future__ import annotations

from dataclasses import dataclass
from functools import reduce
from typing import TYPE_CHECKING

from littlefold.geometry import Affine, Bounds, Point

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.draft.model import Draft, DraftLine, DraftPoint, Step

EDGE = 8.5
"""Room round the drawing for letters and dimensions [mm on the picture]."""
LEAST = 1.0
"""A sheet with a single point has no size; it is taken to be this large [mm]."""


@dataclass(frozen=True, slots=True)
class Scene:
    """A sheet at 1 : divisor; `affine` takes places of the draft to places on the picture.

    `size` is how much larger than usual words are set, on pictures that are looked at from afar.
    """

    draft: Draft
    sheet: str
    affine: Affine
    divisor: float
    bounds: Bounds
    size: float = 1.0

    @property
    def window(self) -> Bounds:
        """The part of the plane that the picture shows: the drawing, and room for letters round it."""
        return self.bounds.grown(EDGE)

    def at(self, point: Point) -> Point:
        """Where a place of the draft lies on the picture."""
        return self.affine.apply(point)

    def short(self, name: str) -> str:
        """A name without its sheet, as sentences say it."""
        return name.removeprefix(f"{self.sheet}.")

    def points(self, before: int) -> Iterator[DraftPoint]:
        """The points that stand on the sheet after a step."""
        return (point for point in _points(self.draft, self.sheet) if point.step <= before)

    def lines(self, before: int) -> Iterator[DraftLine]:
        """The lines that stand on the sheet after a step."""
        return (line for line in _lines(self.draft, self.sheet) if line.step <= before)

    def point(self, name: str) -> Point | None:
        """A point as a sentence names it, on the picture; None where the sheet has none of that name."""
        found = self.draft.points.get(f"{self.sheet}.{name}") or self.draft.points.get(name)
        return None if found is None else self.at(found.at)

    def steps(self) -> Iterator[Step]:
        """The steps that draw on this sheet, in order."""
        return (step for step in self.draft.steps if step.sheet == self.sheet)


def stage(draft: Draft, number: int) -> int:
    """The last of the steps that follow a step on the same sheet, before another sheet is taken in hand.

    A sheet that is gone on with later is drawn in stages; pictures of a stage show what it ends with.
    """
    sheet = draft.steps[number - 1].sheet
    rest = draft.steps[number:]
    return next((step.number - 1 for step in rest if step.sheet != sheet), len(draft.steps))


def scene(
    draft: Draft,
    sheet: str,
    room: tuple[float, float],
    *,
    until: int | None = None,
    divisor: float | None = None,
    size: float = 1.0,
) -> Scene:
    """A sheet of a draft made to fit a room (width and height [mm]).

    All steps of a stage share one scene, so that what was drawn stays where it was from picture to picture.

    Args:
        draft: The draft.
        sheet: The name of the drawing.
        room: What the picture may take.
        until: The last step that counts; all do if it is None.
        divisor: A scale to be taken instead of the largest that fits.
        size: How much larger than usual words are set.
    """
    box = _bounds(draft, sheet, len(draft.steps) if until is None else until)
    wide, high = max(box.width, LEAST), max(box.height, LEAST)
    by = divisor or max(wide / (room[0] - 2 * EDGE), high / (room[1] - 2 * EDGE), 1.0)
    home = Affine.translation(Point(0.0, 0.0) - Point(box.left, box.bottom))
    affine = home.then(Affine.scale(1 / by))
    return Scene(draft, sheet, affine, by, Bounds(0.0, 0.0, box.width / by, box.height / by), size)


def _bounds(draft: Draft, sheet: str, until: int) -> Bounds:
    boxes = [
        *(Bounds.of_points(point.at) for point in _points(draft, sheet) if point.step <= until),
        *(line.path.bounds() for line in _lines(draft, sheet) if line.step <= until),
    ]
    return reduce(Bounds.union, boxes) if boxes else Bounds(0.0, 0.0, 0.0, 0.0)


def _points(draft: Draft, sheet: str) -> Iterator[DraftPoint]:
    return (point for name, point in draft.points.items() if name.startswith(f"{sheet}."))


def _lines(draft: Draft, sheet: str) -> Iterator[DraftLine]:
    return (line for name, line in draft.lines.items() if name.startswith(f"{sheet}."))
