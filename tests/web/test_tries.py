from __future__ import annotations

from dataclasses import dataclass

import pytest

from littlefold.web.tries import (
    ALL_APART,
    ALL_FREE,
    ALL_WITHIN,
    FIRST_WAIT,
    FORGIVEN,
    FREE,
    LONGEST_WAIT,
    MOST_ADDRESSES,
    Tries,
    network,
)

ONE, OTHER = "192.0.2.7", "192.0.2.8"


@dataclass
class Clock:
    now: float = 1000.0

    def __call__(self) -> float:
        return self.now


def used_up(clock: Clock, address: str = ONE) -> Tries:
    tries = Tries(clock)
    assert [tries.enter(address) for _ in range(FREE)] == [0.0] * FREE
    return tries


def test_after_some_wrong_tries_an_address_waits_and_the_others_do_not() -> None:
    tries = used_up(Clock())
    assert tries.enter(ONE) == FIRST_WAIT
    assert tries.enter(OTHER) == 0.0


def test_each_further_wrong_try_doubles_the_wait_up_to_the_longest() -> None:
    clock = Clock()
    tries, waits = used_up(clock), []
    for _ in range(10):
        waits.append(tries.enter(ONE))
        clock.now += waits[-1]
        assert tries.enter(ONE) == 0.0
    assert waits[:4] == [5.0, 10.0, 20.0, 40.0]
    assert waits[-1] == LONGEST_WAIT


def test_asking_too_early_makes_the_wait_no_longer() -> None:
    clock = Clock()
    tries = used_up(clock)
    for _ in range(50):
        tries.enter(ONE)
    clock.now += FIRST_WAIT
    assert tries.enter(ONE) == 0.0


def test_many_at_once_are_counted_before_any_is_answered() -> None:
    tries = Tries(Clock())
    let_in = [tries.enter(ONE) for _ in range(100)].count(0.0)
    assert let_in == FREE


def test_a_right_try_does_not_count_and_forgives_none_before_it() -> None:
    tries = Tries(Clock())
    for _ in range(200):
        assert tries.enter(ONE) == 0.0
        tries.take_back(ONE)
    guesses = 0
    while tries.enter(ONE) == 0.0:  # a pupil guesses at the teacher's, and says the class's between
        guesses += 1
        if tries.enter(ONE) == 0.0:
            tries.take_back(ONE)
    assert guesses == FREE


def test_the_teacher_coming_in_is_a_new_beginning() -> None:
    tries = used_up(Clock())
    tries.take_back(ONE)
    tries.forgive(ONE)
    assert [tries.enter(ONE) for _ in range(FREE)] == [0.0] * FREE


def test_an_hour_without_a_wrong_try_is_a_new_beginning() -> None:
    clock = Clock()
    tries = used_up(clock)
    clock.now += FORGIVEN
    assert [tries.enter(ONE) for _ in range(FREE)] == [0.0] * FREE


def test_from_many_addresses_all_together_are_slowed() -> None:
    clock = Clock()
    tries = Tries(clock)
    asked = [tries.enter(f"198.51.100.{k}") for k in range(ALL_FREE + 30)]
    assert asked.count(0.0) == ALL_FREE
    assert asked[-1] == ALL_APART
    for k in range(20):
        clock.now += ALL_APART
        assert tries.enter(f"203.0.113.{k}") == 0.0
        assert tries.enter(f"203.0.113.{k + 100}") == ALL_APART
    clock.now += ALL_WITHIN
    assert tries.enter(OTHER) == 0.0
    assert tries.enter("192.0.2.9") == 0.0


def test_a_thief_who_never_stops_has_few_guesses_in_a_month() -> None:
    clock, guesses = Clock(), 0
    tries = Tries(clock)
    day = 24 * 3600
    end = clock.now + day
    while clock.now < end:
        wait = tries.enter(f"10.0.{guesses // 250 % 250}.{guesses % 250}")
        guesses += wait == 0.0
        clock.now += max(wait, 0.001)
    assert guesses * 30 <= 180_000


def test_a_class_of_thirty_that_mistypes_once_comes_in() -> None:
    tries = Tries(Clock())
    for k in range(30):
        assert tries.enter(f"192.0.2.{k}") == 0.0
    for k in range(30):
        wait = tries.enter(f"192.0.2.{k}")
        if wait == 0.0:
            tries.take_back(f"192.0.2.{k}")
        assert wait == 0.0


def test_what_is_remembered_is_bounded() -> None:
    clock = Clock()
    tries = Tries(clock)
    for k in range(MOST_ADDRESSES + 50):
        clock.now += ALL_APART
        assert tries.enter(f"10.1.{k // 250}.{k % 250}") == 0.0
    assert len(tries._records) == MOST_ADDRESSES
    assert len(tries._wrong) <= ALL_FREE + ALL_WITHIN / ALL_APART + 1


@pytest.mark.parametrize(
    ("address", "other", "is_one"),
    [
        ("2001:db8:1:2::1", "2001:db8:1:2:ffff::9", True),
        ("2001:db8:1:2::1", "2001:db8:1:3::1", False),
        ("fe80::1%eth0", "fe80::1", True),
        ("192.0.2.7", "192.0.2.8", False),
        ("nonsense", "nonsense", True),
    ],
)
def test_one_machine_has_a_whole_network_of_the_newer_addresses(
    address: str, other: str, *, is_one: bool
) -> None:
    assert (network(address) == network(other)) is is_one
