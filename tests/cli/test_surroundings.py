"""What surrounds the work is understood from the command line, or refused in words."""

from __future__ import annotations

from datetime import date

import pytest

from littlefold.cli.asked import Asked
from littlefold.cli.understood import Understood, understand
from littlefold.pipeline import fulfil

TODAY = date(2026, 11, 25)


def asked(**options: str) -> Understood:
    found = understand(Asked("casing-top", size="104", **options), TODAY)  # type: ignore[arg-type]
    assert isinstance(found, Understood)
    return found


def codes(**options: str) -> set[str]:
    return {problem.code for problem in fulfil(asked(**options).wish).problems}


def test_cloth_that_is_too_narrow() -> None:
    assert "cloth-too-narrow" in codes(cloth_width="20cm")
    assert "cloth-too-narrow" not in codes(cloth_width="110cm")
    assert "cloth-too-narrow" not in codes()


def test_paper_that_is_too_small_to_draw_on() -> None:
    assert "paper-too-small" in codes(draw_on="a4")
    assert "paper-too-small" not in codes(draw_on="a0")
    assert "paper-too-small" not in codes()


def test_a_margin_and_an_overlap_of_0_need_no_unit() -> None:
    paper = asked(margin="0", overlap="0").paper
    assert (paper.margin, paper.overlap) == (0.0, 0.0)


def test_what_is_no_pair_or_not_on_the_list_is_refused_by_its_option() -> None:
    found = understand(Asked("casing-top", measure=("chest",), choose=("ease 3",), reduced="1:7"), TODAY)
    assert isinstance(found, tuple)
    told = [problem.message for problem in found]
    assert [text.split(":")[0] for text in told] == ["--measure chest", "--choose ease 3", "--reduced 1"]


def test_the_label_size_counts_for_the_us_rules() -> None:
    assert asked(us_size="2T", region="us").wish.circumstances.us_size == "2t"


def test_language_of_steps_and_of_words() -> None:
    found = asked(language="de")
    assert (found.speech.language, found.wish.language) == ("de", "de")


@pytest.mark.parametrize(
    ("option", "said"),
    [
        ("cloth_width", "broad"),
        ("cloth_width", "0 cm"),
        ("draw_on", "a77"),
        ("us_size", "giant"),
        ("region", "moon"),
        ("language", "../en"),
    ],
)
def test_what_is_not_understood_is_said(option: str, said: str) -> None:
    found = understand(Asked("casing-top", **{option: said}), TODAY)  # type: ignore[arg-type]
    assert isinstance(found, tuple)
    assert len(found) == 1
    assert said.split(maxsplit=1)[0] in found[0].message or option.replace("_", "-") in found[0].message
