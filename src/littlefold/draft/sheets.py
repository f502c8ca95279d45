"""Sheets of paper: begun, gone on with, redrawn with changes, traced from, laid on."""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, copysign
from typing import TYPE_CHECKING, Any

from littlefold.draft.attempt import attempt
from littlefold.draft.drawn import NewLine, named, pencil, word
from littlefold.draft.model import DraftSheet, Said
from littlefold.draft.refusal import Refusal
from littlefold.draft.renamed import CUTTING, made_by, renamed
from littlefold.draft.steps import put, write_step
from littlefold.geometry import Affine, Point
from littlefold.problem import Number, say
from littlefold.recipe import tree
from littlefold.recipe.faults.fault import did_you_mean
from littlefold.recipe.recipe import Written
from littlefold.recipe.walk import every

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from littlefold.draft.desk import Desk

    Play = Callable[[Sequence[Written], int, Desk], None]


def begin(name: tree.Name, text: tree.Text | None, desk: Desk) -> None:
    """Begins a sheet; what follows is drawn on it."""
    if name.text in desk.sheets:
        raise Refusal(
            "name-taken", f'there is a drawing "{name}" already. Write "continue {name}" to go on.', name.spot
        )
    if "." in name.text:
        raise Refusal("name-with-dot", f'"{name}": a drawing is named without a dot.', name.spot)
    desk.sheets[name.text] = DraftSheet(name.text, desk.words(text))
    desk.history[name.text] = []
    desk.sheet = name.text


def go_on(name: tree.Name, desk: Desk) -> None:
    """Goes back to a sheet begun before."""
    if name.text not in desk.sheets:
        raise desk.missing(say("drawing"), name, desk.sheets)
    desk.sheet = name.text


@dataclass(frozen=True, slots=True)
class Redrawing:
    """A `redraw` line with the changes that follow it."""

    redraw: tree.Redraw
    changes: tuple[Written, ...]


def with_changes(lines: Sequence[Written]) -> tuple[Written, ...]:
    """The statements, each `redraw` taken together with the changes after it."""
    together: list[Written] = []
    for line in lines:
        kind = type(line.statement)
        if kind is tree.Redraw:
            together.append(Written(line.line, Redrawing(line.statement, ()), line.file))
        elif kind in CHANGES and together and isinstance(before := together[-1].statement, Redrawing):
            grown = Redrawing(before.redraw, (*before.changes, line))
            together[-1] = Written(together[-1].line, grown, line.file)
        else:
            together.append(line)
    return tuple(together)


CHANGES = frozenset({tree.WithChange, tree.Without})
"""The statements that say how a redrawn sheet differs."""


def redraw(line: Written, desk: Desk, play: Play) -> None:
    """Draws the steps of a sheet again on a new one, the named ones changed or left out.

    What cutting its outlines made (`front`, `front_yoke`, `pocket`) is made again under the new sheet's name
    (`back`, `back_yoke`, `back_pocket`).
    """
    step: tree.Redraw = line.statement.redraw
    if step.original.text not in desk.history:
        raise desk.missing(say("drawing"), step.original, desk.sheets)
    steps = list(desk.history[step.original.text])
    begin(step.name, step.text, desk)
    known = {name for original in steps for name in _made(original)}
    for change in line.statement.changes:
        attempt(change, desk, lambda change=change: _changes_something(change, known, step))  # type: ignore[misc]
    instead, left_out = _changes(line.statement.changes)
    drawn = [
        one for one in steps if not _refused(one, step, desk) or not instead.keys().isdisjoint(_made(one))
    ]
    anew = renamed([_instead(original, instead) for original in _kept(drawn, left_out)], step)
    for index in range(len(anew)):
        play(anew, index, desk)


def _refused(original: Written, step: tree.Redraw, desk: Desk) -> bool:
    """Whether a step was refused on the first sheet, which has been told: it is not there on the new one either."""
    names = [name for name in _made(original) if f"{step.original}.{name}" in desk.failed]
    desk.failed.update(f"{step.name}.{name}" for name in names)
    return bool(names)


