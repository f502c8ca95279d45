"""The workroom as an application: its pages, its door, and what is said when a page fails."""

from __future__ import annotations

import logging
from importlib.resources import files
from typing import TYPE_CHECKING

from fastapi import FastAPI
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.staticfiles import StaticFiles

from littlefold.web.guard import Guard
from littlefold.web.pages import FAMILIES
from littlefold.web.patience import TooLongError
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from starlette.responses import Response
    from starlette.types import ASGIApp, Receive, Scope, Send

    from littlefold.web.room import Room

LOG = logging.getLogger(__name__)
SENTENCES = {
    404: "There is no such page here. The link may be old, or a recipe may have been renamed.",
    405: "This page cannot be asked in that way.",
}


def make_app(room: Room) -> FastAPI:
    """The application of one workroom."""
    app = FastAPI(title="Littlefold workroom", docs_url=None, redoc_url=None)
    for family in FAMILIES:
        app.include_router(family(room))
    app.mount("/static", StaticFiles(directory=str(files("littlefold.web").joinpath("static"))), "static")
    _say_failures(app, room)
    app.add_middleware(Failing, room=room)
    app.add_middleware(Guard)
    return app


def _say_failures(app: FastAPI, room: Room) -> None:
    @app.exception_handler(HTTPException)
    def refused(request: Request, fault: HTTPException) -> Response:
        sentence = SENTENCES.get(fault.status_code, str(fault.detail))
        return render(room, "sentence.html", fault.status_code, sentence=sentence, typed=_typed(request))

    @app.exception_handler(TooLongError)
    def too_long(request: Request, _: TooLongError) -> Response:
        sentence = "This recipe takes too long to draw, so the workroom stopped drawing it. Make it shorter or simpler."
        return render(room, "sentence.html", 503, sentence=sentence, typed=_typed(request))


class Failing:
    """Answers with a sentence where a page fails by our own mistake, and writes the mistake into the log."""

    def __init__(self, app: ASGIApp, room: Room) -> None:
        self.app = app
        self.room = room

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answers one request."""
        try:
            await self.app(scope, receive, send)
        except Exception:
            if scope["type"] != "http":
                raise
            LOG.exception("%s %s", scope["method"], scope["path"])
            sentence = "This page could not be made. The fault is the workroom's, not yours."
            typed = _typed(Request(scope))
            await render(self.room, "sentence.html", 500, sentence=sentence, typed=typed)(
                scope, receive, send
            )


def _typed(request: Request) -> list[tuple[str, str]]:
    """What stood in the link, so that nothing typed is lost."""
    return [(name, value) for name, value in request.query_params.items() if value]
