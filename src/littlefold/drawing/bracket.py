"""The bracket that says: this edge lies on the fold."""

from __future__ import annotations

from littlefold.drawing.arrow import arrow_head, label_along
from littlefold.drawing.marks import Mark, Meaning, Stroke
from littlefold.geometry import Path, Point

DEPTH = 9.0
"""How far the bracket stands off the fold [mm], on edges long enough for it."""


def fold_bracket(start: Point, end: Point, words: str = "", name: str = "") -> tuple[Mark, ...]:
    """A bracket to the left of the way along a fold, its two ends bent over to arrows that touch the fold.

    Pass the ends so that the piece lies to the left.
    """
    length = start.distance(end)
    depth = min(DEPTH, length / 4)
    left = (end - start).unit().turned_left() * depth
    p, q = start.towards(end, 0.12), start.towards(end, 0.88)
    head = min(3.5, depth / 2)
    bracket = Path.line_through(p, p + left, q + left, q)
    return (
        Stroke(bracket, Meaning.GRAIN, name),
        arrow_head(p, -left, Meaning.GRAIN, head, name),
        arrow_head(q, -left, Meaning.GRAIN, head, name),
        *((label_along(words, p + left, q + left, Meaning.FOLD, name=name),) if words else ()),
    )