def _changes_something(change: Written, known: set[str], step: tree.Redraw) -> None:
    """Refuses a change of what the sheet has not."""
    statement = change.statement
    names = statement.names if isinstance(statement, tree.Without) else made_by(statement.step)
    for name in names:
        if name.text not in known:
            raise Refusal(
                "nothing-to-change",
                f'the drawing {step.original} has no step that makes "{name}".{did_you_mean(name.text, known)} '
                f"Steps make: {', '.join(sorted(known))}.",
                name.spot,
            )


def _kept(steps: Sequence[Written], left_out: set[str]) -> Iterator[Written]:
    """The steps that are drawn again; a run or outline goes with what it is made of."""
    gone = set(left_out)
    for original in steps:
        if gone.isdisjoint(_needed(original)):
            yield original
        elif isinstance(original.statement, (tree.Run, *CUTTING)):
            gone.update(_made(original))


def _needed(line: Written) -> tuple[str, ...]:
    """What has to be there for a step to be drawn again: what it makes, all parts of a run, all lines of a cut."""
    statement = line.statement
    match statement:
        case tree.Run():
            parts = [part.text for part in statement.parts]
        case tree.Outline():
            parts = [name.text for edge in statement.edges for name in every(tree.Name, edge.line)]
        case _ if isinstance(statement, CUTTING):
            parts = [name.text for name in every(tree.Name, statement)]
        case _:
            parts = []
    return (*_made(line), *parts)


def _instead(original: Written, instead: Mapping[str, Written]) -> Written:
    """The step that is drawn in place of another; itself, where none is."""
    return next((instead[name] for name in _made(original) if name in instead), original)


def _changes(changes: Sequence[Written]) -> tuple[dict[str, Written], set[str]]:
    instead: dict[str, Written] = {}
    left_out: set[str] = set()
    for change in changes:
        if isinstance(change.statement, tree.Without):
            left_out.update(name.text for name in change.statement.names)
        else:
            anew = Written(change.line, change.statement.step, change.file)
            instead.update(dict.fromkeys(_made(anew), anew))
    return instead, left_out


def remember(line: Written, desk: Desk) -> None:
    """Keeps a drawing statement of the sheet in hand, so that the sheet can be redrawn."""
    if desk.sheet and _is_of_the_sheet(line.statement):
        desk.history[desk.sheet].append(line)


def _is_of_the_sheet(statement: Any) -> bool:
    """Whether a statement draws on the sheet in hand, or names what lies on it."""
    if isinstance(statement, tree.Run):
        return all("." not in part.text for part in statement.parts)
    is_drawn = getattr(statement, "clauses", None) is not None and not isinstance(statement, tree.Amount)
    return is_drawn or isinstance(statement, (tree.TraceLines, tree.LayPart, *CUTTING))


def _made(line: Written) -> tuple[str, ...]:
    """The names on its sheet of what a statement makes."""
    statement = line.statement
    if isinstance(statement, tree.TraceLines):
        return tuple(name.text.rpartition(".")[2] for name in statement.lines)
    if isinstance(statement, tree.LayPart):
        return (str(statement.name or statement.part),)
    return tuple(name.text for name in made_by(statement))


def trace_lines(line: Written, desk: Desk) -> None:
    """Traces lines of another sheet in the same place, under their short names."""
    for name in line.statement.lines:
        original = desk.named_line(name)
        short = name.text.rpartition(".")[2]
        full = desk.qualified(short)
        if full in desk.lines or full in desk.points:
            raise Refusal("name-taken", f'"{short}" is on this sheet already.', name.spot)
        drawn = NewLine(original.path, original.kind, "", "", {"line": named(name)})
        put(full, drawn, desk)
        write_step(line, full, "sheet.trace", drawn.words, desk)


