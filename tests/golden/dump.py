"""A draft and its pattern as canonical text: points to a hundredth of a millimetre, lengths, allowances, findings.

Golden files guard against change; they prove nothing.  What proves something stands in the other tests.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.pattern.model import Piece
    from littlefold.pipeline import Outcome


def dump(outcome: Outcome) -> str:
    """The canonical text of an outcome."""
    return "\n".join(_lines(outcome)) + "\n"


def _lines(outcome: Outcome) -> Iterator[str]:
    draft = outcome.draft
    yield f"recipe {draft.recipe}"
    for name, point in draft.points.items():
        yield f"point {name} {_mm(point.at.x)} {_mm(point.at.y)}"
    for name, line in draft.lines.items():
        yield f"{line.kind} {name} {_mm(line.path.length())}"
    for piece in outcome.pattern.pieces:
        yield from _piece(piece)
    for seam in outcome.pattern.seams:
        runs = [" then ".join(f"{ref.piece}.{ref.edge}" for ref in run) for run in (seam.first, seam.second)]
        matched = "matched" if seam.matched else "NOT MATCHED"
        yield f"seam {runs[0]} to {runs[1]} {_mm(seam.first_length)} {_mm(seam.second_length)} {matched}"
    for notion in draft.notions:
        size = "" if notion.length is None else f" {_mm(notion.length)}"
        yield f"notion {notion.name} {notion.count}{size}"
    for problem in outcome.problems:
        yield f"{problem.severity.value} {problem.code}"


def _piece(piece: Piece) -> Iterator[str]:
    area = piece.outline.cut.signed_area() / 100
    yield f"piece {piece.name} cut {piece.cutting.count} area {area:.1f} cm2"
    for edge in piece.edges:
        yield f"  edge {edge.name} {edge.kind.value} {_mm(edge.path.length())} allowance {_mm(edge.allowance)}"
    for notch in piece.notches:
        yield f"  notch {notch.edge} {_mm(notch.at)} {notch.count}"


def _mm(value: float) -> str:
    return f"{value:.2f}".replace("-0.00", "0.00")
