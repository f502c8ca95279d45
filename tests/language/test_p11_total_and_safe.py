"""11. Total and safe: whatever a stranger writes, there is an answer in words, within bounds, and all that can be drawn."""

from __future__ import annotations

import time

import pytest

from littlefold.draft.desk import MOST_STEPS
from littlefold.recipe.format import format_recipe
from littlefold.recipe.lines import MOST_CHARACTERS, MOST_LINES
from tests.language.drafting import FRAME, HEAD, draft_of, told

LINE = FRAME.count("\n") + 1
LONG_TABLE = ", ".join(f"{row} mm gives {row} mm" for row in range(1, 300))
FINDS = "".join(f"find x{n} between 1 cm and 9 cm so that length of l = {n} cm\n" for n in range(6))

# Written below the frame: the code that has to be told, and words that have to be in its message.
HOSTILE = {
    "a misspelt statement": ("pont P below A by 3 cm", "unknown-statement", 'Did you mean "point"?'),
    "a misspelt word": ("point P blow A by 3 cm", "cannot-read-line", 'Did you mean "below"?'),
    "a word grown into another": ("point P below A bye 3 cm", "cannot-read-line", 'Did you mean "by"?'),
    "words grown together": ("point P belowA by 3 cm", "cannot-read-line", 'Did you mean "below"?'),
    "capitals": ("POINT P below A by 3 cm", "unknown-statement", "in small letters"),
    "two statements on a line": (
        "point P below A by 3 cm point Q below A by 3 cm",
        "cannot-read-line",
        "complete",
    ),
    "curly quotes": ("point P below A by 3 cm “x”", "cannot-read-line", "Write straight quotes"),
    "a fraction as one sign": ("point P below A by ½ in", "cannot-read-line", "Write 1/2"),
    "a typographic minus": ("point P below A by 3 cm \u2212 1 cm", "cannot-read-line", "plain minus"),
    "a word of the language as a name": ("point by below A by 3 cm", "reserved-word", "Choose another"),
    "an invisible sign": ("point \u202eP below A by 3 cm", "cannot-read-line", "right-to-left override"),
    "a control sign": ("\x1b[31mpoint P below A by 3 cm", "unknown-statement", "no statement begins"),
    "brackets without end": (
        "amount x = " + "(" * 500 + "1 cm" + ")" * 500,
        "statement-too-long",
        "at most 120",
    ),
    "a sum without end": ("amount x = " + "1 cm + " * 3000 + "1 cm", "statement-too-long", "at most 4000"),
    "nots without end": (
        "point P below A by 1 cm when " + "not " * 500 + "1 > 0",
        "statement-too-long",
        "120",
    ),
    "a table without end": (
        f"table t by stature between {LONG_TABLE}",
        "statement-too-long",
        "several tables",
    ),
    "a text without end": ('remark "' + "x" * 5000 + '"', "statement-too-long", "at most 4000"),
    "an amount of itself": ("amount a = a + 1 cm", "name-not-known", "before you use it"),
    "amounts in a ring": (
        "amount a = b\namount b = a",
        "name-not-known",
        'no amount, measurement or choice "b"',
    ),
    "a division by nothing": ("amount a = 1 cm / 0", "numbers-do-not-go-together", "divided by 0"),
    "lines that meet at infinity": ("point P where A-B meets C-D", "lines-do-not-meet", "9.00 cm"),
    "a point too far": (
        "point P below A by 999999999999 cm",
        "number-out-of-bounds",
        "no number to draw with",
    ),
    "a search within searches": (FINDS + "line l from A to B", "too-many-searches", "State each goal"),
    "a direction from nowhere": ("point P from A towards A by 1 cm", "points-fall-together", "same place"),
    "a recipe that begins with nobody": ("begin with nobody", "recipe-not-known", "There are:"),
}


