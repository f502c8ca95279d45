"""What surrounds the work, as asked on the command line: whose rules, which cloth, which paper to draw on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.body.tape import read_length
from littlefold.check import Circumstances
from littlefold.check.wearer import US_SIZES
from littlefold.cli.typed import not_one_of
from littlefold.problem import Problem
from littlefold.sheet.paper import read_paper

if TYPE_CHECKING:
    from littlefold.cli.asked import Asked

REGIONS = ("eu", "uk", "us")


def surroundings(asked: Asked) -> tuple[Circumstances, tuple[Problem, ...]]:
    """The circumstances that were meant, and everything that could not be understood."""
    cloth, drawn_on = _cloth_width(asked.cloth_width), _drawn_on(asked.draw_on)
    size = asked.us_size.lower().replace(" ", "")
    problems = (
        *(one for one in (cloth, drawn_on) if isinstance(one, Problem)),
        *not_one_of("--us-size", size, US_SIZES if size else ("",)),
        *not_one_of("--region", asked.region, REGIONS),
    )
    if isinstance(cloth, Problem) or isinstance(drawn_on, Problem):
        return Circumstances(), problems
    return Circumstances(asked.region, size, drawn_on, cloth), problems


def _cloth_width(text: str | None) -> float | Problem | None:
    """The usable width of the cloth [mm]; None where it is not said."""
    if text is None:
        return None
    found = read_length(text)
    if isinstance(found, Problem):
        return Problem("option-not-understood", f"--cloth-width: {found.message}")
    if found <= 0:
        return Problem("option-not-understood", f"--cloth-width {text}: the width must be larger than 0.")
    return found


def _drawn_on(text: str | None) -> tuple[float, float] | Problem | None:
    """Width and height of the paper drawn on by hand [mm]; None where any will do."""
    if text is None:
        return None
    found = read_paper(text, margin=0.0)
    return found if isinstance(found, Problem) else (found.width, found.longest)
