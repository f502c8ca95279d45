"""A shared workroom: who comes in by which passphrase, and what is open to whom."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING
from urllib.parse import quote

import pytest

from littlefold.web.app import make_app, make_shared
from littlefold.web.keys import FILE, keep_keys, make_keys, read_keys
from littlefold.web.pages.door import within
from littlefold.web.passphrase import Cost
from littlefold.web.sessions import COOKIE, LASTS
from littlefold.web.tries import FIRST_WAIT, FREE, LONGEST_WAIT
from tests.web.conftest import TestClient

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.web.room import Room

TEACHER, CLASS = "blue kettle on a ladder", "seven paper boats"
CHEAP = Cost(2**4)
ADDRESS = "192.0.2.20"
HOME = f"http://{ADDRESS}:8765"
PAGE = {"accept": "text/html"}

FOR_ALL = (
    *(
        "/",
        "/first",
        "/garments",
        "/garments.json",
        "/table/bib",
        "/table/bib.json",
        "/table/bib/told.json",
        "/draw/bib.svg",
    ),
    *(
        "/small/bib.svg",
        "/steps/bib",
        "/steps/bib/1",
        "/print/bib",
        "/compare/bodice?or-ease=120",
        "/cloth/bib",
    ),
    *("/recipes", "/recipes/bib", "/recipes/bib.recipe", "/recipes/bib.json", "/marks.css"),
)
TEACHERS = (
    *("/children", "/children/cards.json", "/child?name=Mina", "/child/measure?name=Mina"),
    *("/child/erase?name=Mina", "/child/garments?name=Mina", "/settings", "/write", "/recipes/bib/change"),
)
TEACHERS_FORMS = (
    "/children",
    "/children/import",
    "/child/keep",
    "/child/note",
    "/recipes",
    "/settings",
    "/write",
    "/check",
)


@dataclass
class Clock:
    now: float = 1_760_000_000.0

    def __call__(self) -> float:
        return self.now


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def shared(room: Room, clock: Clock) -> Callable[..., TestClient]:
    """Opens the door for machines in the room, each with an address of its own."""
    keep_keys(room.folder, make_keys(TEACHER, CLASS, CHEAP))
    app = make_shared(room, frozenset({"sewing-room.local"}), clock, clock)

    def machine(passphrase: str = "", number: int = 30) -> TestClient:
        client = TestClient(app, base_url=HOME, follow_redirects=False, client=(f"192.0.2.{number}", 50000))
        if passphrase:
            assert said(client, passphrase).status_code == 303
        return client

    return machine


def said(client: TestClient, passphrase: str, to: str = "/"):  # the client's own response
    return client.post("/door", data={"passphrase": passphrase, "to": to})


def test_from_outside_every_page_leads_to_the_door_and_back(shared: Callable[..., TestClient]) -> None:
    client = shared()
    for path in (*FOR_ALL, *TEACHERS, "/none", "/static/../settings"):
        answer = client.get(path, headers=PAGE)
        assert answer.status_code == 303, path
        assert answer.headers["location"].startswith("/door?to=")
        page = client.get(answer.headers["location"], headers=PAGE)
        assert page.status_code == 200
        assert "plain http" in page.text
        assert client.get(path).status_code == 401
        assert client.post(path).status_code == 401


def test_the_look_of_the_door_needs_no_passphrase(shared: Callable[..., TestClient]) -> None:
    assert shared().get("/static/paper.css").status_code == 200
    assert set(shared().get("/openapi.json").json()["paths"]) == {"/door", "/door/out"}


def test_both_passphrases_open_garments_drafting_and_steps(shared: Callable[..., TestClient]) -> None:
    for passphrase in (CLASS, TEACHER):
        client = shared(passphrase)
        for path in FOR_ALL:
            assert client.get(path).status_code == 200, path


def test_the_class_never_opens_cards_settings_and_writing(shared: Callable[..., TestClient]) -> None:
    teacher, pupil = shared(TEACHER), shared(CLASS, 31)
    assert teacher.post("/children", data={"name": "Mina", "born": "2022-04-01"}).status_code == 303
    for path in TEACHERS:
        assert teacher.get(path).status_code == 200, path
        refused = pupil.get(path, headers=PAGE)
        assert refused.status_code == 403, path
        assert "the teacher" in refused.text
        assert "2022" not in refused.text
        assert "Mina" not in refused.text.replace("Mina</dd>", "")  # only what stood in the pupil's own link


def test_the_class_never_sends_what_is_the_teachers(shared: Callable[..., TestClient], room: Room) -> None:
    form, pupil = {"text": "recipe mine\n", "name": "mine", "units": "in"}, shared(CLASS)
    for path in TEACHERS_FORMS:
        assert pupil.post(path, data=form).status_code == 403, path
    assert room.own.names() == ()
    assert room.preferences.units == "cm"


def test_every_page_of_the_workroom_is_either_the_teachers_or_listed_here(
    shared: Callable[..., TestClient], room: Room
) -> None:
    """A page that is new is not open to the class by accident: it is named here, or refused."""
    open_to_class = {one.partition("?")[0].split("/")[1].partition(".")[0] for one in FOR_ALL}
    pupil = shared(CLASS)
    for path, ways in make_app(room).openapi()["paths"].items():
        if path.strip("/").split("/")[0].partition(".")[0] in open_to_class:
            continue
        for way in ways:
            plain = path.replace("{", "").replace("}", "").replace("number", "1")
            answer = pupil.request(way, plain)
            assert answer.status_code in {403, 404}, (way, path)


def test_no_page_shows_the_class_a_way_to_what_is_closed(shared: Callable[..., TestClient]) -> None:
    pupil = shared(CLASS)
    for path in FOR_ALL:
        answer = pupil.get(path)
        if "text/html" in answer.headers["content-type"]:
            for closed in ('"/child', '"/settings', '"/write', '/change"'):
                assert closed not in answer.text, (path, closed)


def test_a_page_that_is_not_there_is_not_called_closed(shared: Callable[..., TestClient]) -> None:
    assert shared(CLASS).get("/none").status_code == 404
    assert shared(CLASS).get("/table/none").status_code == 404


def test_the_cookie_is_for_this_browser_alone(shared: Callable[..., TestClient]) -> None:
    cookie = said(shared(), CLASS).headers["set-cookie"]
    assert cookie.startswith(f"{COOKIE}=")
    assert {part.strip().lower() for part in cookie.split(";")[1:]} >= {"httponly", "samesite=lax", "path=/"}


def test_a_wrong_passphrase_opens_nothing_and_is_not_shown(
    shared: Callable[..., TestClient], clock: Clock
) -> None:
    client = shared()
    for words in ("", "wrong", CLASS.upper(), TEACHER[:-1], "'; --", "\0", "x" * 5000):
        clock.now += LONGEST_WAIT
        answer = said(client, words, "/children")
        assert answer.status_code == 401, words
        assert "set-cookie" not in answer.headers
        assert len(words) < 3 or words not in answer.text
        assert 'value="/children"' in answer.text  # where one wanted to go is not lost
        assert client.get("/", headers=PAGE).status_code == 303


def test_tries_are_slowed_by_address(shared: Callable[..., TestClient], clock: Clock) -> None:
    client = shared()
    for _ in range(FREE):
        assert said(client, "wrong").status_code == 401
    slowed = said(client, TEACHER)
    assert slowed.status_code == 429
    assert 1 <= int(slowed.headers["retry-after"]) <= FIRST_WAIT + 1
    assert "Wait" in slowed.text
    assert said(shared(number=31), CLASS).status_code == 303
    clock.now += FIRST_WAIT
    assert said(client, TEACHER).status_code == 303


def test_a_header_cannot_give_a_thief_another_address(shared: Callable[..., TestClient]) -> None:
    client = shared()
    codes = [
        client.post(
            "/door", data={"passphrase": "wrong"}, headers={"x-forwarded-for": f"203.0.113.{k}"}
        ).status_code
        for k in range(FREE + 1)
    ]
    assert codes[-1] == 429


def test_a_session_ends_with_the_day(shared: Callable[..., TestClient], clock: Clock) -> None:
    client = shared(TEACHER)
    clock.now += LASTS + 1
    assert client.get("/children", headers=PAGE).status_code == 303


def test_what_was_typed_when_the_time_was_over_is_shown(
    shared: Callable[..., TestClient], clock: Clock
) -> None:
    client = shared(TEACHER)
    clock.now += LASTS + 1
    form = {"text": "recipe of_mine", "name": "mine", "new_passphrase": "secret words"}
    answer = client.post("/recipes", data=form, headers=PAGE)
    assert answer.status_code == 401
    assert "recipe of_mine" in answer.text
    assert "secret words" not in answer.text


def test_who_goes_out_is_out_even_with_the_cookie_kept(shared: Callable[..., TestClient]) -> None:
    client = shared(TEACHER)
    cookie = client.cookies[COOKIE]
    assert client.post("/door/out").status_code == 303
    assert COOKIE not in client.cookies
    client.cookies.set(COOKIE, cookie)
    assert client.get("/", headers=PAGE).status_code == 303


def test_a_changed_passphrase_ends_the_sessions_of_the_old_one(
    shared: Callable[..., TestClient], room: Room
) -> None:
    teacher, pupil = shared(TEACHER), shared(CLASS, 31)
    keys = read_keys(room.folder)
    assert keys is not None
    other = make_keys("green ladder in the rain", "eight paper boats", CHEAP)
    keep_keys(room.folder, replace(keys, pupils=other.pupils))
    assert pupil.get("/", headers=PAGE).status_code == 303
    assert teacher.get("/children").status_code == 200
    keep_keys(room.folder, other)
    assert teacher.get("/children", headers=PAGE).status_code == 303


def test_without_keys_nobody_comes_in(shared: Callable[..., TestClient], room: Room) -> None:
    teacher = shared(TEACHER)
    (room.folder / FILE).write_text("{}")
    assert teacher.get("/", headers=PAGE).status_code == 303
    refused = said(teacher, TEACHER)
    assert refused.status_code == 401
    assert "No passphrases are set" in refused.text


def test_the_cards_stay_in_no_browser(shared: Callable[..., TestClient]) -> None:
    client = shared(TEACHER)
    assert client.get("/children").headers["cache-control"] == "no-store"
    assert client.get("/settings").headers["cache-control"] == "no-store"
    assert client.get("/garments").headers["cache-control"] == "no-cache"


def test_the_machine_is_called_by_its_addresses_and_names_and_by_no_other(
    shared: Callable[..., TestClient],
) -> None:
    client = shared(CLASS)
    for host in (ADDRESS, f"{ADDRESS}:8765", "localhost", "sewing-room.local:8765"):
        assert client.get("/door", headers={"host": host}).status_code == 200, host
    for host in ("", "example.org", "192.0.2.21", f"{ADDRESS}.example.org", "sewing-room"):
        assert client.get("/", headers={"host": host}).status_code == 421, host


def test_writes_from_another_site_change_nothing_when_shared(shared: Callable[..., TestClient]) -> None:
    client = shared(TEACHER)
    elsewhere = {"sec-fetch-site": "cross-site"}
    for path in ("/door", "/door/out", "/settings", "/print/bib/paper"):
        assert client.post(path, data={"passphrase": CLASS}, headers=elsewhere).status_code == 403
    assert client.get("/children").status_code == 200


LINKS = {
    "/table/bib?chest=56+cm": "/table/bib?chest=56+cm",
    "": "/",
    "//example.org": "/",
    "/\\example.org": "/",
    "https://example.org": "/",
    "javascript:alert(1)": "/",
    "/a\r\nset-cookie: x=1": "/",
    "/\t/example.org": "/",
    "/door?to=/": "/",
}


def test_the_door_leads_nowhere_else(shared: Callable[..., TestClient]) -> None:
    client = shared()
    for link, leads_to in LINKS.items():
        assert within(link) == leads_to
        assert said(client, CLASS, link).headers["location"] == leads_to, link


@pytest.mark.parametrize("words", ["<script>alert(1)</script>", "'\"><img src=x onerror=alert(1)>"])
def test_words_at_the_door_stay_words(shared: Callable[..., TestClient], words: str) -> None:
    client = shared()
    for answer in (
        client.get(f"/door?to={quote('/' + words)}"),
        client.post(f"/none?x={quote(words)}", data={"x": words}, headers=PAGE),
    ):
        assert words not in answer.text


def test_a_pupils_paper_is_for_her_own_sheets(shared: Callable[..., TestClient], room: Room) -> None:
    answer = shared(CLASS).post("/print/bib/paper", data={"paper": "A3", "query": "chest=52+cm"})
    assert answer.headers["location"] == "/print/bib?chest=52+cm&on-paper=A3"
    assert room.preferences.paper == "A4"
    shared(TEACHER).post("/print/bib/paper", data={"paper": "A3", "query": ""})
    assert room.preferences.paper == "A3"
