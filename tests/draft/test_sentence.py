"""Every step can be said, in every language, and says what the recipe means."""

from __future__ import annotations

from dataclasses import replace
from string import Formatter
from typing import TYPE_CHECKING

import pytest

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.body.tape import EIGHTH
from littlefold.draft import constructions  # noqa: F401 - importing it fills the register
from littlefold.draft.constructions.measured import WAYS
from littlefold.draft.directions import GOING
from littlefold.draft.evaluate import evaluate
from littlefold.draft.model import DraftLine
from littlefold.draft.register import CONSTRUCTIONS
from littlefold.draft.sentence import Speech, full_sentence, guide_sentence, languages, sentence, table
from littlefold.draft.sides import WAYS as SIDES
from littlefold.geometry import Path, Point
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names, shipped_text
from tests.draft.shapes.test_words import WORDS

if TYPE_CHECKING:
    from littlefold.draft.model import Draft

FRAME = """title "Sentences"
drawing s
point A at the fold
point B right of A by 4 cm
point C above A by 3 cm
point D at 4 cm across and 3 cm up
line floor from A to B
line wall from B to D"""

SHEETS = ("sheet.trace", "sheet.lay", "sheet.lay_plain")
KINDS = (*(known.kind for known in CONSTRUCTIONS.values()), *WORDS, *SHEETS)


def places(pattern: str) -> set[str]:
    return {place for _, place, _, _ in Formatter().parse(pattern) if place}


@pytest.mark.parametrize("language", languages())
def test_every_kind_has_a_sentence_and_no_other_has(language: str) -> None:
    assert set(table(language)["steps"]) == set(KINDS)


@pytest.mark.parametrize("language", languages())
def test_every_sentence_says_all_that_the_english_one_says(language: str) -> None:
    english, other = table("en"), table(language)
    for kind, pattern in english["steps"].items():
        assert places(other["steps"][kind]) == places(pattern), kind
    assert {place: set(words) for place, words in other["words"].items()} == {
        place: set(words) for place, words in english["words"].items()
    }
    assert set(other["guides"]) == set(english["guides"])


def test_there_are_two_languages_at_least() -> None:
    assert {"en", "de"} <= set(languages())


def test_an_unknown_language_is_refused() -> None:
    with pytest.raises(KeyError):
        table("../en")


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("name", shipped_names())
def test_every_step_of_the_shipped_recipes_is_said(name: str, language: str) -> None:
    text = shipped_text(name)
    assert text is not None
    child, _ = complete(Measurements.of({"stature": 1040}))
    draft = evaluate(parse(text, name), child, shelf=lambda other: parse(shipped_text(other) or "", other))
    assert draft.steps
    for step in draft.steps:
        said = full_sentence(step, draft, Speech(language=language))
        assert said.endswith("."), said
        assert not set("{}_") & set(said), said
        assert "  " not in said, said
        assert " ," not in said, said


def last(draft: Draft, speech: Speech = Speech()) -> str:  # noqa: B008 - frozen
    assert not draft.problems, draft.problems[0].message
    return sentence(draft.steps[-1], speech)


def test_offset(drafted: Draft) -> None:
    """point P below B by 2.5 cm"""
    assert last(drafted) == "From B measure 2.5 cm straight down and mark P."
    assert last(drafted, Speech("in", EIGHTH)) == "From B measure 1 in straight down and mark P."  # 0.984 in
    assert last(drafted, Speech(language="de")) == "Von B 2,5 cm gerade nach unten messen: P markieren."


def test_two_legs(drafted: Draft) -> None:
    """point P left of B by 1 cm and above by 2 cm"""
    assert last(drafted) == "From B measure 1 cm to the left and mark P, 2 cm further up."


def test_a_share_is_a_fraction(drafted: Draft) -> None:
    """point P from A towards D at 1/5"""
    assert last(drafted) == "Mark P at 1/5 of the way from A to D."


def test_which_of_two_is_said(drafted: Draft) -> None:
    """point P at 25 mm from A and 25 mm from D nearer B"""
    assert last(drafted) == ("With the compass mark P 2.5 cm from A and 2.5 cm from D, on the side of B.")


