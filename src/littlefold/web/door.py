"""The door of a shared workroom: who stands before it, and into which of its rooms that leads.

Everything is asked for at the door, also on the machine itself: pupils may sit at it.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Final

from starlette.datastructures import Headers, MutableHeaders
from starlette.requests import Request
from starlette.routing import Match

from littlefold.web.keys import read_keys
from littlefold.web.passphrase import Recognising
from littlefold.web.rendering import render
from littlefold.web.sessions import COOKIE
from littlefold.web.typed import typed
from littlefold.web.visitor import Visitor

if TYPE_CHECKING:
    from fastapi import FastAPI
    from starlette.types import ASGIApp, Message, Receive, Scope, Send

    from littlefold.web.keys import Keys
    from littlefold.web.room import Room
    from littlefold.web.sessions import Sessions
    from littlefold.web.tries import Tries

AT_DOOR: Final = "/door"
NOT_KEPT: Final = ("/child", "/settings")
"""Pages under these are left in no browser: another hand may hold the tablet next."""
CLOSED: Final = 403


@dataclass(frozen=True, slots=True)
class Refused:
    """Why nobody came in.

    Attributes:
        sentence: To be shown.
        wait: How long the next try has to wait [s]; 0 where it was only wrong.
    """

    sentence: str
    wait: float = 0.0


@dataclass(frozen=True, slots=True)
class Doorkeeper:
    """Knows who may come in.

    Attributes:
        room: The workroom, as one sees it from outside.
        sessions: Who is in.
        tries: Who tried.
        known: Which passphrases were right.
    """

    room: Room
    sessions: Sessions
    tries: Tries
    known: Recognising = field(default_factory=Recognising)

    @property
    def keys(self) -> Keys | None:
        """The keys as they are kept now."""
        return read_keys(self.room.folder)

    def visitor(self, cookie: str) -> Visitor:
        """Who shows a cookie."""
        keys = self.keys
        return Visitor.NOBODY if keys is None or not cookie else self.sessions.visitor(keys, cookie)

    def admit(self, phrase: str, address: str) -> str | Refused:
        """The cookie for a right passphrase, or why there is none.

        Args:
            phrase: What was said.
            address: From where.
        """
        keys = self.keys
        if keys is None:
            return Refused("No passphrases are set here, so nobody can come in. The teacher sets them.")
        wait = self.tries.enter(address)
        if wait > 0:
            return Refused(f"Too many wrong tries. Wait {_said(wait)}, then try again.", wait)
        visitor = self._whose(phrase, keys)
        if visitor is Visitor.NOBODY:
            return Refused("This is not a passphrase of this workroom. Mind small and capital letters.")
        self.tries.take_back(address)
        if visitor is Visitor.TEACHER:
            self.tries.forgive(address)
        return self.sessions.begin(keys, visitor)

    def _whose(self, phrase: str, keys: Keys) -> Visitor:
        if self.known.matches(phrase, keys.pupils):
            return Visitor.PUPIL
        return Visitor.TEACHER if self.known.matches(phrase, keys.teacher) else Visitor.NOBODY

    def let_out(self, cookie: str) -> None:
        """Ends the session of a cookie."""
        keys = self.keys
        if keys is not None:
            self.sessions.end(keys, cookie)


def _said(seconds: float) -> str:
    whole = int(seconds) + 1
    if whole == 1:
        return "a second"
    return f"{whole} seconds" if whole <= 90 else f"{-(-whole // 60)} minutes"  # noqa: PLR2004 - a minute and a half


class Door:
    """Leads each request to the application of whoever sends it."""

    def __init__(self, keeper: Doorkeeper, *, outside: ASGIApp, teacher: FastAPI, pupils: FastAPI) -> None:
        self.keeper = keeper
        self.outside = outside
        self.teacher = teacher
        self.pupils = pupils

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answers one request."""
        if scope["type"] == "lifespan":
            await self.teacher(scope, receive, send)
            return
        if scope["type"] != "http":  # there are no other pages; whoever asks for one stays outside
            await self.outside(scope, receive, send)
            return
        app, send = self._way_in(scope, send)
        await app(scope, receive, send)

    def _way_in(self, scope: Scope, send: Send) -> tuple[ASGIApp, Send]:
        visitor = self.keeper.visitor(Request(scope).cookies.get(COOKIE, ""))
        if visitor is Visitor.NOBODY or (scope["path"] + "/").startswith(AT_DOOR + "/"):
            return self.outside, send
        if visitor is Visitor.TEACHER:
            return self.teacher, _kept_nowhere(send) if scope["path"].startswith(NOT_KEPT) else send
        closed = not _has(self.pupils, scope) and _has(self.teacher, scope)
        return (self._closed if closed else self.pupils), send

    async def _closed(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Says to a pupil that this is the teacher's."""
        sentence = "The class's passphrase does not open this page: it is the teacher's."
        room = replace(self.keeper.room, visitor=Visitor.PUPIL)
        told = typed(Request(scope))
        answer = render(room, "door.html", CLOSED, sentence=sentence, to=scope["path"], typed=told)
        await answer(scope, receive, send)


def _has(app: FastAPI, scope: Scope) -> bool:
    return any(route.matches(scope)[0] is Match.FULL for route in app.routes)


def _kept_nowhere(send: Send) -> Send:
    async def sent(message: Message) -> None:
        if message["type"] == "http.response.start":
            MutableHeaders(scope=message)["cache-control"] = "no-store"
        await send(message)

    return sent


def is_a_page(headers: Headers) -> bool:
    """Whether a browser asks for a page to show, and not for a drawing or for data."""
    return "text/html" in headers.get("accept", "")
