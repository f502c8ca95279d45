"""The words of the instruction sheet in a language, from `words/<language>.toml`."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

DEFAULT = "en"


@lru_cache
def wording(language: str) -> Mapping[str, Mapping[str, str]]:
    """The table of a language; English where there is none, since a sheet without headings helps nobody."""
    folder = files("littlefold.booklet").joinpath("words")
    known = {entry.name.removesuffix(".toml") for entry in folder.iterdir() if entry.name.endswith(".toml")}
    name = language if language in known else DEFAULT
    return tomllib.loads(folder.joinpath(f"{name}.toml").read_text("utf-8"))
