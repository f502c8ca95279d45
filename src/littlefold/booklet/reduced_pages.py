"""The drawings of a draft for the classroom: each on one page, reduced, points lettered, with dimensions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.booklet.draft_picture import draft_picture
from littlefold.drawing import Drawing
from littlefold.sheet.pdf import write_pdf
from littlefold.sheet.reduced import DIVISORS, picture_page, picture_room

if TYPE_CHECKING:
    from datetime import date

    from littlefold.draft.model import Draft
    from littlefold.draft.sentence import Speech
    from littlefold.geometry import Bounds
    from littlefold.sheet.paper import Paper


def reduced_pages(
    draft: Draft, speech: Speech, paper: Paper, made: date, title: str, *, least: float = 1.0
) -> bytes:
    """A page for each drawing of a draft, at the largest scale a pupil can multiply by that fits it.

    Args:
        draft: The draft; its drawings come in the order in which they are begun.
        speech: Units, tape and language.
        paper: The paper it is printed on; a roll is taken as wide as high.
        made: The date on every page.
        title: The garment, and whose it is.
        least: No larger scale than 1 : least is taken: 4 or 5 give the usual scales of a class where they fit,
            and a smaller one, which the bar below the drawing names, where they do not.
    """
    room = picture_room(paper)
    names = dict.fromkeys(step.sheet for step in draft.steps)
    pages = (
        picture_page(
            _fitted(draft, name, speech, room, least),
            paper,
            made,
            f"{title}: {name.replace('_', ' ')}",
            speech.language,
        )
        for name in names
    )
    return write_pdf(tuple(pages), title, made)


def _fitted(draft: Draft, name: str, speech: Speech, room: Bounds, least: float) -> Drawing:
    """The first scale at which the drawing fits with all its dimension lines, or the smallest there is."""
    scales = (divisor for divisor in DIVISORS if divisor >= least)
    size = (room.width, room.height)
    pictures = (draft_picture(draft, name, speech, size, least=divisor) for divisor in scales)
    return next((picture for picture in pictures if _fits(picture, room)), Drawing())


def _fits(picture: Drawing, room: Bounds) -> bool:
    box = picture.bounds()
    return box is None or (box.width <= room.width and box.height <= room.height)
