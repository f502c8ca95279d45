"""Faults that need no child: each is found where it is, and what is right passes."""

import pytest

from littlefold.problem import Severity
from littlefold.recipe.analyse import FAULTS, analyse
from littlefold.recipe.faults.languages import LANGUAGES
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names, shipped_text

MEASURES = ("chest", "waist", "neck")
HEADER = 'recipe x\ntitle "X"\nsuits age 1 y to 3 y\nsource common practice\n'

# What is written below a right header, the code, the line there, the column, and words of the message.
WRONG = {
    "a when never ended": ("when ease > 3 cm\npoint A at the fold", "when-not-ended", 1, 1, "Write `end`"),
    "an inner when never ended": ("when a is b\nwhen c is d\nend", "when-not-ended", 1, 1, "never ended"),
    "a branch after the last": (
        "when a is b\notherwise\notherwise when c is d\nend",
        "branch-never-taken",
        3,
        1,
        "never be taken",
    ),
    "a name of one branch": (
        "drawing s\npoint A at the fold\npoint B below A by 1 cm when 2 > 1\nline l from A to B",
        "name-of-one-branch",
        4,
        18,
        "cannot be used outside it",
    ),
    "a change without redraw": (
        "drawing body\npoint A at the fold\nwith point A at the start",
        "change-without-redraw",
        3,
        1,
        "directly below",
    ),
    "a step left out of nothing": (
        "redraw a as b\npoint A at the fold\nwithout K",
        "change-without-redraw",
        3,
        1,
        "redraw",
    ),
    "a cloth that is nearly a usual one": (
        "piece p from s cut 1 cloth interfaceing",
        "cloth-spelt-alike",
        1,
        28,
        'Did you mean "interfacing"?',
    ),
    "a second title": ('title "Y"', "said-twice", 1, 1, "line 2 already"),
    "a second name": ("recipe y", "said-twice", 1, 1, "line 1 already"),
    "an unknown garment": ("garment bibb", "unknown-garment", 1, 9, 'Did you mean "bib"?'),
    "a mistyped measurement": ("measure chest, chset", "unknown-measure", 1, 16, 'Did you mean "chest"?'),
    "a measurement of its own": ("measure sock", "unknown-measure", 1, 9, 'own measure sock "how'),
    "an unknown language": ('remark "So" qq: "Si"', "unknown-language", 1, 1, '"qq"'),
    "an amount named by a word": ("amount length = 3 cm", "reserved-word", 1, 8, '"length"'),
    "a point named by a word": ("point of at the fold", "reserved-word", 1, 7, '"of"'),
    "a point named like an amount": (
        "amount depth = 3 cm\npoint depth at the fold",
        "name-means-two-things",
        2,
        7,
        "(line 5)",
    ),
    "a line named like a measurement": (
        "measure neck\ncurve neck through A, B, C",
        "name-means-two-things",
        2,
        7,
        "is a number already",
    ),
    "a fraction after a division": (
        "amount x = chest / 3/4",
        "two-ways-to-divide",
        1,
        20,
        "Write chest / 3 / 4, or chest / (3/4)",
    ),
    "a fraction with a unit after a division": (
        "point B below A by chest/1/2 in",
        "two-ways-to-divide",
        1,
        26,
        "or chest / (1/2 in)",
    ),
    "an example without a unit": (
        'measure chest\nexample "a book" with chest = 50',
        "number-without-unit",
        2,
        31,
        "50 what? Write 50 cm or 50 in.",
    ),
    "an option named twice": ("choice c = a | b | a", "option-twice", 1, 20, '"a" is named twice'),
    "a printed number without a book": (
        "amount x = 3 cm printed 4 in\namount y = 3 cm printed 4 in",
        "printed-without-example",
        1,
        25,
        "no example",
    ),
    "an example that gives something else": (
        'measure chest\nexample "a book" with chset = 50 cm',
        "example-not-asked-for",
        2,
        23,
        'Did you mean "chest"?',
    ),
    "an example that chooses something else": (
        'choice flare = 1 cm, 0 cm .. 3 cm\nexample "a book" choosing flair = 2 cm',
        "example-not-asked-for",
        2,
        27,
        'Did you mean "flare"?',
    ),
}
RIGHT = (
    "when a is b\nwhen c is d\nend\notherwise when c is d\notherwise\nend",
    "garment bib",
    "redraw a as b\nwith point K below A by 3 cm\nwithout L\nwith point M below A by 3 cm",
    'measure chest, neck\nown measure sock "round the foot"',
    'remark "So" de: "Also" nds: "So"',
    "amount depth = 3 cm\npoint A at the fold\nline side from A to B",
    "amount x = chest / 3 1/4\namount y = chest / 4\namount z = 1/4 of chest\namount w = chest / (3/4)",
    'choice e = 1 in, 2 cm .. 30 mm "E"\nchoice f = -1 cm, -2 cm .. 0 cm\nchoice g = chest, 3 cm .. 4 cm',
    'measure chest\nexample "a book" with chest = 50 cm\namount x = 3 cm printed 4 in',
    'begin with bodice\nexample "a book" with neck = 50 cm',
)


def found(text):
    return analyse(parse(HEADER + text, "top"), MEASURES)


@pytest.mark.parametrize("kind", WRONG)
def test_a_fault_is_found_where_it_is(kind):
    text, code, line, column, words = WRONG[kind]
    problems = found(text)
    assert [problem.code for problem in problems] == [code]
    place = problems[0].place
    assert (place.file, place.line, place.column) == ("top", line + HEADER.count("\n"), column)
    assert problems[0].message.startswith(f"top, line {place.line}, column {column}: ")
    assert words in problems[0].message


@pytest.mark.parametrize("text", RIGHT)
def test_what_is_right_passes(text):
    assert parse(HEADER + text).problems == ()
    assert found(text) == ()


def test_what_a_recipe_should_say_and_does_not_is_a_warning():
    problems = analyse(parse(""))
    assert {problem.code for problem in problems} == {"no-name", "no-title", "no-suits", "no-source"}
    assert {problem.severity for problem in problems} == {Severity.WARNING}


def test_problems_come_in_the_order_of_the_lines():
    lines = [problem.place.line for problem in found("when a is b\namount of = 3 cm / 1/2\ngarment z")]
    assert lines == sorted(lines)
    assert len(lines) == 4


def test_every_fault_has_a_test():
    codes = {wrong[1] for wrong in WRONG.values()}
    for look in FAULTS:
        texts = [HEADER + wrong[0] for wrong in WRONG.values()]
        told = {problem.code for text in ("", *texts) for problem in look(parse(text))}
        assert told
        assert told <= codes | {"no-name", "no-title", "no-suits", "no-source"}


def test_there_are_as_many_languages_as_the_standard_has():
    """ISO 639-1 has 183 codes since sh was withdrawn (Library of Congress, code changes; from memory)."""
    assert len(LANGUAGES) == 183
    assert {"de", "fr", "tr", "ar", "uk", "zh"} <= LANGUAGES


@pytest.mark.parametrize("name", shipped_names())
def test_the_shipped_recipes_are_free_of_errors(name):
    recipe = parse(shipped_text(name), name)
    assert recipe.problems == ()
    assert [problem.message for problem in analyse(recipe) if problem.severity is Severity.ERROR] == []
