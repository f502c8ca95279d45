"""The card box as the pages see it, and the page that says why there is no card to show."""

from __future__ import annotations

from contextlib import asynccontextmanager
from typing import TYPE_CHECKING, Annotated, Any

from fastapi import Form

from littlefold.problem import Problem
from littlefold.store.sample import is_new
from littlefold.web.pages.sample_room import lay_out_sample
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from fastapi.responses import HTMLResponse

    from littlefold.store import Card, CardBox
    from littlefold.web.room import Room

Field = Annotated[str, Form()]
NOT_UNDERSTOOD = 422
UNKNOWN = 404
SHUT = 503


class Cards:
    """The cards of one workroom, as its pages ask for them."""

    def __init__(self, room: Room) -> None:
        self.room = room

    def box(self) -> CardBox | Problem:
        """The open box, or why it cannot be opened; a new one has the sample in it where the workroom brings one."""
        return self.room.keeper.box(self.room.folder, self._welcome)

    def _welcome(self, box: CardBox) -> None:
        if self.room.with_sample and is_new(box):
            lay_out_sample(self.room, box)

    def card(self, name: str) -> Card | Problem:
        """The card of a child."""
        box = self.box()
        return (
            box if isinstance(box, Problem) else box.card(name.replace("\0", ""))
        )  # no database holds such a sign

    @asynccontextmanager
    async def while_open(self, _: Any) -> AsyncIterator[None]:
        """Closes the box when the workroom closes; what is still being made of cards stops."""
        yield
        self.room.making.stop_all()
        self.room.keeper.close()


def refusal(room: Room, problem: Problem, typed: dict[str, str] | None = None) -> HTMLResponse:
    """The page that says why there is no card to show, and keeps what was typed."""
    status = {
        "child-not-known": UNKNOWN,
        "draft-not-known": UNKNOWN,
        "class-not-known": UNKNOWN,
        "card-box-not-opened": SHUT,
    }
    kept = [(name, text) for name, text in (typed or {}).items() if text]
    return render(
        room,
        "child_refused.html",
        status.get(problem.code, NOT_UNDERSTOOD),
        sentence=problem.message,
        typed=kept,
    )
