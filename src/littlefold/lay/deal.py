"""Which cuts of the scissors give all copies of all pieces on a spread of cloth.

A cut goes through one or more layers.  On two layers, right sides together, it gives a left and a right; on the
fold it gives one whole piece; two equal pieces that could lie on the fold are one whole piece cut through two
layers, which takes load off the fold.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal

from littlefold.lay import spoken
from littlefold.lay.cloth import WIDTHS
from littlefold.lay.one_way import may_be_turned_over, runs_on
from littlefold.lay.piece import rotated
from littlefold.lay.ways import DOUBLE
from littlefold.problem import Number, Place, Problem

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.lay.cloth import Cloth
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.ways import Spread

Hand = Literal["plain", "mirrored", "either"]


@dataclass(frozen=True, slots=True)
class Cut:
    """One closed cut: a piece or its half on a fold, through so many layers, in one of the named zones.

    `hand` says whether it must be cut as drawn, as the mirror image, or either way round.
    """

    piece: LayPiece
    half: bool
    layers: int
    zones: tuple[int, ...]
    hand: Hand

    @property
    def angles(self) -> tuple[float, ...]:
        """The angles at which it may lie [degrees]; what is on a fold follows the fold.

        Only a piece whose copies come out of one cut is tilted, so that both of a pair are tilted alike.
        """
        if self.half:
            return (0.0,)
        alike = self.layers >= self.piece.copies
        return self.piece.angles if alike else replace(self.piece, tilt=0.0).angles

    def area(self) -> float:
        """The area of spread cloth that the cut takes [mm2]."""
        return float((self.piece.polygon if self.half else self.piece.whole).area)


@dataclass(frozen=True, slots=True)
class Dealt:
    """All cuts of a lay; or, with problems, those that could be dealt."""

    cuts: tuple[Cut, ...]
    problems: tuple[Problem, ...] = ()


def deal(pieces: Sequence[LayPiece], cloth: Cloth, spread: Spread) -> Dealt:
    """The cuts that give every piece in its number; pairs go where they balance the zones."""
    cuts: list[Cut] = []
    problems: list[Problem] = []
    for piece in pieces:
        options = [o for o in _options(piece, cloth, spread) if all(_fits(c, spread) for c in o)]
        if not options:
            problems.append(_does_not_fit(piece, cloth, spread))
            continue
        cuts += min(options, key=lambda option: _load(spread, [*cuts, *option]))
    return Dealt(tuple(cuts), tuple(problems))


def _load(spread: Spread, cuts: Sequence[Cut]) -> float:
    """A length [mm] under which the cuts cannot lie: the fullest zone, and the whole, at a usual density."""
    usual_density = 0.8
    filled = Counter[int]()
    for cut in cuts:
        for zone in cut.zones:
            filled[zone] += cut.area() / len(cut.zones)  # type: ignore[assignment]
    fullest = max(area / spread.zones[zone].depth for zone, area in filled.items())
    row = sum(cut.piece.fold_length for cut in cuts if cut.half) / max(1, spread.folds)
    return max(fullest / usual_density, sum(filled.values()) / spread.height / usual_density, row)


def _options(piece: LayPiece, cloth: Cloth, spread: Spread) -> list[list[Cut]]:
    """All ways to get the copies of one piece from the zones of a spread."""
    layers = {zone.layers for zone in spread.zones}
    options = [_in_layers(piece, cloth, spread, count) for count in sorted(layers, reverse=True)]
    return [option for option in options if option]


def _in_layers(piece: LayPiece, cloth: Cloth, spread: Spread, layers: int) -> list[Cut]:
    """The cuts of a piece in the zones of so many layers; empty where they cannot give its number."""
    zones = tuple(k for k, zone in enumerate(spread.zones) if zone.layers == layers)
    if layers == 1:
        return _single(piece, cloth, zones)
    if piece.on_fold and spread.folds:
        return _on_fold(piece, cloth, spread, zones, layers)
    gives = layers if piece.pair or may_be_turned_over(piece, cloth) else 1
    whole, rest = divmod(piece.copies, gives)
    if rest and layers > DOUBLE:
        return []
    cut = Cut(piece, half=False, layers=gives, zones=zones, hand="either")
    return [cut] * whole + [replace(cut, layers=1)] * rest


def _on_fold(piece: LayPiece, cloth: Cloth, spread: Spread, zones: tuple[int, ...], layers: int) -> list[Cut]:
    half = Cut(piece, half=True, layers=layers, zones=_at_folds(spread, zones), hand="either")
    if layers > DOUBLE:
        return [] if piece.copies % 2 else [half] * (piece.copies // 2)
    whole = Cut(piece, half=False, layers=2, zones=zones, hand="either")
    doubled, rest = divmod(piece.copies, 2)
    if runs_on(piece, cloth) or not any(_deep_enough(whole, spread, zone) for zone in zones):
        return [half] * piece.copies
    return [half] * rest + [whole] * doubled


def _at_folds(spread: Spread, zones: tuple[int, ...]) -> tuple[int, ...]:
    last = len(spread.zones) - 1
    return tuple(k for k in zones if (k == 0 and spread.fold_low) or (k == last and spread.fold_high))


def _single(piece: LayPiece, cloth: Cloth, zones: tuple[int, ...]) -> list[Cut]:
    """One cut for each copy from a single layer, face up: half of a pair mirrored.

    So it is even where the outline is its own mirror image: the marks on it, such as a placket on one side, are not, and
    turned end for end such an outline lies in as many ways as mirrored.
    """
    mirrored = piece.copies // 2 if piece.pair else 0
    either = cloth.two_faced and not runs_on(piece, cloth)
    cut = Cut(piece, half=False, layers=1, zones=zones, hand="either" if either else "plain")
    other = cut if either else replace(cut, hand="mirrored")
    return [cut] * (piece.copies - mirrored) + [other] * mirrored


def _fits(cut: Cut, spread: Spread) -> bool:
    return bool(cut.zones) and any(_deep_enough(cut, spread, zone) for zone in cut.zones)


# A piece this much deeper than its zone [mm] still fits: both come out of sums of rounded numbers.
EXACT = 1e-6


def _deep_enough(cut: Cut, spread: Spread, zone: int) -> bool:
    depth = min(depth_of(cut, degrees) for degrees in cut.angles)
    return depth <= spread.zones[zone].depth + EXACT


def depth_of(cut: Cut, degrees: float) -> float:
    """The extent of a cut across the cloth [mm] when it lies at an angle."""
    _, low, _, high = rotated(cut.piece.polygon if cut.half else cut.piece.whole, degrees).bounds
    return float(high - low)


def _wider(cloth: Cloth, depth: float) -> str:
    """The least usual width of cloth that holds a depth [mm], in words."""
    for width in WIDTHS:
        if replace(cloth, width=width).usable_width >= depth:
            return f"Take a wider cloth ({spoken.width(width, spoken.units_of(cloth))} would do)"
    return "Take a wider cloth (none of the usual widths would do)"


def _does_not_fit(piece: LayPiece, cloth: Cloth, spread: Spread) -> Problem:
    """Why a piece cannot be cut from this spread, and what would help."""
    whole = Cut(piece, half=False, layers=1, zones=(), hand="plain")
    open_depth = min(depth_of(whole, degrees) for degrees in whole.angles)
    deepest = max(zone.depth for zone in spread.zones)
    numbers = (
        Number("piece across", open_depth),
        Number("spread across", deepest),
        Number("usable width", cloth.usable_width),
    )
    units = spoken.units_of(cloth)
    across, deep, usable = (spoken.tape(mm, units) for mm in (open_depth, deepest, cloth.usable_width))
    if open_depth > cloth.usable_width + EXACT:
        return Problem(
            "cloth-too-narrow",
            f'"{piece.name}" is {across} across the grain; the cloth has {usable} '
            f"that can be used. {_wider(cloth, open_depth)}, join the piece from two with a seam, or turn its grain.",
            place=Place(piece=piece.name),
            numbers=numbers,
        )
    return Problem(
        "piece-too-deep-for-fold",
        f'"{piece.name}" cannot be cut in this number from cloth that is laid {spread.way} ({deep} deep); '
        f"it is {across} across and the cloth {usable}. Lay the cloth open or fold "
        "it another way.",
        place=Place(piece=piece.name),
        numbers=numbers,
    )
