"""What surrounds the work and is not the pattern: where it is worn, its paper and its cloth."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Circumstances:
    """The answers that some checks ask for; every one has a default that lets the check be silent or careful.

    Attributes:
        region: Whose safety rules come first: `eu`, `uk`, `us` or any other word.
        us_size: The size on the label in US sizes, such as `2T` or `10`; empty when it is not known.
        paper: Width and height of the sheets a pattern is drawn on by hand [mm]; None when any will do.
        cloth_width: Usable width of the cloth [mm]; None when it is not known.
        label: Width and height that the words on a piece need [mm].
        stretch: How much longer the main cloth stretches in use, as a part of itself; 0 for a woven cloth.
        fold_margin: How much wider than the widest half piece the folded paper should be [mm].
    """

    region: str = "eu"
    us_size: str = ""
    paper: tuple[float, float] | None = None
    cloth_width: float | None = None
    label: tuple[float, float] = (60.0, 25.0)
    stretch: float = 0.0
    fold_margin: float = 25.4
