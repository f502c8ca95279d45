"""Seams, checks, notions and the order of work, worked out when all pieces are there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.arithmetic import alike, compare, evaluate_length, whole_number
from littlefold.draft.model import Comparison, DraftSeam, EdgeRef, Notion
from littlefold.draft.quantity import UNIT_NAMES
from littlefold.draft.refusal import Refusal
from littlefold.problem import Number, say
from littlefold.recipe import tree
from littlefold.recipe.wording import written

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.recipe.recipe import Written

SEAM_TOLERANCE = 2.0
"""How much two edges of a seam may differ where the recipe says nothing [mm]; published tolerances are 1/16 in and
1/8 in (1.6 and 3.2 mm, see docs/decisions.md)."""

COMPARED = 0.05
"""Lengths in a check are equal to within this [mm]: half the last place that is printed."""


def sew(line: Written, desk: Desk) -> None:
    """Joins two runs of edges."""
    step: tree.Sew = line.statement
    first, second = (_refs(run, desk) for run in (step.first, step.second))
    ease = evaluate_length(step.way.amount, desk) if isinstance(step.way, tree.Easing) else 0.0
    tolerance = evaluate_length(step.within, desk) if step.within is not None else SEAM_TOLERANCE
    gather = isinstance(step.way, tree.Gathered)
    desk.seams.append(DraftSeam(first, second, ease, gather, tolerance, line.place(step.first[0].spot)))


def _refs(names: tuple[tree.Name, ...], desk: Desk) -> tuple[EdgeRef, ...]:
    """The edges of a run, runs within it unfolded."""
    parts = tuple(part for name in names for part in desk.edges_of_run(name))
    return tuple(_ref(part, desk) for part in parts)


def _ref(name: tree.Name, desk: Desk) -> EdgeRef:
    piece, _, edge = name.text.rpartition(".")
    if name.text in desk.failed:
        raise desk.missing(say("run"), name, desk.runs)
    if not piece:
        raise Refusal(
            "edge-without-piece",
            say('"{name}": write the piece too, such as front.{name}.', name=str(name)),
            name.spot,
        )
    if piece not in desk.pieces:
        raise desk.missing(say("piece"), tree.Name(piece, name.spot), desk.pieces)
    edges = [one.name for one in desk.pieces[piece].edges]
    if edge not in edges:
        raise desk.missing(say("edge of {piece}", piece=str(piece)), tree.Name(edge, name.spot), edges)
    return EdgeRef(piece, edge)


def check(line: Written, desk: Desk) -> None:
    """Works out a comparison of the recipe's own."""
    step: tree.Check = line.statement
    left, right = alike(step.left, step.right, desk)
    slack = evaluate_length(step.within, desk) if step.within is not None else COMPARED
    desk.comparisons.append(
        Comparison(
            left.value,
            step.sign,
            right.value,
            UNIT_NAMES[left.dimension],
            written(step.left),
            written(step.right),
            compare(left.value, step.sign, right.value, slack),
            desk.words(step.text),
            step.weight or "error",
            line.place(),
        )
    )


MOST_NOTIONS = 1_000
"""No garment has more of one thing."""


def notion(line: Written, desk: Desk) -> None:
    """Something to buy or cut beside the cloth."""
    step: tree.NotionLine = line.statement
    size = evaluate_length(step.length, desk) if step.length is not None else None
    if size is not None and size <= 0:
        raise Refusal(
            "notion-without-length",
            say(
                "{name} would be {size} long. Change its formula.",
                name=str(step.name),
                size=f"{size / 10:.1f} cm",
            ),
            step.name.spot,
            (Number(step.name.text, size),),
        )
    desk.notions.append(
        Notion(
            step.name.text,
            size,
            whole_number(step.count, step.name.text, MOST_NOTIONS, desk) if step.count is not None else 1,
            desk.words(step.text),
            step.at.text if step.at else "",
            step.fixed,
            evaluate_length(step.free, desk) if step.free is not None else None,
        )
    )


def opening(line: Written, desk: Desk) -> None:
    """An opening that the recipe states itself."""
    desk.openings[line.statement.name.text] = evaluate_length(line.statement.length, desk)


def work(line: Written, desk: Desk) -> None:
    """Steps of the sewing."""
    desk.work.extend(desk.words(text) for text in line.statement.texts)


LATER = {tree.Opening: opening, tree.Check: check, tree.NotionLine: notion, tree.Work: work}
"""What is worked out when all pieces and seams are there."""
