from __future__ import annotations

from dataclasses import dataclass, replace

import pytest

from littlefold.web.keys import Keys, make_keys
from littlefold.web.passphrase import Cost
from littlefold.web.sessions import LASTS, Sessions
from littlefold.web.visitor import Visitor

CHEAP = Cost(2**4)


@dataclass
class Clock:
    now: float = 1_760_000_000.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture
def keys() -> Keys:
    return make_keys("blue kettle on a ladder", "seven paper boats", CHEAP)


@pytest.mark.parametrize("visitor", [Visitor.TEACHER, Visitor.PUPIL])
def test_a_session_lasts_a_days_work_and_then_is_over(keys: Keys, visitor: Visitor) -> None:
    clock = Clock()
    cookie = Sessions(clock).begin(keys, visitor)
    for passed, expected in ((0, visitor), (LASTS, visitor), (LASTS + 1, Visitor.NOBODY)):
        again = Sessions(Clock(clock.now + passed))  # another server with the same keys
        assert again.visitor(keys, cookie) is expected


def test_every_changed_sign_makes_a_cookie_worthless(keys: Keys) -> None:
    sessions = Sessions(Clock())
    cookie = sessions.begin(keys, Visitor.PUPIL)
    # the last sign of each part holds bits that base64 leaves out, so it is left alone
    for at in range(len(cookie) - 1):
        other = "A" if cookie[at] != "A" else "B"
        changed = cookie[:at] + other + cookie[at + 1 :]
        assert sessions.visitor(keys, changed) is Visitor.NOBODY or at + 1 in _ends(cookie)
        assert sessions.visitor(keys, changed) is not Visitor.TEACHER


def _ends(cookie: str) -> set[int]:
    return {at for at, sign in enumerate(cookie) if sign == "."}


@pytest.mark.parametrize(
    "cookie", ["", ".", "..", "a.b.c", "\u00e4.\u00f6.\u00fc", "x" * 100_000, "[]", "\0"]
)
def test_nonsense_is_nobody(keys: Keys, cookie: str) -> None:
    assert Sessions(Clock()).visitor(keys, cookie) is Visitor.NOBODY


def test_another_secret_ends_all_and_another_passphrase_ends_its_own(keys: Keys) -> None:
    sessions = Sessions(Clock())
    teacher, pupil = (sessions.begin(keys, visitor) for visitor in (Visitor.TEACHER, Visitor.PUPIL))
    assert sessions.visitor(keys.all_out(), teacher) is Visitor.NOBODY
    other = make_keys("green ladder in the rain", "eight paper boats", CHEAP)
    changed = replace(keys, pupils=other.pupils)
    assert sessions.visitor(changed, pupil) is Visitor.NOBODY
    assert sessions.visitor(changed, teacher) is Visitor.TEACHER


def test_who_went_out_is_out_and_the_others_are_not(keys: Keys) -> None:
    sessions = Sessions(Clock())
    first, second = (sessions.begin(keys, Visitor.PUPIL) for _ in range(2))
    assert first != second
    sessions.end(keys, first)
    sessions.end(keys, "nonsense")
    assert sessions.visitor(keys, first) is Visitor.NOBODY
    assert sessions.visitor(keys, second) is Visitor.PUPIL


def test_a_visitor_who_needs_no_cookie_cannot_come_by_one(keys: Keys) -> None:
    sessions = Sessions(Clock())
    for visitor in (Visitor.MAKER, Visitor.NOBODY):
        assert sessions.visitor(keys, sessions.begin(keys, visitor)) is Visitor.NOBODY
