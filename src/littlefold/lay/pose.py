"""From cuts to the bare packing question, and from its layouts back to placements on the cloth."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil
from typing import TYPE_CHECKING

import numpy as np
import shapely

from littlefold.geometry import Point
from littlefold.lay.convex import convex_parts, outer_polygon, ring_of
from littlefold.lay.deal import EXACT, depth_of
from littlefold.lay.lay import Placement
from littlefold.lay.nofit import PLAIN, REVERSED, Lattice, Sign
from littlefold.lay.one_way import lies_one_way
from littlefold.lay.piece import rotated
from littlefold.lay.strip import Member, Shape, Spot, Stance, Strip
from littlefold.problem import Place, Problem

if TYPE_CHECKING:
    from collections.abc import Sequence

    from littlefold.lay.cloth import Cloth
    from littlefold.lay.deal import Cut
    from littlefold.lay.strip import Layout
    from littlefold.lay.ways import Spread

# Outlines are simplified outwards by up to this [mm].  Larger: cloth is lost between pieces; smaller: more convex
# parts and a slower search.
SIMPLER = 0.3

# The lattice has about this many steps across the cloth, but none wider than a small piece asks.
STEPS_ACROSS = 110
STEPS_ACROSS_PIECE = 9
FINEST = 1 / 220

ACROSS = Sign(1, -1)

_NEAR = 0.01  # a held piece this little off its window [mm] is moved into it


@dataclass(frozen=True, slots=True)
class Question:
    """The packing question of a lay, with the cuts that its members stand for."""

    strip: Strip
    cuts: tuple[Cut, ...]

    def placements(self, layout: Layout) -> tuple[Placement, ...]:
        """A layout as placements on the cloth."""
        return tuple(
            self._placement(cut, member.stances[spot.stance], spot)
            for cut, member, spot in zip(self.cuts, self.strip.members, layout, strict=False)
        )

    def _placement(self, cut: Cut, stance: Stance, spot: Spot) -> Placement:
        shape, sign = self.strip.shapes[stance.shape], stance.sign
        at = Point(spot.x - sign.along * shape.origin[0], spot.y - sign.across * shape.origin[1])
        mirrored = sign.along * sign.across < 0
        return Placement(cut.piece.name, cut.half, cut.layers, shape.degrees, sign, at, mirrored)

    def layout(self, placements: Sequence[Placement]) -> Layout | None:
        """The layout that these placements come from; None where they do not answer this question."""
        left, spots = list(placements), list[Spot]()
        for number, member in enumerate(self.strip.members):
            if member.hole:
                spots.append(Spot(0, 0.0, 0.0))
                continue
            found = next(
                (pair for one in left if (pair := self._spot(number, one)) is not None),
                None,
            )
            if found is None:
                return None
            left.remove(found[0])
            spots.append(found[1])
        return None if left else tuple(spots)

    def _spot(self, number: int, placed: Placement) -> tuple[Placement, Spot] | None:
        """The placement with its spot, if it may be that of a member."""
        cut, member = self.cuts[number], self.strip.members[number]
        if (cut.piece.name, cut.half, cut.layers) != (placed.piece, placed.half, placed.layers):
            return None
        for k, stance in enumerate(member.stances):
            shape = self.strip.shapes[stance.shape]
            x = placed.at.x + placed.sign.along * shape.origin[0]
            y = placed.at.y + placed.sign.across * shape.origin[1]
            is_held = (
                member.fixed_at is None
                or max(abs(x - member.fixed_at[0]), abs(y - member.fixed_at[1])) <= _NEAR
            )
            is_so = (shape.degrees, stance.sign) == (placed.degrees, placed.sign)
            if is_so and is_held and _on_the_cloth(stance, shape, x, y):
                return placed, Spot(k, x, y)
        return None


class _Shapes:
    """The shapes met so far, each once."""

    def __init__(self, gap: float) -> None:
        self._gap = gap
        self._numbers: dict[tuple[str, bool, float], int] = {}
        self._outlines: dict[tuple[str, bool], int] = {}
        self.shapes: list[Shape] = []

    def number(self, cut: Cut, degrees: float) -> int:
        """The number of a cut's shape, about the matching point of its piece or its lower left corner."""
        key = (cut.piece.name, cut.half, degrees)
        if key not in self._numbers:
            self._numbers[key] = len(self.shapes)
            outline = self._outlines.setdefault(key[:2], len(self._outlines))
            self.shapes.append(self._shape(cut, degrees, outline))
        return self._numbers[key]

    def _shape(self, cut: Cut, degrees: float, outline: int) -> Shape:
        whole = rotated(cut.piece.whole, degrees)
        true = rotated(cut.piece.polygon, degrees) if cut.half else whole
        safe = outer_polygon(whole, self._gap / 2, SIMPLER if self._gap else 0.0)
        if cut.half:
            safe = _above(safe)
        origin = _reference(cut, true, degrees)
        moved = shapely.transform(safe, lambda xy: xy - np.array(origin))
        left, low, right, high = true.bounds
        box = (left - origin[0], low - origin[1], right - origin[0], high - origin[1])
        parts = convex_parts(moved)
        return Shape(parts, box, float(true.area), outline, degrees, origin, ring_of(moved))


