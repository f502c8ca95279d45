"""The page about constructions says all of the register, as it is today."""

from __future__ import annotations

import re
from pathlib import Path

from littlefold.draft.register import CONSTRUCTIONS
from littlefold.draft.sentence import table
from littlefold.draft.shapes import SHAPE_ACTS
from littlefold.draft.strips import STRIP_ACTS
from tools.construction_pages import OTHERS, page

PAGE = Path(__file__).parents[2].joinpath("docs", "constructions.md").read_text("utf-8")


def test_the_page_is_current() -> None:
    assert page() == PAGE, "run tools/construction_pages.py"


def test_every_kind_stands_on_the_page_once_with_words_and_an_example() -> None:
    sections = re.split(r"^### ", PAGE, flags=re.MULTILINE)[1:]
    assert sorted(section.split("\n", 1)[0] for section in sections) == sorted(table("en")["steps"])
    for section in sections:
        kind, _, meaning, *_ = section.split("\n")
        assert len(meaning.split()) >= 3, kind
        assert "- `" in section, kind
        assert re.search(r"\*[A-Z{].*\.\*", section), kind


def test_nothing_that_is_done_to_outlines_is_left_out() -> None:
    assert {*SHAPE_ACTS, *STRIP_ACTS} <= set(OTHERS.values())
    assert set(OTHERS) == set(table("en")["steps"]) - {known.kind for known in CONSTRUCTIONS.values()}
