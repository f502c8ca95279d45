"""All garments, to look at and to search."""

from __future__ import annotations

import logging
from dataclasses import dataclass
from math import inf
from time import monotonic
from typing import TYPE_CHECKING, Any

from fastapi import APIRouter
from fastapi.responses import HTMLResponse  # noqa: TC002 - FastAPI reads the signature
from starlette.background import BackgroundTask

from littlefold.body.tape import read_length
from littlefold.problem import Problem
from littlefold.recipe.shelf import shipped_names
from littlefold.web.garment import garment
from littlefold.web.patience import TooLongError
from littlefold.web.reckoned import reckoned
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.recipe.recipe import Recipe
    from littlefold.web.room import Room

Json = dict[str, Any]

LOG = logging.getLogger(__name__)
LONGEST = 60
WAIT = 0.7
"""So long a page waits for what its garments take; the rest is told the next time [s]."""
NOT_YET: Json = {"pieces": [], "cloth": "", "also": "", "size": None}


@dataclass(frozen=True, slots=True)
class Sought:
    """What is looked for among the garments, as it was typed."""

    look: str
    tall: str
    kind: str


def routes(room: Room) -> APIRouter:
    """The routes of the garments."""
    router = APIRouter()
    takes = _Takes(room)

    @router.get("/garments")
    def garments(look: str = "", tall: str = "", kind: str = "") -> HTMLResponse:
        sought = Sought(look[:LONGEST].strip(), tall[:LONGEST].strip(), kind[:LONGEST])
        height = _height(sought.tall, room)
        until = monotonic() + WAIT
        found = [card | takes.of(recipe, until) for recipe, card in _found(room, sought, height)]
        kinds = sorted({one["kind"] for recipe in room.recipes() if (one := garment(recipe))["kind"]})
        complaint = height.message if isinstance(height, Problem) else ""
        told: Json = {"garments": found, "sought": sought, "kinds": kinds, "complaint": complaint}
        page = render(room, "garments.html", **told)
        page.background = BackgroundTask(takes.work_out_all)
        return page

    @router.get("/garments.json")
    def garments_as_data(look: str = "", tall: str = "", kind: str = "") -> list[Json]:
        sought = Sought(look[:LONGEST].strip(), tall[:LONGEST].strip(), kind[:LONGEST])
        return [card for _, card in _found(room, sought, _height(sought.tall, room))]

    return router


class _Takes:
    """What each garment takes, worked out once for each text of a recipe."""

    def __init__(self, room: Room) -> None:
        self._room = room
        self._known: dict[tuple[str, str, str], Json] = {}

    def of(self, recipe: Recipe, until: float = inf) -> Json:
        """What it takes; nothing where that is not known yet and the time [s on the stopwatch] is over.

        A recipe of her own may take any time, so no page waits for it.
        """
        key = (recipe.name, recipe.fingerprint, self._room.preferences.units)
        if key not in self._known:
            may_wait = recipe.file in shipped_names() and monotonic() <= until
            if not may_wait and until < inf:
                return NOT_YET
            self._known[key] = self._worked_out(recipe)
        return self._known[key]

    def _worked_out(self, recipe: Recipe) -> Json:
        """What it takes; where that cannot be worked out, nothing, and the other garments are shown all the same."""
        try:
            return reckoned(self._room, recipe)
        except TooLongError:
            return NOT_YET
        except Exception:
            LOG.exception("What %s takes cannot be worked out", recipe.name)
            return NOT_YET

    def work_out_all(self) -> None:
        """Works out what is not known yet, beside the pages."""
        for recipe in self._room.recipes():
            self.of(recipe)


def _found(room: Room, sought: Sought, height: float | Problem | None) -> list[tuple[Recipe, Json]]:
    cards = [(recipe, garment(recipe)) for recipe in room.recipes()]
    tall = None if isinstance(height, Problem) else height
    return [
        (recipe, card)
        for recipe, card in cards
        if _says(card, sought.look.lower()) and _suits(card, tall) and sought.kind in ("", card["kind"])
    ]


def _says(card: Json, look: str) -> bool:
    told = " ".join((card["name"], card["title"], card["kind"], card["source"], *card["measures"]))
    return all(word in told.lower() for word in look.split())


def _suits(card: Json, tall: float | None) -> bool:
    return tall is None or card["low_cm"] * 10 <= tall <= card["high_cm"] * 10


def _height(text: str, room: Room) -> float | Problem | None:
    """A height [mm]; None where none was written."""
    return read_length(text, room.preferences.units) if text else None