def lay(line: Written, desk: Desk) -> None:
    """Lays a sheet or outline on the sheet in hand: P on Q, R towards S, perhaps overlapped, perhaps turned over.

    What is laid keeps its names, after the name under which it is laid (`front.N`).
    """
    step: tree.LayPart = line.statement
    part = step.part.text
    if part not in desk.sheets:
        raise desk.missing(say("drawing or outline"), step.part, desk.sheets)
    laid = sum(full.startswith(f"{part}.") for known in (desk.points, desk.lines) for full in known)
    desk.allow_step(step.part, 1 + laid)
    affine = _placed(step, desk) if step.placing else Affine.identity()
    front = desk.qualified((step.name or step.part).text)
    _copy_part(part, front, affine, desk)
    kind = "sheet.lay" if step.placing else "sheet.lay_plain"
    write_step(line, front, kind, _lay_words(step, desk), desk)


def _copy_part(part: str, front: str, affine: Affine, desk: Desk) -> None:
    number = len(desk.steps) + 1
    for full, point in list(desk.points.items()):
        if full.startswith(f"{part}."):
            name = front + full.removeprefix(part)
            desk.points[name] = type(point)(name, affine.apply(point.at), number)
    for full, drawn in list(desk.lines.items()):
        if full.startswith(f"{part}."):
            name = front + full.removeprefix(part)
            path = drawn.path.transformed(affine)
            desk.lines[name] = type(drawn)(name, path, drawn.kind, drawn.start, drawn.end, number, ())


def _placed(step: tree.LayPart, desk: Desk) -> Affine:
    """The motion that lays the part down."""
    placing = step.placing
    assert placing is not None  # noqa: S101 - the caller has seen to it
    p, r = (_own_point(step.part, name, desk) for name in (placing.point, placing.second))
    q, s = desk.point(placing.onto), desk.point(placing.towards)
    if p.distance(r) == 0 or q.distance(s) == 0:
        raise Refusal(
            "points-fall-together",
            "two points in the same place give no direction to lay along.",
            placing.point.spot,
        )
    over = Affine.mirror(p, r - p) if placing.turned_over else Affine.identity()
    laid = over.then(Affine.taking(p, r, q, s))
    return laid.then(_overlap(step, laid, q, laid.apply(r), desk)) if placing.overlap is not None else laid


def _own_point(part: tree.Name, name: tree.Name, desk: Desk) -> Point:
    found = desk.points.get(f"{part}.{name}")
    if found is None:
        own = (full.removeprefix(f"{part}.") for full in desk.points if full.startswith(f"{part}."))
        raise desk.missing(say("point of {part}", part=str(part)), name, own)
    return found.at


def _overlap(step: tree.LayPart, laid: Affine, hub: Point, tip: Point, desk: Desk) -> Affine:
    """The small turn about the first point that brings the second over its partner, away from the part's own side."""
    assert step.placing is not None and step.placing.overlap is not None  # noqa: S101, PT018
    amount = pencil(step.placing.overlap, desk).value
    reach = hub.distance(tip)
    if abs(amount) >= reach:
        raise Refusal(
            "overlap-too-large",
            f"an overlap of {amount / 10:.1f} cm is as long as the seam itself ({reach / 10:.1f} cm). Make it smaller.",
            step.part.spot,
            (Number("overlap", amount), Number("seam", reach)),
        )
    own = [laid.apply(point.at) for full, point in desk.points.items() if full.startswith(f"{step.part}.")]
    side = sum((tip - hub).cross(point - hub) for point in own)
    return Affine.rotation(-copysign(asin(amount / reach), side), hub)


def _lay_words(step: tree.LayPart, desk: Desk) -> dict[str, Said]:
    words = {"part": named(step.part)}
    placing = step.placing
    if placing is None:
        return words
    words |= {"point": named(placing.point), "onto": named(placing.onto)}
    words |= {"second": named(placing.second), "towards": named(placing.towards)}
    words["over"] = word("over" if placing.turned_over else "none")
    if placing.overlap is None:
        return words | {"overlap": word("none")}
    return words | {"overlap": word("overlap"), "overlap_by": pencil(placing.overlap, desk).said}
