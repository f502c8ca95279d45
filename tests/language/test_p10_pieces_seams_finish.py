"""10. Pieces, seams and finish belong to the recipe."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.draft.model import EdgeKind
from littlefold.pattern.trace import trace
from tests.language.drafting import FRAME as BASE
from tests.language.drafting import amount, draft_of, only, told

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = (
    BASE
    + """point E midway between A and C
line mid from A to C
line hem from C to D
line side from D to B
"""
)
PIECE = FRAME + "piece p from s cut 1\n"


def test_edges_are_cut_where_neighbours_meet(drafted: Draft) -> None:
    """
    line long from E to B
    point F right of E by 20 cm
    line across from E to F
    piece p from s cut 1
    edges C-A as mid seam, hem seam, side seam, across seam
    """
    assert not drafted.problems
    edges = {edge.name: edge.path.length() for edge in drafted.pieces[0].edges}
    # `across` runs on beyond the side: it is cut there, and the middle and side are cut at `across`.
    assert edges == pytest.approx({"mid": 45, "hem": 120, "side": 45, "across": 120})


def test_a_run_is_measured_walked_notched_and_sewn_as_one_edge(drafted: Draft) -> None:
    """
    piece p from s cut 1
    edges mid seam, hem seam, side seam, top seam
    piece q from s cut 1
    edges mid seam, hem seam, side seam, top seam
    run long = p.side then p.top
    run other = q.side then q.top
    sew long to other
    amount around = length of long
    """
    assert not drafted.problems
    assert amount(drafted, "around") == pytest.approx(21)
    (seam,) = trace(drafted).seams
    assert (seam.first_length, seam.second_length) == pytest.approx((210, 210))


KINDS = ["fold", "seam", "hem", "casing", "bound", "faced", "gathered", "button", "selvedge", "raw"]


@pytest.mark.parametrize("kind", KINDS)
def test_each_edge_says_what_it_is(kind: str) -> None:
    drawn = draft_of(
        f"{PIECE.replace('cut 1', 'cut 1 on fold')}edges mid {kind}, hem hem, side seam, top seam"
    )
    assert drawn.pieces[0].edges[0].kind is EdgeKind(kind)


def test_an_unknown_kind_gets_a_suggestion() -> None:
    problem = only(PIECE + "edges mid fould, hem hem, side seam, top seam")
    assert 'Did you mean "fold"?' in problem.message
    assert (problem.place.line, problem.place.column) == (FRAME.count("\n") + 2, 11)


def test_added_lies_outside_the_drawn_line_included_within(drafted: Draft) -> None:
    """
    piece outer from s cut 1
    edges mid seam 1 cm, hem seam 1 cm, side seam 1 cm, top seam 1 cm added
    piece inner from s cut 1
    edges mid seam 1 cm included, hem seam 1 cm included, side seam 1 cm included, top seam 1 cm included
    """
    pieces = {piece.name: piece.outline for piece in trace(drafted).pieces}
    assert abs(pieces["outer"].stitch.signed_area()) == pytest.approx(120 * 90)
    assert abs(pieces["outer"].cut.signed_area()) == pytest.approx(140 * 110)
    assert abs(pieces["inner"].cut.signed_area()) == pytest.approx(120 * 90)
    assert abs(pieces["inner"].stitch.signed_area()) == pytest.approx(100 * 70)


def test_inside_lines_notches_grain_and_marks(drafted: Draft) -> None:
    """
    point M midway between B and C
    piece p from s cut 1
    edges mid seam, hem seam, side seam, top seam
    grain along A-C
    notch side at 1/2 double
    notch top at B
    notch hem by 3 cm from C
    inside slit E-M as opening_line
    inside placket E-M
    inside opening E-M
    inside dart A-M-C
    inside buttonholes 3 along mid long 1.5 cm
    mark "pocket" at M
    """
    piece = drafted.pieces[0]
    kinds = [line.kind for line in piece.inside]
    assert kinds == ["slit", "placket", "opening", "dart", *["buttonhole"] * 3]
    assert [(notch.edge, notch.count) for notch in piece.notches] == [("side", 2), ("top", 1), ("hem", 1)]
    assert piece.marks[0][0] == "pocket"
    assert piece.grain[0].x == piece.grain[1].x


CUTTING = {
    "cut 1 on fold": (1, True, False, ""),
    "cut 2 as a pair": (2, False, True, ""),
    "cut 1 for the wearer's left": (1, False, False, "left"),
    "cut 1 for the wearer's right": (1, False, False, "right"),
}


@pytest.mark.parametrize("how", CUTTING)
def test_how_a_piece_is_cut(how: str) -> None:
    edges = "edges mid fold, hem hem, side seam, top seam"
    cut = draft_of(f"{FRAME}piece p from s {how} cloth lining\n{edges}").pieces[0]
    order = cut.cutting
    assert (order.count, order.on_fold, order.pair, order.side) == CUTTING[how]
    assert cut.cloth == "lining"


def test_a_cloth_nearly_spelt_right_is_told() -> None:
    edges = "edges mid seam, hem hem, side seam, top seam"
    problem = only(f"{FRAME}piece p from s cut 1 cloth linning\n{edges}")
    assert 'Did you mean "lining"?' in problem.message


def test_seams_with_ease_gathering_and_their_own_tolerance(drafted: Draft) -> None:
    """
    piece p from s cut 1
    edges mid seam, hem seam, side seam, top seam
    sew p.mid to p.side
    sew p.mid to p.top easing 3 cm within 2 mm
    sew p.side to p.hem gathered
    """
    assert not drafted.problems
    plain, eased, gathered = trace(drafted).seams
    assert plain.matched
    assert (eased.ease, eased.tolerance) == (30, 2)
    assert eased.matched  # 9 cm and 12 cm, with 3 cm of ease
    assert gathered.gather


def test_notions_work_and_checks_of_the_recipes_own(drafted: Draft) -> None:
    """
    measure head
    notion elastic head * 0.5 count 2 at neck "soft"
    notion buttons count 3 at back
    work "Join the sides", "Bind the neck"
    check length of top >= 20 cm "The top must be long" warning
    check length of top = 12 cm within 1 mm
    """
    assert not drafted.problems
    elastic, buttons = drafted.notions
    assert elastic.length == pytest.approx(drafted.measurements.mm("head") / 2)
    assert (elastic.count, buttons.count, buttons.length) == (2, 3, None)
    assert drafted.work == ("Join the sides", "Bind the neck")
    assert [check.passes for check in drafted.comparisons] == [False, True]
    assert drafted.comparisons[0].reason == "The top must be long"


# What is wrong with a piece, in words that name the place and both numbers.
WRONG = {
    "edges mid seam, hem seam, top seam": ("edges-do-not-meet", [90]),
    "edges mid seam, hem seam, side seam, top seam\nnotch mid by 40 cm from A": ("beyond-the-end", [400, 90]),
    "edges mid seam, hem seam, side seam, top seam\nnotch top at D": ("not-on-line", [90, 0.1]),
    "edges mid seam, hem seam, side seam, top seam\ninside buttonholes 200 along mid": (
        "count-not-possible",
        [200, 50],
    ),
}


@pytest.mark.parametrize("lines", WRONG)
def test_what_is_wrong_is_told_with_both_numbers(lines: str) -> None:
    code, numbers = WRONG[lines]
    problem = only(PIECE + lines)
    assert problem.code == code
    assert [number.value for number in problem.numbers] == pytest.approx(numbers, abs=1e-3)
    assert problem.place.line
    assert problem.place.column


def test_a_seam_with_an_edge_that_is_not_there_gets_a_suggestion() -> None:
    problem = told(PIECE + "edges mid seam, hem seam, side seam, top seam\nsew p.sidde to p.mid")[0]
    assert 'Did you mean "side"?' in problem.message
