"""Trousers are deep enough from waist to crotch."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.across import along
from littlefold.check.body import girth
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.check.roles import Role, edges_with
from littlefold.problem import Severity

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "crotch-depth"
LEAST, MOST = 5.0, 90.0  # mm more than the body rise; 20 mm is usual


@rule(
    code=CODE,
    title="Trousers are 0.5 to 9 cm deeper from waist to crotch than the body rise",
    why="Shallow trousers cut in and slide down when the child squats; very deep ones hobble it.",
    source="waist to seat sitting and 2 cm (a Scandinavian children's-pants lesson); the limits are "
    "common practice, no source",
)
def crotch_depth(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Crotch seams that reach less deep than the body rise (error), or with unusual ease (warning)."""
    rise = girth(pattern, "body_rise")
    depths = crotch_depths(pattern)
    if rise is None or not depths:
        return
    piece, depth = max(depths, key=lambda pair: pair[1])
    if not rise + LEAST <= depth <= rise + MOST:
        yield _problem(piece, depth, rise)


def crotch_depths(pattern: Pattern) -> list[tuple[Piece, float]]:
    """How far the crotch seam of each piece reaches along the grain [mm]."""
    ends: dict[str, list[float]] = {}
    for piece, edge in edges_with(pattern, Role.CROTCH):
        ends.setdefault(piece.name, []).extend(along(piece, end) for end in (edge.path.start, edge.path.end))
    return [(pattern.piece(name), max(heights) - min(heights)) for name, heights in ends.items()]


def _problem(piece: Piece, depth: float, rise: float) -> Problem:
    return found(
        CODE,
        f'The crotch seam of the piece "{piece.name}" reaches {cm(depth)} down from the waist; the body '
        f"rise is {cm(rise)}, and {cm(rise + LEAST)} to {cm(rise + MOST)} is wearable.",
        "Draw the crotch line at the body rise and 2 cm.",
        place=on_piece(piece),
        numbers=(mm("depth", depth), mm("body rise", rise)),
        severity=Severity.ERROR if depth < rise else Severity.WARNING,
    )
