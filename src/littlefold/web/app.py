"""The workroom as an application: for the maker alone, or shared behind a door."""

from __future__ import annotations

import time
from contextlib import asynccontextmanager
from dataclasses import replace
from importlib.resources import files
from typing import TYPE_CHECKING, Any

from fastapi import FastAPI
from starlette.staticfiles import StaticFiles

from littlefold.web.door import Door, Doorkeeper
from littlefold.web.failing import Failing, say_failures
from littlefold.web.guard import Guard
from littlefold.web.long_work import LongWorks
from littlefold.web.pages import FAMILIES, FOR_PUPILS
from littlefold.web.pages.door import door_routes
from littlefold.web.sessions import Sessions
from littlefold.web.tries import Tries
from littlefold.web.visitor import Visitor

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Callable, Iterable

    from fastapi import APIRouter
    from starlette.types import ASGIApp

    from littlefold.web.room import Room


def make_app(room: Room) -> FastAPI:
    """The application of one workroom, for the machine on which it stands."""
    app = _with_pages(room, (family(room) for family in FAMILIES))
    app.add_middleware(Guard)
    return app


def make_shared(
    room: Room,
    names: frozenset[str] = frozenset(),
    clock: Callable[[], float] = time.time,
    stopwatch: Callable[[], float] = time.monotonic,
) -> ASGIApp:
    """The application of a workroom that is shared on the room's network, behind a door.

    The class has an application of its own, which has no other pages than those it may open.

    Args:
        room: The workroom.
        names: By which names this machine is called; its addresses need no naming.
        clock: The time of day, for sessions [s].
        stopwatch: A clock that only goes forward, for tries [s].
    """
    for_pupils = replace(room, visitor=Visitor.PUPIL, searches=LongWorks())
    pupils = _with_pages(for_pupils, (family(for_pupils) for family in FOR_PUPILS))
    for_teacher = replace(room, visitor=Visitor.TEACHER)
    teacher = _with_pages(for_teacher, (family(for_teacher) for family in FAMILIES), beside=pupils)
    keeper = Doorkeeper(replace(room, visitor=Visitor.NOBODY), Sessions(clock), Tries(stopwatch))
    outside = _with_pages(keeper.room, (door_routes(keeper),))
    return Guard(Door(keeper, outside=outside, teacher=teacher, pupils=pupils), names=names, is_shared=True)


def _with_pages(room: Room, families: Iterable[APIRouter], beside: FastAPI | None = None) -> FastAPI:
    """An application of some families of pages; it opens and closes with one beside it."""
    opening = None if beside is None else _together(beside)
    app = FastAPI(title="Littlefold workroom", docs_url=None, redoc_url=None, lifespan=opening)
    app.mount("/static", StaticFiles(directory=str(files("littlefold.web").joinpath("static"))), "static")
    for family in families:
        app.include_router(family)
    say_failures(app, room)
    app.add_middleware(Failing, room=room)
    return app


def _together(beside: FastAPI) -> Any:
    @asynccontextmanager
    async def opening(_: FastAPI) -> AsyncIterator[None]:
        async with beside.router.lifespan_context(beside):
            yield

    return opening
