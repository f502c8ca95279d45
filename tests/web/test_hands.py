"""Processes that draft beside the workroom: the same drawings, what changes is seen, and nothing is lost with a hand."""

from __future__ import annotations

import gc
import os
import signal
import time
from concurrent.futures import FIRST_COMPLETED, ThreadPoolExecutor, wait
from typing import TYPE_CHECKING

import pytest

from littlefold.web.hands import ASIDE, SELDOM, Hands
from littlefold.web.own_recipes import fingerprint
from littlefold.web.patience import TooLongError
from littlefold.web.room import Room
from littlefold.web.telling import drawn, moving, told

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

COME_IN = 60.0
"""A hand has come in within this time, also on a busy machine [s]."""
MINE = 'recipe mine\ntitle "{title}"\ndrawing body\npoint A at the fold\npoint B below A by 30 cm\nline side from A to B\n'


def number_of_process(room: Room, recipe: str, fields: tuple[tuple[str, str], ...]) -> str:
    assert room.folder.name
    return f"{os.getpid()} {recipe} {dict(fields)}"


def takes_too_long(room: Room, recipe: str, fields: tuple[tuple[str, str], ...]) -> str:
    raise TooLongError(room.folder.name, recipe, fields)


@pytest.fixture(scope="module")
def room(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Room]:
    folder: Path = tmp_path_factory.mktemp("own")
    hands = Hands(folder, 1)
    assert not hands.are_ready
    hands.call_in()
    until = time.monotonic() + COME_IN
    while not hands.are_ready:
        assert time.monotonic() < until, "no hand came in"
        time.sleep(0.05)
    yield Room(folder, hands=hands)
    hands.close()


@pytest.mark.parametrize("task", [drawn, moving, told])
def test_a_hand_draws_what_the_workroom_draws(room: Room, task) -> None:
    fields = (("chest", "57 cm"), ("ease", "12 cm"), ("on-sheet", "back"))
    assert room.hands.ask(room, task, "casing-top", fields) == task(room, "casing-top", fields)


def tidying(room: Room, recipe: str, fields: tuple[tuple[str, str], ...]) -> str:
    assert room.recipe(recipe) is not None, fields
    return f"{gc.get_threshold()} {gc.get_freeze_count()}"


def test_a_hand_seldom_halts_to_tidy_up(room: Room) -> None:
    threshold, _, set_aside = room.hands.ask(room, tidying, "bib", ()).rpartition(" ")
    assert threshold == str(SELDOM)
    assert int(set_aside) > 50_000  # the modules and the grammar


def test_it_is_another_process_that_draws(room: Room) -> None:
    said = room.hands.ask(room, number_of_process, "bib", (("ease", "3"),))
    assert said.endswith(" bib {'ease': '3'}")
    assert int(said.split()[0]) != os.getpid()


def test_a_hand_sees_a_recipe_that_changed(room: Room) -> None:
    seen = "new"
    for title in ("First", "Second"):
        text = MINE.format(title=title)
        assert room.own.save("mine", text, seen) is None
        assert f"<title>{title}:" in room.hands.ask(room, drawn, "mine", ())
        seen = fingerprint(text)


def test_what_takes_too_long_is_told_as_such(room: Room) -> None:
    with pytest.raises(TooLongError):
        room.hands.ask(room, takes_too_long, "bib", ())


def test_a_hand_that_is_lost_is_called_again(room: Room) -> None:
    lost = int(room.hands.ask(room, number_of_process, "bib", ()).split()[0])
    os.kill(lost, signal.SIGKILL)
    assert "<svg" in room.hands.ask(room, drawn, "bib", ())
    until = time.monotonic() + COME_IN
    while not room.hands.are_ready:
        assert time.monotonic() < until
        time.sleep(0.05)
    assert int(room.hands.ask(room, number_of_process, "bib", ()).split()[0]) not in {lost, os.getpid()}


def waits(room: Room, recipe: str, fields: tuple[tuple[str, str], ...]) -> str:
    until = time.monotonic() + COME_IN
    while not (room.folder / "go on").exists() and time.monotonic() < until:
        time.sleep(0.02)
    return number_of_process(room, recipe, fields)


def test_what_can_wait_keeps_nobody_waiting(room: Room) -> None:
    with ThreadPoolExecutor(ASIDE + 1) as askers:
        asked = [askers.submit(room.hands.ask_aside, room, waits, "bib", ()) for _ in range(ASIDE + 1)]
        wait(asked, COME_IN, FIRST_COMPLETED)
        soon = room.hands.ask(room, number_of_process, "bib", ())
        assert sum(one.done() for one in asked) == 1  # the others wait, and nobody waits for them
        (room.folder / "go on").touch()
        found = [one.result() for one in asked]
    assert found.count(None) == 1  # told to come again
    aside = {one.split()[0] for one in found if one is not None}
    assert len(aside) == 1
    assert soon.split()[0] not in aside


def test_without_hands_the_workroom_draws_itself(tmp_path: Path) -> None:
    alone = Room(tmp_path)
    assert int(alone.hands.ask(alone, number_of_process, "bib", ()).split()[0]) == os.getpid()
