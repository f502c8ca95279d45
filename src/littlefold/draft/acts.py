"""What each kind of statement does; one dictionary, so that nothing is done twice or forgotten."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from littlefold.draft import sewing, sheets, stating, values
from littlefold.draft.arithmetic import evaluate_number
from littlefold.draft.refusal import Refusal
from littlefold.draft.register import CONSTRUCTIONS
from littlefold.draft.shapes import SHAPE_ACTS
from littlefold.draft.steps import draw_step
from littlefold.draft.strips import STRIP_ACTS
from littlefold.draft.worn import drawn_length
from littlefold.problem import Number
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.draft.desk import Desk
    from littlefold.recipe.recipe import Written

    Act = Callable[[Written, Desk], None]


MOST_PARTS = 100
"""No run has more edges; runs of runs would grow without end."""


def _run(line: Written, desk: Desk) -> None:
    """Several edges or lines under one name."""
    step: tree.Run = line.statement
    parts = tuple(part for name in step.parts for part in (desk.run(name.text) or (name,)))
    if len(parts) > MOST_PARTS:
        raise Refusal(
            "run-too-long",
            f"{step.name} would have {len(parts)} parts; a run has at most {MOST_PARTS}.",
            step.name.spot,
            (Number("parts", len(parts), "count"), Number("at most", MOST_PARTS, "count")),
        )
    for part in parts:
        drawn_length(part, desk)  # refuses what is neither a line nor an edge
    on_sheet = all("." not in part.text for part in parts)
    desk.runs[desk.qualified(step.name.text) if on_sheet else step.name.text] = parts


def _caution(line: Written, desk: Desk) -> None:
    desk.cautions.append(desk.words(line.statement.text))


def _knit(line: Written, desk: Desk) -> None:
    desk.stretch = evaluate_number(line.statement.stretch, desk)


def _nothing(line: Written, desk: Desk) -> None:
    """Statements that describe the recipe; they are read from it, not played."""


ACTS: dict[type, Act] = {
    tree.Measure: values.measure,
    tree.OwnMeasure: values.own_measure,
    tree.Unit: values.unit,
    tree.Amount: values.amount,
    tree.Table: values.table,
    tree.Allowances: values.allowances,
    tree.Drawing: lambda line, desk: sheets.begin(line.statement.name, line.statement.text, desk),
    tree.ContinueDrawing: lambda line, desk: sheets.go_on(line.statement.name, desk),
    tree.TraceLines: sheets.trace_lines,
    tree.LayPart: sheets.lay,
    tree.Run: _run,
    tree.Piece: stating.begin_piece,
    tree.Edges: stating.piece_edges,
    tree.EdgesAs: stating.piece_edges_as,
    tree.Grain: stating.grain,
    tree.GrainAngle: stating.grain,
    tree.NotchAt: stating.notch,
    tree.NotchShare: stating.notch,
    tree.NotchBy: stating.notch,
    tree.InsideLine: stating.inside,
    tree.Holes: stating.holes,
    tree.Mark: stating.mark,
    tree.Sew: sewing.sew,
    tree.Caution: _caution,
    tree.Knit: _knit,
    **dict.fromkeys(CONSTRUCTIONS, draw_step),
    **dict.fromkeys((tree.RecipeName, tree.Title, tree.Suits, tree.Source, tree.Garment), _nothing),
    **dict.fromkeys((tree.Remark, tree.Example), _nothing),
    **SHAPE_ACTS,
    **STRIP_ACTS,
}

# Statements that belong to the piece in hand and do not end it.
PART_OF_PIECE: frozenset[type[Any]] = frozenset(
    {
        tree.Edges,
        tree.EdgesAs,
        tree.Grain,
        tree.GrainAngle,
        tree.NotchAt,
        tree.NotchShare,
        tree.NotchBy,
        tree.InsideLine,
        tree.Holes,
        tree.Mark,
        tree.WhenBegins,
        tree.Otherwise,
        tree.EndWhen,
    }
)

# Statements that a recipe takes over when it begins with another's draft: all that leads to the drawings.
TAKEN_OVER: frozenset[type[Any]] = frozenset(
    {
        tree.Measure,
        tree.OwnMeasure,
        tree.Unit,
        tree.ChoiceLength,
        tree.ChoiceOption,
        tree.Amount,
        tree.Table,
        tree.Find,
        tree.Allowances,
        tree.Drawing,
        tree.ContinueDrawing,
        tree.Redraw,
        tree.WithChange,
        tree.Without,
        tree.TraceLines,
        tree.LayPart,
        tree.WhenBegins,
        tree.Otherwise,
        tree.EndWhen,
        tree.BeginWith,
        *CONSTRUCTIONS,
        *SHAPE_ACTS,
    }
)
