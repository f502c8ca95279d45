"""Arcs and circles: what the compass draws."""

from __future__ import annotations

from math import tau
from typing import TYPE_CHECKING

from littlefold.draft.arithmetic import evaluate_angle
from littlefold.draft.constructions.on_lines import ON_LINE
from littlefold.draft.constructions.turned import angle_words
from littlefold.draft.drawn import NewLine, named, pencil
from littlefold.draft.refusal import Refusal
from littlefold.draft.register import construction
from littlefold.draft.sides import pick, side_words, turn_meant
from littlefold.geometry import (
    Affine,
    Arc,
    Path,
    arc_about,
    arc_of_radius,
    arc_through,
    rounded_corner,
    turn_between,
)
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk


@construction(tree.ArcRadius, "arc.radius")
def by_radius(step: tree.ArcRadius, desk: Desk) -> NewLine:
    """An arc between two points, by its radius and the side to which it bulges."""
    start, end, radius = desk.point(step.start), desk.point(step.end), pencil(step.radius, desk)
    answers = arc_of_radius(start, end, radius.value)
    if not answers:
        half = start.distance(end) / 2
        raise Refusal(
            "radius-too-short",
            say(
                "the radius {radius} is shorter than half the way from {start} to {end} ({half}). Make it "
                "longer.",
                radius=f"{radius.value / 10:.1f} cm",
                start=str(step.start),
                end=str(step.end),
                half=f"{half / 10:.1f} cm",
            ),
            step.name.spot,
            (Number("radius", radius.value), Number("half way", half)),
        )
    arc = pick(answers, lambda one: one.at(0.5), step.side, desk, step.name.spot)
    words = {"start": named(step.start), "end": named(step.end), "distance": radius.said}
    return NewLine(Path((arc,)), "arc", step.start.text, step.end.text, words | side_words(step.side), radius)


@construction(tree.ArcThrough, "arc.through")
def through_three(step: tree.ArcThrough, desk: Desk) -> NewLine:
    """The arc through three points."""
    arc = arc_through(desk.point(step.start), desk.point(step.middle), desk.point(step.end))
    if arc is None:
        raise Refusal(
            "points-in-line",
            say(
                "{start}, {middle} and {end} lie in one line or fall together; no arc goes through them.",
                start=str(step.start),
                middle=str(step.middle),
                end=str(step.end),
            ),
            step.start.spot,
        )
    words = {"start": named(step.start), "middle": named(step.middle), "end": named(step.end)}
    return NewLine(Path((arc,)), "arc", step.start.text, step.end.text, words)


@construction(tree.ArcAbout, "arc.about")
def about(step: tree.ArcAbout, desk: Desk) -> NewLine:
    """An arc about a centre, from a point, by an angle."""
    centre, start = desk.point(step.centre), desk.point(step.start)
    size = evaluate_angle(step.angle, desk)
    if centre.distance(start) <= SAME_POINT or not 0 < abs(size) <= tau:
        raise Refusal(
            "no-arc",
            say(
                "the arc {name} needs a start apart from its centre and an angle of more than 0, up to 360 "
                "degrees.",
                name=str(step.name),
            ),
            step.name.spot,
        )
    by = turn_meant(step.clock, size, lambda by: Affine.rotation(by, centre).apply(start), step.name.spot)
    words = {"centre": named(step.centre), "start": named(step.start)} | angle_words(by)
    return NewLine(Path((arc_about(centre, start, by),)), "arc", step.start.text, "", words)


@construction(tree.ArcTo, "arc.to")
def about_to(step: tree.ArcTo, desk: Desk) -> NewLine:
    """An arc about a centre, from one point to another at the same distance."""
    centre, start, end = desk.point(step.centre), desk.point(step.start), desk.point(step.end)
    near, far = centre.distance(start), centre.distance(end)
    if abs(near - far) > ON_LINE or near <= SAME_POINT:
        raise Refusal(
            "not-one-radius",
            say(
                "{start} lies {near} and {end} {far} from {centre}; an arc needs them equal. Move one of "
                "them.",
                start=str(step.start),
                near=f"{near / 10:.2f} cm",
                end=str(step.end),
                far=f"{far / 10:.2f} cm",
                centre=str(step.centre),
            ),
            step.centre.spot,
            (Number(str(step.start), near), Number(str(step.end), far)),
        )
    turn = turn_between(start - centre, end - centre)
    ways = {-1: turn % -tau, 1: turn % tau}
    way = turn_meant(
        step.clock, 1, lambda way: Affine.rotation(ways[int(way)] / 2, centre).apply(start), step.name.spot
    )
    sweep = ways[int(way)]
    words = {"centre": named(step.centre), "start": named(step.start), "end": named(step.end)}
    words["clock"] = angle_words(way)["clock"]
    return NewLine(Path((arc_about(centre, start, sweep),)), "arc", step.start.text, step.end.text, words)


@construction(tree.ArcCorner, "arc.corner")
def round_corner(step: tree.ArcCorner, desk: Desk) -> NewLine:
    """A corner rounded off by an arc that touches both its legs."""
    names = (step.corner.start, step.corner.corner, step.corner.end)
    start, corner, end = (desk.point(name) for name in names)
    radius = pencil(step.radius, desk)
    arc = rounded_corner(corner, start, end, radius.value) if radius.value > 0 else None
    if arc is None:
        raise Refusal(
            "corner-cannot-be-rounded",
            say(
                "a radius of {radius} does not fit into the corner {corner}. Make it smaller.",
                radius=f"{radius.value / 10:.1f} cm",
                corner=str(step.corner),
            ),
            step.corner.spot,
            (Number("radius", radius.value),),
        )
    words = {"corner": named(step.corner.corner), "distance": radius.said}
    words |= {"start": named(step.corner.start), "end": named(step.corner.end)}
    return NewLine(Path((arc,)), "arc", "", "", words, radius)


@construction(tree.Circle, "arc.circle")
def circle(step: tree.Circle, desk: Desk) -> NewLine:
    """A whole circle."""
    radius = pencil(step.radius, desk)
    if radius.value <= 0:
        raise Refusal(
            "no-arc",
            say("the circle {name} needs a radius larger than 0.", name=str(step.name)),
            step.name.spot,
        )
    words = {"centre": named(step.centre), "distance": radius.said}
    return NewLine(
        Path((Arc(desk.point(step.centre), radius.value, 0.0, tau),)), "arc", "", "", words, radius
    )
