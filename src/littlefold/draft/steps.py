"""Draws one statement: the construction is done, what it makes is named, the step is written down."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft import constructions  # noqa: F401 - importing it fills the register
from littlefold.draft.desk import FOLLOWS
from littlefold.draft.drawn import Drawn, NewLine, NewPoint
from littlefold.draft.model import DraftLine, DraftPoint, Said, Step
from littlefold.draft.names import lengths_in, names_in
from littlefold.draft.quantity import Dimension, Quantity, length
from littlefold.draft.refusal import Refusal
from littlefold.draft.register import CONSTRUCTIONS
from littlefold.draft.values import note_printed, source_words
from littlefold.draft.worn import drawn_length
from littlefold.problem import say
from littlefold.recipe import tree
from littlefold.recipe.wording import written

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.desk import Desk
    from littlefold.draft.drawn import Distance
    from littlefold.recipe.recipe import Written


def draw_step(line: Written, desk: Desk) -> None:
    """Draws a point or line and writes down the step."""
    statement = line.statement
    name = desk.qualified(statement.name.text)
    _allow(name, statement.name, desk)
    construction = CONSTRUCTIONS[type(statement)]
    drawn = construction.draw(statement, desk)
    put(name, drawn, desk)
    write_step(line, name, construction.kind, drawn.words, desk, drawn.distance)
    if line.statement.clauses.printed is not None:
        note_printed(line, statement.clauses, _printed_value(drawn), desk)


def _allow(name: str, made: tree.Name, desk: Desk) -> None:
    desk.allow_step(made)
    if not desk.sheet:
        code = FOLLOWS if "drawing" in desk.unread else "no-sheet-yet"
        told = say("{made} is drawn on no sheet. Begin with a line: drawing NAME.", made=str(made))
        raise Refusal(code, told, made.spot)
    if "." in made.text:
        raise Refusal("name-with-dot", f'"{made}": what is drawn is named without a dot.', made.spot)
    if name in desk.points or name in desk.lines or made.text in desk.values:
        told = say('"{name}" has a meaning already. Choose another name.', name=str(made))
        raise Refusal("name-taken", told, made.spot)


def put(name: str, drawn: Drawn, desk: Desk) -> None:
    """Puts what was drawn on the desk, under its full name."""
    number = len(desk.steps) + 1
    if isinstance(drawn, NewPoint):
        desk.points[name] = DraftPoint(name, drawn.at, number)
    else:
        desk.lines[name] = DraftLine(name, drawn.path, drawn.kind, drawn.start, drawn.end, number)


def write_step(  # noqa: PLR0917
    line: Written,
    name: str,
    kind: str,
    words: Mapping[str, Said],
    desk: Desk,
    distance: Distance | None = None,
) -> None:
    """Writes down a step."""
    if desk.is_trial:
        return
    statement = line.statement
    clauses = getattr(statement, "clauses", None) or tree.Clauses()
    desk.steps.append(
        Step(
            len(desk.steps) + 1,
            name,
            desk.sheet,
            kind,
            dict(words),
            written(distance.expr) if distance else "",
            distance.value if distance else None,
            distance.exact if distance else None,
            source_words(clauses.source, desk.language),
            line.line,
            1,
            desk.words(clauses.text),
            _terms(distance.expr, desk) if distance else (),
        )
    )


def _printed_value(drawn: Drawn) -> Quantity:
    if drawn.distance is not None:
        return length(drawn.distance.exact)
    if isinstance(drawn, NewLine):
        return length(drawn.path.length())
    return length(0.0)


def _terms(expr: tree.Expr, desk: Desk) -> tuple[tuple[str, Said], ...]:
    """The names and the lengths of lines in a formula, and their values."""
    found: list[tuple[str, Said]] = []
    for name in names_in(expr):
        value = desk.values.get(desk.qualified(name), desk.values.get(name))
        if isinstance(value, Quantity):
            sort = {Dimension.LENGTH: "length", Dimension.ANGLE: "angle"}.get(value.dimension, "number")
            found.append((name, Said(sort, value.value)))  # type: ignore[arg-type]
    lengths = ((written(part), Said("length", drawn_length(part.line, desk))) for part in lengths_in(expr))
    return (*found, *lengths)