@pytest.mark.parametrize("kind", HOSTILE)
def test_each_is_a_problem_with_its_place_and_what_to_do(kind: str) -> None:
    text, code, words = HOSTILE[kind]
    begun = time.process_time()
    problems = told(FRAME + text)
    assert time.process_time() - begun < 4
    problem = next(one for one in problems if one.code == code)
    assert words in problem.message
    assert problem.place.line
    assert problem.place.line >= LINE
    assert problem.place.column
    assert f"line {problem.place.line}, column {problem.place.column}" in problem.message
    assert len(problem.message) < 1000
    assert {"s.A", "s.D"} <= set(draft_of(FRAME + text).points)  # as much as can be drawn is drawn


def test_an_outline_that_crosses_itself_is_told_with_its_place() -> None:
    from littlefold.pattern.trace import trace  # noqa: PLC0415

    text = FRAME + "line one from A to D\nline two from C to B\npiece p from s cut 1\n"
    drawn = draft_of(text + "edges one seam, D-C seam, two seam, B-A seam")
    found = trace(drawn).problems
    assert [problem.code for problem in found] == ["stitch-line-crosses"]
    assert found[0].place.piece == "p"


def test_several_mistakes_at_once_are_all_told_and_the_rest_is_drawn() -> None:
    text = """pont P below A by 3 cm
point Q below A by 3
point R below X by 1 cm
point S below A by 5 cm
choise e = 1 cm, 0 cm .. 2 cm
line l from S to A to
"""
    lines = sorted(problem.place.line - LINE for problem in told(FRAME + text) if problem.place.line)
    assert lines == [0, 1, 2, 4, 5]
    assert draft_of(FRAME + text).points["s.S"].at.y == -50


def test_what_follows_from_a_mistake_is_not_told_again() -> None:
    assert len(told(FRAME + "point P below X by 1 cm\npoint Q below P by 1 cm\nline l from P to Q\n")) == 1


PLAIN = HEAD + "drawing s\npoint A at the fold\npoint B below A by 3 cm\n"
SPELT = {
    "line ends of another system": PLAIN.replace("\n", "\r\n"),
    "line ends of an old system": PLAIN.replace("\n", "\r"),
    "tabs": PLAIN.replace("point B below", "\tpoint\tB\tbelow"),
    "a byte order mark": "\ufeff" + PLAIN,
    "no line end at the end": PLAIN.rstrip("\n"),
    "comments and blank lines": "# before\n\n" + PLAIN.replace("3 cm", "3 cm   # three"),
}


@pytest.mark.parametrize("kind", SPELT)
def test_spaces_and_line_ends_mean_nothing(kind: str) -> None:
    text = SPELT[kind]
    assert told(text) == []
    assert draft_of(text).points["s.B"].at.y == -30
    tidy = format_recipe(text)
    assert isinstance(tidy, str)
    assert format_recipe(tidy) == tidy


def test_bounded_text_and_steps() -> None:
    for much in ("#" * (MOST_CHARACTERS + 1), "\n" * (MOST_LINES + 1)):
        assert "recipe-too-large" in {problem.code for problem in told(much)}
    many = draft_of(FRAME + "".join(f"point P{n} below A by {n} mm\n" for n in range(MOST_STEPS + 500)))
    assert many.problems[-1].code == "too-much-to-draw"
    assert len(many.steps) == MOST_STEPS


def test_five_hundred_steps_take_bounded_time() -> None:
    text = FRAME + "".join(
        f"point P{n} at 10 cm from A and {25 + n * 0.35:.2f} mm from B upward\n" for n in range(500)
    )
    begun = time.process_time()
    drawn = draft_of(text)
    assert time.process_time() - begun < 3  # the goal is a tenth of it; the machine may be shared
    assert len(drawn.steps) >= 490


def test_hundreds_of_conditions_within_each_other() -> None:
    depth = 300
    text = FRAME + "when 1 cm > 0 cm\n" * depth + "point P below A by 1 cm\n" + "end\n" * depth
    assert draft_of(text).points["s.P"].at.y == -10


@pytest.mark.parametrize("text", ["", "\n\n", "# nothing\n", "recipe x\n"])
def test_a_recipe_of_nothing_is_told_what_it_lacks(text: str) -> None:
    assert {"no-title", "no-suits", "no-source"} <= {problem.code for problem in told(text)}
