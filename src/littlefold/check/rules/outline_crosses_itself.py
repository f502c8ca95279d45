"""The stitch line and the cutting line of a piece do not cross themselves."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece
from littlefold.pattern.simple import self_meeting
from littlefold.problem import Number, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    import shapely

    from littlefold.check.circumstances import Circumstances
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "outline-crosses-itself"
_ALREADY = frozenset({"stitch-line-crosses", "cutting-line-crosses"})


@rule(
    code=CODE,
    title="No outline crosses itself",
    why="A piece whose line crosses itself has no inside: two points of the draft stand in the wrong order.",
    source=COMMON_PRACTICE,
)
def outline_crosses_itself(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Stitch lines and cutting lines that meet themselves; silent where tracing the piece has reported it."""
    reported = {problem.place.piece for problem in pattern.problems if problem.code in _ALREADY}
    for piece in (piece for piece in pattern.pieces if piece.name not in reported):
        outline = piece.outline
        if not outline.stitch_is_simple:
            yield from _crossing(piece, "stitch line", outline.within.exterior)
        if not outline.cut_is_simple:
            yield from _crossing(piece, "cutting line", outline.around.exterior)


def _crossing(piece: Piece, line: str, loop: shapely.LinearRing) -> Iterator[Problem]:
    if loop.is_simple:
        return
    place = self_meeting(loop)
    yield found(
        CODE,
        say(
            'The {line} of the piece "{piece}" crosses itself {x} to the right and {y} up from the '
            "origin of its drawing; it may cross itself 0 times.",
            line=say(line),
            piece=piece.name,
            x=cm(place.x),
            y=cm(place.y),
        ),
        say(
            "Look at the points near it: are two of them exchanged, or is a depth or an allowance too "
            "large for a short edge?"
        ),
        place=on_piece(piece),
        numbers=(mm("x", place.x), mm("y", place.y), Number("allowed", 0, "count")),
    )
