"""A turned hem can lie flat."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.check.register import COMMON_PRACTICE, rule
from littlefold.check.report import cm, found, mm, on_piece, part
from littlefold.draft.model import EdgeKind
from littlefold.geometry import Line
from littlefold.problem import Number, Severity, say

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.check.circumstances import Circumstances
    from littlefold.draft.model import DraftEdge
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.problem import Problem

CODE = "hem-too-curved"
TURNED = frozenset({EdgeKind.HEM, EdgeKind.CASING})
# The part of itself by which the turned edge may be longer or shorter than the line it is sewn to.
ALLOWED = 0.35
SAMPLES = 12  # places along each curve of an edge at which its curvature is looked at


@rule(
    code=CODE,
    title="A hem or casing is not too deep for its curve",
    why="The cut edge of a hem on a curve is longer (or shorter) than the line it is turned to: depth "
    "times curvature. Too much of it stands in pleats, too little tears.",
    source=COMMON_PRACTICE,
)
def hem_too_curved(pattern: Pattern, _: Circumstances) -> Iterator[Problem]:
    """Turned edges whose allowance is more than 0.35 of the radius of their sharpest curve."""
    for piece in pattern.pieces:
        for edge in piece.edges:
            if edge.kind in TURNED and edge.path.length() > 0:
                yield from _judged(piece, edge)


def _judged(piece: Piece, edge: DraftEdge) -> Iterator[Problem]:
    curvature = sharpest(edge)
    if abs(curvature) * edge.allowance <= ALLOWED:
        return
    excess, radius = curvature * edge.allowance, 1 / abs(curvature)
    yield found(
        CODE,
        say(
            'The {kind} "{edge}" of the piece "{piece}" is {allowance} deep on a curve of {radius} '
            "radius: its cut edge is {excess} too {way}; {allowed} can be worked in.",
            kind=say(edge.kind.value),
            edge=edge.name,
            piece=piece.name,
            allowance=cm(edge.allowance),
            radius=cm(radius),
            excess=part(min(abs(excess), 1.0)),
            way=say("long" if excess > 0 else "short"),
            allowed=part(ALLOWED),
        ),
        say("Make it at most {deepest} deep, or face or bind the edge.", deepest=cm(ALLOWED * radius)),
        place=on_piece(piece, edge.name),
        numbers=(mm("depth", edge.allowance), mm("radius", radius), Number("excess", excess, "ratio")),
        severity=Severity.WARNING,
    )


def sharpest(edge: DraftEdge) -> float:
    """The greatest curvature of an edge [1/mm], positive where the outline bulges; corners are left out."""
    curves = [segment for segment in edge.path.segments if not isinstance(segment, Line)]
    places = [(k + 0.5) / SAMPLES for k in range(SAMPLES)]
    return max((curve.curvature(place) for curve in curves for place in places), key=abs, default=0.0)
