"""What has to hold for any outcome, asked of shapely."""

from __future__ import annotations

from functools import lru_cache
from math import isfinite
from typing import TYPE_CHECKING

from shapely import LineString, Polygon

from littlefold.check import Circumstances
from littlefold.pipeline import Outcome, Wish, fulfil, on_the_shelf

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.body.measurements import Measurements
    from littlefold.geometry import Path
    from littlefold.pattern.model import Piece

# How far the flattened stitch line may lie outside the cutting line [mm]: twice the flattening of outlines, where the
# two lie on each other.
SLACK = 0.05


@lru_cache(maxsize=64)
def drafted(name: str, child: Measurements) -> Outcome:
    """The outcome of a shipped recipe with its own choices."""
    recipe = on_the_shelf(name)
    assert recipe is not None
    return fulfil(Wish(recipe, child, Circumstances()))


def unsound(outcome: Outcome) -> list[str]:
    """Everything that must not be, in words: empty for a sound outcome."""
    return [
        *_silent(outcome),
        *_lengths(outcome),
        *(w for piece in outcome.pattern.pieces for w in _piece(piece)),
    ]


def _silent(outcome: Outcome) -> Iterator[str]:
    """Problems without words, and pieces or seams that are missing without a problem that says so."""
    for problem in outcome.problems:
        if not problem.message.strip().endswith((".", "?", "!")) and len(problem.message.split()) < 5:
            yield f"{problem.code} says nothing: {problem.message!r}"
        if not all(isfinite(number.value) for number in problem.numbers):
            yield f"{problem.code} has a number that is none"
    if not outcome.pattern.pieces and not outcome.problems:
        yield "no pieces, and no word why"


def _lengths(outcome: Outcome) -> Iterator[str]:
    """Seams that do not match although nothing was said about them."""
    said = {problem.place.line for problem in outcome.problems}
    for seam in outcome.pattern.seams:
        gap = abs(seam.second_length - seam.first_length - seam.ease)
        if not seam.gather and gap > seam.tolerance and seam.place.line not in said:
            yield f"seam of line {seam.place.line}: {seam.first_length:.2f} to {seam.second_length:.2f} mm"
        if seam.gather and seam.second_length < seam.first_length - seam.tolerance:
            yield f"gathered seam of line {seam.place.line} has nothing to gather"


def _piece(piece: Piece) -> Iterator[str]:
    for which, outline in (("as drawn", piece.outline), ("whole", piece.unfolded)):
        stitch, cut = _ring(outline.stitch), _ring(outline.cut)
        for line, ring in (("stitch", stitch), ("cut", cut)):
            if not (ring.is_valid and ring.is_simple):
                yield f"{piece.name} {which}: the {line} line crosses itself"
            elif not ring.exterior.is_ccw:
                yield f"{piece.name} {which}: the {line} line runs clockwise"
        if not cut.buffer(SLACK).contains(stitch):
            yield f"{piece.name} {which}: the stitch line leaves the cutting line"
    if not _ring(piece.outline.stitch).buffer(SLACK).contains(LineString([(p.x, p.y) for p in piece.grain])):
        yield f"{piece.name}: the grain arrow leaves the piece"
    if not piece.unfolded.cut.signed_area() >= piece.outline.cut.signed_area() > 0:
        yield f"{piece.name}: unfolded it is smaller than folded"


def _ring(path: Path) -> Polygon:
    return Polygon([(point.x, point.y) for point in path.flatten()[:-1]])
