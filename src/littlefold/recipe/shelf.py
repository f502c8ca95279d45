"""The recipes that come with the program, by name; read once from the package."""

from __future__ import annotations

from functools import lru_cache
from importlib.resources import files

_ENDING = ".recipe"


@lru_cache(maxsize=1)
def shipped_names() -> tuple[str, ...]:
    """The names of the shipped recipes, in alphabetical order."""
    entries = (entry.name for entry in files("littlefold.recipe").joinpath("library").iterdir())
    return tuple(sorted(name.removesuffix(_ENDING) for name in entries if name.endswith(_ENDING)))


@lru_cache(maxsize=64)
def shipped_text(name: str) -> str | None:
    """The text of a shipped recipe; None when there is none of that name.

    A name is only ever looked for among `shipped_names`; it is never taken for a path.
    """
    if name not in shipped_names():
        return None
    return files("littlefold.recipe").joinpath("library", name + _ENDING).read_text(encoding="utf-8")
