"""The card box of the workroom: opened when the first card is asked for, closed when the workroom closes."""

from __future__ import annotations

import os
from contextlib import asynccontextmanager
from datetime import UTC, datetime
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING, Annotated, Any

from fastapi import Form

from littlefold.problem import Problem
from littlefold.store import CardBox, address_of, open_box
from littlefold.store.address import FOLDER_SETTING
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

    from fastapi.responses import HTMLResponse

    from littlefold.store import Card
    from littlefold.web.room import Room

Field = Annotated[str, Form()]
NOT_UNDERSTOOD = 422
UNKNOWN = 404
SHUT = 503


class Cards:
    """The cards of one workroom; a box that cannot be opened is tried again with the next request."""

    def __init__(self, room: Room) -> None:
        self.room = room
        self._box: CardBox | None = None
        self._turn = Lock()

    def box(self) -> CardBox | Problem:
        """The open box, or why it cannot be opened."""
        with self._turn:
            if self._box is None:
                opened = self._opened()
                if isinstance(opened, Problem):
                    return opened
                self._box = opened
            return self._box

    def _opened(self) -> CardBox | Problem:
        address = address_of({**os.environ, FOLDER_SETTING: str(self.room.folder)}, Path.home())
        return address if isinstance(address, Problem) else open_box(address, datetime.now(tz=UTC))

    def card(self, name: str) -> Card | Problem:
        """The card of a child."""
        box = self.box()
        return (
            box if isinstance(box, Problem) else box.card(name.replace("\0", ""))
        )  # no database holds such a sign

    def close(self) -> None:
        """Closes the box; it is opened again when a card is asked for."""
        with self._turn:
            if self._box is not None:
                self._box.close()
            self._box = None

    @asynccontextmanager
    async def while_open(self, _: Any) -> AsyncIterator[None]:
        """Closes the box when the workroom closes."""
        yield
        self.close()


def refusal(room: Room, problem: Problem, typed: dict[str, str] | None = None) -> HTMLResponse:
    """The page that says why there is no card to show, and keeps what was typed."""
    status = {"child-not-known": UNKNOWN, "draft-not-known": UNKNOWN, "card-box-not-opened": SHUT}
    kept = [(name, text) for name, text in (typed or {}).items() if text]
    return render(
        room,
        "child_refused.html",
        status.get(problem.code, NOT_UNDERSTOOD),
        sentence=problem.message,
        typed=kept,
    )
