"""Ways and widths beside each other, with what is asked of single places and pieces carried over or refused in words."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Final

from littlefold.lay.compare import Row, best_row
from littlefold.lay.place import Effort
from littlefold.lay.unfolded import spots_laid
from littlefold.lay.ways import Spread, Way, spread
from littlefold.problem import Problem
from littlefold.web.pages.cloth_asked import COMPARED_WAYS

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    import shapely

    from littlefold.lay.cloth import Cloth
    from littlefold.web.pages.cloth_laid import OnCloth

COMPARED: Final = (1120.0, 1400.0, 1500.0)
"""Widths that are compared beside the one that was asked for [mm]: those of most cottons, from memory of the trade."""
ONE_WIDTH: Final = "The damaged spots are those of this cloth, so other widths are left out."
TOGETHER: Final = "Front and back are cut at once in each of these ways."


def comparing(on: OnCloth) -> Callable[[Callable[[], bool]], Iterator[Row]]:
    """The work of laying the pieces in every way, on the width that was asked for and on usual ones."""

    def work(keep_going: Callable[[], bool]) -> Iterator[Row]:
        for width in _widths(on):
            cloth = replace(on.asked.cloth, width=width)
            for way in (Way.TUBE,) if cloth.tube else COMPARED_WAYS:
                yield _row(on, cloth, way, Effort(0, keep_going=keep_going))

    return work


def parts_of(on: OnCloth) -> int:
    """How many rows there will be."""
    return len(_widths(on)) * (1 if on.asked.cloth.tube else len(COMPARED_WAYS))


def remarks_on(on: OnCloth) -> tuple[str, ...]:
    """What is to be known of the comparison as a whole."""
    return (*((ONE_WIDTH,) if on.spots else ()), *((TOGETHER,) if on.together else ()))


def _widths(on: OnCloth) -> list[float]:
    usual = () if on.asked.cloth.tube or on.spots else COMPARED
    return sorted({on.asked.cloth.width, *usual})


def _row(on: OnCloth, cloth: Cloth, way: Way, effort: Effort) -> Row:
    spots = _spots(on, cloth, way)
    problem = spots if isinstance(spots, Problem) else _unkept(on, way)
    if isinstance(spots, Problem) or problem is not None:
        assert problem is not None  # noqa: S101 - one of the two it is
        return Row(way, cloth.width, None, None, (problem,))
    return best_row(on.pieces, cloth, way, effort, on.asked.gap, pins=on.pins, holes=spots)


def _spots(on: OnCloth, cloth: Cloth, way: Way) -> tuple[shapely.Polygon, ...] | Problem:
    """The damaged spots where they come when the same cloth is laid another way."""
    was, now = (spread(cloth, one, on.pieces) for one in (on.asked.way, way))
    if not on.spots or not isinstance(was, Spread) or not isinstance(now, Spread):
        return on.spots
    return spots_laid(on.spots, was, now)


def _unkept(on: OnCloth, way: Way) -> Problem | None:
    """Why a way cannot take the kept places."""
    if not on.pins or way is on.asked.way:
        return None
    names = ", ".join(dict.fromkeys(pin.piece.replace("_", " ") for pin in on.pins))
    words = (
        f"The place kept for {names} is one of cloth laid {on.asked.way}; {way}, it would be another place of the cloth. "
        "Lay it so, and say the place anew."
    )
    return Problem("kept-place-not-carried", words)
