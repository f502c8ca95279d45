"""What every sheet of one job says about itself."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from datetime import date


@dataclass(frozen=True, slots=True)
class Imprint:
    """The title, the date, the cautions that must be read before anyone cuts or sews, and the language of the words."""

    title: str
    made: date
    cautions: tuple[str, ...] = ()
    language: str = "en"
