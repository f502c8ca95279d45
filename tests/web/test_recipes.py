from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from littlefold.recipe.shelf import shipped_names, shipped_text
from littlefold.web.own_recipes import NEW, fingerprint

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.web.room import Room

TEXT = 'recipe mine\ntitle "Mine"\ndrawing body\npoint A at the fold\npoint B below A by 30 cm\nline fold_line from A to B\n'


def test_a_recipe_is_read_beside_its_drawing(client: TestClient) -> None:
    page = client.get("/recipes/bodice").text
    text = shipped_text("bodice")
    assert text is not None
    assert page.count('<li id="line-') == len(text.split("\n"))
    assert "sheet-drawing" in page
    told = client.get("/recipes/bodice.json?on-sheet=front").json()
    line = told["lines"]["front.shoulder"]
    assert text.split("\n")[line - 1].strip().startswith("line shoulder")
    assert told["sheet"] == "front"


def test_a_recipe_is_taken_along_as_it_stands(client: TestClient) -> None:
    answer = client.get("/recipes/bib.recipe")
    assert answer.text == shipped_text("bib")
    assert answer.headers["content-disposition"] == 'attachment; filename="bib.recipe"'


def test_messages_name_the_line_and_what_can_be_drawn_is_drawn(client: TestClient) -> None:
    told = client.post("/check", data={"text": TEXT.replace("below", "belo")}).json()
    first = told["messages"][0]
    assert first["line"] == 5
    assert first["severity"] == "error"
    assert 'Did you mean "below"?' in first["message"]
    assert 'data-name="body.A"' in told["drawing"]


def test_a_sound_text_has_no_messages_of_error(client: TestClient) -> None:
    told = client.post("/check", data={"text": TEXT}).json()
    assert not [one for one in told["messages"] if one["severity"] == "error"]
    assert told["lines"] == {"body.A": 4, "body.B": 5, "body.fold_line": 6}


@pytest.mark.parametrize(
    "text", ["", "\n" * 50, "no recipe at all", "\x00\x01", "recipe a\n" * 3000, "(" * 5000]
)
def test_any_text_is_answered(client: TestClient, text: str) -> None:
    assert client.post("/check", data={"text": text}).status_code == 200


def test_saved_as_ones_own_and_found_again(client: TestClient, room: Room) -> None:
    answer = client.post("/recipes", data={"text": TEXT.replace("\n", "\r\n"), "name": "mine", "seen": NEW})
    assert (answer.status_code, answer.headers["location"]) == (303, "/recipes/mine")
    assert room.own.text("mine") == TEXT
    assert "/table/mine" in client.get("/garments").text
    assert client.get("/table/mine").status_code == 200


def test_two_windows_cannot_save_over_each_other(client: TestClient, room: Room) -> None:
    assert room.own.save("mine", TEXT, NEW) is None
    seen = fingerprint(TEXT)
    first = client.post("/recipes", data={"text": TEXT + "# first\n", "name": "mine", "seen": seen})
    assert first.status_code == 303
    second = client.post("/recipes", data={"text": TEXT + "# second\n", "name": "mine", "seen": seen})
    assert second.status_code == 409
    assert "was changed elsewhere" in second.text
    assert "# second" in second.text  # what was typed is still there
    assert room.own.text("mine") == TEXT + "# first\n"


def test_a_new_recipe_cannot_take_the_place_of_another(client: TestClient, room: Room) -> None:
    assert room.own.save("mine", TEXT, NEW) is None
    assert client.post("/recipes", data={"text": "x", "name": "mine", "seen": NEW}).status_code == 409
    assert room.own.text("mine") == TEXT


@pytest.mark.parametrize("name", shipped_names())
def test_shipped_recipes_are_never_saved_over(client: TestClient, room: Room, name: str) -> None:
    answer = client.post(
        "/recipes", data={"text": TEXT, "name": name, "seen": fingerprint(shipped_text(name) or "")}
    )
    assert answer.status_code == 422
    assert "stays as it is" in answer.text
    assert room.own.names() == ()


@pytest.mark.parametrize(
    "name",
    [
        "../evil",
        "..",
        "/etc/passwd",
        "a/b",
        "A",
        "",
        " ",
        "x" * 61,
        ".hidden",
        "-x",
        "a\x00b",
        "a.recipe",
        "con\n",
    ],
)
def test_no_name_leads_out_of_the_folder(client: TestClient, room: Room, name: str) -> None:
    before = {path for path in Path(room.folder.parent).rglob("*") if path.is_file()}
    answer = client.post("/recipes", data={"text": TEXT, "name": name, "seen": NEW})
    after = {path for path in Path(room.folder.parent).rglob("*") if path.is_file()}
    if name == "con\n":  # blanks round a name are nobody's wish
        assert after - before == {room.folder / "recipes" / "con.recipe"}
        return
    assert answer.status_code == 422
    assert after == before


def test_what_lies_in_the_folder_under_other_names_is_not_shown(room: Room) -> None:
    assert room.own.save("mine", TEXT, NEW) is None
    folder = room.folder / "recipes"
    for name in ("Not Plain.recipe", "note.txt", "bib.recipe"):
        (folder / name).write_text(TEXT)
    assert room.own.names() == ("mine",)


def test_a_file_is_taken_in_but_not_yet_saved(client: TestClient, room: Room) -> None:
    answer = client.post("/write", files={"file": ("Their-Top.recipe", TEXT.encode())})
    assert answer.status_code == 200
    assert "point B below A by 30 cm" in answer.text
    assert 'value="their-top"' in answer.text
    assert room.own.names() == ()


def test_a_text_of_more_than_the_greatest_length_is_refused(client: TestClient, room: Room) -> None:
    answer = client.post("/recipes", data={"text": "#" * 200_001, "name": "long", "seen": NEW})
    assert answer.status_code == 422
    assert room.own.names() == ()


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"\x89PNG\r\n\x1a\n\x00\x00", "no text"),
        (b"recipe mine\x00", "no text"),
        (b"PK\x03\x04" + b"\xff" * 200, "no text"),
        (b"#" * 1_900_000, "longer than a recipe"),
        ("\u20ac".encode() * 300_000, "longer than a recipe"),
    ],
)
def test_a_file_that_is_no_recipe_is_not_taken_in(client: TestClient, content: bytes, told: str) -> None:
    answer = client.post("/write", files={"file": ("mine.recipe", content, "text/plain")})
    assert answer.status_code == 422
    assert told in answer.text


def test_a_file_is_taken_in_as_it_stands(client: TestClient) -> None:
    content = TEXT.replace("\n", "\r\n").encode()
    answer = client.post("/write", files={"file": ("C:/recipes/mine.recipe", content, "text/plain")})
    assert answer.status_code == 200
    assert 'value="mine"' in answer.text
    assert "fold_line" in answer.text
