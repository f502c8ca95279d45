"""Passphrases are set at the machine itself, by the maker or the teacher, and nowhere else."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.web.app import make_shared
from littlefold.web.keys import FILE, keep_keys, make_keys, read_keys
from littlefold.web.passphrase import Cost, matches
from littlefold.web.sessions import COOKIE
from tests.web.conftest import TestClient

if TYPE_CHECKING:
    from littlefold.web.room import Room

TEACHER, CLASS = "blue kettle on a ladder", "seven paper boats"
NEW_TEACHER, NEW_CLASS = "green ladder in the rain", "eight paper boats"


def form(teacher: str = NEW_TEACHER, pupils: str = NEW_CLASS) -> dict[str, str]:
    words = {"teacher_passphrase": teacher, "class_passphrase": pupils}
    return words | {f"{name}_again": text for name, text in words.items()}


NEW = form()
CHEAP = Cost(2**4)


def visiting(room: Room, passphrase: str, *, at: str, called: str) -> TestClient:
    """Somebody who came in from an address and calls the machine by a name."""
    keep_keys(room.folder, make_keys(TEACHER, CLASS, CHEAP))
    client = TestClient(
        make_shared(room), base_url=f"http://{called}:8765", follow_redirects=False, client=(at, 50000)
    )
    assert client.post("/door", data={"passphrase": passphrase}).status_code == 303
    return client


def test_the_maker_sets_them_before_she_shares(client: TestClient, room: Room) -> None:
    page = client.get("/settings").text
    assert "littlefold serve --share" in page
    assert client.post("/settings/passphrases", data=NEW).status_code == 303
    keys = read_keys(room.folder)
    assert keys is not None
    assert matches(NEW_TEACHER, keys.teacher)
    assert matches(NEW_CLASS, keys.pupils)
    assert "A new passphrase" in client.get("/settings").text


@pytest.mark.parametrize(
    "sent",
    [
        {},
        form(teacher="short"),
        form(pupils="boat"),
        form(pupils=NEW_TEACHER),
        form() | {"teacher_passphrase_again": "green ladder in the rian"},
        form() | {"class_passphrase_again": ""},
    ],
)
def test_weak_and_mistyped_ones_are_refused_and_never_shown(
    client: TestClient, room: Room, sent: dict[str, str]
) -> None:
    answer = client.post("/settings/passphrases", data=sent)
    assert answer.status_code == 422
    assert "passphrase" in answer.text
    assert "green ladder" not in answer.text
    assert not (room.folder / FILE).exists()


def test_the_teacher_changes_them_at_the_machine_and_comes_in_anew(room: Room) -> None:
    teacher = visiting(room, TEACHER, at="127.0.0.1", called="127.0.0.1")
    assert teacher.post("/settings/passphrases", data=NEW).status_code == 303
    assert teacher.get("/settings", headers={"accept": "text/html"}).status_code == 303
    assert teacher.post("/door", data={"passphrase": TEACHER}).status_code == 401
    assert teacher.post("/door", data={"passphrase": NEW_TEACHER}).status_code == 303


@pytest.mark.parametrize(("at", "called"), [("192.0.2.30", "192.0.2.20"), ("127.0.0.1", "192.0.2.20")])
@pytest.mark.parametrize("path", ["/settings/passphrases", "/settings/all-out"])
def test_nobody_changes_them_from_elsewhere(room: Room, at: str, called: str, path: str) -> None:
    teacher = visiting(room, TEACHER, at=at, called=called)
    before = (room.folder / FILE).read_bytes()
    refused = teacher.post(path, data=NEW)
    assert refused.status_code == 422
    assert "only at the machine" in refused.text
    assert (room.folder / FILE).read_bytes() == before
    assert "teacher_passphrase" not in teacher.get("/settings").text


def test_a_pupil_at_the_machine_is_a_pupil(room: Room) -> None:
    pupil = visiting(room, CLASS, at="127.0.0.1", called="127.0.0.1")
    assert pupil.post("/settings/passphrases", data=NEW).status_code == 403
    assert pupil.post("/settings/all-out").status_code == 403


def test_everybody_is_sent_out(room: Room) -> None:
    teacher = visiting(room, TEACHER, at="127.0.0.1", called="127.0.0.1")
    cookie = teacher.cookies[COOKIE]
    assert teacher.post("/settings/all-out", data={"x": "1"}).status_code == 303
    teacher.cookies.set(COOKIE, cookie)
    assert teacher.get("/", headers={"accept": "text/html"}).status_code == 303
    assert teacher.post("/door", data={"passphrase": TEACHER}).status_code == 303