def _above(polygon: shapely.Polygon) -> shapely.Polygon:
    """The part of a polygon above the fold."""
    left, _, right, high = polygon.bounds
    return shapely.intersection(polygon, shapely.box(left, 0.0, right, high))


def _reference(cut: Cut, true: shapely.Polygon, degrees: float) -> tuple[float, float]:
    left, low, _, _ = true.bounds
    match = cut.piece.match
    if match is not None and degrees == 0.0:
        return match.x, 0.0 if cut.half else match.y
    return float(left), 0.0 if cut.half else float(low)


def ask(cuts: Sequence[Cut], cloth: Cloth, spread: Spread, gap: float) -> Question:
    """The packing question of some cuts on a spread."""
    shapes = _Shapes(gap)
    members = []
    for cut in cuts:
        stances: list[Stance] = []
        for degrees in _angles(cut, cloth):
            number = shapes.number(cut, degrees)
            for sign in _signs(cut, cloth):
                stances += _stances(cut, cloth, spread, (number, shapes.shapes[number]), sign)
        members.append(Member(tuple(stances)))
    lattice = _lattice(cuts, cloth, spread)
    return Question(Strip(spread.height, tuple(shapes.shapes), tuple(members), lattice), tuple(cuts))


def _angles(cut: Cut, cloth: Cloth) -> tuple[float, ...]:
    """The angles of a cut; a piece that meets the stripes is not tilted."""
    bound = cloth.repeat is not None and cut.piece.match is not None
    return replace(cut, piece=replace(cut.piece, tilt=0.0)).angles if bound else cut.angles


def _signs(cut: Cut, cloth: Cloth) -> tuple[Sign, ...]:
    """The signs that cloth and piece allow: turned where it may lie either way up, mirrored where the hand allows it."""
    plain = {"plain": (PLAIN,), "mirrored": (ACROSS,), "either": (PLAIN, ACROSS)}[cut.hand]
    if lies_one_way(cut.piece, cloth):
        return plain
    return (*plain, *(sign.times(REVERSED) for sign in plain))


def _stances(cut: Cut, cloth: Cloth, spread: Spread, numbered: tuple[int, Shape], sign: Sign) -> list[Stance]:
    number, shape = numbered
    along, across = _phases(cut, cloth)
    if cut.half:
        return _fold_stances(cut, spread, number, sign, along)
    _, low, _, high = shape.box
    down, up = (low, high) if sign.across > 0 else (-high, -low)
    return [
        Stance(number, sign, zone.low - down, max(zone.low - down, zone.high - up), along, across)
        for zone in (spread.zones[k] for k in cut.zones)
        if zone.depth + EXACT >= high - low
    ]


