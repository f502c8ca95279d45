from __future__ import annotations

import time
from typing import TYPE_CHECKING, NoReturn

import pytest

from littlefold.web.app import make_app
from littlefold.web.patience import TooLongError, within
from littlefold.web.room import Room
from tests.web.conftest import HOME, Pipeline, TestClient

if TYPE_CHECKING:
    from pathlib import Path


def endless() -> NoReturn:
    def work() -> NoReturn:
        while True:
            time.sleep(0.001)

    within(0.2, work)


def broken() -> NoReturn:
    raise ZeroDivisionError


def test_an_endless_recipe_is_cut_off_with_a_sentence_and_keeps_what_was_typed(tmp_path: Path) -> None:
    client = TestClient(make_app(Room(tmp_path, Pipeline(endless))), base_url=HOME)
    for path in (
        "/table/bib",
        "/draw/bib.svg",
        "/draw/bib/moving.svg",
        "/steps/bib/1",
        "/print/bib",
        "/recipes/bib",
    ):
        answer = client.get(f"{path}?for-name=Mina")
        assert answer.status_code == 503
        assert "takes too long" in answer.text
        assert "Mina" in answer.text


def test_our_own_mistake_is_a_sentence_too(tmp_path: Path) -> None:
    room = Room(tmp_path, Pipeline(broken))
    client = TestClient(make_app(room), base_url=HOME)
    answer = client.get("/table/bib?for-name=Mina")
    assert answer.status_code == 500
    assert "not yours" in answer.text
    assert "Mina" in answer.text
    assert "default-src 'none'" in answer.headers["content-security-policy"]
    assert "Traceback" not in answer.text


@pytest.mark.parametrize(
    ("path", "form"),
    [
        (
            "/child/keep",
            {"name": "Mina", "recipe": "bib", "query": "for-name=Mina", "words": "typed by hand"},
        ),
        ("/print/bib/paper", {"paper": "A4", "words": "typed by hand"}),
        ("/settings", {"units": "cm", "words": "typed by hand"}),
        ("/recipes", {"name": "mine", "text": "recipe typed by hand"}),
        (
            "/settings/passphrases",
            {"teacher_passphrase": "green ladder in the rain", "words": "typed by hand"},
        ),
    ],
)
def test_a_form_that_fails_shows_what_was_typed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, path: str, form: dict[str, str]
) -> None:
    def failing_whole(*_: object, **__: object) -> None:
        raise ZeroDivisionError

    client = TestClient(make_app(Room(tmp_path, Pipeline(broken))), base_url=HOME)
    for failing in (
        "printing.keep_preferences",
        "settings.keep_preferences",
        "writing._plain",
        "sharing.refusals",
    ):
        monkeypatch.setattr(f"littlefold.web.pages.{failing}", failing_whole)
    answer = client.post(path, data=form)
    assert answer.status_code in {422, 500}
    assert "typed by hand" in answer.text
    assert "green ladder" not in answer.text
    assert "Not this time" in answer.text


def test_cut_off_work_is_no_success() -> None:
    try:
        within(0.05, lambda: time.sleep(5))
    except TooLongError:
        return
    raise AssertionError("nobody was told")
