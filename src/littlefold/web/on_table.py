"""What lies on the table for what was asked: the outcome, the sheet that is shown, its drawing and its findings."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.web.all_pieces import ALL, draw_all
from littlefold.web.places import standing
from littlefold.web.table_drawing import draw_sheet

if TYPE_CHECKING:
    from littlefold.pipeline import Glimpse, Outcome
    from littlefold.web.asked import Asked
    from littlefold.web.places import Standing
    from littlefold.web.room import Room


@dataclass(frozen=True, slots=True)
class OnTable:
    """A draft on the table, one of its sheets on top."""

    asked: Asked
    outcome: Outcome
    shown: Glimpse
    placed: tuple[Standing, ...]

    @property
    def sheet(self) -> str:
        """What a link calls the sheet on top."""
        return self.shown.sheet or ALL

    @property
    def drawing(self) -> str:
        """The drawing of the sheet on top, with its findings."""
        return _drawing(self.shown, self.placed)


def on_table(room: Room, asked: Asked) -> OnTable:
    """Drafts what was asked and lays the sheet that was asked for on top; the first where there is none such."""
    outcome = room.fulfil(asked.wish)
    return OnTable(asked, outcome, outcome.glimpse(_sheet(asked)), standing(outcome, outcome.problems))


def glimpsed(room: Room, asked: Asked) -> str:
    """The drawing of the sheet that was asked for, and nothing that would have to be checked."""
    return _drawing(room.glimpse(asked.wish, _sheet(asked)))


def _sheet(asked: Asked) -> str | None:
    return None if asked.sheet == ALL else asked.sheet


def _drawing(shown: Glimpse, placed: tuple[Standing, ...] | None = None) -> str:
    if shown.sheet is None:
        return draw_all(shown.pieces, shown.draft.title)
    return draw_sheet(shown, placed)
