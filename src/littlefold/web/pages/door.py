"""The page at the door of a shared workroom: say a passphrase, come in, go out."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Annotated
from urllib.parse import urlencode

from fastapi import APIRouter, Form
from fastapi.responses import HTMLResponse, PlainTextResponse, RedirectResponse, Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.web.door import AT_DOOR, Refused, is_a_page
from littlefold.web.guard import HARMLESS
from littlefold.web.rendering import render
from littlefold.web.sessions import COOKIE
from littlefold.web.typed import typed

if TYPE_CHECKING:
    from littlefold.web.door import Doorkeeper

METHODS = (*HARMLESS, "POST", "PUT", "PATCH", "DELETE")
SEE_OTHER = 303
NOT_IN = 401
TOO_MANY = 429
LONGEST_LINK = 6000


def door_routes(keeper: Doorkeeper) -> APIRouter:
    """The routes of the door; whatever else is asked for from outside leads to it."""
    router = APIRouter()

    @router.get(AT_DOOR)
    def stand(request: Request, to: str = "/") -> HTMLResponse:
        return _page(keeper, request, to=to)

    @router.post(AT_DOOR)
    def come_in(
        request: Request, passphrase: Annotated[str, Form()] = "", to: Annotated[str, Form()] = "/"
    ) -> Response:
        address = request.client.host if request.client else ""
        found = keeper.admit(passphrase, address)
        if isinstance(found, Refused):
            return _refused(keeper, request, to, found)
        answer = RedirectResponse(within(to), SEE_OTHER)
        answer.set_cookie(COOKIE, found, httponly=True, samesite="lax")
        return answer

    @router.post(f"{AT_DOOR}/out")
    def go_out(request: Request) -> Response:
        keeper.let_out(request.cookies.get(COOKIE, ""))
        answer = RedirectResponse(AT_DOOR, SEE_OTHER)
        answer.delete_cookie(COOKIE, httponly=True, samesite="lax")
        return answer

    @router.api_route("/{anything:path}", methods=list(METHODS), include_in_schema=False)
    def closed(request: Request, anything: str) -> Response:
        del anything
        return _sent_to_door(keeper, request)

    return router


def within(link: str) -> str:
    """A link within the workroom; the first page for any other."""
    whole = link[:LONGEST_LINK]
    is_ours = whole.startswith("/") and not whole.startswith(("//", "/\\", AT_DOOR))
    return whole if is_ours and whole.isprintable() else "/"


def _sent_to_door(keeper: Doorkeeper, request: Request) -> Response:
    """A page leads to the door and back; for all else the way in is told."""
    if not is_a_page(request.headers):
        return PlainTextResponse("Come in first: say a passphrase at /door.", NOT_IN)
    if request.method in HARMLESS:
        wanted = f"{request.url.path}?{request.url.query}".rstrip("?")
        return RedirectResponse(f"{AT_DOOR}?{urlencode({'to': wanted})}", SEE_OTHER)
    sentence = (
        "Your time in the workroom is over, so nothing was changed. Come in again, and send it once more."
    )
    return _page(keeper, request, sentence, NOT_IN)


def _refused(keeper: Doorkeeper, request: Request, to: str, found: Refused) -> Response:
    answer = _page(keeper, request, found.sentence, TOO_MANY if found.wait else NOT_IN, to)
    if found.wait:
        answer.headers["retry-after"] = str(int(found.wait) + 1)
    return answer


def _page(
    keeper: Doorkeeper, request: Request, sentence: str = "", status: int = 200, to: str = "/"
) -> HTMLResponse:
    visitor = keeper.visitor(request.cookies.get(COOKIE, ""))
    told = [(name, text) for name, text in typed(request) if name != "to"]
    room = replace(keeper.room, visitor=visitor)
    return render(room, "door.html", status, sentence=sentence, to=within(to), typed=told)
