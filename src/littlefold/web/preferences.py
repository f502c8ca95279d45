"""What the maker has set once for all: units, the marks of her tape, her paper, the place she lives in."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Final, Literal

from pydantic import BaseModel, ConfigDict, ValidationError

from littlefold.body.tape import MARKS
from littlefold.sheet.paper import Paper, read_paper
from littlefold.web.files import write_whole

if TYPE_CHECKING:
    from pathlib import Path

Units = Literal["cm", "in"]
Region = Literal["eu", "uk", "us"]
Light = Literal["day", "dark"]

FILE: Final = "settings.json"


@dataclass(frozen=True, slots=True)
class Preferences:
    """The settings; every one has a value from the first day."""

    units: Units = "cm"
    tape: str = "exact"
    paper: str = "A4"
    region: Region = "eu"
    light: Light = "day"


class _Kept(BaseModel):
    model_config = ConfigDict(extra="ignore", strict=True)

    units: Units = "cm"
    tape: str = "exact"
    paper: str = "A4"
    region: Region = "eu"
    light: Light = "day"


def read_preferences(folder: Path) -> Preferences:
    """The settings of a folder; the first ones where none are kept or they cannot be read."""
    try:
        kept = _Kept.model_validate(json.loads((folder / FILE).read_text(encoding="utf-8")))
    except (OSError, ValueError, ValidationError, RecursionError):
        return Preferences()
    sound = kept.tape in MARKS and isinstance(read_paper(kept.paper), Paper)
    return Preferences(**kept.model_dump()) if sound else Preferences()


def keep_preferences(folder: Path, preferences: Preferences) -> None:
    """Keeps the settings."""
    folder.mkdir(parents=True, exist_ok=True)
    write_whole(folder / FILE, json.dumps(asdict(preferences), indent=1).encode())
