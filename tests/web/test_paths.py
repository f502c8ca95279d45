"""No name in a link becomes a path: whatever is asked for, no file of the maker's comes back that is not a page of hers."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import pytest

from littlefold.web.app import make_app
from littlefold.web.keys import FILE
from littlefold.web.room import Room
from tests.web.conftest import HOME, TestClient

if TYPE_CHECKING:
    from pathlib import Path

HIDDEN = "nobody may read this 4711"
FILES = (
    "secret",
    "own/secret",
    f"own/{FILE}",
    "own/recipes/secret",
    "own/backups/secret",
    "own/secret.recipe",
)
WAYS = (
    *(
        "secret",
        "../secret",
        "../../secret",
        "..%2Fsecret",
        "..%2f..%2fsecret",
        "%2e%2e%2fsecret",
        "%2e%2e/%2e%2e/secret",
    ),
    *(
        "....//secret",
        "..%5csecret",
        "..%252fsecret",
        "%2fetc%2fpasswd",
        "{root}/secret",
        "secret%00.recipe",
        "secret%00",
    ),
    *(
        "sharing.json",
        "..%2Fsharing.json",
        "%2e%2e%2fsharing.json",
        "file:%2f%2f{root}%2fsecret",
        "~",
        "%C0%AE%C0%AE/secret",
    ),
)


@pytest.fixture(scope="module")
def furnished(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("machine")
    for name in FILES:
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (root / name).write_text(HIDDEN)
    return root


@pytest.fixture(scope="module")
def client(furnished: Path) -> TestClient:
    return TestClient(make_app(Room(furnished / "own")), base_url=HOME, follow_redirects=False)


@pytest.mark.parametrize("way", WAYS)
def test_no_link_leads_out_of_the_workroom(client: TestClient, furnished: Path, way: str) -> None:
    name = way.format(root=furnished)
    paths = [path for path, how in client.get("/openapi.json").json()["paths"].items() if "get" in how]
    asked = [re.sub(r"\{\w+\}", lambda _: name, path, count=1) for path in paths if "{" in path]
    assert len(asked) > 20
    for path in (*asked, f"/static/{name}", f"/{name}"):
        answer = client.get(re.sub(r"\{\w+\}", "1", path))
        assert HIDDEN not in answer.text, path
        assert "root:" not in answer.text, path


@pytest.mark.parametrize(
    "name", ["../secret", "/secret", "secret\0", "..", ".", "a/b", "a\\b", "CON:", "bib", "x" * 61]
)
def test_no_form_writes_outside_the_recipes(client: TestClient, furnished: Path, name: str) -> None:
    before = sorted(furnished.rglob("*"))
    refused = client.post("/recipes", data={"name": name, "text": "recipe x", "seen": "new"})
    assert refused.status_code == 422
    assert sorted(furnished.rglob("*")) == before
    assert (furnished / "secret").read_text() == HIDDEN
