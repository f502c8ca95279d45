"""Classes: pupils who draw the same garment, each with her own numbers; made, changed, put away."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated, Any
from urllib.parse import urlencode

from fastapi import APIRouter, Depends
from fastapi.responses import HTMLResponse, RedirectResponse, Response
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.problem import Problem
from littlefold.store import ClassBook, SewingClass
from littlefold.store.sewing_class import MOST_PUPILS
from littlefold.web.asked import understand
from littlefold.web.garment import garment
from littlefold.web.pages import class_pages
from littlefold.web.pages.children_box import NOT_UNDERSTOOD, Cards, Field, refusal
from littlefold.web.pages.class_drafts import choice_names
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from collections.abc import Callable

Json = dict[str, Any]

SEE_OTHER = 303
LONGEST = 200
MOST_FIELDS = 200


def routes(cards: Cards) -> APIRouter:
    """The routes of the classes."""
    router = APIRouter()
    _making(router, cards)
    _changing(router, cards)
    router.include_router(class_pages.routes(cards))
    return router


async def _in_form(request: Request) -> Json:
    """The fields of a form, whatever they are called; of the pupils all."""
    form = await request.form(max_files=0, max_fields=MOST_FIELDS)
    fields = {name: text[:LONGEST] for name, text in form.items() if isinstance(text, str)}
    pupils = tuple(str(one)[:LONGEST] for one in form.getlist("pupil"))[: MOST_PUPILS + 1]
    return fields | {"pupils": pupils}


Form = Annotated[Json, Depends(_in_form)]


def _making(router: APIRouter, cards: Cards) -> None:
    @router.get("/classes")
    def classes(request: Request) -> HTMLResponse:
        fields = {name: text[:LONGEST] for name, text in request.query_params.items() if name != "name"}
        return _list(cards, _typed(cards, fields | {"pupils": ()}, SewingClass("", "")))

    @router.post("/classes")
    def add(fields: Form) -> Response:
        new = _typed(cards, fields, SewingClass("", ""))
        return _kept(cards, fields, new, lambda book: book.add(new) or new)


def _changing(router: APIRouter, cards: Cards) -> None:
    @router.post("/class")
    def change(fields: Form) -> Response:
        name = fields.get("was", "")

        def changed(book: ClassBook) -> SewingClass | tuple[Problem, ...]:
            return book.change(name, lambda old: _typed(cards, fields, old))

        return _kept(cards, fields, _typed(cards, fields, SewingClass(name, "")), changed)

    @router.post("/class/away")
    def away(name: Field = "") -> Response:
        box = cards.box()
        fault = box if isinstance(box, Problem) else ClassBook(box.engine).remove(name)
        return refusal(cards.room, fault) if fault else RedirectResponse("/classes", SEE_OTHER)


def _typed(cards: Cards, fields: Json, old: SewingClass) -> SewingClass:
    """The class as it was typed; what a form does not ask stays as it was."""
    room, name = cards.room, fields.get("name", old.name).strip()
    recipe = room.recipe(fields.get("recipe", old.recipe))
    if recipe is None:
        return SewingClass(name, "", (), fields["pupils"])
    known = choice_names(recipe)
    typed = {one: fields[one].strip() for one in known if one in fields}
    settled = understand(recipe, typed | {"bare-numbers": room.preferences.units}, room.preferences).typed
    before = ((one, word) for one, word in old.choices if one in known and one not in typed)
    return SewingClass(name, fields.get("recipe", old.recipe), (*before, *settled), fields["pupils"])


def _kept(
    cards: Cards,
    fields: Json,
    typed: SewingClass,
    keep: Callable[[ClassBook], SewingClass | tuple[Problem, ...]],
) -> Response:
    """The class by its own link; where it cannot be kept, the list with what was typed."""
    box = cards.box()
    kept = (box,) if isinstance(box, Problem) else keep(ClassBook(box.engine))
    if isinstance(kept, SewingClass):
        return RedirectResponse("/class?" + urlencode({"name": kept.name}), SEE_OTHER)
    if kept[0].code == "card-box-not-opened":
        return refusal(cards.room, kept[0], {key: str(text) for key, text in fields.items()})
    complaints = tuple(one.message for one in kept)
    was = fields.get("was", "")
    return class_pages.class_page(cards, was, typed, complaints) if was else _list(cards, typed, complaints)


def _list(cards: Cards, typed: SewingClass | None = None, complaints: tuple[str, ...] = ()) -> HTMLResponse:
    box, room = cards.box(), cards.room
    if isinstance(box, Problem):
        return refusal(room, box)
    found = [(one, room.recipe(one.recipe)) for one in ClassBook(box.engine).classes()]
    return render(
        room,
        "classes.html",
        NOT_UNDERSTOOD if complaints else 200,
        classes=[
            {
                "name": one.name,
                "recipe": one.recipe,
                "title": recipe.title if recipe else "",
                "pupils": one.pupils,
            }
            for one, recipe in found
        ],
        names=box.names(),
        garments=[garment(recipe) for recipe in room.recipes()],
        typed=typed or SewingClass("", ""),
        complaints=complaints,
    )
