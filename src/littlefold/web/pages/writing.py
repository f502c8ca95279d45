"""Recipes written and changed: messages as one types, saved as one's own, never over what was changed elsewhere."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated, Any

from fastapi import APIRouter, File, Form, UploadFile
from fastapi.responses import HTMLResponse, RedirectResponse, Response

from littlefold.problem import Problem
from littlefold.recipe.lines import MOST_CHARACTERS
from littlefold.recipe.shelf import shipped_names
from littlefold.web.at_door import recipe_named
from littlefold.web.own_recipes import NAME, NEW, fingerprint
from littlefold.web.reading import read_text
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from littlefold.web.room import Room

Json = dict[str, Any]

LARGEST = 4 * MOST_CHARACTERS
"""Bytes of the longest recipe: no letter has more than four (RFC 3629)."""
STATUS = {"recipe-changed-meanwhile": 409, "recipe-not-saved": 500}
FIRST_LINES = """recipe my-first
title "My first recipe"
suits stature 62 cm to 134 cm
source common practice

measure chest

choice ease = 8 cm, 4 cm .. 20 cm "Ease round the chest"

drawing body "Paper folded lengthwise, the fold on your left"
  point A at the fold
  point B below A by 30 cm
  point C right of A by (chest + ease) / 4
  point D right of B by (chest + ease) / 4
  line top from A to C
  line side from C to D
  line hemline from B to D
"""


def routes(room: Room) -> APIRouter:
    """The routes of writing."""
    router = APIRouter()

    @router.get("/write")
    def write() -> HTMLResponse:
        return _desk(room, FIRST_LINES, "", NEW)

    @router.post("/write")
    def take_in(file: Annotated[UploadFile, File()]) -> HTMLResponse:
        text = _text_in(file)
        if isinstance(text, Problem):
            return _desk(room, FIRST_LINES, "", NEW, text)
        stem = (file.filename or "").rpartition("/")[2].removesuffix(".recipe").lower()
        return _desk(room, text, stem if NAME.fullmatch(stem) else "", NEW)

    @router.post("/check")
    def check(text: Annotated[str, Form()] = "", sheet: Annotated[str, Form()] = "") -> Json:
        return read_text(room, _plain(text)[: MOST_CHARACTERS + 1], sheet)

    @router.post("/recipes")
    def save(
        text: Annotated[str, Form()] = "",
        name: Annotated[str, Form()] = "",
        seen: Annotated[str, Form()] = NEW,
    ) -> Response:
        refused = room.own.save(name.strip(), _plain(text), seen)
        if refused is not None:
            return _desk(room, _plain(text), name, seen, refused)
        return RedirectResponse(f"/recipes/{name.strip()}", 303)

    @router.get("/recipes/{name}/change")
    def change(name: str) -> HTMLResponse:
        recipe = recipe_named(room, name)
        if name in shipped_names():
            return _desk(room, recipe.text, f"my-{name}", NEW)
        return _desk(room, recipe.text, name, fingerprint(recipe.text))

    return router


def _desk(room: Room, text: str, name: str, seen: str, refused: Problem | None = None) -> HTMLResponse:
    """The page on which a recipe is written; what was typed is there whatever happens."""
    status = STATUS.get(refused.code, 422) if refused else 200
    told = read_text(room, text[: MOST_CHARACTERS + 1], "")
    values = {"text": text, "name": name, "seen": seen, "told": told, "refused": refused}
    return render(room, "write.html", status, **values)


def _text_in(file: UploadFile) -> str | Problem:
    """The text of a file that was chosen; whatever is no text is none, whatever the file is called."""
    raw = file.file.read(LARGEST + 1)
    try:
        text = _plain(raw.decode("utf-8"))
    except UnicodeDecodeError:
        text = "\0"
    if len(raw) > LARGEST or len(text) > MOST_CHARACTERS:
        return Problem(
            "recipe-too-long", f"This file is longer than a recipe: {MOST_CHARACTERS} characters at most."
        )
    if "\0" in text:
        return Problem("recipe-not-text", "This file is no text, so it is no recipe.")
    return text


def _plain(text: str) -> str:
    """A text as files have it: a form sends two signs for the end of a line."""
    return text.replace("\r\n", "\n").replace("\r", "\n")
