"""Trousers are deep enough from waist to crotch."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.across import along
from littlefold.check.body import girth
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece, on_tape
from littlefold.check.roles import Role, edges_with, role_of
from littlefold.problem import Severity, say

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
    """Forks that lie less deep than the body rise (error), or with unusual ease (warning)."""
    rise = girth(pattern, "body_rise")
    depths = crotch_depths(pattern)
    if rise is None or not depths:
        return
    piece, depth = max(depths, key=lambda pair: pair[1])
    if not rise + LEAST <= depth <= rise + MOST:
        yield _problem(piece, depth, rise)


def crotch_depths(pattern: Pattern) -> list[tuple[Piece, float]]:
    """How far the fork of each piece lies below its waist, along the grain [mm]."""
    pieces = {piece.name: piece for piece, _ in edges_with(pattern, Role.CROTCH)}
    return [(piece, max(heights(piece, Role.WAIST, Role.CROTCH)) - fork(piece)) for piece in pieces.values()]


def fork(piece: Piece) -> float:
    """The height of the fork of a trouser piece along its grain [mm]."""
    return min(heights(piece, Role.CROTCH))


def heights(piece: Piece, *roles: Role) -> list[float]:
    """The heights along the grain of the ends of all edges of some roles [mm]."""
    paths = [edge.path for edge in piece.edges if role_of(piece, edge) in roles]
    return [along(piece, end) for path in paths for end in (path.start, path.end)]


def _problem(piece: Piece, depth: float, rise: float) -> Problem:
    return found(
        CODE,
        say(
            'The fork of the piece "{piece}" lies {depth} below the waist; the body rise is {rise}, and '
            "{least} to {most} is wearable.",
            piece=piece.name,
            depth=cm(depth),
            rise=on_tape(rise),
            least=on_tape(rise + LEAST),
            most=on_tape(rise + MOST),
        ),
        say("Draw the crotch line at the body rise and 2 cm."),
        place=on_piece(piece),
        numbers=(mm("depth", depth), mm("body rise", rise)),
        severity=Severity.ERROR if depth < rise else Severity.WARNING,
    )
