"""Points on lines and curves: along them, at their ends, carried on past them, square from them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.arithmetic import evaluate_number
from littlefold.draft.drawn import Distance, NewPoint, named, pencil, word
from littlefold.draft.model import Said
from littlefold.draft.refusal import Refusal
from littlefold.draft.register import construction
from littlefold.draft.sides import pick, side_words
from littlefold.geometry import bisector, foot
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.geometry import Path

# A point named as an end of a line, or as lying on it, may miss it by this much [mm]: the width of a fine pencil.
ON_LINE = 0.1


@construction(tree.PointOn, "point.on")
def on_line(step: tree.PointOn, desk: Desk) -> NewPoint:
    """A point on a line or curve, at a distance along it from one of its ends."""
    path = _from_end(step.line, step.base, desk)
    distance = pencil(step.distance, desk)
    _within(step, distance, path)
    words = {"line": named(step.line), "distance": distance.said, "base": named(step.base)}
    return NewPoint(path.at_length(distance.value), words, distance)


def _within(step: tree.PointOn, distance: Distance, path: Path) -> None:
    whole = path.length()
    if not -SAME_POINT <= distance.value <= whole + SAME_POINT:
        raise Refusal(
            "beyond-the-end",
            say(
                "{line} is {whole} long; {distance} along it lies beyond its end. Shorten the distance, or "
                "carry the line on.",
                line=str(step.line),
                whole=f"{whole / 10:.1f} cm",
                distance=f"{distance.value / 10:.1f} cm",
            ),
            step.base.spot,
            (Number("distance", distance.value), Number("length", whole)),
        )


@construction(tree.PointOnShare, "point.on_share")
def on_share(step: tree.PointOnShare, desk: Desk) -> NewPoint:
    """A point on a line or curve, at a share of its length from one of its ends."""
    path = _from_end(step.line, step.base, desk)
    part = evaluate_number(step.share, desk)
    if not 0 <= part <= 1:
        raise Refusal(
            "beyond-the-end",
            say(
                "{part} of {line} lies beyond its ends. Give a share from 0 to 1.",
                part=f"{part:g}",
                line=str(step.line),
            ),
            step.base.spot,
            (Number("share", part, "ratio"), Number("at most", 1, "ratio")),
        )
    at = part * path.length()
    words = {"line": named(step.line), "share": Said("number", part), "base": named(step.base)}
    return NewPoint(path.at_length(at), words | {"distance": Said("length", at)})


@construction(tree.PointBeyond, "point.beyond")
def beyond(step: tree.PointBeyond, desk: Desk) -> NewPoint:
    """A point on a line carried on straight past one of its ends."""
    path = _from_end(step.line, step.past, desk)
    distance = pencil(step.distance, desk)
    words = {"line": named(step.line), "past": named(step.past), "distance": distance.said}
    return NewPoint(path.start + path.start_tangent * -distance.value, words, distance)


@construction(tree.PointEnd, "point.end")
def end(step: tree.PointEnd, desk: Desk) -> NewPoint:
    """The point at the beginning or end of a line."""
    path = desk.named_line(step.line).path
    words = {"end": word(step.end), "line": named(step.line)}
    return NewPoint(path.start if step.end == "beginning" else path.end, words)


@construction(tree.PointFoot, "point.foot")
def foot_of(step: tree.PointFoot, desk: Desk) -> NewPoint:
    """The foot of the perpendicular from a point on a straight line (carried on as far as needed)."""
    line = desk.straight(step.line)
    words = {"of": named(step.of), "line": named(step.line)}
    return NewPoint(foot(desk.point(step.of), line.start, line.end), words)


@construction(tree.PointSquare, "point.square")
def square(step: tree.PointSquare, desk: Desk) -> NewPoint:
    """A point square from a line or curve at one of its points."""
    path, at = desk.line(step.line), desk.point(step.at)
    nearest = path.nearest(at)
    if nearest.distance > ON_LINE:
        raise off_line(step.at, step.line, nearest.distance)
    distance = pencil(step.distance, desk)
    across = path.tangent_at_length(nearest.length).turned_left()
    answers = (at + across * distance.value, at + across * -distance.value)
    place = answers[0] if distance.value == 0 else pick(answers, lambda p: p, step.side, desk, step.name.spot)
    words = {"line": named(step.line), "at": named(step.at), "distance": distance.said}
    return NewPoint(place, words | side_words(step.side), distance)


@construction(tree.PointBisector, "point.bisector")
def on_bisector(step: tree.PointBisector, desk: Desk) -> NewPoint:
    """A point from a corner, on the line that halves it."""
    start, corner, end = (
        desk.point(name) for name in (step.corner.start, step.corner.corner, step.corner.end)
    )
    desk.line(step.corner)  # refuses a corner whose points fall together
    distance = pencil(step.distance, desk)
    words = {"corner": named(step.corner.corner), "distance": distance.said}
    words |= {"start": named(step.corner.start), "end": named(step.corner.end)}
    return NewPoint(corner + bisector(start - corner, end - corner) * distance.value, words, distance)


def _from_end(ref: tree.LineRef, end_name: tree.Name, desk: Desk) -> Path:
    """The line, turned so that it begins at the point named."""
    path, place = desk.line(ref), desk.point(end_name)
    to_start, to_end = path.start.distance(place), path.end.distance(place)
    if min(to_start, to_end) > ON_LINE:
        raise Refusal(
            "not-an-end",
            say(
                "{point} is not an end of {ref}; it lies {gap} from the nearer end. Measure from one "
                "of its ends.",
                point=str(end_name),
                ref=str(ref),
                gap=f"{min(to_start, to_end) / 10:.2f} cm",
            ),
            end_name.spot,
            (Number("distance", min(to_start, to_end)),),
        )
    return path if to_start <= to_end else path.reversed()


def off_line(point: tree.Name, line: tree.LineRef, distance: float) -> Refusal:
    """The refusal of a point that should lie on a line and does not."""
    return Refusal(
        "not-on-line",
        say(
            "{point} does not lie on {line}; it misses it by {distance}. Take a point on the line.",
            point=str(point),
            line=str(line),
            distance=f"{distance / 10:.2f} cm",
        ),
        point.spot,
        (Number("misses by", distance), Number("at most", ON_LINE)),
    )