def test_an_angle_is_said_in_degrees(drafted: Draft) -> None:
    """point P from A by 2 cm at 15 degrees clockwise from A-C"""
    assert last(drafted) == "From A lay off 15° clockwise from A-C, measure 2 cm and mark P."


def test_a_turn_is_said_in_degrees(drafted: Draft) -> None:
    """point P turning B about A by 22.5 degrees anticlockwise"""
    assert last(drafted) == "Turn B about A by 22.5° anticlockwise and mark P."


def test_directions_of_a_curve(drafted: Draft) -> None:
    """curve skirt_hem from A square to A-C to D square to wall"""
    assert (
        last(drafted)
        == "Draw skirt hem as a curve from A, leaving square to A-C, to D, arriving square to wall."
    )


def test_a_closed_dart_says_where_it_opens(drafted: Draft) -> None:
    """
    point M right of A by 1 cm
    point N right of A by 3 cm
    point T at 2 cm across and 1 cm up
    line top from D to C
    line back from C to A
    line cut from T to C
    outline block edges floor, wall, top, back
    close dart M-T-N of block as shut opening T-C
    """
    # The legs run from T (2, 1) to (1, 0) and (3, 0): a right angle between them.
    assert last(drafted) == (
        "Fold the dart M-T-N of block shut, after cutting along T-C, which opens there by 90°. "
        "Draw round: shut."
    )


def test_pleats(drafted: Draft) -> None:
    """
    line top from D to C
    line back from C to A
    outline block edges floor, wall, top, back
    point P midway between A and B
    point Q midway between C and D
    pleats in block along P-Q as pleated depth 1 cm leftward
    """
    # A pleat takes twice its depth.
    assert last(drafted) == (
        "Cut block along P-Q and part the paper there by 2 cm: room for a pleat 1 cm deep, "
        "the folds lying to the left. Draw round: pleated."
    )


@pytest.mark.parametrize("language", languages())
def test_every_word_a_construction_may_give_is_in_the_table(language: str) -> None:
    words = table(language)["words"]
    clocks = {"clockwise", "anticlockwise"}
    bearings = {f"going {way}" for way in GOING} | {f"angled {clock}" for clock in clocks}
    bearings |= {"unsaid", "heading", "square", "along", "tangent"}
    assert set(words["starting"]) == set(words["ending"]) == bearings
    assert set(words["side"]) == {*SIDES, "nearer", "further", "only"}
    assert set(words["clock"]) == clocks
    assert set(WAYS) <= set(words["way"])


def guided(*depths: float) -> DraftLine:
    corners = [Point(share, depth) for share, depth in zip((25, 50, 75), depths, strict=True)]
    bent = Path.line_through(Point(0, 0), *corners, Point(100, 0))
    return DraftLine("s.hem", bent, "curve", "G", "F", 1)


def test_guide_points_on_one_side_are_said_in_one_breath() -> None:
    """Positive depths lie on the left of the way (guides.Guide)."""
    assert guide_sentence(guided(12, 18, 18.3), Speech()) == (
        "On the straight line from G to F, the curve lies 1.2, 1.8 and 1.8 cm to the left as you go, "
        "at 1/4, 1/2 and 3/4 of the way."
    )


def test_guide_points_on_both_sides_are_said_one_by_one() -> None:
    assert guide_sentence(guided(12, 0.0, -18), Speech()) == (
        "On the straight line from G to F, as you go, the curve lies 1.2 cm to the left at 1/4, "
        "0 cm to the right at 1/2 and 1.8 cm to the right at 3/4."
    )


def test_ends_without_names() -> None:
    line = replace(guided(1, 1, 1), start="", end="")
    assert guide_sentence(line, Speech()).startswith("On the straight line from its beginning to its end")


def test_german_has_a_comma_and_its_own_inch() -> None:
    assert Speech("cm", None, "de").length(12.5) == "1,25 cm"
    assert Speech("in", None, "de").length(25.4) == "1 Zoll"
