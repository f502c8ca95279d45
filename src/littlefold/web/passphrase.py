"""Passphrases: which are refused, and how one is kept so that it can be known again but not read.

They are hashed with scrypt (RFC 7914) at the cost that the OWASP Password Storage Cheat Sheet gives as the least for
it: N = 2**17, r = 8, p = 1, which takes 128 MiB for about half a second.  How long a passphrase must be and how it is
written before it is hashed (NFKC) follows NIST SP 800-63B: 15 signs where nothing else is asked for (revision 4,
3.1.1.2), and for the class, whose passphrase opens no child's card, the 8 of revision 3 (5.1.1.2).
"""

from __future__ import annotations

import hashlib
import hmac
import secrets
import unicodedata
from dataclasses import dataclass
from threading import Lock
from typing import Final

from littlefold.problem import Problem

TEACHER_LEAST: Final = 15
CLASS_LEAST: Final = 8
LONGEST: Final = 200
FEWEST_SIGNS: Final = 5
"""So many different signs a passphrase has at least: "aaaaaaaa" is none (common practice, no source)."""
SALT_BYTES: Final = 16
DIGEST_BYTES: Final = 32
EASILY_GUESSED: Final = (
    *("littlefold", "password", "passphrase", "passwort", "teacher", "class", "letmein", "welcome"),
    *(
        "1234567890",
        "123456789",
        "12345678",
        "87654321",
        "abcdefgh",
        "qwertyuiop",
        "qwertyui",
        "qwerty",
        "1234",
    ),
)
"""What is tried first; a passphrase that is little more than these is refused (from memory, no source)."""

MOST_REMEMBERED: Final = 4
"""Two passphrases, and two that were changed."""

_ONE_AT_A_TIME = Lock()  # so that many tries at once do not take 128 MiB each


@dataclass(frozen=True, slots=True)
class Cost:
    """How dear one try is: scrypt's N, r and p."""

    n: int = 2**17
    r: int = 8
    p: int = 1

    @property
    def memory(self) -> int:
        """What one try takes, with room for the rest [bytes]."""
        return 128 * self.n * self.r + 128 * self.r * self.p + 2**20


USUAL_COST: Final = Cost()


@dataclass(frozen=True, slots=True)
class Hashed:
    """A passphrase as it is kept."""

    salt: bytes
    digest: bytes
    cost: Cost = USUAL_COST


def plain(phrase: str) -> str:
    """A passphrase as it is hashed: without spaces about it, whichever way its letters were put together."""
    return unicodedata.normalize("NFKC", phrase).strip()


def hashed(phrase: str, salt: bytes, cost: Cost = USUAL_COST) -> Hashed:
    """A passphrase as it is kept.

    Args:
        phrase: The passphrase.
        salt: At least `SALT_BYTES` random bytes, new for every passphrase.
        cost: How dear a try shall be.
    """
    return Hashed(salt, _digest(phrase, salt, cost), cost)


def matches(phrase: str, kept: Hashed) -> bool:
    """Whether this is the passphrase that is kept."""
    if len(phrase) > LONGEST:
        return False
    return hmac.compare_digest(_digest(phrase, kept.salt, kept.cost), kept.digest)


class Recognising:
    """Knows a passphrase again at once that was right before, as when thirty pupils come in one after the other.

    A wrong one takes its time as ever.  What is remembered is a keyed hash, under a key that never leaves this process.
    """

    def __init__(self) -> None:
        self._key = secrets.token_bytes(DIGEST_BYTES)
        self._right: dict[bytes, None] = {}
        self._turn = Lock()

    def matches(self, phrase: str, kept: Hashed) -> bool:
        """Whether this is the passphrase that is kept."""
        said = hmac.new(
            self._key, kept.salt + kept.digest + plain(phrase[: LONGEST + 1]).encode(), "sha256"
        ).digest()
        with self._turn:  # who comes at the same time waits, and is known at once then
            if said in self._right:
                return True
            is_right = matches(phrase, kept)
            if is_right:
                self._right[said] = None
                while len(self._right) > MOST_REMEMBERED:
                    del self._right[next(iter(self._right))]
            return is_right


def weakness(phrase: str, least: int, whose: str) -> Problem | None:
    """Why a passphrase is refused; None where it is good enough.

    Args:
        phrase: The passphrase.
        least: How many signs it must have.
        whose: Whose it is, for the sentence: "the teacher's".
    """
    said = plain(phrase)
    if len(said) < least:
        return Problem(
            "passphrase-short",
            f"{_capital(whose)} passphrase has {len(said)} signs; it needs at least {least}. "
            "Three or four words that do not belong together are long and easy to remember.",
        )
    if len(said) > LONGEST:
        return Problem("passphrase-long", f"{_capital(whose)} passphrase has more than {LONGEST} signs.")
    return _too_plain(said.lower(), whose)


def _too_plain(said: str, whose: str) -> Problem | None:
    rest = said
    for word in EASILY_GUESSED:
        rest = rest.replace(word, "")
    if len(set(rest) - {" "}) >= FEWEST_SIGNS:
        return None
    message = f"{_capital(whose)} passphrase would be guessed soon. Put together words that nobody expects."
    return Problem("passphrase-plain", message)


def same(first: str, second: str) -> Problem | None:
    """Why two passphrases cannot go together; None where they can."""
    if plain(first).lower() != plain(second).lower():
        return None
    return Problem(
        "passphrase-same", "The class needs another passphrase than the teacher: its own opens less."
    )


def _digest(phrase: str, salt: bytes, cost: Cost) -> bytes:
    with _ONE_AT_A_TIME:
        return hashlib.scrypt(
            plain(phrase).encode(),
            salt=salt,
            n=cost.n,
            r=cost.r,
            p=cost.p,
            maxmem=cost.memory,
            dklen=DIGEST_BYTES,
        )


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
