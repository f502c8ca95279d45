from __future__ import annotations

import time
from threading import Event
from traceback import extract_tb

import pytest

from littlefold.web.patience import LONGEST, TooLongError, within

A_WHILE = 60.0
"""What comes to an end has done so within this time, also on a busy machine [s]."""

CLEAN_UP = """def clean_up():
    until = time.monotonic() + 0.02
    while time.monotonic() < until: pass
"""


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

    with pytest.raises(TooLongError):
        within(0.2, work)
    assert ended.wait(A_WHILE), "the work went on after nobody waited for it"


def test_a_cut_that_was_swallowed_is_made_again() -> None:
    swallowed, ended = Event(), Event()

    def work() -> None:
        try:
            while True:
                pass
        except BaseException:  # noqa: BLE001 - as Python does in the callback of a weak reference
            swallowed.set()
        try:
            while True:
                pass
        finally:
            ended.set()

    with pytest.raises(TooLongError):
        within(0.1, work)
    assert ended.wait(A_WHILE), "the work went on after nobody waited for it"
    assert swallowed.is_set()


def test_a_cut_falls_in_our_own_code_and_not_where_python_cleans_up(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(globals(), "__name__", "littlefold.as_it_were")
    elsewhere: dict[str, object] = {"__name__": "weakref", "time": time}
    exec(CLEAN_UP, elsewhere)  # noqa: S102 - a module of another's
    cut_in_ours = Event()

    def work() -> None:
        try:
            while True:
                elsewhere["clean_up"]()  # type: ignore[operator]
                for _ in range(100_000):
                    pass
        except BaseException as fault:
            if {frame.name for frame in extract_tb(fault.__traceback__)} == {"work"}:
                cut_in_ours.set()
            raise

    with pytest.raises(TooLongError):
        within(0.1, work)
    assert cut_in_ours.wait(A_WHILE)


def test_waiting_for_the_machine_is_not_counted_as_work() -> None:
    began = time.monotonic()
    assert within(1.5, lambda: time.sleep(2.0) or "done") == "done"
    assert time.monotonic() - began < LONGEST * 1.5
