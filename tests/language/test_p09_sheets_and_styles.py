"""9. Several sheets; blocks grow into styles."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.recipe.shelf import shipped_names
from tests.language.drafting import FRAME as BASE
from tests.language.drafting import HEAD, at, draft_of, only, told

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = (
    BASE
    + """point E midway between A and C
point F midway between B and D
line mid from A to C
line hem from C to D
line side from D to B
line yoke from E to F
outline o edges mid, hem, side, top
"""
)


def size(drawn: Draft, sheet: str, *edges: str) -> list[float]:
    """The lengths of edges [cm]."""
    return [round(drawn.lines[f"{sheet}.{edge}"].path.length() / 10, 3) for edge in edges]


def test_tracing_on_the_same_frame_and_on_a_new_sheet(drafted: Draft) -> None:
    """
    drawing t
    trace s.top
    point Z at the start
    point P on top at 1/2 from s.A
    """
    assert at(drafted, "t.P") == (6, 0)


def test_redraw_with_changes_repeats_the_outlines_too(drafted: Draft) -> None:
    """
    redraw s as back
    with point C below A by 11 cm
    """
    assert not drafted.problems
    assert size(drafted, "back_o", "mid", "side", "top") == [11, 9, 12]
    assert size(drafted, "o", "mid", "side") == [9, 9]


def test_begin_with_another_recipes_draft_by_name_never_by_path() -> None:
    drawn = draft_of(
        HEAD + "begin with bodice choosing ease = 10 cm\ncontinue front\npoint Z below W by 5 cm"
    )
    assert not drawn.problems
    assert drawn.choices["ease"] == 100
    assert drawn.points["front.Z"].at.y == drawn.points["front.W"].at.y - 50


@pytest.mark.parametrize(
    "path",
    ["../../etc/passwd", "/etc/passwd", "C:\\recipes\\x", "~/x", "./bodice", "bodice/../bib", '"bodice"'],
)
def test_a_path_is_no_name(path: str) -> None:
    problem = only(HEAD + f"begin with {path}")
    assert problem.code == "cannot-read-line"
    assert (
        "the name of a recipe" in problem.message
        or "has no meaning here" in problem.message
        or ("complete before" in problem.message)
    )


def test_a_recipe_not_on_the_shelf_gets_a_suggestion() -> None:
    problem = only(HEAD + "begin with bodise")
    assert 'Did you mean "bodice"?' in problem.message
    assert all(name in problem.message for name in shipped_names())


def test_a_choice_the_other_recipe_has_not_gets_a_suggestion() -> None:
    problem = only(HEAD + "begin with bodice choosing eas = 10 cm")
    assert problem.code == "choice-not-known"
    assert 'Did you mean "ease"?' in problem.message
    assert (problem.place.line, problem.place.column) == (5, 28)


def test_a_recipe_is_begun_with_once() -> None:
    problem = only(HEAD + "begin with bodice\nbegin with bodice")
    assert problem.code == "recipe-begun-with"


def test_split_names_both_results(drafted: Draft) -> None:
    """split o along yoke into upper nearer A and lower"""
    assert size(drafted, "upper", "mid", "yoke") == [4.5, 12]
    assert size(drafted, "lower", "mid", "yoke") == [4.5, 12]


def test_slash_and_spread_hinged_and_at_both_ends(drafted: Draft) -> None:
    """
    slash o along yoke as hinged opening 3 cm at side
    slash o along yoke as parted opening 3 cm at side and 2 cm at mid
    """
    assert not drafted.problems
    assert size(drafted, "hinged", "mid", "side") == pytest.approx([9, 12], abs=0.02)  # carried on smoothly
    assert size(drafted, "parted", "mid", "side") == pytest.approx([11, 12], abs=0.02)


def test_a_dart_is_closed_or_swung(drafted: Draft) -> None:
    """
    point H on top by 5 cm from A
    point I on top by 7 cm from A
    point T right of E by 6 cm
    close dart H-T-I of o as swung opening T-F
    outline q edges mid, hem, side, B-I as right_top, I-T, T-H, H-A as left_top
    close dart H-T-I of q as wrong opening T-F
    """
    (problem,) = drafted.problems
    assert problem.code == "outline-into-dart"
    assert "from H to I" in problem.message
    # The dart of 2 cm is taken out of the top, and opens at the side by the same angle: there is 2 * 6 / 4.6 more.
    assert size(drafted, "swung", "mid", "hem") == [9, 12]
    assert size(drafted, "swung", "top")[0] == pytest.approx(10, abs=0.05)
    assert size(drafted, "swung", "side")[0] == pytest.approx(9 + 2 * 6 / (1 + 4.5**2) ** 0.5, abs=0.05)


# What is laid in, how much longer the edges get [cm]: a pleat takes twice its depth, a box pleat four times.
FOLDS = {
    "pleats in o along yoke as p depth 1 cm downward": 2,
    "pleats in o along yoke as p depth 1 cm count 2 apart 2 cm downward": 4,
    "pleats in o along yoke as p depth 1 cm boxed": 4,
    "pleats in o along yoke as p depth 1 cm inverted": 4,
    "tucks in o along yoke as p depth 0.5 cm upward": 1,
}


@pytest.mark.parametrize("line", FOLDS)
def test_pleats_and_tucks(line: str) -> None:
    drawn = draft_of(FRAME + line)
    assert not drawn.problems
    assert size(drawn, "p", "mid", "side") == [9 + FOLDS[line]] * 2


def test_gathers_by_a_ratio_to_a_length_and_between_two_points(drafted: Draft) -> None:
    """
    point P on top by 3 cm from A
    point Q on top by 9 cm from A
    gathers in o across top as full by ratio 1.5
    gathers in o across top as long to 20 cm
    gathers in o across top from P to Q as part to 10 cm
    """
    assert not drafted.problems
    assert size(drafted, "full", "top") == [18]
    assert size(drafted, "long", "top") == [20]
    assert size(drafted, "part", "top") == [16]  # 6 cm of 12 become 10


def test_button_stand_mirror_and_join(drafted: Draft) -> None:
    """
    button stand on mid of o by 2 cm as wide
    copy top as other mirrored across A-C
    join o and o at mid as both
    """
    assert not drafted.problems
    assert size(drafted, "wide", "top", "hem") == [14, 14]
    assert size(drafted, "both", "top") == [24]


def test_facings_bands_bias_strips_and_rectangles(drafted: Draft) -> None:
    """
    piece p from s cut 1
    edges mid seam, hem seam, side seam, top seam
    piece f facing of p.top by 3 cm cut 1
    piece b band along top by 4 cm cut 1
    piece s1 bias strip 30 cm by 3 cm cut 2
    piece r "Belt" rectangle 48 cm by 5 cm cut 1
    """
    assert not drafted.problems
    pieces = {piece.name: piece for piece in drafted.pieces}
    assert [e.path.length() for e in pieces["b"].edges] == pytest.approx([120, 40, 120, 40])
    assert [e.path.length() for e in pieces["r"].edges] == pytest.approx([480, 50, 480, 50])
    start, end = pieces["s1"].grain
    assert abs((end - start).x) == pytest.approx(abs((end - start).y))  # at half a right angle
    assert sorted(round(e.path.length()) for e in pieces["f"].edges) == [30, 30, 120, 120]


def test_pieces_are_laid_together_overlapped_and_turned_over(drafted: Draft) -> None:
    """
    drawing collar
    lay s
    lay s as other with A on s.A, B towards s.B turned over
    lay s as third with A on s.A, B towards s.B overlapped by 1 cm
    """
    assert not drafted.problems
    assert at(drafted, "collar.other.C") == pytest.approx((0, 9))
    tip = drafted.points["collar.third.B"].at
    line = drafted.points["collar.s.B"].at
    assert abs(tip.y - line.y) == pytest.approx(10)  # overlapped by 1 cm at the tip


def test_what_cannot_be_done_is_told_with_its_numbers() -> None:
    problem = only(
        FRAME + "point M midway between B and C\nline l from M to E\nsplit o along l into u nearer A and v"
    )
    assert problem.code == "line-not-across"
    assert [number.value for number in problem.numbers] == [1, 2]
    assert told(FRAME + "gathers in o across top as g to 5 cm")[0].numbers[0].value == 120
