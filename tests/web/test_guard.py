from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.web.guard import LARGEST_FORM, host_name

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.web.room import Room

FORM = {"paper": "A3", "query": ""}


@pytest.mark.parametrize(
    "host", ["127.0.0.1", "127.0.0.1:8765", "localhost", "LOCALHOST:80", "[::1]", "[::1]:8765"]
)
def test_names_of_this_machine_are_answered(client: TestClient, host: str) -> None:
    assert client.get("/", headers={"host": host}).status_code == 200


@pytest.mark.parametrize(
    "host", ["", "example.org", "127.0.0.1.example.org", "localhost.example.org:8765", "192.168.1.4", "[::1"]
)
def test_any_other_host_is_refused(client: TestClient, host: str) -> None:
    refused = client.get("/", headers={"host": host})
    assert refused.status_code == 421
    assert "127.0.0.1" in refused.text


def test_a_port_is_no_part_of_a_host() -> None:
    assert host_name("localhost:1") == "localhost"
    assert host_name("[::1]:1") == "[::1]"


@pytest.mark.parametrize("site", ["cross-site", "same-site", "nonsense"])
def test_writes_from_elsewhere_change_nothing(client: TestClient, room: Room, site: str) -> None:
    refused = client.post("/print/bib/paper", data=FORM, headers={"sec-fetch-site": site})
    assert refused.status_code == 403
    assert room.preferences.paper == "A4"


@pytest.mark.parametrize(
    "origin", ["http://example.org", "null", "http://127.0.0.1:9", "https://localhost:8765"]
)
def test_an_old_browser_is_judged_by_its_origin(client: TestClient, room: Room, origin: str) -> None:
    assert client.post("/print/bib/paper", data=FORM, headers={"origin": origin}).status_code == 403
    assert room.preferences.paper == "A4"


@pytest.mark.parametrize(
    "headers",
    [{"sec-fetch-site": "same-origin"}, {"sec-fetch-site": "none"}, {"origin": "http://127.0.0.1:8765"}, {}],
)
def test_writes_from_here_are_kept(client: TestClient, room: Room, headers: dict[str, str]) -> None:
    kept = client.post("/print/bib/paper", data=FORM, headers=headers)
    assert kept.status_code == 303
    assert room.preferences.paper == "A3"


def test_more_than_a_form_can_hold_is_refused_before_it_is_read(client: TestClient) -> None:
    refused = client.post("/print/bib/paper", content=b"x", headers={"content-length": str(LARGEST_FORM + 1)})
    assert refused.status_code == 413


def test_a_body_of_unsaid_length_is_refused(client: TestClient) -> None:
    refused = client.post("/print/bib/paper", content=iter([b"paper=A3"]))
    assert refused.status_code == 411


@pytest.mark.parametrize("path", ["/", "/garments", "/table/bib", "/no-such-page", "/static/paper.css"])
def test_no_page_may_load_or_run_what_is_not_ours(client: TestClient, path: str) -> None:
    answer = client.get(path)
    rules = answer.headers["content-security-policy"]
    assert "default-src 'none'" in rules
    assert "script-src 'self';" in rules
    assert "unsafe" not in rules
    assert answer.headers["x-content-type-options"] == "nosniff"


@pytest.mark.parametrize(
    "path",
    [
        "/",
        "/garments",
        "/table/bib",
        "/steps/bib/1",
        "/steps/bib",
        "/print/bib",
        "/settings",
        "/children",
        "/write",
    ],
)
def test_no_page_has_script_or_style_within(client: TestClient, path: str) -> None:
    text = client.get(path).text
    assert "<style" not in text
    assert " style=" not in text
    assert " onclick" not in text
    scripts = text.split("<script")[1:]
    assert all(
        one.startswith((' type="module" src="/static/', ' type="application/json"')) for one in scripts
    )
