from __future__ import annotations

import time
from threading import Event

import pytest

from littlefold.web.patience import TooLongError, within


def test_what_is_done_in_time_is_given() -> None:
    assert within(5.0, lambda: 6 * 7) == 42


def test_a_fault_of_the_work_is_a_fault_of_its_own() -> None:
    def work() -> int:
        raise KeyError("ours")

    with pytest.raises(KeyError, match="ours"):
        within(5.0, work)


def test_endless_work_is_cut_off_and_ends() -> None:
    ended = Event()

    def work() -> None:
        try:
            while True:
                pass
        finally:
            ended.set()

    began = time.monotonic()
    with pytest.raises(TooLongError):
        within(0.2, work)
    assert time.monotonic() - began < 3.0
    assert ended.wait(5.0), "the work went on after nobody waited for it"
