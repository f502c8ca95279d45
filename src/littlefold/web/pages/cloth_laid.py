"""The pieces of a draft on each of its cloths: a lay at once, better ones for as long as one likes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from hashlib import sha256
from typing import TYPE_CHECKING, Any, Final

import shapely

from littlefold.lay.adapter import enlarged, lay_pieces
from littlefold.lay.compare import Row
from littlefold.lay.meeting import meetings
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.scraps import FromScraps, lay_on_scraps
from littlefold.lay.short import enough
from littlefold.lay.spoken import units_of
from littlefold.lay.twins import Twinned, no_twins, twinned
from littlefold.lay.unfolded import joined
from littlefold.lay.ways import Way
from littlefold.problem import Problem, Severity
from littlefold.web.pages.cloth_asked import AskedCloth, read_cloth, words_of
from littlefold.web.pages.cloth_wished import as_wished, held

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping, Sequence

    from littlefold.geometry import Point
    from littlefold.lay.cloth import Cloth
    from littlefold.lay.engine import Engine
    from littlefold.lay.lay import Lay, Placement
    from littlefold.lay.meeting import Meeting
    from littlefold.lay.piece import LayPiece
    from littlefold.pipeline import Outcome
    from littlefold.web.preferences import Units

    Scraps = tuple[tuple[Point, ...], ...]
    Work = Callable[[Callable[[], bool]], Iterator[Any]]

ENDLESS: Final = 10**12
"""Moves of a search that its time alone ends."""
MOST_CLOTHS: Final = 6
"""So many cloths of one garment have a slip."""
SAME_SPOT: Final = 0.01
"""A held piece this near to its place [mm] is in it."""


@dataclass(frozen=True, slots=True)
class OnCloth:
    """The pieces that are cut from one cloth of a garment.

    Attributes:
        outcome: The draft they come from.
        name: The cloth.
        is_first: Whether it is the garment's first cloth, whose words in a link are plain.
        asked: How that cloth is.
        pieces: What is cut from it, enlarged where that was chosen.
        seams: Where they meet, for stripes.
        pins: Pieces that are held at a place.
        problems: What was found when the pieces were put down.
        together: How pieces are parted that are cut at once, in sentences.
    """

    outcome: Outcome
    name: str
    is_first: bool
    asked: AskedCloth
    pieces: tuple[LayPiece, ...]
    seams: tuple[Meeting, ...]
    pins: tuple[Placement, ...]
    problems: tuple[Problem, ...]
    together: tuple[str, ...] = ()

    @property
    def spots(self) -> tuple[shapely.Polygon, ...]:
        """What cannot be used of the spread cloth."""
        return joined(self.asked.wished.spots)

    @property
    def who(self) -> str:
        """For whom it is; empty for nobody in particular."""
        return self.outcome.draft.measurements.nickname

    @property
    def question(self) -> str:
        """A digest of all that a lay of it depends on; what it costs and how much is in hand do not matter."""
        asked = self.asked
        spots = [spot.wkb_hex for spot in self.spots]
        put = (self.pieces, _bare(asked.cloth), asked.way, asked.gap, asked.scraps, self.pins, spots)
        return sha256(repr(put).encode()).hexdigest()


def on_cloths(outcome: Outcome, fields: Mapping[str, str], units: Units) -> tuple[OnCloth, ...]:
    """The pieces of a draft on each of its cloths, as the fields of a link ask for them; one at least."""
    names = tuple(dict.fromkeys(piece.cloth for piece in outcome.pattern.pieces))[:MOST_CLOTHS] or ("main",)
    return tuple(_on_cloth(outcome, fields, units, name, is_first=name == names[0]) for name in names)


def _on_cloth(
    outcome: Outcome, fields: Mapping[str, str], units: Units, name: str, *, is_first: bool
) -> OnCloth:
    asked = read_cloth(words_of(fields, "" if is_first else name), name, units)
    found, problems = lay_pieces(outcome.pattern, name)
    seams = meetings(outcome.pattern, name)
    cut, wrong = as_wished(enlarged(found, asked.cloth), asked.wished, seams, asked.cloth.repeat)
    twins = twinned(cut) if asked.at_once else Twinned(cut, ())
    unlike = (no_twins(),) if asked.at_once and not twins.notes else ()
    pins, missing = held(twins.pieces, asked.way, asked.wished)
    at_fields = {"cloth-notches": wrong, "cloth-kept": missing, "cloth-way": unlike}
    refused = {key: in_words(told[0].message, found) for key, told in at_fields.items() if told}
    asked = replace(asked, refused=refused | asked.refused)
    told = (*problems, *_unheeded(asked))
    parted = tuple(in_words(note.message, found) for note in twins.notes)
    return OnCloth(outcome, name, is_first, asked, twins.pieces, seams, pins, told, parted)


def in_words(sentence: str, pieces: Sequence[LayPiece]) -> str:
    """A sentence with the names of pieces as they are read: `front skirt`."""
    for name in sorted((piece.name for piece in pieces if "_" in piece.name), key=len, reverse=True):
        sentence = sentence.replace(name, name.replace("_", " "))
    return sentence


def _unheeded(asked: AskedCloth) -> tuple[Problem, ...]:
    """What is said where spots and kept places have no meaning."""
    if asked.way is Way.SCRAPS and (asked.wished.spots or asked.wished.kept):
        sentence = (
            "On scraps no spots and no kept places are heeded: leave the spots out of the scraps you enter."
        )
        return (Problem("scraps-heed-no-spots", sentence, Severity.NOTE),)
    return ()


def _bare(cloth: Cloth) -> Cloth:
    """A cloth without what a lay does not depend on."""
    return replace(cloth, price=None, in_hand=None)


@lru_cache(maxsize=32)
def first_row(
    pieces: tuple[LayPiece, ...],
    cloth: Cloth,
    way: Way,
    gap: float,
    scraps: Scraps = (),
    *,
    pins: tuple[Placement, ...] = (),
    spots: tuple[shapely.Polygon, ...] = (),
) -> Row:
    """A lay that is found at once and what is to be said of it, or why there is none."""
    if way is Way.SCRAPS:
        return _scrap_row(pieces, cloth, scraps, gap, Effort(steps=0))
    prepared = prepare(pieces, cloth, way, gap, pins=pins, holes=spots)
    if not isinstance(prepared, Prepared):
        return Row(way, cloth.width, None, None, prepared)
    lay = next(lays(prepared, Effort(steps=0)), None)
    told = prepared.bounds.advice(units_of(cloth)) if lay else (_not_found(cloth, pins),)
    return Row(way, cloth.width, lay, prepared.bounds, told)


def _not_found(cloth: Cloth, pins: tuple[Placement, ...]) -> Problem:
    """Why nothing holds, as far as it can be told."""
    words = "No lay was found that holds."
    if pins and cloth.repeat:
        words += " Where a piece is kept its stripes may not meet: move it by a part of the repeat, or match no notch of it."
    elif pins:
        words += " The kept pieces may lie on each other or on a damaged spot: keep them elsewhere."
    return Problem("lay-not-found", words)


def _scrap_row(pieces: tuple[LayPiece, ...], cloth: Cloth, scraps: Scraps, gap: float, effort: Effort) -> Row:
    """The pieces on scraps; a lay that leaves pieces out is none."""
    if not scraps:
        missing = Problem("scraps-missing", "Say how large the scraps are.")
        return Row(Way.SCRAPS, cloth.width, None, None, (missing,))
    found = lay_on_scraps(pieces, cloth, scraps, effort, gap)
    if not isinstance(found, FromScraps):
        return Row(Way.SCRAPS, cloth.width, None, None, found)
    return Row(Way.SCRAPS, cloth.width, None if found.left_out else found.lay, None, found.problems)


def first_of(on: OnCloth) -> Row:
    """The lay that is found at once for what was asked."""
    asked = on.asked
    row = first_row(
        on.pieces, _bare(asked.cloth), asked.way, asked.gap, asked.scraps, pins=on.pins, spots=on.spots
    )
    return replace(row, lay=None if row.lay is None else _dressed(on, row.lay))


def improving(
    on: OnCloth, engine: Engine | None = None, seconds: float = 0.0, start: Lay | None = None, seed: int = 1
) -> Work:
    """The work of finding ever shorter lays.

    Args:
        on: The pieces and their cloth.
        engine: What helps, where there is something.
        seconds: How long the engine has.
        start: A lay of the same question to go on from.
        seed: Where the search begins.
    """
    asked = on.asked

    def on_scraps(keep_going: Callable[[], bool]) -> Iterator[Lay]:
        effort = Effort(ENDLESS, seed, keep_going)
        lay = _scrap_row(on.pieces, asked.cloth, asked.scraps, asked.gap, effort).lay
        if lay is not None:
            yield lay

    def work(keep_going: Callable[[], bool]) -> Iterator[Lay]:
        prepared = prepare(on.pieces, asked.cloth, asked.way, asked.gap, pins=on.pins, holes=on.spots)
        if isinstance(prepared, Prepared):
            effort = Effort(ENDLESS, seed, keep_going, engine, round(seconds))
            yield from lays(prepared, effort, start.placements if start else ())

    return on_scraps if asked.way is Way.SCRAPS else work


def best_lay(on: OnCloth, found: Sequence[Lay]) -> Lay | None:
    """The shortest of the first lay and those that were found for the same question, on the cloth as it is now."""
    first = first_of(on).lay
    known = [_dressed(on, lay) for lay in found if _answers(on, lay)]
    return min((*([first] if first else ()), *known), key=lambda lay: lay.length, default=None)


def _dressed(on: OnCloth, lay: Lay) -> Lay:
    """A lay with the price and the length in hand of the cloth that is asked for."""
    return replace(lay, cloth=replace(lay.cloth, price=on.asked.cloth.price, in_hand=on.asked.cloth.in_hand))


def _answers(on: OnCloth, lay: Lay) -> bool:
    """Whether a lay is one of these very pieces on this very cloth, with every held piece in its place."""
    asked = on.asked
    if (lay.spread.way, lay.gap, lay.pieces) != (asked.way, asked.gap, on.pieces):
        return False
    if asked.way is Way.SCRAPS:
        tried = lay_on_scraps(on.pieces, asked.cloth, asked.scraps, Effort(steps=0), asked.gap)
        return (
            isinstance(tried, FromScraps)
            and lay.length <= tried.length
            and _alike(lay.holes, tried.lay.holes)
        )
    is_cloth = _bare(lay.cloth) == _bare(asked.cloth)
    return is_cloth and _alike(lay.holes, on.spots) and all(_is_held(lay, pin) for pin in on.pins)


def _alike(holes: Sequence[shapely.Polygon], spots: Sequence[shapely.Polygon]) -> bool:
    return len(holes) == len(spots) and all(map(shapely.equals, holes, spots))


def _is_held(lay: Lay, pin: Placement) -> bool:
    alike = (one for one in lay.placements if (one.piece, one.half) == (pin.piece, pin.half))
    return any(one.at.distance(pin.at) <= SAME_SPOT and one.sign == pin.sign for one in alike)


def lays_to_buy(ons: Sequence[OnCloth], best: Sequence[Lay | None]) -> tuple[Lay, ...]:
    """The lays of the cloths that are to be bought; scraps, and cloth in hand that is enough, are there already."""
    return tuple(
        lay for on, lay in zip(ons, best, strict=True) if lay is not None and not _is_there(on.asked, lay)
    )


def _is_there(asked: AskedCloth, lay: Lay) -> bool:
    return asked.way is Way.SCRAPS or (asked.cloth.in_hand is not None and not enough(lay))
