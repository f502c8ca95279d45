"""What is told of a draft as text: its drawing, and all that can be said of it; each from the words of a link.

These are what hands are given to do, so everything they need comes with the room, the recipe's name and the words.
"""

from __future__ import annotations

import json
from time import monotonic
from typing import TYPE_CHECKING, Any, Final

from littlefold.web.asked import understand
from littlefold.web.at_door import recipe_named
from littlefold.web.cures import cures, troubles
from littlefold.web.on_table import glimpsed, on_table
from littlefold.web.readings import slips, tape_readings
from littlefold.web.rendering import words
from littlefold.web.said import back_of_sheet, elements, findings

if TYPE_CHECKING:
    from littlefold.web.asked import Asked
    from littlefold.web.cures import Cure, Trouble
    from littlefold.web.on_table import OnTable
    from littlefold.web.readings import TapeReading
    from littlefold.web.room import Room

Json = dict[str, Any]
Fields = tuple[tuple[str, str], ...]

WAIT: Final = 2.5
"""So long choices are tried that may cure what was found [s]."""
HALF_CENTIMETRE: Final = 5.0
QUARTER_INCH: Final = 25.4 / 4
"""The marks of the tape at which a cure is sought [mm]."""


def drawn(room: Room, recipe: str, fields: Fields) -> str:
    """The drawing with its findings, as SVG."""
    return _lying(room, recipe, fields).drawing


def moving(room: Room, recipe: str, fields: Fields) -> str:
    """The drawing alone, as it is wanted again and again while something moves, as SVG."""
    return glimpsed(room, _asked(room, recipe, fields))


def told(room: Room, recipe: str, fields: Fields) -> str:
    """The drawing and all that is said of it, as JSON: what stands when nothing moves any more."""
    lying = _lying(room, recipe, fields)
    asked, outcome = lying.asked, lying.outcome
    return json.dumps(
        {
            "drawing": lying.drawing,
            "elements": elements(outcome, asked),
            "findings": _list(room, recipe, asked=asked, findings=findings(lying.placed, {}, asked)),
            "in_trouble": any(True for _ in troubles(outcome.problems)),
            "back": words(room, "back.html", back=back_of_sheet(outcome, asked)),
            "readings": {one.name: _reading(one) for one in tape_readings(asked, outcome.draft)},
            "refused": {name: problem.message for name, problem in asked.refused},
        }
    )


def healing(room: Room, recipe: str, fields: Fields) -> str:
    """The findings with the choices that cure them, as JSON."""
    lying = _lying(room, recipe, fields)
    found = findings(lying.placed, cured(room, lying), lying.asked)
    return json.dumps(
        {
            "findings": _list(room, recipe, asked=lying.asked, findings=found),
            "cures": {one["number"]: one["cures"] for one in found if one["cures"]},
        }
    )


def cured(room: Room, lying: OnTable) -> dict[Trouble, tuple[Cure, ...]]:
    """The choices that cure what was found, as many as can be tried while a maker waits."""
    asked = lying.asked
    until = monotonic() + WAIT
    mark = QUARTER_INCH if asked.speech.units == "in" else HALF_CENTIMETRE
    choices = slips(asked, lying.outcome.draft)
    return cures(asked.wish, choices, room.fulfil, mark=mark, goes_on=lambda: monotonic() < until)


def _lying(room: Room, recipe: str, fields: Fields) -> OnTable:
    return on_table(room, _asked(room, recipe, fields))


def _asked(room: Room, recipe: str, fields: Fields) -> Asked:
    return understand(recipe_named(room, recipe), dict(fields), room.preferences)


def _list(room: Room, recipe: str, **values: Any) -> str:
    return words(room, "findings.html", recipe=recipe, can_seek=False, **values)


def _reading(one: TapeReading) -> Json:
    return {"mm": one.mm, "said": one.said, "origin": one.origin}
