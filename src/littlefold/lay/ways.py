"""The ways of spreading cloth to cut from it.

    open          one layer, face up
    folded        lengthwise in the middle, right sides together: fold below, both selvedges above
    partly        one side folded over only as far as the deepest piece on the fold asks; the rest single
    two folds     both selvedges brought to the middle
    two partly    both sides folded over as far as needed, a single strip between
    crosswise     folded across: two layers of the full width, not for nap
    four layers   folded across, then lengthwise
    tube          knit from the tube: a fold at either side
    scraps        given shapes, one layer

A spread is a strip: x along the cloth from the cut edge, y across from the lower fold or edge, cut into zones of
so many layers.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from littlefold.lay.spoken import tape, units_of
from littlefold.problem import Number, Problem

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.lay.cloth import Cloth
    from littlefold.lay.piece import LayPiece


class Way(StrEnum):
    """A way of spreading cloth."""

    OPEN = "open"
    FOLDED = "folded"
    PARTLY = "partly folded"
    TWO_FOLDS = "two folds"
    TWO_PARTLY = "two partial folds"
    CROSSWISE = "folded crosswise"
    FOUR_LAYERS = "four layers"
    TUBE = "tube"
    SCRAPS = "scraps"


DOUBLE = 2
"""Layers of cloth that is folded once."""


@dataclass(frozen=True, slots=True)
class Zone:
    """A strip of the spread from `low` to `high` across [mm], `layers` of cloth deep."""

    low: float
    high: float
    layers: int

    @property
    def depth(self) -> float:
        """The extent across [mm]."""
        return self.high - self.low


@dataclass(frozen=True, slots=True)
class Spread:
    """Cloth spread for cutting.

    Attributes:
        way: How.
        height: The extent across [mm].
        zones: From the lower edge up, without gaps.
        fold_low: Whether the lower edge is a fold.
        fold_high: Whether the upper edge is a fold.
        sheets: How many times the length of the spread is bought: 2 where the cloth is folded across.
    """

    way: Way
    height: float
    zones: tuple[Zone, ...]
    fold_low: bool = False
    fold_high: bool = False
    sheets: int = 1

    @property
    def folds(self) -> int:
        """How many edges are folds along the length."""
        return self.fold_low + self.fold_high

    @property
    def turns_layers(self) -> bool:
        """Whether some layers lie end for end against the others, which nap does not allow."""
        return self.way in (Way.CROSSWISE, Way.FOUR_LAYERS)

    @property
    def cloth_width(self) -> float:
        """The usable width of the cloth that is spread [mm]."""
        return sum(zone.depth * zone.layers for zone in self.zones) / self.sheets


def spread(cloth: Cloth, way: Way, pieces: Sequence[LayPiece]) -> Spread | Problem:
    """The cloth spread in a way; partial folds are as deep as the deepest piece on the fold."""
    width = cloth.usable_width
    if (way is Way.TUBE) != cloth.tube:
        what = "is a tube and can only be laid as one" if cloth.tube else "is not a tube"
        return Problem("way-not-for-this-cloth", f'The cloth "{cloth.name}" {what}, not {way}.')
    if cloth.nap and way in (Way.CROSSWISE, Way.FOUR_LAYERS):
        return Problem(
            "nap-folded-crosswise",
            f'The cloth "{cloth.name}" has a nap or one-way print. {way.capitalize()}, half of it would lie upside '
            "down. Fold it lengthwise or lay it open.",
        )
    if way in (Way.PARTLY, Way.TWO_PARTLY):
        return _partly(cloth, way, pieces)
    half = width / 2
    plain = {
        Way.OPEN: Spread(Way.OPEN, width, (Zone(0.0, width, 1),)),
        Way.SCRAPS: Spread(Way.SCRAPS, width, (Zone(0.0, width, 1),)),
        Way.FOLDED: Spread(Way.FOLDED, half, (Zone(0.0, half, 2),), fold_low=True),
        Way.TWO_FOLDS: Spread(
            Way.TWO_FOLDS,
            half,
            (Zone(0.0, half / 2, 2), Zone(half / 2, half, 2)),
            fold_low=True,
            fold_high=True,
        ),
        Way.CROSSWISE: Spread(Way.CROSSWISE, width, (Zone(0.0, width, 2),), sheets=2),
        Way.FOUR_LAYERS: Spread(Way.FOUR_LAYERS, half, (Zone(0.0, half, 4),), fold_low=True, sheets=2),
        Way.TUBE: Spread(Way.TUBE, width, (Zone(0.0, width, 2),), fold_low=True, fold_high=True),
    }
    return plain[way]


def _partly(cloth: Cloth, way: Way, pieces: Sequence[LayPiece]) -> Spread | Problem:
    width = cloth.usable_width
    folds = 1 if way is Way.PARTLY else 2
    deepest = max((piece.polygon.bounds[3] for piece in pieces if piece.on_fold), default=0.0)
    single = width - 2 * folds * deepest
    if deepest == 0.0:
        return Problem("nothing-on-the-fold", f"No piece lies on a fold, so {way} is of no use here.")
    if single < 0:
        units = units_of(cloth)
        return Problem(
            "fold-too-deep",
            f"Folded over by {tape(deepest, units)} {'once' if folds == 1 else 'at both sides'}, the piece on the fold "
            f"needs {tape(2 * folds * deepest, units)} of cloth; {tape(width, units)} can be used.",
            numbers=(Number("needed", 2 * folds * deepest), Number("usable width", width)),
        )
    zones = [Zone(0.0, deepest, 2), Zone(deepest, deepest + single, 1)]
    if way is Way.TWO_PARTLY:
        zones.append(Zone(deepest + single, 2 * deepest + single, 2))
    held = tuple(zone for zone in zones if zone.depth > 0)
    return Spread(way, held[-1].high, held, fold_low=True, fold_high=way is Way.TWO_PARTLY)
