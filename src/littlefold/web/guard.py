"""What stands at the door of every request: who may ask, from where, and what a page may load.

Only requests that name this machine are answered (a page elsewhere could else reach the workroom by a name of its
own that leads here): loopback, and where the workroom is shared the address at which the request came in, and the
names that the machine has.  What changes something is refused when it comes from another site, by the headers that
browsers set themselves and pages cannot: Sec-Fetch-Site, or Origin where that is missing.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse

from littlefold.web.belongings import LARGEST_FILE

if TYPE_CHECKING:
    from starlette.types import ASGIApp, Message, Receive, Scope, Send

HOSTS: Final = frozenset({"127.0.0.1", "localhost", "[::1]"})
HARMLESS: Final = frozenset({"GET", "HEAD", "OPTIONS"})
LARGEST_FORM: Final = 2_000_000
"""Bytes that a form may have: a recipe of the greatest length, every letter of it written as nine signs."""

LARGEST: Final = {"/settings/restore": LARGEST_FILE + 100_000}
"""Bytes that may be sent to a path, where they are more: a backup, and what a form puts round it."""

PAGE_RULES: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
    "form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
DRAWING_RULES: Final = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'"
"""A drawing opened by itself carries its own style and can do nothing else."""


class Guard:
    """Lets a request through to the pages, or refuses it; sets the headers of what goes out."""

    def __init__(self, app: ASGIApp, *, names: frozenset[str] = frozenset(), is_shared: bool = False) -> None:
        self.app = app
        self.names = HOSTS | names
        self.is_shared = is_shared

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answers one request."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        refused = _refusal(scope, Headers(scope=scope), self._names(scope))
        if refused is not None:
            await PlainTextResponse(refused[1], refused[0])(scope, receive, send)
            return
        await self.app(scope, receive, _with_rules(send))

    def _names(self, scope: Scope) -> frozenset[str]:
        """What a request may call this machine."""
        came_in_at = scope.get("server")
        if not self.is_shared or came_in_at is None:
            return self.names
        return self.names | {came_in_at[0], f"[{came_in_at[0]}]"}


def _refusal(scope: Scope, headers: Headers, names: frozenset[str]) -> tuple[int, str] | None:
    """Status and sentence of a refusal; None where the request may pass."""
    host = headers.get("host", "")
    if host_name(host) not in names:
        return (
            421,
            "The workroom answers only to 127.0.0.1, localhost, and where it is shared to its own addresses.",
        )
    if scope["method"] in HARMLESS:
        return None
    if not _from_here(host, headers):
        return 403, "This was sent from another site, so nothing was changed."
    length = headers.get("content-length", "0")  # nothing is sent where no length is said (RFC 9112, 6.3)
    if not length.isdigit() or "transfer-encoding" in headers:
        return 411, "The length of what was sent is missing."
    most = LARGEST.get(scope["path"], LARGEST_FORM)
    return (413, "This is too much at once.") if int(length) > most else None


def host_name(host: str) -> str:
    """The name in a Host header, without its port."""
    if host.startswith("["):
        name, end, _ = host.partition("]")
        return name.lower() + end
    return host.partition(":")[0].lower()


def _from_here(host: str, headers: Headers) -> bool:
    site = headers.get("sec-fetch-site")
    if site is not None:
        return site in {"same-origin", "none"}
    origin = headers.get("origin")
    return origin is None or urlsplit(origin).netloc == host


def _with_rules(send: Send) -> Send:
    async def sent(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            is_drawing = headers.get("content-type", "").startswith("image/svg")
            headers["content-security-policy"] = DRAWING_RULES if is_drawing else PAGE_RULES
            headers["x-content-type-options"] = "nosniff"
            headers["referrer-policy"] = "same-origin"
            headers["cross-origin-resource-policy"] = "same-origin"
            headers.setdefault("cache-control", "no-cache")
        await send(message)

    return sent