def _fold_stances(
    cut: Cut, spread: Spread, number: int, sign: Sign, along: tuple[float, float] | None
) -> list[Stance]:
    """The piece with its fold edge on the lower fold, and upside down on the upper one."""
    stances = []
    for k in cut.zones:
        if spread.zones[k].depth + EXACT < depth_of(cut, 0.0):
            continue
        if k == 0 and spread.fold_low and sign.across > 0:
            stances.append(Stance(number, sign, 0.0, 0.0, along))
        if k == len(spread.zones) - 1 and spread.fold_high and sign.across < 0:
            stances.append(Stance(number, sign, spread.height, spread.height, along))
    return stances


def _phases(cut: Cut, cloth: Cloth) -> tuple[tuple[float, float] | None, tuple[float, float] | None]:
    repeat = cloth.repeat
    if repeat is None or cut.piece.match is None:
        return None, None
    return (
        (0.0, repeat.along) if repeat.along > 0 else None,
        (0.0, repeat.across) if repeat.across > 0 else None,
    )


def _lattice(cuts: Sequence[Cut], cloth: Cloth, spread: Spread) -> Lattice:
    """Steps that divide the height and the repeats, and are small enough for the small pieces."""
    height = spread.height
    small = sorted(min(_sides(cut)) for cut in cuts)[len(cuts) // 4] if cuts else height
    wanted = min(height / STEPS_ACROSS, max(small / STEPS_ACROSS_PIECE, height * FINEST))
    repeat = cloth.repeat
    along = wanted if repeat is None or repeat.along <= 0 else repeat.along / ceil(repeat.along / wanted)
    across = height if repeat is None or repeat.across <= 0 else repeat.across
    return Lattice(along, across / ceil(across / wanted))


def _sides(cut: Cut) -> tuple[float, float]:
    left, low, right, high = (cut.piece.polygon if cut.half else cut.piece.whole).bounds
    return right - left, high - low


def pin(question: Question, pins: Sequence[Placement]) -> Question | Problem:
    """The question with some cuts held where the maker put them."""
    members = list(question.strip.members)
    for wished in pins:
        found = _pinned(question, members, wished)
        if found is None:
            return Problem(
                "pin-not-possible",
                f'"{wished.piece}" cannot be held there: it may not lie that way, it would reach off the cloth, or all '
                "its copies are held already.",
                place=Place(piece=wished.piece),
            )
        number, member = found
        members[number] = member
    return replace(question, strip=replace(question.strip, members=tuple(members)))


def _pinned(question: Question, members: Sequence[Member], wished: Placement) -> tuple[int, Member] | None:
    for number, (cut, member) in enumerate(zip(question.cuts, members, strict=False)):
        if member.fixed_at is not None or (cut.piece.name, cut.half) != (wished.piece, wished.half):
            continue
        for stance in member.stances:
            shape, sign = question.strip.shapes[stance.shape], stance.sign
            x = wished.at.x + sign.along * shape.origin[0]
            y = wished.at.y + sign.across * shape.origin[1]
            if (shape.degrees, sign) == (
                wished.degrees,
                wished.sign,
            ) and _on_the_cloth(stance, shape, x, y):
                return number, Member((stance,), (x, min(max(y, stance.low), stance.high)))
    return None


def _on_the_cloth(stance: Stance, shape: Shape, x: float, y: float) -> bool:
    """Whether a reference point keeps the shape behind the cut end and within the window of its stance."""
    left = shape.box[0] if stance.sign.along > 0 else -shape.box[2]
    return x + left >= -_NEAR and stance.low - _NEAR <= y <= stance.high + _NEAR


def with_holes(question: Question, holes: Sequence[shapely.Polygon]) -> Question:
    """The question with parts of the cloth that cannot be used."""
    shapes, members = list(question.strip.shapes), list(question.strip.members)
    for hole in holes:
        left, low, right, high = hole.bounds
        outline = 1 + max((shape.outline for shape in shapes), default=-1)
        shapes.append(
            Shape(
                convex_parts(hole),
                (left, low, right, high),
                hole.area,
                outline,
                0.0,
                (0.0, 0.0),
                ring_of(hole),
            )
        )
        members.append(Member((Stance(len(shapes) - 1, PLAIN, 0.0, 0.0),), (0.0, 0.0), hole=True))
    strip = replace(question.strip, shapes=tuple(shapes), members=tuple(members))
    return replace(question, strip=strip)
