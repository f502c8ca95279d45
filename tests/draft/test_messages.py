"""What a learner reads after a mistake: where it is, what is wrong, what to write instead, and nothing that follows."""

from __future__ import annotations

import pytest

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.recipe.parse import parse

START = """title "Messages"
measure chest
choice closing = elastic | studs | cord
drawing s
point A at the fold
point B right of A by 9 cm
point C below B by 12 cm
point D below A by 12 cm
line side from B to C
"""
EDGES = "piece p from s cut 1\nedges A-B seam, side seam, C-D seam, D-A seam\n"
CHILD, _ = complete(Measurements.of({"stature": 1040.0}))

# What is written after the start, the line and column of the problem there, its words.
MISTAKES = {
    "no unit": ("point E below A by 3", 1, 20, "3 what? Write 3 cm or 3 in."),
    "no unit of an angle": ("point E turning B about A by 30 clockwise", 1, 30, "30 what? Write 30 degrees."),
    "no unit in a check": ("check chest > 3", 1, 15, "3 what? Write 3 cm or 3 in."),
    "an area": ("point E below A by chest * chest", 1, 20, "is an area, not a length. Give it in cm or in"),
    "a mistyped unit": ("point E below A by 3 cms", 1, 22, 'no unit "cms". Did you mean "cm"?'),
    "a mistyped amount": ("point E below A by chset / 4", 1, 20, 'Did you mean "chest"?'),
    "a mistyped edge": (
        "piece p from s cut 1\nedges A-B hemm",
        2,
        11,
        'no kind of edge. Did you mean "hem"?',
    ),
    "a mistyped allowance": ("allowances seem 1 cm", 1, 12, 'Did you mean "seam"?'),
    "a mistyped inside line": (EDGES + "inside slitt A-C", 3, 8, 'Did you mean "slit"?'),
    "a mistyped option": ("when closing is elastik\nend", 1, 17, 'Did you mean "elastic"?'),
    "a mistyped choice": ("when closng is cord\nend", 1, 6, 'Did you mean "closing"?'),
    "half a button": ("notion buttons count 2.5", 1, 22, "2.5 buttons: give a whole number from 1 to 1000."),
    "half a buttonhole": (EDGES + "inside buttonholes 2.5 along A-B", 3, 20, "a whole number from 1 to 50"),
    "a division by nought": ("amount x = chest / 0", 1, 12, "nothing can be divided by 0. Change it."),
    "edges that do not meet": (
        "piece p from s cut 1\nedges A-B fold, side seam, C-D hem\ndrawing t",
        2,
        7,
        "between their nearest ends are 12.00 cm",
    ),
    "no edges": ("piece p from s cut 1\ngrain along A-D\ndrawing t", 1, 7, "Add a line: edges"),
}


@pytest.mark.parametrize("name", MISTAKES)
def test_one_mistake_one_message(name: str) -> None:
    text, line, column, words = MISTAKES[name]
    (problem,) = evaluate(parse(START + text, "my"), CHILD).problems
    assert words in problem.message
    assert (problem.place.line, problem.place.column) == (START.count("\n") + line, column)
    assert problem.message.startswith(f"my, line {problem.place.line}, column {column}: ")


def test_what_follows_from_a_refused_piece_is_not_told() -> None:
    text = "piece q from s cut 1\nedges A-B hemm\nnotch side at 1/2\nmark 'x' at A\nsew q.side to p.side\n"
    draft = evaluate(parse(START + EDGES + text.replace("'", '"')), CHILD)
    assert [problem.code for problem in draft.problems] == ["unknown-edge-kind"]
    assert [piece.name for piece in draft.pieces] == ["p"]


def test_a_notch_beside_its_edge_costs_no_piece() -> None:
    draft = evaluate(parse(START + EDGES + "notch side at A\nnotch side at B\ndrawing t"), CHILD)
    (problem,) = draft.problems
    assert problem.code == "not-on-line"
    assert problem.place.line == START.count("\n") + 3
    (piece,) = draft.pieces
    assert [(notch.edge, notch.at) for notch in piece.notches] in ([("side", 0.0)], [("side", 120.0)])


def test_what_stands_under_a_condition_that_cannot_be_told_is_drawn() -> None:
    text = "when closng is cord\npoint K below A by 1 cm\notherwise\npoint L below A by 2 cm\nend\nline l from A to K"
    draft = evaluate(parse(START + text), CHILD)
    assert [problem.code for problem in draft.problems] == ["unknown-choice"]
    assert {"s.K", "s.l"} <= {*draft.points, *draft.lines}
    assert "s.L" not in draft.points
