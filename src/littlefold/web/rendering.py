"""Templates made into pages; whatever is put into one is escaped."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from starlette.responses import HTMLResponse

if TYPE_CHECKING:
    from littlefold.web.room import Room


@lru_cache(maxsize=1)
def _templates() -> Environment:
    return Environment(
        loader=PackageLoader("littlefold.web"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def render(room: Room, template: str, status: int = 200, **values: Any) -> HTMLResponse:
    """A page."""
    return HTMLResponse(words(room, template, **values), status)


def words(room: Room, template: str, **values: Any) -> str:
    """The HTML of a template."""
    light, visitor = room.preferences.light, room.visitor.value
    return _templates().get_template(template).render(light=light, visitor=visitor, **values)
