"""A draft and its pattern as one JSON document, `littlefold-draft/1`, for other programs to read.

Lengths are millimetres, x right, y up, as drawn; outlines run counter-clockwise, the first point is not repeated,
and lie within `FLATNESS` of the true curve.  docs/data.md describes every field.
"""

from __future__ import annotations

from dataclasses import asdict
from math import isfinite
from typing import TYPE_CHECKING, Any

from littlefold.booklet.spoken import spoken
from littlefold.draft.sentence import Speech, full_sentence

if TYPE_CHECKING:
    from collections.abc import Iterable

    from littlefold.body.measurements import Measurements
    from littlefold.draft.model import Draft, DraftEdge, DraftLine, EdgeRef, Notion, Step
    from littlefold.geometry import Path, Point
    from littlefold.pattern.model import Outline, Pattern, Piece, Seam
    from littlefold.problem import Problem

FORMAT = "littlefold-draft/1"
FLATNESS = 0.01
"""How far a flattened outline may lie from the true curve [mm]; the promise is 0.02."""

Json = dict[str, Any]


def draft_record(pattern: Pattern, problems: Iterable[Problem], speech: Speech) -> Json:
    """The document of a draft.

    Args:
        pattern: The traced pattern; its draft is part of it.
        problems: All findings of the whole flow.
        speech: How sentences are said.
    """
    draft = pattern.draft
    return {
        "format": FORMAT,
        "recipe": {"name": draft.recipe, "title": draft.title, "hash": draft.recipe_hash},
        "measurements": measurements_record(draft.measurements, draft.used),
        "choices": dict(draft.choices),
        "tape": draft.tape,
        "points": {name: _place(point.at) for name, point in draft.points.items()},
        "lines": {name: _line(line, draft) for name, line in draft.lines.items()},
        "steps": [_step(step, draft, speech) for step in draft.steps],
        "pieces": [_piece(piece) for piece in pattern.pieces],
        "seams": [_seam(seam) for seam in pattern.seams],
        "notions": [_notion(notion) for notion in draft.notions],
        "work": list(draft.work),
        "problems": [problem_record(problem) for problem in spoken(problems, speech)],
    }


def empty_record(problems: Iterable[Problem], recipe: str = "") -> Json:
    """The document of a draft that could not be begun: the same shape, with empty lists."""
    return {
        "format": FORMAT,
        "recipe": {"name": recipe, "title": "", "hash": ""},
        "measurements": {},
        "choices": {},
        "tape": None,
        "points": {},
        "lines": {},
        "steps": [],
        "pieces": [],
        "seams": [],
        "notions": [],
        "work": [],
        "problems": [problem_record(problem) for problem in problems],
    }


def measurements_record(measurements: Measurements, names: Iterable[str]) -> Json:
    """The measurements that were used, each with where it came from."""
    found = ((name, measurements.get(name)) for name in names)
    return {
        name: {"mm": number(reading.mm), "origin": reading.origin.value}
        for name, reading in found
        if reading is not None
    }


def problem_record(problem: Problem) -> Json:
    """A problem as data."""
    return {
        "code": problem.code,
        "severity": problem.severity.value,
        "message": problem.message,
        "rule": problem.rule,
        "place": asdict(problem.place),
        "numbers": [{"name": n.name, "value": number(n.value), "unit": n.unit} for n in problem.numbers],
    }


def number(value: float) -> float | None:
    """A number to a ten-thousandth; None for what is no number, which JSON does not know."""
    return round(value, 4) + 0.0 if isfinite(value) else None


def _place(point: Point) -> list[float | None]:
    return [number(point.x), number(point.y)]


def _ring(path: Path) -> list[list[float | None]]:
    return [_place(point) for point in path.flatten(FLATNESS)[:-1]]


def _line(line: DraftLine, draft: Draft) -> Json:
    return {
        "kind": line.kind,
        "from": _end(line, line.start, draft),
        "to": _end(line, line.end, draft),
        "length_mm": number(line.path.length()),
        "guides": [{"at": guide.at, "depth_mm": number(guide.depth)} for guide in line.guides],
    }


def _end(line: DraftLine, end: str, draft: Draft) -> str:
    """The qualified name of a line's end, a key of the points; what was laid bears the name of its part."""
    sheet, _, inner = line.name.partition(".")
    part = inner.rpartition(".")[0]
    names = (f"{sheet}.{end}", f"{sheet}.{part}.{end}") if end else ()
    return next((name for name in names if name in draft.points), "")


def _step(step: Step, draft: Draft, speech: Speech) -> Json:
    return {
        "number": step.number,
        "name": step.name,
        "line": step.line,
        "sentence": full_sentence(step, draft, speech),
        "formula": step.formula,
        "value_mm": None if step.value is None else number(step.value),
        "source": step.source or (draft.source if step.formula else ""),
    }


def _piece(piece: Piece) -> Json:
    return {
        "name": piece.name,
        "title": piece.title,
        "cut": piece.cutting.count,
        "on_fold": piece.cutting.on_fold,
        "pair": piece.cutting.pair,
        "side": piece.cutting.side,
        "cloth": piece.cloth,
        "edges": [_edge(edge) for edge in piece.edges],
        **_outline(piece.outline),
        "unfolded": _outline(piece.unfolded),
        "grain": [_place(point) for point in piece.grain],
        "notches": [{"edge": n.edge, "at_mm": number(n.at), "count": n.count} for n in piece.notches],
    }


def _outline(outline: Outline) -> Json:
    return {
        "stitch_outline": _ring(outline.stitch),
        "cut_outline": _ring(outline.cut),
        "areas": {
            "stitch": number(outline.stitch.signed_area()),
            "cut": number(outline.cut.signed_area()),
        },
    }


def _edge(edge: DraftEdge) -> Json:
    return {
        "name": edge.name,
        "kind": edge.kind.value,
        "from": edge.start,
        "to": edge.end,
        "stitch_mm": number(edge.path.length()),
        "allowance_mm": number(edge.allowance),
    }


def _seam(seam: Seam) -> Json:
    return {
        "edges": [_names(seam.first), _names(seam.second)],
        "lengths_mm": [number(seam.first_length), number(seam.second_length)],
        "ease_mm": number(seam.ease),
        "gather": seam.gather,
        "tolerance_mm": number(seam.tolerance),
        "matched": seam.matched,
    }


def _names(run: tuple[EdgeRef, ...]) -> list[str]:
    return [f"{ref.piece}.{ref.edge}" for ref in run]


def _notion(notion: Notion) -> Json:
    return {
        "name": notion.name,
        "length_mm": None if notion.length is None else number(notion.length),
        "count": notion.count,
        "where": notion.where,
        "remark": notion.remark,
    }
