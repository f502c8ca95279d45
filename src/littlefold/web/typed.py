"""What was typed in a link or a form, kept beside a request so that a page which fails can show it again."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final
from urllib.parse import parse_qsl

from starlette.datastructures import Headers

if TYPE_CHECKING:
    from starlette.requests import Request
    from starlette.types import Message, Receive, Scope

FORM: Final = "application/x-www-form-urlencoded"
KEPT: Final = "littlefold.form"
MOST_FIELDS: Final = 200
UNSAID: Final = ("passphrase",)
"""A field with this in its name is never shown again."""


async def remembering(scope: Scope, receive: Receive) -> Receive:
    """Keeps the form that a request brings; gives the way to receive it again.

    Only what a plain form sends is kept: an upload lies on the maker's disk already.  The guard has bounded its size.
    """
    if not Headers(scope=scope).get("content-type", "").startswith(FORM):
        return receive
    heard: list[Message] = []
    while not heard or (heard[-1]["type"] == "http.request" and heard[-1].get("more_body")):
        heard.append(await receive())
    scope[KEPT] = b"".join(message.get("body", b"") for message in heard)
    waiting = iter(heard)

    async def again() -> Message:
        return next(waiting, None) or await receive()

    return again


def typed(request: Request) -> list[tuple[str, str]]:
    """What stood in the link and in the form."""
    form = parse_qsl(request.scope.get(KEPT, b"").decode(errors="replace"), max_num_fields=None)
    fields = (*request.query_params.items(), *form[:MOST_FIELDS])
    return [(name, text) for name, text in fields if text and not any(word in name for word in UNSAID)]
