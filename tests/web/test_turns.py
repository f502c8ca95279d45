"""Who is let to a place, and in which order."""

from __future__ import annotations

import time
from concurrent.futures import ThreadPoolExecutor
from threading import Event

import pytest

from littlefold.web.turns import Pressing, Turns

SOON = 30.0
"""In this time a thread has its turn, also on a busy machine [s]."""


def test_who_is_more_pressing_goes_first_and_equals_as_they_came() -> None:
    turns, went, held, go = Turns(), [], Event(), Event()

    def hold() -> None:
        with turns.turn(Pressing.RESTING):
            held.set()
            assert go.wait(SOON)

    def take(name: str, pressing: Pressing) -> None:
        with turns.turn(pressing):
            went.append(name)

    with ThreadPoolExecutor(6) as threads:
        done = [threads.submit(hold)]
        assert held.wait(SOON)
        asked = [
            ("r1", Pressing.RESTING),
            ("r2", Pressing.RESTING),
            ("m1", Pressing.MOVING),
            ("m2", Pressing.MOVING),
        ]
        for number, (name, pressing) in enumerate(asked, start=1):
            done.append(threads.submit(take, name, pressing))
            _wait_until_so_many_stand_in_line(turns, number)
        go.set()
        for one in done:
            one.result(SOON)
    assert went == ["m1", "m2", "r1", "r2"]


def test_one_that_fails_gives_the_place_free() -> None:
    turns = Turns()
    with pytest.raises(ValueError, match="torn"), turns.turn(Pressing.MOVING):
        raise ValueError("torn")
    with turns.turn(Pressing.RESTING):
        assert turns.in_line == 0


def _wait_until_so_many_stand_in_line(turns: Turns, number: int) -> None:
    until = time.monotonic() + SOON
    while turns.in_line < number:
        assert time.monotonic() < until
        time.sleep(0.01)
