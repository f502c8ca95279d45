"""The words of the sheets in a language, from `words/<language>.toml`."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date

DEFAULT = "en"


@lru_cache
def sheet_words(language: str) -> Mapping[str, Any]:
    """The table of a language; English where there is none, since a sheet without words helps nobody."""
    folder = files("littlefold.sheet").joinpath("words")
    entry = folder.joinpath(f"{language}.toml")
    return tomllib.loads(
        (entry if entry.is_file() else folder.joinpath(f"{DEFAULT}.toml")).read_text("utf-8")
    )


def spoken_date(made: date, language: str = DEFAULT) -> str:
    """A date nobody can take for another: `25 Nov 2026`."""
    words = sheet_words(language)
    return str(words["date"].format(day=made.day, month=words["months"][made.month - 1], year=made.year))


def counted(count: int, what: str, language: str) -> str:
    """`1 page`, `3 rows`."""
    return str(sheet_words(language)["one" if count == 1 else "many"][what].format(count=count))
