"""A name that is made in one branch only is not used outside it."""

from __future__ import annotations

import time

import pytest

from littlefold.problem import Severity
from littlefold.recipe.analyse import analyse
from littlefold.recipe.parse import parse

CODE = "name-of-one-branch"
CHOICES = "choice closing = elastic | studs | cord\nchoice ease = 3 cm, 1 cm .. 9 cm\ndrawing s\n"
START = CHOICES + "point A at the fold\npoint B right of A by 9 cm\n"

USED_OUTSIDE = {
    "a point after its branch": (
        "when closing is cord\npoint K below A by 1 cm\nend\nline l from A to K",
        "K",
        9,
        18,
    ),
    "an amount after its branch": (
        "when ease > 3 cm\namount deep = 2 cm\nend\npoint K below A by deep",
        "deep",
        9,
        20,
    ),
    "a name of two of three branches": (
        "when closing is cord\npoint K below A by 1 cm\notherwise when ease > 5 cm\n"  # noqa: ISC004 - one text
        "point K below A by 2 cm\nend\nline l from A to K",
        "K",
        11,
        18,
    ),
    "a point with its condition behind it": (
        "point K below A by 1 cm when ease > 3 cm\nline l from A to K",
        "K",
        7,
        18,
    ),
    "under another condition": (
        "point K below A by 1 cm when ease > 3 cm\nline l from A to K when ease > 2 cm",
        "K",
        7,
        18,
    ),
    "in the other branch": (
        "when closing is cord\npoint K below A by 1 cm\notherwise\nline l from A to K\nend",
        "K",
        9,
        18,
    ),
    "an edge of a piece": (
        "when closing is cord\nline l from A to B\nend\npiece p from s cut 1\nedges l seam",
        "l",
        10,
        7,
    ),
    "a piece in a seam": (
        "when closing is cord\npiece p rectangle 2 cm by 3 cm cut 1\nend\nsew p.top to p.bottom",
        "p.top",
        9,
        5,
    ),
    "under one of two conditions": (
        "point K below A by 1 cm when closing is cord and ease > 3 cm\nline l from A to K when closing is cord",
        "K",
        7,
        18,
    ),
}


@pytest.mark.parametrize("name", USED_OUTSIDE)
def test_used_outside(name: str) -> None:
    text, used, line, column = USED_OUTSIDE[name]
    (problem,) = [problem for problem in analyse(parse(START + text, "r")) if problem.code == CODE]
    assert (problem.place.line, problem.place.column) == (line, column)
    assert problem.message.startswith(
        f'r, line {line}, column {column}: "{used}" is made in one branch only (line '
    )
    assert problem.severity is Severity.ERROR


INSIDE = {
    "in its branch": "when closing is cord\npoint K below A by 1 cm\nline l from A to K\nend",
    "under the same condition": "point K below A by 1 cm when ease > 3 cm\nline l from A to K when ease > 3 cm",
    "in a branch within": "when ease > 3 cm\npoint K below A by 1 cm\nwhen closing is cord\nline l from A to K\nend\nend",
    "made in both branches": (
        "when ease > 3 cm\npoint K below A by 1 cm\notherwise\npoint K below A by 2 cm\nend\nline l from A to K"
    ),
    "made for every option": (
        "when closing is cord\npoint K below A by 1 cm\notherwise when closing is studs\npoint K below A by 2 cm\nend\n"
        "point K below A by 3 cm when closing is elastic\nline l from A to K"
    ),
    "made unless it is cord": "point K below A by 1 cm when closing is not cord\nline l from A to K when closing is studs",
    "made when not both": (
        "point K below A by 1 cm when not (closing is cord and ease > 3 cm)\n"
        "point K below A by 2 cm when closing is cord and ease > 3 cm\nline l from A to K"
    ),
    "the same name on another sheet": (
        "when closing is cord\npoint K below A by 1 cm\nend\ndrawing t\npoint K at the fold\npoint L below K by 1 cm"
    ),
    "a sheet that depends on the branch": (
        "when closing is cord\ndrawing t\npoint K at the fold\notherwise\ndrawing u\npoint K at the fold\nend\n"
        "point L below K by 1 cm"
    ),
    "an option named like a point": (
        "when closing is cord\npoint cord below A by 1 cm\nend\nnotion cord 60 cm when closing is not cord"
    ),
    "a kind of edge named like a line": (
        "when closing is cord\nline hem from A to B\nend\npiece p from s cut 1\nedges A-B hem 2 cm"
    ),
}


@pytest.mark.parametrize("name", INSIDE)
def test_used_where_it_is_there(name: str) -> None:
    assert [problem.message for problem in analyse(parse(START + INSIDE[name])) if problem.code == CODE] == []


def test_each_name_is_told_once() -> None:
    text = START + "point K below A by 1 cm when ease > 3 cm\nline l from A to K\nline m from B to K\n"
    assert [problem.code for problem in analyse(parse(text))].count(CODE) == 1


def test_a_hostile_recipe_is_read_in_bounded_time() -> None:
    made = [f"point K below A by 1 cm when ease > {i} cm and closing is not o{i % 9}" for i in range(1500)]
    used = [f"point P{i} below K by 1 cm when not (ease > {i} mm or ease < {i} mm)" for i in range(1500)]
    nested = [f"when ease > {i} m" for i in range(300)] + ["line l from A to K"]
    recipe = parse("\n".join([START, *made, *used, *nested]))
    begun = time.process_time()
    analyse(recipe)
    assert time.process_time() - begun < 5
