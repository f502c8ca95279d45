"""Step pictures to print and pin up or hand out: one on a page, or four."""

from __future__ import annotations

from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any, Literal

from littlefold.booklet.formula import step_formula
from littlefold.booklet.instructions import child_line
from littlefold.booklet.step_picture import stage_scene, step_picture
from littlefold.booklet.wording import wording
from littlefold.draft.sentence import full_sentence
from littlefold.drawing import plain
from littlefold.sheet.pdf import typeset
from littlefold.sheet.replay import drawing_as_data, looks_as_data
from littlefold.sheet.wording import spoken_date

if TYPE_CHECKING:
    from datetime import date

    from littlefold.draft.model import Draft, Step
    from littlefold.draft.sentence import Speech
    from littlefold.sheet.paper import Paper

MARGINS = (30.0, 32.0)
"""What the margins take of width and height [mm]; the template has the same."""
WORDS = 46.0
"""Height kept for the words above a picture [mm]; the longest sentences take about nine lines on a small card."""
SIZES = {1: 2.0, 2: 1.25}
"""How much larger than on the instruction sheet words are set: a page on the wall is read from across a table."""
INSET = 8.0
"""What the rim of a small card takes of its width and height [mm]."""


def step_pages(draft: Draft, speech: Speech, paper: Paper, made: date, across: Literal[1, 2] = 1) -> bytes:
    """All steps of a draft as a PDF of pictures with their sentences.

    Args:
        draft: The draft.
        speech: Units, tape and language.
        paper: The paper it is printed on; a roll is taken as wide as high.
        made: The date on every page.
        across: One picture on a page, or two by two.
    """
    wide, high = paper.width, paper.height or paper.width
    inset = INSET if across > 1 else 0.0
    room = ((wide - MARGINS[0]) / across - inset, (high - MARGINS[1]) / across - inset - WORDS)
    words = wording(speech.language)
    data = {
        "paper": {"width": wide, "height": high},
        "language": speech.language,
        "looks": looks_as_data(),
        "title": plain(draft.title),
        "child": child_line(draft, words, speech),
        "made": spoken_date(made, speech.language),
        "across": across,
        "steps": [_card(step, draft, speech, room, SIZES[across]) for step in draft.steps],
    }
    return typeset(_template(), data, made)


def _card(step: Step, draft: Draft, speech: Speech, room: tuple[float, float], size: float) -> dict[str, Any]:
    picture = step_picture(draft, step.number, speech, room, size)
    return {
        "number": step.number,
        "sentence": full_sentence(step, draft, speech),
        "formula": step_formula(step, speech, wording(speech.language)["formula"]["on_tape"]),
        "picture": drawing_as_data(picture, stage_scene(draft, step.number, room).window),
    }


@lru_cache(maxsize=1)
def _template() -> str:
    return files("littlefold.booklet").joinpath("step_pages.typ").read_text("utf-8")
