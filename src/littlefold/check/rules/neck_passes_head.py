"""The neck opening passes over the head."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.check.body import girth
from littlefold.check.register import rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.check.roles import Role
from littlefold.check.stretch import stretch
from littlefold.check.worn import opening
from littlefold.problem import Number, Severity

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.check.worn import Opening
    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

CODE = "neck-passes-head"
# These do not go over the head: they open, hang from the waist, or are laid on.
_NOT_OVER_HEAD: Final = frozenset(
    {"bib", "trousers", "skirt", "nappy_cover", "hat", "collar", "bloomers", "drawers"}
)


@rule(
    code=CODE,
    title="The neck opening, with its slits and buttons undone, passes over the head",
    why="A garment that sticks on the head frightens a small child, and the front has to be cut open.",
    source="opening at least the head girth, else a placket of half the difference (Zollege, placket "
    "length criteria); a stretch garment copied in woven cloth would not go over the head (Belgina 2014)",
)
def neck_passes_head(pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    """Necks that are smaller than the head even when stretched and undone; for a block this is a note."""
    neck, head = opening(pattern, Role.NECK), girth(pattern, "head")
    if neck is None or head is None or pattern.draft.garment in _NOT_OVER_HEAD:
        return
    reach = neck.opened * (1 + stretch(pattern, circumstances))
    if reach < head:
        yield _problem(pattern, neck, reach, head)


def _problem(pattern: Pattern, neck: Opening, reach: float, head: float) -> Problem:
    placket, more = (head - reach) / 2, head / neck.opened - 1
    piece, edge = neck.parts[0]
    return found(
        CODE,
        f'The neck opening is {cm(reach)} as worn, with everything undone (edge "{edge.name}" of the piece '
        f'"{piece.name}" and those beside it); the head is {cm(head)}.',
        f"Add a placket of {cm(placket)}, half the difference, or a cloth that stretches by {more:.0%}.",
        place=on_piece(piece, edge.name),
        numbers=(
            mm("opening", reach),
            mm("head", head),
            mm("placket", placket),
            Number("stretch", more, "ratio"),
        ),
        severity=Severity.NOTE if pattern.draft.garment == "block" else Severity.ERROR,
    )
