"""Points where lines, curves and circles meet."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.drawn import NewPoint, named, pencil, word
from littlefold.draft.refusal import Refusal
from littlefold.draft.register import construction
from littlefold.draft.sides import pick, side_words
from littlefold.geometry import Path, Vector, line_meets_circle, line_meets_line
from littlefold.geometry.intersection import meet, meet_circle, meet_line
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.geometry import Point

LEVELS = {"level": Vector(1, 0), "plumb": Vector(0, 1)}


SEGMENTS = 25
"""Holding so many pairs of segments against each other takes about as long as one act."""


@construction(tree.PointMeet, "point.meet")
def where_lines_meet(step: tree.PointMeet, desk: Desk) -> NewPoint:
    """Where two lines meet; a straight line is carried on as far as needed, a curve is not."""
    one, other = desk.line(step.line), desk.line(step.other)
    desk.allow_step(step.name, 1 + len(one.segments) * len(other.segments) // SEGMENTS)
    answers = _meetings(one, other)
    if not answers:
        raise _apart(step, one, other)
    place = pick(answers, lambda point: point, step.side, desk, step.name.spot)
    words = {"line": named(step.line), "other": named(step.other)}
    return NewPoint(place, words | side_words(step.side))


def _apart(step: tree.PointMeet, one: Path, other: Path) -> Refusal:
    """The refusal of two lines that do not meet: how far apart they keep, or that they are parallel."""
    gap = min(
        one.distance(other.start), one.distance(other.end), other.distance(one.start), other.distance(one.end)
    )
    parallel = one.is_straight and other.is_straight
    why = say("run side by side and never meet" if parallel else "do not meet")
    cure = say("Choose another line." if parallel else "Carry a curve on, or choose another line.")
    return Refusal(
        "lines-do-not-meet",
        say(
            "{line} and {other} {why}; between them are {gap}. {cure}",
            line=str(step.line),
            other=str(step.other),
            why=why,
            gap=f"{gap / 10:.2f} cm",
            cure=cure,
        ),
        step.name.spot,
        (Number("gap", gap), Number("at most", 0.0)),
    )


def _meetings(one: Path, other: Path) -> tuple[Point, ...]:
    if one.is_straight and other.is_straight:
        found = line_meets_line(one.start, one.end, other.start, other.end)
        return () if found is None else (found,)
    if one.is_straight:
        one, other = other, one
    if other.is_straight:
        return tuple(meeting.point for meeting in meet_line(one, other.start, other.end - other.start))
    return tuple(meeting.point for meeting in meet(one, other))


@construction(tree.PointMeetCircle, "point.meet_circle")
def where_circle_meets(step: tree.PointMeetCircle, desk: Desk) -> NewPoint:
    """Where a line meets a circle: a stroke of the compass across it."""
    path, centre = desk.line(step.line), desk.point(step.centre)
    radius = pencil(step.radius, desk)
    answers = _on_circle(path, centre, radius.value)
    if not answers:
        raise Refusal(
            "compass-does-not-reach",
            say(
                "a circle of {radius} about {centre} does not reach {line}, which is {away} away at its "
                "nearest. Change the radius.",
                radius=f"{radius.value / 10:.1f} cm",
                centre=str(step.centre),
                line=str(step.line),
                away=f"{path.distance(centre) / 10:.1f} cm",
            ),
            step.centre.spot,
            (Number("radius", radius.value), Number("distance", path.distance(centre))),
        )
    place = pick(answers, lambda point: point, step.side, desk, step.name.spot)
    words = {"line": named(step.line), "centre": named(step.centre), "distance": radius.said}
    return NewPoint(place, words | side_words(step.side), radius)


def _on_circle(path: Path, centre: Point, radius: float) -> tuple[Point, ...]:
    if radius <= 0:
        return ()
    if path.is_straight:
        return line_meets_circle(path.start, path.end, centre, radius)
    return tuple(meeting.point for meeting in meet_circle(path, centre, radius))


@construction(tree.PointOnLevel, "point.on_level")
def on_level(step: tree.PointOnLevel, desk: Desk) -> NewPoint:
    """Where a line comes level or plumb with another point."""
    path, other = desk.line(step.line), desk.point(step.other)
    answers = tuple(meeting.point for meeting in meet_line(path, other, LEVELS[step.level]))
    if not answers:
        raise Refusal(
            "never-level",
            say(
                "{line} is nowhere {level} with {other}. Carry it on, or take another point.",
                line=str(step.line),
                level=say(str(step.level)),
                other=str(step.other),
            ),
            step.other.spot,
            _reach(path, other, step.level),
        )
    place = pick(answers, lambda point: point, step.side, desk, step.name.spot)
    words = {"line": named(step.line), "level": word(step.level), "other": named(step.other)}
    return NewPoint(place, words | side_words(step.side))


def _reach(path: Path, other: Point, level: str) -> tuple[Number, ...]:
    """From where to where a line goes, and where the other point lies: up the sheet or across it."""
    box, upright = path.bounds(), level == "level"
    ends = (box.bottom, box.top) if upright else (box.left, box.right)
    wanted = other.y if upright else other.x
    return (Number(str(level), wanted), Number("line from", ends[0]), Number("line to", ends[1]))
