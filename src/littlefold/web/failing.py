"""A page that fails says so in a sentence, and shows what was typed."""

from __future__ import annotations

import logging
from typing import TYPE_CHECKING

from fastapi.exceptions import RequestValidationError
from starlette.exceptions import HTTPException
from starlette.requests import Request

from littlefold.web.patience import TooLongError
from littlefold.web.rendering import render
from littlefold.web.typed import remembering, typed

if TYPE_CHECKING:
    from fastapi import FastAPI
    from starlette.responses import Response
    from starlette.types import ASGIApp, Receive, Scope, Send

    from littlefold.web.room import Room

LOG = logging.getLogger(__name__)
NOT_UNDERSTOOD = 422
SENTENCES = {
    400: "What was sent could not be read.",
    404: "There is no such page here. The link may be old, or a recipe may have been renamed.",
    405: "This page cannot be asked in that way.",
}


def say_failures(app: FastAPI, room: Room) -> None:
    """Answers with a sentence what an application refuses."""

    def said(request: Request, status: int, sentence: str) -> Response:
        return render(room, "sentence.html", status, sentence=sentence, typed=typed(request))

    @app.exception_handler(HTTPException)
    def refused(request: Request, fault: HTTPException) -> Response:
        return said(request, fault.status_code, SENTENCES.get(fault.status_code, str(fault.detail)))

    @app.exception_handler(RequestValidationError)
    def not_understood(request: Request, fault: RequestValidationError) -> Response:
        fields = dict.fromkeys(str(one["loc"][-1]).replace("_", " ") for one in fault.errors())
        sentence = f"This is missing, or not one of the words known here: {', '.join(fields)}."
        return said(request, NOT_UNDERSTOOD, f"{sentence} Nothing was changed.")

    @app.exception_handler(TooLongError)
    def too_long(request: Request, _: TooLongError) -> Response:
        sentence = "This recipe takes too long to draw, so the workroom stopped drawing it. Make it shorter or simpler."
        return said(request, 503, sentence)


class Failing:
    """Answers with a sentence where a page fails by our own mistake, and writes the mistake into the log."""

    def __init__(self, app: ASGIApp, room: Room) -> None:
        self.app = app
        self.room = room

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answers one request."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        receive = await remembering(scope, receive)
        try:
            await self.app(scope, receive, send)
        except Exception:
            LOG.exception("%s %s", scope["method"], scope["path"])
            sentence = "This page could not be made. The fault is the workroom's, not yours."
            told = typed(Request(scope))
            await render(self.room, "sentence.html", 500, sentence=sentence, typed=told)(scope, receive, send)
