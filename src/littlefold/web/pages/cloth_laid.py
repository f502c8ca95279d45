"""The pieces of a draft on a cloth: a lay at once, better ones for as long as one likes, ways and widths in turn."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Final

from littlefold.lay.adapter import enlarged, lay_pieces
from littlefold.lay.compare import Row, compare
from littlefold.lay.lay import Lay
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.scraps import FromScraps, lay_on_scraps
from littlefold.lay.ways import Way
from littlefold.problem import Problem, Severity
from littlefold.web.pages.cloth_asked import COMPARED_WAYS, AskedCloth, read_cloth
from littlefold.web.pages.cloth_wished import as_wished, held

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    import shapely

    from littlefold.geometry import Point
    from littlefold.lay.cloth import Cloth
    from littlefold.lay.engine import Engine
    from littlefold.lay.lay import Placement
    from littlefold.lay.piece import LayPiece
    from littlefold.pipeline import Outcome
    from littlefold.web.preferences import Units

    Scraps = tuple[tuple[Point, ...], ...]
    Work = Callable[[Callable[[], bool]], Iterator[Any]]

ENDLESS: Final = 10**12
"""Moves of a search that its time alone ends."""
COMPARED: Final = (1120.0, 1400.0, 1500.0)
"""Widths that are compared beside the one that was asked for [mm]: those of most cottons, from memory of the trade."""


@dataclass(frozen=True, slots=True)
class OnCloth:
    """Pieces to be laid.

    Attributes:
        outcome: The draft they come from.
        names: The cloths of the garment.
        name: The one that is laid.
        asked: How that cloth is.
        pieces: What is cut from it, enlarged where that was chosen.
        pins: Pieces that are held at a place.
        problems: What was found when the pieces were put down.
    """

    outcome: Outcome
    names: tuple[str, ...]
    name: str
    asked: AskedCloth
    pieces: tuple[LayPiece, ...]
    pins: tuple[Placement, ...]
    problems: tuple[Problem, ...]


def on_cloth(outcome: Outcome, fields: Mapping[str, str], units: Units) -> OnCloth:
    """The pieces of a draft on the cloth that the fields of a link ask for."""
    names = tuple(dict.fromkeys(piece.cloth for piece in outcome.pattern.pieces))
    said = fields.get("cloth-name", "")
    name = said if said in names else next(iter(names), "main")
    asked = read_cloth(fields, name, units)
    found, problems = lay_pieces(outcome.pattern, name)
    pieces, wrong = as_wished(enlarged(found, asked.cloth), asked.wished)
    pins, missing = held(pieces, asked.way, asked.wished)
    unheeded = _unheeded(asked)
    return OnCloth(outcome, names, name, asked, pieces, pins, (*problems, *wrong, *missing, *unheeded))


def _unheeded(asked: AskedCloth) -> tuple[Problem, ...]:
    """What is said where spots and kept places have no meaning."""
    if asked.way is Way.SCRAPS and (asked.wished.spots or asked.wished.kept):
        sentence = (
            "On scraps no spots and no kept places are heeded: leave the spots out of the scraps you enter."
        )
        return (Problem("scraps-heed-no-spots", sentence, Severity.NOTE),)
    return ()


@lru_cache(maxsize=32)
def first_row(
    pieces: tuple[LayPiece, ...],
    cloth: Cloth,
    way: Way,
    scraps: Scraps = (),
    *,
    pins: tuple[Placement, ...] = (),
    spots: tuple[shapely.Polygon, ...] = (),
) -> Row:
    """A lay that is found at once and what is to be said of it, or why there is none."""
    if way is Way.SCRAPS:
        return _scrap_row(pieces, cloth, scraps, Effort(steps=0))
    prepared = prepare(pieces, cloth, way, pins=pins, holes=spots)
    if not isinstance(prepared, Prepared):
        return Row(way, cloth.width, None, None, prepared)
    lay = next(lays(prepared, Effort(steps=0)), None)
    told = prepared.bounds.advice() if lay else (Problem("lay-not-found", "No lay was found that holds."),)
    return Row(way, cloth.width, lay, prepared.bounds, told)


def _scrap_row(pieces: tuple[LayPiece, ...], cloth: Cloth, scraps: Scraps, effort: Effort) -> Row:
    """The pieces on scraps; a lay that leaves pieces out is none."""
    if not scraps:
        missing = Problem("scraps-missing", "Say how large the scraps are.")
        return Row(Way.SCRAPS, cloth.width, None, None, (missing,))
    found = lay_on_scraps(pieces, cloth, scraps, effort)
    if not isinstance(found, FromScraps):
        return Row(Way.SCRAPS, cloth.width, None, None, found)
    return Row(Way.SCRAPS, cloth.width, None if found.left_out else found.lay, None, found.problems)


def improving(on: OnCloth, engine: Engine | None = None, seconds: float = 0.0) -> Work:
    """The work of finding ever shorter lays; the engine, where there is one, is told how many seconds it has."""
    asked = on.asked

    def on_scraps(keep_going: Callable[[], bool]) -> Iterator[Lay]:
        lay = _scrap_row(on.pieces, asked.cloth, asked.scraps, Effort(ENDLESS, keep_going=keep_going)).lay
        if lay is not None:
            yield lay

    def work(keep_going: Callable[[], bool]) -> Iterator[Lay]:
        prepared = prepare(on.pieces, asked.cloth, asked.way, pins=on.pins, holes=asked.wished.spots)
        if isinstance(prepared, Prepared):
            effort = Effort(ENDLESS, keep_going=keep_going, engine=engine, seconds=round(seconds))
            yield from lays(prepared, effort)

    return on_scraps if asked.way is Way.SCRAPS else work


def comparing(on: OnCloth) -> Work:
    """The work of laying the pieces in every way, on the width that was asked for and on usual ones."""
    cloth = on.asked.cloth
    ways, usual = ((Way.TUBE,), ()) if cloth.tube else (COMPARED_WAYS, COMPARED)

    def work(keep_going: Callable[[], bool]) -> Iterator[Row]:
        widths = sorted({cloth.width, *usual})
        yield from compare(on.pieces, cloth, Effort(0, keep_going=keep_going), ways, widths)

    return work


def first_of(on: OnCloth) -> Row:
    """The lay that is found at once for what was asked."""
    asked = on.asked
    return first_row(on.pieces, asked.cloth, asked.way, asked.scraps, pins=on.pins, spots=asked.wished.spots)


def best_lay(on: OnCloth, found: Sequence[object]) -> Lay | None:
    """The last lay that a search has found for this very cloth, else the first lay."""
    first = first_of(on).lay
    last = next((one for one in reversed(found) if isinstance(one, Lay)), None)
    if last is None:
        return first
    if first is None:  # on scraps a search may find room where the first try did not
        return last if (last.spread.way, last.pieces) == (on.asked.way, on.pieces) else None
    is_same = (last.cloth, last.spread, last.pieces, last.holes) == (
        first.cloth,
        first.spread,
        first.pieces,
        first.holes,
    )
    return last if is_same else first


def all_lays(on: OnCloth, lay: Lay | None) -> tuple[Lay, ...]:
    """A lay for each cloth to be bought: the one that is shown, and the first for the others; scraps are there."""
    shown = None if on.asked.way is Way.SCRAPS else lay
    found = (shown if name == on.name else _other_lay(on, name) for name in on.names)
    return tuple(one for one in found if one is not None)


def _other_lay(on: OnCloth, name: str) -> Lay | None:
    pieces, _ = lay_pieces(on.outcome.pattern, name)
    cloth = replace(on.asked.cloth, name=name, price=None)
    way = Way.FOLDED if on.asked.way is Way.SCRAPS else on.asked.way
    return first_row(enlarged(pieces, cloth), cloth, way).lay
