"""Two drafts over each other: the lines of both on one sheet, and what they differ by."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from littlefold.web.anchors import MOVED
from littlefold.web.piece_marks import mark
from littlefold.web.table_drawing import draw_sheet

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.draft.sentence import Speech
    from littlefold.pipeline import Glimpse, Outcome

Json = dict[str, Any]


def drawn_over(shown: Glimpse, other: Outcome) -> str:
    """A sheet of one draft with the lines of the same sheet of another over it, dashed."""
    front = f"{shown.sheet}."
    lines = (
        mark(line.path, "was", name) for name, line in other.draft.lines.items() if name.startswith(front)
    )
    return draw_sheet(shown).replace("</svg>", f'<g class="other">{"".join(lines)}</g></svg>')


def differences(one: Outcome, other: Outcome, sheet: str, speech: Speech) -> list[Json]:
    """What differs on a sheet: lines by their length, points by how far apart they lie."""
    return [*_lines(one, other, sheet, speech), *_points(one, other, sheet, speech)]


def _lines(one: Outcome, other: Outcome, sheet: str, speech: Speech) -> Iterator[Json]:
    front = f"{sheet}."
    for name, line in one.draft.lines.items():
        found = other.draft.lines.get(name)
        if not name.startswith(front) or found is None:
            continue
        first, second = line.path.length(), found.path.length()
        if abs(second - first) > MOVED:
            yield {
                "name": name.removeprefix(front).replace("_", " "),
                "first": speech.length(first),
                "second": speech.length(second),
                "by": f"{'+' if second > first else '−'}{speech.length(abs(second - first))}",  # noqa: RUF001
            }


def _points(one: Outcome, other: Outcome, sheet: str, speech: Speech) -> Iterator[Json]:
    front = f"{sheet}."
    for name, point in one.draft.points.items():
        found = other.draft.points.get(name)
        if not name.startswith(front) or found is None:
            continue
        apart = point.at.distance(found.at)
        if apart > MOVED:
            short = name.removeprefix(front).replace("_", " ")
            yield {"name": f"point {short}", "first": "", "second": "", "by": f"{speech.length(apart)} apart"}
