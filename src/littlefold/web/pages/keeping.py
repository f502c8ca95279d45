"""Where the maker's things are kept: backed up with a click, taken along as a file, put back from one."""

from __future__ import annotations

import shutil
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Annotated, Any
from urllib.parse import urlencode

from fastapi import APIRouter, Form, UploadFile
from fastapi.responses import RedirectResponse, Response
from starlette.exceptions import HTTPException
from starlette.requests import Request  # noqa: TC002 - FastAPI reads the signature

from littlefold.problem import Problem
from littlefold.store.backup import holding
from littlefold.web.belongings import (
    LARGEST_FILE,
    PutBack,
    is_cards_alone,
    keep_copy,
    kept_copies,
    packed_up,
    put_back,
)
from littlefold.web.box_keeper import address_in
from littlefold.web.pages import children_drafts

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.web.pages.children_box import Cards

Json = dict[str, Any]

SEE_OTHER = 303
NOT_FOUND = 404
SHOWN = 20
"""So many backups are listed, the newest first; the others lie in the folder."""


def routes(cards: Cards, page: Callable[..., Response]) -> APIRouter:
    """The routes of keeping; `page` makes the page of the settings with a complaint on it."""
    router, room = APIRouter(), cards.room

    @router.post("/settings/backup")
    def back_up(request: Request) -> Response:
        box = cards.box()
        made = box if isinstance(box, Problem) else keep_copy(box, room.folder, _now())
        if isinstance(made, Problem):
            return page(request, made.message)
        return RedirectResponse(f"/settings?{urlencode({'made': made.cards.name})}#kept", SEE_OTHER)

    @router.get("/settings/backups/{name}")
    def take_along(name: str) -> Response:
        found = _named(cards, name)
        if found is None:
            raise HTTPException(NOT_FOUND)
        named = f'attachment; filename="{_title(found)}.zip"'
        headers = {"content-disposition": named, "cache-control": "no-store"}
        return Response(packed_up(found), media_type="application/zip", headers=headers)

    @router.post("/settings/restore")
    def restore(
        request: Request,
        file: UploadFile | None = None,
        name: Annotated[str, Form()] = "",
        agreed: Annotated[str, Form()] = "",
    ) -> Response:
        if not agreed:
            return page(request, "Tick that what is here now shall be replaced. Nothing was changed.")
        done = _from_list(cards, name) if name else _from_upload(cards, file)
        if not isinstance(done, PutBack):
            return page(request, " ".join(one.message for one in done[:3]))
        return RedirectResponse("/settings?restored=1#kept", SEE_OTHER)

    return router


def told(cards: Cards, request: Request) -> Json:
    """What the page of the settings says of keeping."""
    address, box = address_in(cards.room.folder), cards.box()
    known = () if isinstance(address, Problem) else kept_copies(address)
    made = request.query_params.get("made", "")
    return {
        "folder": str(cards.room.folder),
        "cards_in": address.message if isinstance(address, Problem) else str(address),
        "box_fault": box.message if isinstance(box, Problem) else "",
        "holds": None if isinstance(box, Problem) else holding(box.cards()),
        "own_recipes": len(cards.room.own.names()),
        "backups": [_line(one) for one in known[:SHOWN]],
        "older": max(len(known) - SHOWN, 0),
        "made": made if made in {one.name for one in known} else "",
        "made_title": _title(Path(made)),
        "restored": "restored" in request.query_params,
    }


def _line(file: Path) -> Json:
    made = file.stat()
    day = datetime.fromtimestamp(made.st_mtime, tz=UTC).astimezone()
    size = f"{max(made.st_size // 1000, 1)} kB"
    return {
        "name": file.name,
        "day": f"{day:%Y-%m-%d %H:%M:%S}",
        "size": f"{size}, the cards alone" if is_cards_alone(file) else size,
    }


def _title(cards: Path) -> str:
    """What a backup is called when it is taken along."""
    return f"littlefold-{cards.stem.removeprefix('cards-')}"


def _now() -> datetime:
    return datetime.now(tz=UTC).astimezone()


def _named(cards: Cards, name: str) -> Path | None:
    """The backup of that name; no name is made into a path, it is looked for among those there are."""
    address = address_in(cards.room.folder)
    known = () if isinstance(address, Problem) else kept_copies(address)
    return next((one for one in known if one.name == name), None)


def _from_list(cards: Cards, name: str) -> PutBack | tuple[Problem, ...]:
    found = _named(cards, name)
    if found is None:
        return (Problem("backup-unknown", "There is no such backup any more. Nothing was changed."),)
    with TemporaryDirectory(prefix="littlefold-") as folder:
        packed = Path(folder) / "packed"
        packed.write_bytes(packed_up(found))
        return _put(cards, packed)


def _from_upload(cards: Cards, file: UploadFile | None) -> PutBack | tuple[Problem, ...]:
    if file is None or not file.filename:
        return (Problem("file-missing", "Choose a file first."),)
    if (file.size or 0) > LARGEST_FILE:
        return (Problem("backup-too-large", "This file is too large for a backup. Nothing was changed."),)
    with TemporaryDirectory(prefix="littlefold-") as folder:
        taken = Path(folder) / "taken-in"
        with taken.open("wb") as copy:
            shutil.copyfileobj(file.file, copy)
        return _put(cards, taken)


def _put(cards: Cards, file: Path) -> PutBack | tuple[Problem, ...]:
    room, box = cards.room, cards.box()
    address = address_in(room.folder)
    if isinstance(address, Problem):
        return (address,)
    done = put_back(file, None if isinstance(box, Problem) else box, address, room.folder, _now())
    if isinstance(done, PutBack):
        room.keeper.close()
        children_drafts.forget()
        room.making.forget()
    return done
