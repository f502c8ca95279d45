"""What lies on the table for what was asked: the outcome, the sheet that is shown, its drawing and its findings."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.web.all_pieces import ALL, draw_all
from littlefold.web.places import standing
from littlefold.web.table_drawing import Shown, draw_sheet

if TYPE_CHECKING:
    from littlefold.pipeline import Outcome
    from littlefold.web.asked import Asked
    from littlefold.web.places import Standing
    from littlefold.web.room import Room


@dataclass(frozen=True, slots=True)
class OnTable:
    """A draft on the table, one of its sheets on top."""

    asked: Asked
    outcome: Outcome
    shown: Shown
    placed: tuple[Standing, ...]

    @property
    def drawing(self) -> str:
        """The drawing of the sheet on top."""
        if self.shown.sheet == ALL:
            return draw_all(self.outcome.pattern, self.outcome.draft.title)
        return draw_sheet(self.shown, self.placed)


def on_table(room: Room, asked: Asked) -> OnTable:
    """Drafts what was asked and lays the sheet that was asked for on top; the first where there is none such."""
    outcome = room.fulfil(asked.wish)
    names = [*(sheet.name for sheet in outcome.draft.sheets), ALL]
    sheet = asked.sheet if asked.sheet in names else next(iter(names), "")
    return OnTable(asked, outcome, Shown(outcome, sheet), standing(outcome, outcome.problems))
