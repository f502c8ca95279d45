"""The drafts that lay on the table last: links, kept in the maker's folder so that a restart loses none of them."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from datetime import date  # noqa: TC003 - pydantic reads the annotations
from threading import Lock
from typing import TYPE_CHECKING, Final
from urllib.parse import urlencode

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from littlefold.store import key_of
from littlefold.web.files import write_whole
from littlefold.web.kept_lays import forget_lays
from littlefold.web.visitor import Visitor

if TYPE_CHECKING:
    from pathlib import Path

    from littlefold.web.asked import Asked
    from littlefold.web.room import Room

FILE: Final = "recent.json"
MOST: Final = 9
"""So many are kept; the first page shows them all."""
LONGEST: Final = 6000
PASSING: Final = frozenset({"on-sheet", "on-paper", "search", "search-of", "on-cloth"})
"""Words of a link that say how it is looked at, not what is drawn."""
_WRITING = Lock()


@dataclass(frozen=True, slots=True)
class Recent:
    """A draft that lay on the table.

    Attributes:
        recipe: Its name.
        fields: What its link says, in order.
        day: When it was last there.
    """

    recipe: str
    fields: tuple[tuple[str, str], ...]
    day: date

    @property
    def who(self) -> str:
        """For whom it is; empty for a size of the chart."""
        return dict(self.fields).get("for-name", "")

    @property
    def link(self) -> str:
        """The link that lays it on the table again."""
        return f"/table/{self.recipe}?{urlencode(self.fields)}"


class _Kept(BaseModel):
    model_config = ConfigDict(extra="ignore")

    recipe: str = Field(max_length=200)
    fields: list[tuple[str, str]] = Field(max_length=120)
    day: date


def read_recent(folder: Path) -> tuple[Recent, ...]:
    """The drafts of a folder, the newest first; none where none are kept or they cannot be read."""
    try:
        return recent_in((folder / FILE).read_bytes()) or ()
    except OSError:
        return ()


def recent_in(content: bytes) -> tuple[Recent, ...] | None:
    """The drafts that a file tells of, the newest first; None where it is no such file."""
    try:
        kept = [_Kept.model_validate(one) for one in json.loads(content)][:MOST]
    except (ValueError, TypeError, ValidationError, RecursionError):
        return None
    return tuple(Recent(one.recipe, tuple(one.fields), one.day) for one in kept)


def recent_text(drafts: tuple[Recent, ...]) -> bytes:
    """The file that tells of these drafts."""
    records = [asdict(one) | {"day": one.day.isoformat()} for one in drafts[:MOST]]
    return json.dumps(records, ensure_ascii=False).encode()


def keep_recent(folder: Path, one: Recent) -> None:
    """Puts a draft in front; of the same garment for the same child the newest is kept alone."""
    if len(urlencode(one.fields)) > LONGEST:
        return
    with _WRITING:
        known = read_recent(folder)
        if known[:1] == (one,):
            return
        others = (each for each in known if (each.recipe, key_of(each.who)) != (one.recipe, key_of(one.who)))
        _write(folder, (one, *others))


def on_the_table(room: Room, recipe: str, asked: Asked) -> None:
    """Keeps what the maker has on her table; what the class draws is not hers to find there."""
    if asked.typed and room.visitor is not Visitor.PUPIL:
        fields = tuple((name, text) for name, text in asked.typed if name not in PASSING)
        keep_recent(room.folder, Recent(recipe, fields, room.today()))


def forget_child(folder: Path, name: str) -> None:
    """Lets go of all drafts and lays for a child; nothing of an erased child may stay."""
    forget_lays(folder, name)
    with _WRITING:
        known = read_recent(folder)
        left = without_child(known, name)
        if left != known:
            _write(folder, left)


def without_child(drafts: tuple[Recent, ...], name: str) -> tuple[Recent, ...]:
    """Those of the drafts that are not for this child."""
    return tuple(one for one in drafts if key_of(one.who) != key_of(name))


def put_recent(folder: Path, drafts: tuple[Recent, ...]) -> None:
    """Puts these drafts in the place of those that are kept.

    Raises:
        OSError: They cannot be written.
    """
    with _WRITING:
        _write(folder, drafts)


def _write(folder: Path, drafts: tuple[Recent, ...]) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    write_whole(folder / FILE, recent_text(drafts))
