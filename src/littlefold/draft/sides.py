"""Which of two answers is meant: the recipe says, or both are shown."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from littlefold.draft.drawn import named, word
from littlefold.draft.refusal import Refusal
from littlefold.geometry import Point, Vector
from littlefold.geometry.tolerance import SAME_POINT
from littlefold.problem import Number
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from littlefold.draft.desk import Desk
    from littlefold.draft.model import Said

WAYS = {
    "upward": Vector(0, 1),
    "downward": Vector(0, -1),
    "rightward": Vector(1, 0),
    "leftward": Vector(-1, 0),
}

T = TypeVar("T")


def pick(
    answers: Sequence[T], where: Callable[[T], Point], side: tree.Side | None, desk: Desk, spot: tree.Spot
) -> T:
    """The answer that is meant.

    Args:
        answers: One or more.
        where: The place by which an answer is judged.
        side: What the recipe says; it may be None only where there is one answer.
        desk: To look points up.
        spot: Where the statement stands, for the problem.

    Raises:
        Refusal: It is not said which, or what is said does not tell them apart.
    """
    if len(answers) == 1:
        return answers[0]
    places = [where(answer) for answer in answers]
    if side is None:
        raise _not_said(places, spot)
    marks = _marks(places, side, desk)
    first, second = sorted(marks)[:2]
    if second - first <= SAME_POINT:
        raise Refusal(
            "answers-alike", f"{_said(side)} does not tell the answers apart: {_listed(places)}.", spot
        )
    return answers[marks.index(first)]


def _marks(places: list[Point], side: tree.Side, desk: Desk) -> list[float]:
    """A number for each answer, the smallest for the one that is meant."""
    match side:
        case tree.Nearer(point):
            return [place.distance(desk.point(point)) for place in places]
        case tree.Further(point):
            return [-place.distance(desk.point(point)) for place in places]
        case tree.Heading(way):
            return [-(place - Point(0, 0)).dot(WAYS[way]) for place in places]


def turn_meant(clock: str | None, size: float, where: Callable[[float], Point], spot: tree.Spot) -> float:
    """An angle the way it is meant [rad], counter-clockwise positive.

    Args:
        clock: What the recipe says.
        size: The angle as it is spoken.
        where: The place to which a turn by an angle leads, for the problem.
        spot: Where the statement stands, for the problem.

    Raises:
        Refusal: It is not said which way.
    """
    if clock is None:
        raise _not_said([where(-size), where(size)], spot, "clockwise or anticlockwise")
    return -size if clock == "clockwise" else size


_SIDES = "nearer or further from a point, upward, downward, leftward or rightward"


def _not_said(places: Sequence[Point], spot: tree.Spot, words: str = _SIDES) -> Refusal:
    numbers = [
        Number(f"answer {count} {way}", value)
        for count, place in enumerate(places, start=1)
        for way, value in (("across", place.x), ("up", place.y))
    ]
    said = f"this has {len(places)} answers: {_listed(places)}. Say which: {words}."
    return Refusal("which-of-two", said, spot, tuple(numbers))


def _listed(places: Sequence[Point]) -> str:
    return " and ".join(f"({place.x / 10:.1f} cm across, {place.y / 10:.1f} cm up)" for place in places)


def _said(side: tree.Side) -> str:
    match side:
        case tree.Nearer(point):
            return f"nearer {point}"
        case tree.Further(point):
            return f"further from {point}"
        case tree.Heading(way):
            return way


def side_words(side: tree.Side | None) -> dict[str, Said]:
    """What a sentence says of the side; `side` is a word with a place for a point's name."""
    match side:
        case tree.Nearer(point):
            return {"side": word("nearer"), "side_point": named(point)}
        case tree.Further(point):
            return {"side": word("further"), "side_point": named(point)}
        case tree.Heading(way):
            return {"side": word(way), "side_point": named("")}
        case None:
            return {"side": word("only"), "side_point": named("")}
