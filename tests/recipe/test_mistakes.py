"""Every kind of mistake is named in words, at its place, with what to do."""

import re

import pytest

from littlefold.recipe.forms import FORMS
from littlefold.recipe.lines import MOST_CHARACTERS, MOST_LINES
from littlefold.recipe.parse import MOST_EXPLAINED, MOST_IN_STATEMENT, parse


def only_problem(text):
    problems = parse(text, "top").problems
    assert len(problems) == 1
    return problems[0]


# What was written, the line and column of the mistake, and words that the message must have.
MISTAKES = {
    "a keyword mistyped inside a line": ("point B bellow A by 12 cm", 1, 9, 'Did you mean "below"?'),
    "a word left out": ("point B below A 12 cm", 1, 17, '"by" is missing before "12"'),
    "a line that ends too early": ("point B below", 1, 14, "ends too early", "must stand a name"),
    "a line that ends after by": ("point B below A by", 1, 19, "must stand a length or a number"),
    "a bracket not closed": ("amount x = (3 cm + 2 cm", 1, 24, "ends too early", '")"'),
    "quotes not closed": ('title "Loose top', 1, 7, "quotes", "not closed"),
    "quotes of a word processor": ("title “Loose”", 1, 7, "left double quotation mark", "straight quotes"),
    "a decimal comma": ("amount x = 2,5 cm", 1, 13, '"2,5"', "2.5 with a point"),
    "a fraction in one character": ("amount x = 3 ½ in", 1, 16, "vulgar fraction one half", "1/2"),
    "a percent sign": ("amount x = 50 %", 1, 15, "percent sign", "0.5"),
    "an inch mark": ("amount x = 3″", 1, 13, "double prime", "Write in"),
    "a long dash": ("amount x = a – 3 cm", 1, 14, "en dash", "plain minus"),  # noqa: RUF001 (the dash is the mistake)
    "a semicolon": ("edges A-B fold; side seam", 1, 15, "semicolon", "commas between parts"),
    "an unprintable character": ("point A\0 at the fold", 1, 8, "u+0000", "Take it away"),
    "a space that does not break": ("point A\u00a0at the fold", 1, 8, "no-break space", "a plain space"),
    "an upright tab": ("point A\x0bat the fold", 1, 8, "u+000b", "Take it away"),
    "a space that is none": ("point A\u200b at the fold", 1, 8, "zero width space"),
    "a word of the language as a name": (
        "amount x = length + 1 cm",
        1,
        19,
        '"length" is a word of the language',
    ),
    "a line where a point must stand": ("point P from A-B by 3 cm", 1, 15, '"A-B" is a line', "one name"),
    "a comma at the end of all": ("measure chest,", 1, 15, "ends in a comma", "nothing follows"),
    "a comma too many": ("measure chest,\npoint A at the fold", 2, 7, "line above ends in a comma"),
    "a capital letter": ("Point A at the fold", 1, 1, 'Write "point", in small letters'),
    "a mistyped statement": ("  pont A at the fold", 1, 3, 'Did you mean "point"?'),
    "an unknown statement": ("xyzzy", 1, 1, 'no statement begins with "xyzzy"', "piece"),
    "a word after the end": ("end now", 1, 5, 'complete before "now"', "Nothing may follow"),
    "a second unit": ("amount x = 3 cm cm", 1, 17, 'complete before "cm"', "or nothing"),
    "a missing equals sign": ("amount x 3 cm", 1, 10, "I cannot read", 'must stand "="'),
    "a missing number of pieces": ("piece front cut on fold", 1, 17, "must stand a number"),
    "a missing direction of turning": (
        "point P turning Q about C by 9 degrees widdershins",
        1,
        40,
        '"clockwise"',
    ),
    "a missing kind of scale": ("suits 62 cm to 134 cm", 1, 7, '"stature"'),
    "words without quotes": ("work Join it", 1, 6, 'words in "quotes"'),
    "a mistake in the second row": ("edges A-B fold,\n  side seem seam 1 cm 2", 2, 18, 'complete before "1"'),
}


@pytest.mark.parametrize("kind", MISTAKES)
def test_a_mistake_is_named_where_it_is(kind):
    text, line, column, *words = MISTAKES[kind]
    problem = only_problem(text)
    assert (problem.place.file, problem.place.line, problem.place.column) == ("top", line, column)
    assert problem.message.startswith(f"top, line {line}, column {column}: ")
    for word in words:
        assert word in problem.message


def test_every_message_of_an_unreadable_line_shows_how_it_is_written():
    for word, forms in FORMS.items():
        for problem in parse(f"{word} ? ? ?").problems:
            assert problem.code == "cannot-read-line"
            assert any(problem.message.endswith(f"Such a line is written: {form}") for form in forms)


def test_the_form_shown_is_the_one_that_was_meant():
    meant = {
        "point P where A-B meets a circle about C nearer D": "a circle about C of 15 cm",
        "amount x = larger of a and": "larger of",
        "curve c through A, B starting left": "through A, P, B",
        "piece band rectangle 3 cm cut 1": "rectangle 48 cm by 5 cm",
    }
    for text, form in meant.items():
        assert form in only_problem(text).message


def test_the_line_counts_comments_and_blank_lines():
    problem = only_problem("# a remark\n\n  point A ,\n")
    assert (problem.place.line, problem.place.column) == (3, 11)


def test_the_other_lines_are_read():
    recipe = parse("point A at the fold\npoint B bellow A by 3 cm\npoint C below A by 3 cm")
    assert [written.line for written in recipe.written] == [1, 3]


def test_too_much_is_refused_in_words():
    assert only_problem("#" * (MOST_CHARACTERS + 1)).code == "recipe-too-large"
    assert only_problem("\n" * MOST_LINES).code == "recipe-too-large"
    for much in (
        "a" * MOST_IN_STATEMENT,
        "1" + " + 1" * 200,
        "(" * 200,
        "1/2 of " * 200,
        "square root of " * 200,
    ):
        problem = only_problem(f"amount x = {much}")
        assert problem.code == "statement-too-long"
        assert re.search(r"line 1, column 1: .* \d+ (characters|operators)", problem.message)
    assert only_problem("when " + "not " * 200 + "a is b").code == "statement-too-long"


def test_words_in_quotes_may_hold_any_signs():
    assert parse('remark "' + "-of-(" * 200 + '"').problems == ()


def test_a_text_that_is_no_recipe_is_not_explained_without_end():
    problems = parse("this is a letter\n" * 1000).problems
    assert len(problems) == MOST_EXPLAINED + 1
    assert problems[-1].code == "too-many-mistakes"
    assert problems[-1].numbers[0].value == 1000 - MOST_EXPLAINED
