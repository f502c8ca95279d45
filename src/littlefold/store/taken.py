"""A card as growth is drawn from it, and as it is printed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.booklet.card_sheet import NEWEST, CardSheet, card_sheet
from littlefold.booklet.growth_picture import Taken

if TYPE_CHECKING:
    from datetime import date

    from littlefold.body.room import Room
    from littlefold.draft.sentence import Speech
    from littlefold.store.card import Card


def taken_of(card: Card) -> tuple[Taken, ...]:
    """What counts of each day, in order; days before the birth and cards without a birth date have no age and no dot."""
    bodies = ((one, card.body(one)) for one in card.day_by_day())
    return tuple(Taken(one.day, body) for one, body in bodies if body.age_months is not None)


def printed(card: Card, room: Room, made: date, speech: Speech) -> bytes:
    """The card sheet of a child, a PDF.

    Args:
        card: With at least one set that has an age.
        room: From the newest readings to the day that is looked ahead to.
        made: The date on the sheet.
        speech: Units and language.
    """
    notes = tuple(note.text for note in card.notes)
    own = {each.name: each.how for one in card.day_by_day()[-NEWEST:] for each in one.own}
    return card_sheet(CardSheet(taken_of(card), room, notes, made, speech, tuple(own.items())))
