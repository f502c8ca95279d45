"""A lay as JSON that can be read back: the cloth, the pieces and the place of every cut, exact to the last bit.

What is read is checked as any lay is: a stored lay that was changed by hand and no longer holds is refused in words.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import isfinite
from typing import TYPE_CHECKING, Literal

from pydantic import TypeAdapter, ValidationError

from littlefold.geometry import Point
from littlefold.lay.cloth import Cloth  # noqa: TC001 - pydantic reads the fields
from littlefold.lay.convex import polygon_of, ring_of
from littlefold.lay.lay import Lay, Placement
from littlefold.lay.nofit import Sign
from littlefold.lay.piece import LayPiece, points_of
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way, spread
from littlefold.problem import Problem

if TYPE_CHECKING:
    import shapely

FORMAT: Literal["littlefold-lay/1"] = "littlefold-lay/1"

Ring = tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class StoredPlace:
    """A cut in its place: the fields of a placement, flat."""

    piece: str
    half: bool
    layers: int
    degrees: float
    along: Literal[1, -1]
    across: Literal[1, -1]
    x: float
    y: float
    mirrored_layer: bool


@dataclass(frozen=True, slots=True)
class StoredLay:
    """A lay as it stands in a file; lengths in millimetres."""

    format: Literal["littlefold-lay/1"]
    cloth: Cloth
    way: Way
    gap: float
    maker: str
    length: float
    pieces: tuple[LayPiece, ...]
    placements: tuple[StoredPlace, ...]
    holes: tuple[Ring, ...] = ()


@lru_cache(maxsize=1)
def _adapter() -> TypeAdapter[StoredLay]:
    return TypeAdapter(StoredLay)


def stored(lay: Lay) -> bytes:
    """The lay as JSON."""
    places = tuple(
        StoredPlace(
            one.piece,
            one.half,
            one.layers,
            one.degrees,
            1 if one.sign.along > 0 else -1,
            1 if one.sign.across > 0 else -1,
            one.at.x,
            one.at.y,
            one.mirrored_layer,
        )
        for one in lay.placements
    )
    holes = tuple(tuple(Point(float(x), float(y)) for x, y in ring_of(hole)) for hole in lay.holes)
    kept = StoredLay(
        FORMAT, lay.cloth, lay.spread.way, lay.gap, lay.maker, lay.length, lay.pieces, places, holes
    )
    return _adapter().dump_json(kept)


def read_stored(text: bytes | str) -> Lay | tuple[Problem, ...]:
    """The lay of a file that `stored` made; or why it is none, or no longer holds."""
    try:
        kept = _adapter().validate_json(text)
    except ValidationError as fault:
        where = ".".join(str(part) for part in fault.errors()[0]["loc"]) or "the whole"
        words = f"This is no lay that was stored here: {where}: {fault.errors()[0]['msg']}."
        return (Problem("lay-not-read", words),)
    return _lay(kept)


def _lay(kept: StoredLay) -> Lay | tuple[Problem, ...]:
    names = [piece.name for piece in kept.pieces]
    if len(set(names)) < len(names) or any(one.piece not in names for one in kept.placements):
        return (Problem("lay-not-read", "The stored lay names a piece twice, or one that it does not have."),)
    if not _is_sound(kept):
        return (Problem("lay-not-read", "The stored lay has a cloth, a gap or a length that cannot be."),)
    spread_cloth = spread(kept.cloth, kept.way, kept.pieces)
    if isinstance(spread_cloth, Problem):
        return (spread_cloth,)
    placements = tuple(
        Placement(
            one.piece,
            one.half,
            one.layers,
            one.degrees,
            Sign(one.along, one.across),
            Point(one.x, one.y),
            one.mirrored_layer,
        )
        for one in kept.placements
    )
    holes = tuple(_polygon(ring) for ring in kept.holes)
    lay = Lay(kept.cloth, spread_cloth, kept.pieces, placements, kept.length, kept.gap, kept.maker, holes)
    return verify(lay) or lay


def _is_sound(kept: StoredLay) -> bool:
    """Whether cloth, gap and length are such as can be: a check against a gap below nothing would check nothing."""
    cloth = kept.cloth
    lengths = (kept.gap, kept.length, cloth.selvedge, cloth.end_loss, cloth.in_hand or 0.0)
    shares = (cloth.shrinkage.along, cloth.shrinkage.across)
    return (
        all(isfinite(length) and length >= 0 for length in lengths)
        and all(0 <= share < 1 for share in shares)
        and isfinite(cloth.width)
        and cloth.usable_width > 0
        and isfinite(cloth.step)
        and cloth.step > 0
    )


def _polygon(ring: Ring) -> shapely.Polygon:
    return polygon_of(points_of(ring))
