"""Where paths meet each other, a line, a circle, or themselves."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from math import sqrt, tau
from typing import TYPE_CHECKING

from .arc import Arc
from .bezier import Cubic
from .contact import Pair, contacts
from .on_line import parameters_on_line
from .path import Path
from .point import Point, Vector
from .tolerance import INTERSECTION, TOUCH

if TYPE_CHECKING:
    from collections.abc import Iterator

    from .segment import Segment

# Two meetings whose lengths agree to this [mm] are one, found from both sides of a joint.
SAME_PLACE = 100 * INTERSECTION


@dataclass(frozen=True, slots=True)
class Meeting:
    """A place that two paths share, with its arc length along each [mm]."""

    point: Point
    first_length: float
    second_length: float


def meet(first: Path | Segment, second: Path | Segment) -> tuple[Meeting, ...]:
    """All places that two paths share, in the order of the first: crossings, touches, shared ends.

    Parts in which the two run in one another are given by their ends.  On a closed path the start, which is
    also the end, is met once.
    """
    one, other = _path(first), _path(second)
    return _in_order(_meetings(one, other), one, other)


def do_meet(first: Path, second: Path) -> bool:
    """Whether two paths share a place: `meet` without measuring where."""
    return any(contacts(first.segments[i], second.segments[j]) for i, j in _near(first, second))


def meet_line(path: Path | Segment, through: Point, along: Vector) -> tuple[Meeting, ...]:
    """All places where a path meets a straight line without end, in the order of the path.

    `second_length` is the way along the line from `through`, negative backwards.
    """
    chain, unit = _path(path), along.unit()
    marks = chain.marks
    found = []
    for index, segment in enumerate(chain.segments):
        for t in parameters_on_line(segment, through, unit):
            place = segment.at(t)
            found.append(Meeting(place, marks[index] + segment.length_to(t), (place - through).dot(unit)))
    return _in_order(found, chain, None)


def meet_circle(path: Path | Segment, centre: Point, radius: float) -> tuple[Meeting, ...]:
    """All places where a path meets a circle, in the order of the path.

    `second_length` runs counter-clockwise along the circle from the point right of its centre.
    """
    return meet(path, Arc(centre, radius, 0.0, tau))


def self_crossings(path: Path) -> tuple[Meeting, ...]:
    """All places that a path passes twice, once each; `first_length` is the earlier passing.

    Joints between neighbours, and the start of a closed path, are not counted.
    """
    marks = path.marks
    found = []
    for index, segment in enumerate(path.segments):
        if isinstance(segment, Cubic):
            found.extend(_looped(segment, marks[index]))
    boxes = [segment.bounds().grown(TOUCH) for segment in path.segments]
    for (i, one), (j, other) in combinations(enumerate(path.segments), 2):
        if boxes[i].overlaps(boxes[j]):
            found.extend(_measured(one, other, contacts(one, other), marks[i], marks[j]))
    return _in_order([m for m in found if not _is_joint(m, path)], path, path)


def _path(shape: Path | Segment) -> Path:
    """A segment taken as a path."""
    return shape if isinstance(shape, Path) else Path((shape,))


def _meetings(first: Path, second: Path) -> list[Meeting]:
    """The meetings of all segments of one path with all of another, as they come."""
    found: list[Meeting] = []
    for i, j in _near(first, second):
        one, other = first.segments[i], second.segments[j]
        pairs = contacts(one, other)
        if pairs:
            found.extend(_measured(one, other, pairs, first.marks[i], second.marks[j]))
    return found


def _near(first: Path, second: Path) -> Iterator[tuple[int, int]]:
    """The indices of those segments of two paths whose boxes touch."""
    for i, box in enumerate(first.boxes):
        room = box.grown(TOUCH)
        for j, other in enumerate(second.boxes):
            if room.overlaps(other):
                yield i, j


def _measured(
    one: Segment, other: Segment, pairs: tuple[Pair, ...], before: float, other_before: float
) -> list[Meeting]:
    """Contacts of two segments as meetings of the paths they are in."""
    return [
        Meeting(one.at(t), before + one.length_to(t), other_before + other.length_to(u)) for t, u in pairs
    ]


def _in_order(found: list[Meeting], first: Path, second: Path | None) -> tuple[Meeting, ...]:
    """The meetings by first and second length, each once."""
    whole = first.length() if first.is_closed else None
    other_whole = second.length() if second is not None and second.is_closed else None
    kept: list[Meeting] = []
    for meeting in sorted(found, key=lambda m: (m.first_length, m.second_length)):
        if not any(
            _same(meeting.first_length, m.first_length, whole)
            and _same(meeting.second_length, m.second_length, other_whole)
            for m in kept
        ):
            kept.append(meeting)
    return tuple(kept)


def _same(length: float, other: float, whole: float | None) -> bool:
    """Whether two lengths along a path are one place; `whole` is the length of a closed path."""
    gap = abs(length - other)
    return gap <= SAME_PLACE or (whole is not None and whole - gap <= SAME_PLACE)


def _is_joint(meeting: Meeting, path: Path) -> bool:
    """Whether a meeting of a path with itself is only a place where it goes on."""
    whole = path.length() if path.is_closed else None
    return _same(meeting.first_length, meeting.second_length, whole)


def _looped(cubic: Cubic, before: float) -> list[Meeting]:
    """The place where a cubic crosses itself, if it does.

    B(t) = B(u), divided by t - u, is linear in the product and quadratic in the sum of both; the part of it
    across the highest coefficient gives the sum alone.
    """
    v = cubic.speed
    cubed, squared, plain = Vector(v.ax, v.ay) / 3, Vector(v.bx, v.by) / 2, Vector(v.cx, v.cy)
    turn = squared.cross(cubed)
    if turn == 0:
        return []
    total = -plain.cross(cubed) / turn
    product = total * total + (squared * total + plain).dot(cubed) / cubed.dot(cubed)
    square = total * total - 4 * product
    if square <= 0:
        return []
    t, u = (total - sqrt(square)) / 2, (total + sqrt(square)) / 2
    if t < 0 or u > 1:
        return []
    return [Meeting(cubic.at(t), before + cubic.length_to(t), before + cubic.length_to(u))]
