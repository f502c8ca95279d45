"""`check` drafts the smallest, the middle and the largest size of `suits`; `format` says the same twice and keeps comments."""

from __future__ import annotations

import pytest

from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names, shipped_text

HEAD = 'recipe odd\ntitle "Odd"\nsuits stature 62 cm to 134 cm\nsource common practice\nmeasure stature\n'
DRAWN = "drawing a\npoint A at the fold\npoint B below A by 3 cm\n"
# What fails at one size alone, and the stature at which it does.
AT_ONE_SIZE = {
    "smallest": "table t by stature between 80 cm gives 1 cm, 140 cm gives 2 cm\npoint P below A by t\n",
    "middle": "point P below A by 1 cm / (stature - 98 cm) * 1 cm\n",
    "largest": "table t by stature between 60 cm gives 1 cm, 120 cm gives 2 cm\npoint P below A by t\n",
}
TOLD = {
    "smallest": "goes from 80 cm to 140 cm; the stature is 62 cm",
    "middle": "nothing can be divided by 0",
    "largest": "goes from 60 cm to 120 cm; the stature is 134 cm",
}

STATURES = {"smallest": "62 cm", "middle": "98 cm", "largest": "134 cm"}


def written(tmp_path, text, name="odd.recipe"):
    path = tmp_path / name
    path.write_bytes(text.encode())
    return path


def test_a_sound_recipe_names_the_three_sizes(say, tmp_path):
    said = say("check", written(tmp_path, HEAD + DRAWN))
    assert said.status == 0
    for stature in ("62 cm", "98 cm", "134 cm"):
        assert f"stature {stature}" in said.out


@pytest.mark.parametrize("size", AT_ONE_SIZE)
def test_what_fails_at_one_size_alone_is_found(say, tmp_path, size):
    said = say("check", written(tmp_path, HEAD + DRAWN + AT_ONE_SIZE[size]))
    assert said.status == 1
    told = " ".join(said.out.replace("│", " ").split())
    assert TOLD[size] in told
    assert f"For stature {STATURES[size]}: " in told


def test_all_mistakes_of_a_text_are_told_at_once_each_once(say, tmp_path):
    said = say(
        "check", written(tmp_path, HEAD + DRAWN + "pont\npoint P below Q by 1 cm\npoint R below A by 3\n")
    )
    assert said.status == 1
    for line in (9, 10, 11):
        assert said.out.count(f"line {line}, column") == 1


CLUMSY = """# the head   \r
recipe    odd # a name\r
title "a # in quotes"\r
\r
\r
\r
drawing a\r
      # before A\r
   point   A at the  fold\r
# about B,\r
# in two lines\r
 point B below A by ( 3cm+1/2 in)*2   # why\r
edges A-B fold,\r
   # between\r
   B-A seam\r
# the end"""
COMMENTS = (
    "# the head",
    "# a name",
    "# before A",
    "# about B,",
    "# in two lines",
    "# why",
    "# between",
    "# the end",
)


def test_format_says_the_same_twice_keeps_comments_and_means_the_same(say, tmp_path):
    path = written(tmp_path, CLUMSY)
    once = say("format", path)
    assert once.status == 0
    assert path.read_bytes() == CLUMSY.encode()  # only looked at
    twice = say("format", written(tmp_path, once.out, "twice.recipe"))
    assert twice.out == once.out
    for comment in COMMENTS:
        assert comment in once.out
    before, after = ([line.statement for line in parse(text).written] for text in (CLUMSY, once.out))
    assert before == after
    assert "\r" not in once.out


def test_format_writes_only_when_asked_and_then_once(say, tmp_path):
    path = written(tmp_path, CLUMSY)
    assert say("format", path, "--write").status == 0
    tidy = path.read_bytes()
    assert b"\r" not in tidy
    assert say("format", path, "--write").status == 0
    assert path.read_bytes() == tidy


def test_format_keeps_a_line_it_cannot_read_and_tells_of_it(say, tmp_path):
    path = written(tmp_path, 'recipe x\ntitle   "X"\nfoo  bar\n')
    shown = say("format", path)
    assert shown.status == 1
    assert shown.out == 'recipe x\ntitle "X"\nfoo  bar\n'
    assert "line 3" in shown.err
    assert say("format", path, "--write").status == 1
    assert path.read_text("utf-8") == shown.out


@pytest.mark.parametrize("name", shipped_names())
def test_shipped_recipes_are_in_the_canonical_layout(say, tmp_path, name):
    text = shipped_text(name)
    assert say("format", written(tmp_path, text)).out == text
