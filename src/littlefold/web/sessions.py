"""Who has come in stays in for a day's work, by a cookie that only this workroom can have signed."""

from __future__ import annotations

import hashlib
import secrets
from threading import Lock
from typing import TYPE_CHECKING, Any, Final

from itsdangerous import BadData, TimestampSigner, URLSafeTimedSerializer

from littlefold.web.visitor import Visitor

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.web.keys import Keys

COOKIE: Final = "littlefold"
LASTS: Final = 12 * 3600
"""How long a session lasts: a day's work [s]."""
MOST_ENDED: Final = 5000
"""So many sessions that were ended are remembered, the newest; each is over by itself within a day's work."""


class Sessions:
    """The sessions of one workroom.

    A cookie holds who came in, a mark of the passphrase it was done with, and a number of its own.  Another
    passphrase has another mark, so changing it ends every session that was begun with the old one.
    """

    def __init__(self, clock: Callable[[], float]) -> None:
        self.clock = clock
        self._ended: dict[str, None] = {}
        self._turn = Lock()

    def begin(self, keys: Keys, visitor: Visitor) -> str:
        """The cookie of a new session."""
        number = secrets.token_urlsafe(12)
        return str(self._signer(keys).dumps([visitor.value, _mark(keys, visitor), number]))

    def visitor(self, keys: Keys, cookie: str) -> Visitor:
        """Who shows a cookie; nobody where it is not ours, too old, or ended."""
        found = self._read(keys, cookie)
        if found is None:
            return Visitor.NOBODY
        visitor, mark, number = found
        known = visitor in (Visitor.TEACHER, Visitor.PUPIL) and number not in self._ended
        return Visitor(visitor) if known and mark == _mark(keys, Visitor(visitor)) else Visitor.NOBODY

    def end(self, keys: Keys, cookie: str) -> None:
        """Ends a session; its cookie is worth nothing from now on."""
        found = self._read(keys, cookie)
        if found is not None:
            with self._turn:
                self._ended[found[2]] = None
                while len(self._ended) > MOST_ENDED:
                    del self._ended[next(iter(self._ended))]

    def _read(self, keys: Keys, cookie: str) -> tuple[str, str, str] | None:
        try:
            visitor, mark, number = self._signer(keys).loads(cookie, max_age=LASTS)
        except (BadData, ValueError):
            return None
        return str(visitor), str(mark), str(number)

    def _signer(self, keys: Keys) -> URLSafeTimedSerializer:
        clock = self.clock

        class ByOurClock(TimestampSigner):
            def get_timestamp(self) -> int:
                return int(clock())

        ways: dict[str, Any] = {"digest_method": hashlib.sha256}
        return URLSafeTimedSerializer(keys.secret, salt="door", signer=ByOurClock, signer_kwargs=ways)


def _mark(keys: Keys, visitor: Visitor) -> str:
    kept = keys.teacher if visitor is Visitor.TEACHER else keys.pupils
    return hashlib.sha256(kept.salt + kept.digest).hexdigest()[:16]
