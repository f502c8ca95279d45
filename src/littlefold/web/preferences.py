"""What the maker has set once for all: units, the marks of her tape, her paper, the place she lives in."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Final, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from littlefold.body.tape import MARKS
from littlefold.draft.desk import DEFAULT_ALLOWANCES
from littlefold.draft.sentence import languages
from littlefold.sheet.paper import Paper, read_paper
from littlefold.web.files import write_whole

if TYPE_CHECKING:
    from pathlib import Path

Units = Literal["cm", "in"]
Region = Literal["eu", "uk", "us"]
Light = Literal["day", "dark"]

FILE: Final = "settings.json"
WIDEST: Final = 150.0
"""No allowance is wider [mm]: it would be another piece."""


@dataclass(frozen=True, slots=True)
class Preferences:
    """The settings; every one has a value from the first day.

    Attributes:
        units: In which lengths are said.
        tape: The mark to which the pencil measures, by name.
        paper: As written.
        region: Whose safety rules are named first.
        light: The light of the room.
        language: Of the steps and sheets.
        seam: What is added to a seam where the recipe says nothing [mm].
        hem: What is added to a hem where the recipe says nothing [mm].
    """

    units: Units = "cm"
    tape: str = "exact"
    paper: str = "A4"
    region: Region = "eu"
    light: Light = "day"
    language: str = "en"
    seam: float = DEFAULT_ALLOWANCES["seam"]
    hem: float = DEFAULT_ALLOWANCES["hem"]

    @property
    def allowances(self) -> dict[str, float]:
        """Her own allowances by kind of edge [mm]; a gathered edge is sewn as a seam."""
        return {"seam": self.seam, "gathered": self.seam, "hem": self.hem}


class _Kept(BaseModel):
    model_config = ConfigDict(extra="ignore", strict=True)

    units: Units = "cm"
    tape: str = "exact"
    paper: str = "A4"
    region: Region = "eu"
    light: Light = "day"
    language: str = "en"
    seam: float = Field(DEFAULT_ALLOWANCES["seam"], gt=0, le=WIDEST)
    hem: float = Field(DEFAULT_ALLOWANCES["hem"], gt=0, le=WIDEST)


def read_preferences(folder: Path) -> Preferences:
    """The settings of a folder; the first ones where none are kept or they cannot be read."""
    try:
        text = (folder / FILE).read_bytes()
    except OSError:
        return Preferences()
    return preferences_in(text) or Preferences()


def preferences_in(text: bytes) -> Preferences | None:
    """The settings that a file holds; None where it cannot be read as such."""
    try:
        kept = _Kept.model_validate_json(text)
    except ValidationError:
        return None
    sound = kept.tape in MARKS and isinstance(read_paper(kept.paper), Paper) and kept.language in languages()
    return Preferences(**kept.model_dump()) if sound else None


def keep_preferences(folder: Path, preferences: Preferences) -> None:
    """Keeps the settings."""
    folder.mkdir(parents=True, exist_ok=True)
    write_whole(folder / FILE, settings_text(preferences).encode())


def settings_text(preferences: Preferences) -> str:
    """The settings as their file has them."""
    return json.dumps(asdict(preferences), indent=1)
