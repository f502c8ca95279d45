"""What tests ask of a draft: outlines as polygons of an independent library, and the problems."""

from __future__ import annotations

from typing import TYPE_CHECKING

from shapely import Polygon

from littlefold.geometry import Path

if TYPE_CHECKING:
    from littlefold.draft.model import Draft
    from littlefold.problem import Problem


def ring(draft: Draft, sheet: str, *edges: str) -> Path:
    """The outline made of edges of a sheet, head to tail."""
    return Path.joined(*(draft.lines[f"{sheet}.{edge}"].path for edge in edges))


def polygon(draft: Draft, sheet: str, *edges: str) -> Polygon:
    """The same flattened, as a polygon that is closed and simple."""
    path = ring(draft, sheet, *edges)
    assert path.start.distance(path.end) < 1e-6
    made = Polygon([(point.x, point.y) for point in path.flatten(0.002)])
    assert made.is_valid
    assert made.exterior.is_ccw
    return made


def length(draft: Draft, line: str) -> float:
    return draft.lines[line].path.length()


def gap(draft: Draft, one: str, other: str) -> float:
    return draft.points[one].at.distance(draft.points[other].at)


def only_problem(draft: Draft) -> Problem:
    assert len(draft.problems) == 1, [problem.message for problem in draft.problems]
    return draft.problems[0]
