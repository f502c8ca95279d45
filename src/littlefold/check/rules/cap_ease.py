"""A sleeve cap is longer than its armhole by the ease of the age."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.body import stature
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm
from littlefold.check.roles import Role, role_of
from littlefold.check.seams import run_words, seam_place
from littlefold.problem import Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import EdgeRef
    from littlefold.pattern.model import Pattern, Seam
    from littlefold.problem import Problem

CODE = "cap-ease"
TODDLER = 1160.0  # mm of stature: up to size 6X, about seven years, where the shapes of boys and girls part
TODDLER_MOST = 12.7  # mm, 1/2 in
MOST = 38.1  # mm, 1 1/2 in


@rule(
    code=CODE,
    title="A sleeve cap is 0 to 1/2 in longer than the armhole for a small child, up to 1 1/2 in for an "
    "older one",
    why="A short cap pulls the armhole in; too much ease stands on a small shoulder as puckers.",
    source="textbook ease of 1 to 1 1/2 in is far too much for toddlers, 0 to 1/4 or 1/2 in is used "
    "(Design Loft 2007/11); where the shapes part: NIMI, Dress Making trade theory 2024",
)
def cap_ease(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Set-in sleeves whose cap is shorter than the armhole (error) or too long for the age (warning)."""
    tall = stature(pattern)
    most = MOST if tall is not None and tall > TODDLER else TODDLER_MOST
    for seam in pattern.seams:
        ease = None if seam.gather else ease_of_cap(pattern, seam)
        if ease is not None and not -seam.tolerance <= ease <= most + seam.tolerance:
            yield _problem(seam, ease, most)


def ease_of_cap(pattern: Pattern, seam: Seam) -> float | None:
    """How much longer the cap is than the armhole it is sewn into [mm]; None for other seams."""
    roles = _roles(pattern, seam.first), _roles(pattern, seam.second)
    if roles == ({Role.ARMHOLE}, {Role.CAP}):
        return seam.second_length - seam.first_length
    if roles == ({Role.CAP}, {Role.ARMHOLE}):
        return seam.first_length - seam.second_length
    return None


def _roles(pattern: Pattern, run: tuple[EdgeRef, ...]) -> set[Role | None]:
    pieces = ((pattern.piece(ref.piece), ref.edge) for ref in run)
    return {role_of(piece, piece.edge(edge)) for piece, edge in pieces}


def _problem(seam: Seam, ease: float, most: float) -> Problem:
    return found(
        CODE,
        say(
            "The cap in the seam of {first} to {second} is {ease} longer than the armhole; 0 cm to "
            "{most} suits this child.",
            first=run_words(seam.first),
            second=run_words(seam.second),
            ease=cm(ease),
            most=cm(most),
        ),
        say("Raise the cap.") if ease < 0 else say("Lower the cap, or gather it on purpose."),
        place=seam_place(seam),
        numbers=(mm("ease", ease), mm("least", 0.0), mm("most", most)),
        severity=Severity.ERROR if ease < 0 else Severity.WARNING,
    )
