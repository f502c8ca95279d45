"""A garment ends above the floor."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.across import height
from littlefold.check.body import girth, stature
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece, on_tape
from littlefold.check.roles import Role, edges_with, has_legs, role_of
from littlefold.check.rules.crotch_depth import fork, heights
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "trips-on-hem"
LEG_MORE: Final = 20.0  # mm: how much longer than the inside leg a trouser leg may be, worn with shoes
NAPE: Final = 0.8  # of the stature: the height of the nape; common practice, no source
WAIST_SHARE, WAIST_LESS = 0.7183, 170.8  # height of the waist: this share of the stature, less this [mm]
_ON_FLOOR: Final = frozenset({"sleep_bag", "bib", "collar", "hat"})


@rule(
    code=CODE,
    title="A garment ends above the floor",
    why="A small child trips on a hem that touches the floor; far too long, a formula used the wrong measurement.",
    source="height of the waist: 0.7183 of the stature less 17.08 cm (computed from Snyder et al. 1977); the other "
    "limits are common practice, no source",
)
def trips_on_hem(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Trouser legs longer than the inside leg, and other garments longer than from nape or waist to the floor."""
    if pattern.draft.garment in _ON_FLOOR:
        return
    longest = _longest_leg(pattern) if has_legs(pattern) else _longest_piece(pattern)
    most = _most_leg(pattern) if has_legs(pattern) else _most_piece(pattern)
    if longest is not None and most is not None and longest[0] > most:
        yield _problem(longest[1], longest[0], most)


def _longest_leg(pattern: Pattern) -> tuple[float, Piece] | None:
    """The longest leg from the fork to the hem [mm], and its piece."""
    pieces = {piece.name: piece for piece, _ in edges_with(pattern, Role.LEG)}
    forked = {piece.name for piece, _ in edges_with(pattern, Role.CROTCH)}
    legs = [(fork(p) - min(heights(p, Role.LEG)), p) for name, p in pieces.items() if name in forked]
    return max(legs, key=lambda leg: leg[0], default=None)


def _longest_piece(pattern: Pattern) -> tuple[float, Piece] | None:
    """The piece that hangs lowest, and how long it hangs [mm]; sleeves and pieces that are sewn on are left out."""
    pieces = [(_hang(piece, hem), piece) for piece, hem in edges_with(pattern, Role.HEM)]
    return max(pieces, key=lambda piece: piece[0], default=None)


def _hang(piece: Piece, hem: DraftEdge) -> float:
    """From the waist straight to the middle of the hem, as a flared skirt hangs; else along the grain [mm]."""
    middle = hem.path.at_length(hem.path.length() / 2)
    waists = [edge.path for edge in piece.edges if role_of(piece, edge) is Role.WAIST]
    return min((path.distance(middle) for path in waists), default=height(piece))


def _most_leg(pattern: Pattern) -> float | None:
    inside = girth(pattern, "inside_leg")
    return None if inside is None else inside + LEG_MORE


def _most_piece(pattern: Pattern) -> float | None:
    tall = stature(pattern)
    if tall is None:
        return None
    hangs_from_neck = any(True for _ in edges_with(pattern, Role.NECK))
    return NAPE * tall if hangs_from_neck else WAIST_SHARE * tall - WAIST_LESS


def _problem(piece: Piece, length: float, most: float) -> Problem:
    return found(
        CODE,
        say(
            'The piece "{piece}" is {length} long where it hangs; from there to the floor this child has '
            "{most}.",
            piece=piece.name,
            length=cm(length),
            most=on_tape(most),
        ),
        say(
            "Make it at least {shorter} shorter, or look at the formula of its length.",
            shorter=cm(length - most),
        ),
        place=on_piece(piece),
        numbers=(mm("length", length), mm("most", most)),
        severity=Severity.WARNING,
    )
