"""What pages say of work that goes on beside them: how far it is, and that enough is going on already."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from fastapi.responses import JSONResponse
from starlette.exceptions import HTTPException

from littlefold.web.at_door import NOT_FOUND
from littlefold.web.rendering import render

if TYPE_CHECKING:
    from fastapi.responses import HTMLResponse

    from littlefold.web.long_work import LongWorks
    from littlefold.web.room import Room

BUSY: Final = 503


def progress(works: LongWorks, name: str) -> JSONResponse:
    """How far a piece of work is, for the page that shows it.

    Raises:
        HTTPException: There is no such work.
    """
    going = works.find(name)
    if going is None:
        raise HTTPException(NOT_FOUND)
    return JSONResponse({"share": round(going.share, 3), "over": going.is_over})


def busy(room: Room, typed: list[tuple[str, str]]) -> HTMLResponse:
    """The page that says that enough is going on already, and keeps what was typed."""
    sentence = "Two such pieces of work are going on already. Stop one of them, or wait for its end."
    return render(room, "sentence.html", BUSY, sentence=sentence, typed=typed)
