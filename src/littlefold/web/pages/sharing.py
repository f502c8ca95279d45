"""The passphrases of a shared workroom, set anew by the teacher at the machine on which it stands."""

from __future__ import annotations

from ipaddress import ip_address
from typing import TYPE_CHECKING, Annotated, Any

from fastapi import APIRouter, Form
from fastapi.responses import RedirectResponse, Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.web.guard import HOSTS, host_name
from littlefold.web.keys import keep_keys, make_keys, read_keys, refusals
from littlefold.web.passphrase import CLASS_LEAST, TEACHER_LEAST
from littlefold.web.visitor import Visitor

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.web.room import Room

Json = dict[str, Any]

SEE_OTHER = 303
NOT_TWICE = "What was typed once more is not the same. Type both passphrases anew."
NOT_HERE = "Passphrases are changed only at the machine on which the workroom stands. Nothing was changed."


def routes(room: Room, page: Callable[..., Response]) -> APIRouter:
    """The routes of sharing; `page` makes the page of the settings with a complaint on it."""
    router = APIRouter()

    @router.post("/settings/passphrases")
    def change(
        request: Request,
        teacher_passphrase: Annotated[str, Form()] = "",
        teacher_passphrase_again: Annotated[str, Form()] = "",
        class_passphrase: Annotated[str, Form()] = "",
        class_passphrase_again: Annotated[str, Form()] = "",
    ) -> Response:
        refused = " ".join(one.message for one in refusals(teacher_passphrase, class_passphrase))
        pairs = ((teacher_passphrase, teacher_passphrase_again), (class_passphrase, class_passphrase_again))
        is_twice = all(first == second for first, second in pairs)
        complaint = NOT_HERE if not is_here(room, request) else refused or ("" if is_twice else NOT_TWICE)
        if complaint:
            return page(request, complaint)
        keep_keys(room.folder, make_keys(teacher_passphrase, class_passphrase))
        return _see("set")

    @router.post("/settings/all-out")
    def all_out(request: Request) -> Response:
        keys = read_keys(room.folder)
        if not is_here(room, request) or keys is None:
            return page(request, NOT_HERE)
        keep_keys(room.folder, keys.all_out())
        return _see("all-out")

    return router


def told(room: Room, request: Request) -> Json:
    """What the page of the settings says of sharing."""
    return {
        "is_here": is_here(room, request),
        "has_keys": read_keys(room.folder) is not None,
        "passphrases": request.query_params.get("passphrases", ""),
        "teacher_least": TEACHER_LEAST,
        "class_least": CLASS_LEAST,
    }


def is_here(room: Room, request: Request) -> bool:
    """Whether somebody sits at the machine itself: over the loopback, by a name of the loopback."""
    if room.visitor is Visitor.MAKER:
        return True  # nobody else is answered
    address = request.client.host if request.client else ""
    try:
        is_loopback = ip_address(address).is_loopback
    except ValueError:
        is_loopback = False
    return is_loopback and host_name(request.headers.get("host", "")) in HOSTS


def _see(done: str) -> Response:
    return RedirectResponse(f"/settings?passphrases={done}#sharing", SEE_OTHER)
