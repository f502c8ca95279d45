"""From a request to what was asked: the recipe must exist, the rest is made the best of."""

from __future__ import annotations

from typing import TYPE_CHECKING

from starlette.exceptions import HTTPException

from littlefold.web.asked import understand

if TYPE_CHECKING:
    from starlette.requests import Request

    from littlefold.recipe.recipe import Recipe
    from littlefold.web.asked import Asked
    from littlefold.web.room import Room

NOT_FOUND = 404


def recipe_named(room: Room, name: str) -> Recipe:
    """The recipe of a link.

    Raises:
        HTTPException: There is none.
    """
    recipe = room.recipe(name)
    if recipe is None:
        raise HTTPException(NOT_FOUND)
    return recipe


def asked_in(room: Room, name: str, request: Request) -> Asked:
    """What a link asks for.

    Raises:
        HTTPException: There is no such recipe.
    """
    return understand(recipe_named(room, name), request.query_params, room.preferences)
