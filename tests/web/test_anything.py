"""Whatever is asked of the workroom, it answers without failing: requests made up from its own description."""

from __future__ import annotations

import re

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from littlefold.web.app import make_app
from littlefold.web.room import Room
from tests.web.conftest import HOME, TestClient

FIELDS = (
    "chest",
    "ease",
    "for-size",
    "for-name",
    "in-units",
    "on-tape",
    "on-sheet",
    "on-paper",
    "bare-numbers",
    "or-ease",
    "look",
    "tall",
)
VALUES = st.one_of(
    st.text(max_size=40),
    st.sampled_from(
        [
            "56 cm",
            "0",
            "-1",
            "1e9",
            "22 1/4 in",
            "1/0 in",
            "none",
            "104",
            "in",
            "1/8in",
            "roll 914mm",
            "9" * 60,
            "½",
        ]
    ),
)
NAMES = st.one_of(
    st.sampled_from(["casing-top", "bib", "none", "..", "mine"]), st.text(min_size=1, max_size=12)
)
NUMBERS = st.sampled_from(["1", "0", "-1", "99999999999999999999", "x"])


@pytest.fixture(scope="module")
def client(tmp_path_factory: pytest.TempPathFactory) -> TestClient:
    room = Room(tmp_path_factory.mktemp("own"))
    return TestClient(make_app(room), base_url=HOME, follow_redirects=False)


def described(client: TestClient, method: str) -> list[str]:
    paths = client.get("/openapi.json").json()["paths"]
    return sorted(path for path, how in paths.items() if method in how and not path.startswith("/child"))


def filled(path: str, data: st.DataObject) -> str:
    from urllib.parse import quote  # noqa: PLC0415 - beside its use

    def part(found: re.Match[str]) -> str:
        wanted = NUMBERS if found[1] == "number" else NAMES
        return quote(data.draw(wanted), safe="")

    return re.sub(r"\{(\w+)\}", part, path)


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_every_link_is_answered(client: TestClient, data: st.DataObject) -> None:
    path = filled(data.draw(st.sampled_from(described(client, "get"))), data)
    words = data.draw(
        st.dictionaries(st.one_of(st.sampled_from(FIELDS), st.text(max_size=8)), VALUES, max_size=5)
    )
    answer = client.get(path, params=words)
    assert answer.status_code < 500, (path, words)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_every_form_is_answered(client: TestClient, data: st.DataObject) -> None:
    path = filled(data.draw(st.sampled_from(described(client, "post"))), data)
    names = ["text", "name", "seen", "paper", "query", "units", "tape", "region", "light", "sheet"]
    words = data.draw(st.dictionaries(st.sampled_from(names), VALUES, max_size=6))
    answer = client.post(path, data=words)
    assert answer.status_code < 500, (path, words)
