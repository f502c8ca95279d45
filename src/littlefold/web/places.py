"""Where on the drawing a finding stands."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.draft.model import Draft, DraftPiece
    from littlefold.geometry import Path, Point
    from littlefold.pipeline import Outcome
    from littlefold.problem import Problem


@dataclass(frozen=True, slots=True)
class Standing:
    """A finding with its number on the slip, and where it stands: on which sheet, at which point, along which line."""

    number: int
    problem: Problem
    sheet: str = ""
    at: Point | None = None
    along: Path | None = None


def standing(outcome: Outcome, problems: tuple[Problem, ...]) -> tuple[Standing, ...]:
    """All findings, numbered from 1, each at its place where it has one."""
    return tuple(_placed(number, one, outcome.draft) for number, one in enumerate(problems, start=1))


def _placed(number: int, problem: Problem, draft: Draft) -> Standing:
    place = problem.place
    piece = next((one for one in draft.pieces if one.name == place.piece), None)
    if piece is not None and place.edge:
        found = _on_edge(number, problem, piece)
        if found is not None:
            return found
    if place.point and (name := _qualified(place.point, piece, draft)):
        return Standing(number, problem, name.rpartition(".")[0], draft.points[name].at)
    if piece is not None and piece.edges:
        middle = max((edge.path for edge in piece.edges), key=lambda path: path.length())
        return Standing(number, problem, piece.sheet, middle.at_length(middle.length() / 2))
    return _on_line(number, problem, draft)


def _on_edge(number: int, problem: Problem, piece: DraftPiece) -> Standing | None:
    for edge in piece.edges:
        if edge.name == problem.place.edge:
            return Standing(
                number, problem, piece.sheet, edge.path.at_length(edge.path.length() / 2), edge.path
            )
    return None


def _qualified(point: str, piece: DraftPiece | None, draft: Draft) -> str:
    """The name by which the draft knows a point; empty where it knows none."""
    names = (point, f"{piece.sheet}.{point}" if piece else "")
    return next((name for name in names if name in draft.points), "")


def _on_line(number: int, problem: Problem, draft: Draft) -> Standing:
    """A finding about a line of the recipe stands at what that line draws."""
    line = problem.place.line
    step = next((step for step in draft.steps if line is not None and step.line == line), None)
    if step is None:
        return Standing(number, problem)
    if step.name in draft.points:
        return Standing(number, problem, step.sheet, draft.points[step.name].at)
    drawn = draft.lines.get(step.name)
    if drawn is None:
        return Standing(number, problem)
    return Standing(number, problem, step.sheet, drawn.path.at_length(drawn.path.length() / 2), drawn.path)
