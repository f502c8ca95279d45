"""One file for a family of pages; each makes the routes of its family for a room."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.web.pages import (
    children,
    cloth,
    compare,
    drawings,
    first,
    garments,
    home,
    printing,
    recipes,
    settings,
    size_runs,
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
    first.routes,
    garments.routes,
    drawings.routes,
    table.routes,
    steps.routes,
    printing.routes,
    size_runs.routes,
    children.routes,
    cloth.routes,
    recipes.routes,
    writing.routes,
    settings.routes,
    compare.routes,
)

FOR_PUPILS: tuple[Callable[[Room], APIRouter], ...] = (
    home.routes,
    first.routes,
    garments.routes,
    drawings.routes,
    table.routes,
    steps.routes,
    printing.routes,
    size_runs.routes,
    cloth.routes,
    recipes.routes,
    compare.routes,
)
"""What the class's passphrase opens: garments, drafting and what comes of it; no card, no settings, no writing."""
