"""What was asked on the command line, as it was typed.

It is imported before any command is known, so nothing of the drafting stands behind it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Sex = Literal["girl", "boy"]


@dataclass(frozen=True, slots=True)
class Asked:
    """The words of the command line."""

    recipe: str
    measure: tuple[str, ...] = ()
    child: str | None = None
    size: str | None = None
    choose: tuple[str, ...] = ()
    tape: str = "exact"
    units: str = "cm"
    paper: str = "a4"
    region: str = "eu"
    language: str = "en"
    us_size: str = ""
    cloth_width: str | None = None
    draw_on: str | None = None
    age: str | None = None
    sex: Sex | None = None
    margin: str | None = None
    overlap: str | None = None
    reduced: str = "page"

    @property
    def card(self) -> str | None:
        """The name of the child on whose card the draft is to be kept, if it is for one."""
        is_card = self.child is not None and self.child != "sample" and not self.child.endswith(".json")
        return self.child if is_card else None


def read_sex(girl: bool, boy: bool) -> Sex | None:
    """The sex that was said; neither or both leave it open."""
    if girl == boy:
        return None
    return "girl" if girl else "boy"
