"""How large a sheet each drawing needs."""

from __future__ import annotations

from functools import reduce
from typing import TYPE_CHECKING

from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm
from littlefold.draft.model import EdgeKind
from littlefold.geometry import Bounds, Vector
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftSheet
    from littlefold.geometry import Point
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "paper-needed"
# The kinds of step that make a drawing of another one, or of a length and a width.
_MAKES = ("piece.", "shape.")


@rule(
    code=CODE,
    title="The paper that a drawing by hand needs",
    why="The learner folds or cuts the paper before the first line is drawn.",
    source="a bib on paper of 15 by 11 in folded lengthwise, drawers on 14 by 22 in (School Needlework); "
    "folded paper an inch or so wider than the widest half piece is common practice, no source",
)
def paper_needed(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """A note for each drawing; a folded sheet is wider than its half pieces by the fold margin."""
    bounds = sheets_needed(pattern)
    for sheet in pattern.draft.sheets:
        if sheet.name in bounds:
            yield _note(sheet.name, bounds[sheet.name], _fold_way(pattern, sheet), circumstances.fold_margin)


def sheets_needed(pattern: Pattern) -> Mapping[str, Bounds]:
    """The drawings that need paper, in the order of their notes, and how large each is."""
    bounds, spared = sheet_bounds(pattern), _without_paper(pattern)
    return {
        sheet.name: bounds[sheet.name]
        for sheet in pattern.draft.sheets
        if sheet.name in bounds and sheet.name not in spared and _is_drawing(bounds[sheet.name])
    }


def _is_drawing(bounds: Bounds) -> bool:
    """Whether there is more than a row of points, which is what is left of a draft that could not be made."""
    return bounds.width > 0 and bounds.height > 0


def _without_paper(pattern: Pattern) -> set[str]:
    """The drawings that need no sheet of their own.

    Strips and bands are cut from what is left over; outlines on the way to a piece are cut from the drawing before.
    A split makes two outlines in one step, so an outline is also known by the step that made its points.
    """
    making = {step.number: step.sheet for step in pattern.draft.steps if step.kind.startswith(_MAKES)}
    parted = {name.partition(".")[0] for name, at in pattern.draft.points.items() if at.step in making}
    made = {*making.values(), *parted}
    marked = {step.sheet for step in pattern.draft.steps if step.kind.startswith("point.")}
    return made - marked - {piece.sheet for piece in pattern.draft.pieces if piece.made_as == "traced"}


def _fold_way(pattern: Pattern, sheet: DraftSheet) -> Vector | None:
    """The direction in which the paper is folded: that of a fold edge on the drawing; None where it lies flat."""
    folds = (
        edge.path.end - edge.path.start
        for piece in pattern.draft.pieces
        if piece.sheet == sheet.name
        for edge in piece.edges
        if edge.kind is EdgeKind.FOLD
    )
    return next(folds, Vector(0.0, 1.0) if sheet.on_fold else None)


def sheet_bounds(pattern: Pattern) -> Mapping[str, Bounds]:
    """What each drawing covers: its points, and the cutting lines of the pieces traced from it."""
    covered: dict[str, list[Bounds]] = {}
    for name, points in _points_by_sheet(pattern).items():
        covered.setdefault(name, []).append(Bounds.of_points(*points))
    for drafted in pattern.draft.pieces:
        piece = _traced(pattern, drafted.name)
        if piece is not None:
            covered.setdefault(drafted.sheet, []).append(Bounds(*piece.outline.around.bounds))
    return {name: reduce(Bounds.union, boxes) for name, boxes in covered.items()}


def _points_by_sheet(pattern: Pattern) -> Mapping[str, list[Point]]:
    found: dict[str, list[Point]] = {}
    for name, point in pattern.draft.points.items():
        found.setdefault(name.partition(".")[0], []).append(point.at)
    return found


def _traced(pattern: Pattern, name: str) -> Piece | None:
    return next((piece for piece in pattern.pieces if piece.name == name), None)


def _note(sheet: str, bounds: Bounds, fold: Vector | None, margin: float) -> Problem:
    width, height = bounds.width, bounds.height
    if fold is None:
        words = say(
            'The drawing "{sheet}" needs paper of at least {width} by {height}.',
            sheet=sheet,
            width=cm(width),
            height=cm(height),
        )
    else:
        across, along = (width, height) if abs(fold.y) >= abs(fold.x) else (height, width)
        half = across + margin
        width, height = 2 * half, along
        words = say(
            'The drawing "{sheet}" needs paper of {width} by {height}, folded to {half}: {margin} wider than the '
            "widest half piece, {across}.",
            sheet=sheet,
            width=cm(width),
            height=cm(height),
            half=cm(half),
            margin=cm(margin),
            across=cm(across),
        )
    return found(
        CODE,
        words,
        say("Cut the paper a little larger than that."),
        numbers=(mm("width", width), mm("height", height), mm("drawn", bounds.width)),
        severity=Severity.NOTE,
    )
