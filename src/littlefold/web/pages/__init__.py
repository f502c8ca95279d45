"""One file for a family of pages; each makes the routes of its family for a room."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.web.pages import (
    children,
    cloth,
    compare,
    drawings,
    garments,
    home,
    printing,
    recipes,
    settings,
    steps,
    table,
    writing,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from fastapi import APIRouter

    from littlefold.web.room import Room

FAMILIES: tuple[Callable[[Room], APIRouter], ...] = (
    home.routes,
    garments.routes,
    drawings.routes,
    table.routes,
    steps.routes,
    printing.routes,
    children.routes,
    cloth.routes,
    recipes.routes,
    writing.routes,
    settings.routes,
    compare.routes,
)
