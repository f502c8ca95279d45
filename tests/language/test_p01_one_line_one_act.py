"""1. One line, one act of the pencil; where it has two answers the recipe says which, otherwise a problem shows both."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.language.drafting import FRAME, at, draft_of, only, said

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

MORE = FRAME + "point M midway between B and C\n"


def test_every_drawing_line_names_what_it_makes_and_gives_one_step(drafted: Draft) -> None:
    """
    point P below A by 4 cm
    line side from P to B
    curve c from P going right, to D going down
    """
    assert [step.name for step in drafted.steps[-3:]] == ["s.P", "s.side", "s.c"]
    assert [step.number for step in drafted.steps] == list(range(1, 9))
    assert said(drafted, "s.P") == "From A measure 4 cm straight down and mark P."


# What is written, both answers [cm] as the problem shows them, how one is told, and where that one lies.
TWO = {
    "two arcs": ("point P at 10 cm from A and 10 cm from B", ((6, 8), (6, -8)), "downward", (6, -8)),
    "a square from a line": (
        "point P square from A-B at A by 3 cm",
        ((0, 3), (0, -3)),
        "nearer C",
        (0, -3),
    ),
    "a turn": ("point P turning B about A by 90 degrees", ((0, -12), (0, 12)), "clockwise", (0, -12)),
    "a compass across a line": (
        "point P where A-B meets a circle about M of 7.5 cm",
        ((0, 0), (12, 0)),
        "further from A",
        (12, 0),
    ),
}


@pytest.mark.parametrize("kind", TWO)
def test_an_act_with_two_answers_shows_both_and_is_told_which(kind: str) -> None:
    line, answers, which, place = TWO[kind]
    problem = only(MORE + line)
    assert problem.code == "which-of-two"
    for across, up in answers:
        assert f"({across:.1f} cm across, {up:.1f} cm up)" in problem.message
    shown = [number.value / 10 for number in problem.numbers]
    assert shown == pytest.approx([value for answer in answers for value in answer], abs=1e-9)
    assert (problem.place.line, problem.place.column) == (12, 7)
    assert at(draft_of(f"{MORE}{line} {which}"), "s.P") == place


# The side or way round of a line: what is written, how one is told, and where the middle of that one lies.
SIDES = {
    "a parallel": ("line L parallel to A-B by 2 cm", "nearer C", (6, -2)),
    "a parallel curve": ("curve L parallel to top by 2 cm", "upward", (6, 2)),
    "the side of a hollow": ("curve L from A to B depth 2 cm", "nearer C", (6, -2)),
    # Half the chord is 6 cm, so the centre lies 8 cm off and the arc bulges 2 cm (6, 8, 10).
    "an arc by its radius": ("arc L from A to B radius 10 cm", "downward", (6, -2)),
    "an arc about a point": ("arc L about A from B by 180 degrees", "clockwise", (0, -12)),
    "an arc from point to point": ("arc L about M from B to C", "clockwise", (10.5, -10.5)),
    "a turned copy": ("copy top as L turned about A by 90 degrees", "anticlockwise", (0, 6)),
}


@pytest.mark.parametrize("kind", SIDES)
def test_the_side_of_a_line_is_shown_and_told(kind: str) -> None:
    line, which, middle = SIDES[kind]
    problem = only(MORE + line)
    assert problem.code == "which-of-two"
    assert problem.message.count("cm across") == 2
    path = draft_of(f"{MORE}{line} {which}").lines["s.L"].path
    place = path.at_length(path.length() / 2)
    assert (place.x / 10, place.y / 10) == pytest.approx(middle, abs=1e-6)


def test_a_direction_that_does_not_tell_them_apart_is_refused() -> None:
    problem = only(MORE + "point P at 10 cm from A and 10 cm from B rightward")
    assert problem.code == "answers-alike"
    assert "(6.0 cm across, 8.0 cm up) and (6.0 cm across, -8.0 cm up)" in problem.message


def test_a_mirrored_copy_has_one_answer(drafted: Draft) -> None:
    """copy top as other mirrored across A-C"""
    assert not drafted.problems
    assert drafted.lines["s.other"].path.end.x == pytest.approx(-120)


def test_a_split_says_which_part_is_which() -> None:
    body = "line side from B to D\nline hem from C to D\nline mid from A to C\noutline o edges mid, hem, side, top\n"
    cut = "point E midway between A and C\npoint F midway between B and D\nline yoke from E to F\n"
    problem = only(FRAME + body + cut + "split o along yoke into up and low")
    assert '"nearer" is missing' in problem.message
    drawn = draft_of(FRAME + body + cut + "split o along yoke into up nearer A and low")
    assert drawn.lines["up.mid"].path.bounds().top == pytest.approx(0)
    assert drawn.lines["low.mid"].path.bounds().top == pytest.approx(-45)
