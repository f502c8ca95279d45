"""What trying a garment on showed, kept beside its draft; changed choices make a new draft that follows it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.body.tape import read_length
from littlefold.pipeline import settings
from littlefold.problem import Problem, Severity
from littlefold.store import Fitting
from littlefold.store.reprint import past_draft, recipe_of, wish_again
from littlefold.web.asked import understand
from littlefold.web.readings import slips

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date

    from littlefold.draft.model import Draft
    from littlefold.recipe.recipe import Recipe
    from littlefold.store import Card, PastDraft
    from littlefold.web.asked import Asked
    from littlefold.web.readings import Slip
    from littlefold.web.room import Room

Choices = tuple[tuple[str, float | str], ...]

FIELD = "choose-"
"""What the field of a choice begins with, so that no name in a recipe is taken for a word of ours."""
LONGEST_WORDS = 10_000


@dataclass(frozen=True, slots=True)
class Tried:
    """A fitting as it was typed, read.

    Attributes:
        showed: What it showed.
        left: What is left in the hem, as typed.
        left_mm: The same, read [mm]; None where nothing was typed.
        changed: The choices that are otherwise than in the draft.
        slips: The choices as the form shows them.
        complaint: What cannot be kept so; empty where all can.
    """

    showed: str
    left: str
    left_mm: float | None
    changed: Choices
    slips: tuple[Slip, ...]
    complaint: str


def read_fitting(room: Room, draft: PastDraft, drawn: Draft, fields: Mapping[str, str]) -> Tried:
    """What was typed after a fitting, beside the draft as it is drawn again."""
    showed, left = fields.get("showed", ""), fields.get("left", "")
    mm = read_length(left, room.preferences.units) if left.strip() else None
    recipe = recipe_of(draft)
    options = {slip.name: slip.value for slip in slips(_asked(room, recipe, {}), drawn) if slip.options}
    typed = {name.removeprefix(FIELD): text for name, text in fields.items() if name.startswith(FIELD)}
    wanted = {name: text for name, text in typed.items() if text.strip() and options.get(name) != text}
    asked = _asked(room, recipe, wanted)
    refused = [problem.message for name, problem in asked.refused if name in wanted or not name]
    changed = tuple((name, to) for name, to in asked.wish.choices if drawn.choices.get(name) != to)
    missing = "" if showed.strip() or not fields else "Say what it showed."
    complaint = mm.message if isinstance(mm, Problem) else next(iter(refused), missing)
    return Tried(
        showed, left, None if isinstance(mm, Problem) else mm, changed, slips(asked, drawn), complaint
    )


def _asked(room: Room, recipe: Recipe, wanted: Mapping[str, str]) -> Asked:
    return understand(recipe, {**wanted, "bare-numbers": room.preferences.units}, room.preferences)


def changed_draft(room: Room, draft: PastDraft, tried: Tried, number: int) -> PastDraft | Problem | None:
    """The draft anew with the changed choices, for the body as it was measured then.

    Returns:
        None where no choice was changed; a problem where it cannot be cut with these choices.
    """
    if not tried.changed:
        return None
    wish = replace(wish_again(draft), choices=settings(dict(draft.choices) | dict(tried.changed)))
    outcome = room.fulfil(wish)
    grave = next((one for one in outcome.problems if one.severity is Severity.ERROR), None)
    return grave or past_draft(wish, outcome, room.today(), number, draft.units)


def with_tried(card: Card, number: int, tried: Tried, anew: PastDraft | None, day: date) -> Card:
    """The card with the fitting on it, and the changed draft where there is one."""
    one = Fitting(day, tried.showed.strip()[:LONGEST_WORDS])
    fitted = card.with_fitting(number, one, tried.left_mm)
    return fitted if anew is None else fitted.with_draft(anew)
