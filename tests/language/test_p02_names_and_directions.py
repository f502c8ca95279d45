"""2. Names as on paper; one name, one meaning; directions of the sheet in hand; the wearer's left and right."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.language.drafting import FRAME as BASE
from tests.language.drafting import HEAD, at, draft_of, only, told

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = BASE

CLASHES = {
    "two points": "point A below B by 1 cm",
    "a point and an amount": "amount top = 1 cm",
    "two amounts": "amount x = 1 cm\namount x = 2 cm",
    "two drawings": "drawing s",
    "a measurement and a line": "measure chest\nline chest from A to C",
    "a choice and a line": "choice top = 1 cm, 0 cm .. 2 cm",
}


@pytest.mark.parametrize("kind", CLASHES)
def test_one_name_one_meaning(kind: str) -> None:
    codes = {problem.code for problem in told(FRAME + CLASHES[kind])}
    assert codes
    assert codes <= {"name-taken", "name-means-two-things"}


# Each direction of the clause: what is written, and where the point lies [cm], by plain geometry.
DIRECTIONS = {
    "below": ("below B by 2 cm", (12, -2)),
    "above": ("above B by 2 cm", (12, 2)),
    "left of": ("left of B by 2 cm", (10, 0)),
    "right of": ("right of B by 2 cm", (14, 0)),
    "below and right": ("below B by 2 cm and right by 3 cm", (15, -2)),
    "from P towards Q": ("from B towards C by 5 cm", (8, -3)),  # 3-4-5
    "square from a line at P": ("square from B-C at C by 5 cm downward", (3, -13)),
    "P-Q carried on": ("carrying on C-B past B by 5 cm", (16, 3)),
    "where two lines meet": ("where A-D meets B-C", (6, -4.5)),
    "in from the fold": ("in from the fold by 4 cm level with D", (4, -9)),
    "at given distances": ("at 9 cm from A and 15 cm from B nearer C", (0, -9)),
    "along a line by a length": ("on top by 4 cm from B", (8, 0)),
    "along a line by a fraction": ("on top at 1/4 from B", (9, 0)),
    # C less twice its distance square to A-D, whose direction is (4, -3) / 5 and along which C lies 27 / 5 cm.
    "mirrored": ("mirror of C across A-D", (2 * 27 / 5 * 4 / 5, 9 - 2 * 27 / 5 * 3 / 5)),
    "turned": ("turning C about A by 90 degrees anticlockwise", (9, 0)),
    "an angle from a named line": ("from B by 3 cm at 90 degrees clockwise from A-B", (12, -3)),
    "level and plumb": ("level with C and plumb with B", (12, -9)),
    "foot of a perpendicular": ("foot of A on B-C", (12 * 81 / 225, -9 * 144 / 225)),
    "midpoint": ("midway between B and C", (6, -4.5)),
}


@pytest.mark.parametrize("kind", DIRECTIONS)
def test_the_drafters_directions(kind: str) -> None:
    written, place = DIRECTIONS[kind]
    assert at(draft_of(f"{FRAME}point P {written}"), "s.P") == pytest.approx(place, abs=1e-3)


def test_directions_are_of_the_new_sheet_after_laying(drafted: Draft) -> None:
    """
    drawing t
    point O at the start
    point U below O by 5 cm
    lay s as part with A on O, B towards U
    point P right of part.B by 2 cm
    """
    assert not drafted.problems
    assert at(drafted, "t.part.B") == pytest.approx((0, -12))  # turned: top runs down the new sheet
    assert at(drafted, "t.P") == pytest.approx((2, -12))  # right is the new sheet's right


def test_the_childs_sides_are_the_wearers_and_the_cloths_face_and_back(drafted: Draft) -> None:
    """
    line side from B to D
    line hem from C to D
    line mid from A to C
    piece p from s cut 1 for the wearer's left
    edges mid seam, hem seam, side seam, top seam
    """
    assert drafted.pieces[0].cutting.side == "left"
    problem = only(FRAME + "piece p from s cut 1 for the left")
    assert "I cannot read" in problem.message


@pytest.mark.parametrize(
    ("first", "second"),
    [("Ä", "Schulter"), ("गला", "बाजू"), ("点", "肩線"), ("قَبّة", "كُمّ"), ("คอเสื้อ", "แขน"), ("горло", "рукав")],
)
def test_names_in_any_script(first: str, second: str) -> None:
    drawn = draft_of(
        f"{FRAME}point {first} below A by 3 cm\npoint {second} right of {first} by 4 cm\n"
        f"line l from {first} to {second}\namount long = length of {first}-{second}\n"
    )
    assert not drawn.problems
    assert at(drawn, f"s.{second}") == pytest.approx((4, -3))


def test_one_spelling_of_an_accent() -> None:
    """A letter and a combining accent are the letter with its accent, on whatever keyboard they were typed."""
    drawn = draft_of(FRAME + "point e\u0301 below A by 3 cm\npoint Q below \u00e9 by 2 cm\n")
    assert not drawn.problems
    assert at(drawn, "s.Q") == (0, -5)


def test_a_name_of_another_sheet_is_qualified(drafted: Draft) -> None:
    """
    drawing t
    point O at the start
    point P below s.B by 1 cm
    """
    assert at(drafted, "t.P") == (12, -1)


def test_an_unknown_name_gets_a_suggestion_and_what_there_is() -> None:
    problem = only(
        HEAD + "drawing s\npoint A at the fold\npoint Aa below A by 1 cm\npoint P below AA by 1 cm\n"
    )
    assert problem.code == "name-not-known"
    assert 'there is no point "AA" yet. So far: A, Aa. Did you mean' in problem.message
    assert (problem.place.line, problem.place.column) == (8, 15)
