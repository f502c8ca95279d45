"""Whether a lay is sound, found out without any part of the search.

Every lay is checked here from the pieces and their places alone, by polygon operations, before it is shown: no
overlap, the gap kept, inside the cloth and its zone, on the fold, along the grain, the right way up, stripes
matched and none turned round that are uneven, and every piece in its number, left and right.
"""

from __future__ import annotations

from collections import Counter
from math import remainder
from typing import TYPE_CHECKING

import shapely

from littlefold.lay.one_way import may_be_turned_over, shows_way_up
from littlefold.lay.piece import ON_FOLD
from littlefold.problem import Number, Place, Problem

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from littlefold.lay.lay import Lay, Placement
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.ways import Zone

    Check = Callable[[Lay], Iterator[Problem]]

# Two cuts may come this much nearer than the gap, or reach this far out of the cloth [mm]: linear programmes are
# solved to about a tenth of it, and scissors to a hundred times it.
SLACK = 0.005

CHECKS: dict[str, Check] = {}


def _check(check: Check) -> Check:
    assert check.__name__ not in CHECKS, f"two checks are called {check.__name__}"  # noqa: S101 - our own mistake
    CHECKS[check.__name__] = check
    return check


def verify(lay: Lay) -> tuple[Problem, ...]:
    """All that is wrong with a lay; empty if it can be cut."""
    return tuple(problem for check in CHECKS.values() for problem in check(lay))


@_check
def apart(lay: Lay) -> Iterator[Problem]:
    """No two cuts overlap, and the gap is kept between them."""
    shapes = [lay.shape(placement) for placement in lay.placements]
    tree = shapely.STRtree(shapes)
    for k, shape in enumerate(shapes):
        reach = shapely.box(*shape.bounds).buffer(lay.gap, join_style="mitre")
        for other in tree.query(reach):
            if other > k and _too_near(shape, shapes[other], lay.gap):
                yield _problem(lay, "cuts-overlap", k, f'and "{lay.placements[other].piece}" are too near')


def _too_near(first: shapely.Polygon, second: shapely.Polygon, gap: float) -> bool:
    if gap > SLACK:
        return bool(shapely.distance(first, second) < gap - SLACK)
    return bool(shapely.buffer(first, -SLACK).intersects(shapely.buffer(second, -SLACK)))


@_check
def inside(lay: Lay) -> Iterator[Problem]:
    """Every cut lies on the cloth, within one zone deep enough for it, and off the holes."""
    areas = [
        (zone.layers, shapely.box(-SLACK, zone.low - SLACK, lay.length + SLACK, zone.high + SLACK))
        for zone in lay.spread.zones
    ]
    for k, placement in enumerate(lay.placements):
        shape = lay.shape(placement)
        if not any(layers >= placement.layers and shapely.covers(area, shape) for layers, area in areas):
            yield _problem(lay, "cut-off-the-cloth", k, "does not lie inside the cloth")
        if any(shapely.buffer(shape, -SLACK).intersects(hole) for hole in lay.holes):
            yield _problem(lay, "cut-in-a-hole", k, "lies on a part of the cloth that cannot be used")


@_check
def on_the_fold(lay: Lay) -> Iterator[Problem]:
    """A half has its straight edge on a fold within 0.01 mm; only what is on the fold may be a half."""
    for k, placement in enumerate(lay.placements):
        if not placement.half:
            continue
        y, up = placement.at.y, placement.sign.across > 0
        low = lay.spread.fold_low and up and abs(y) <= ON_FOLD
        high = lay.spread.fold_high and not up and abs(y - lay.spread.height) <= ON_FOLD
        if not (lay.piece(placement.piece).on_fold and (low or high)):
            yield _problem(lay, "not-on-the-fold", k, "belongs on the fold and does not lie on it")


@_check
def along_the_grain(lay: Lay) -> Iterator[Problem]:
    """The grain runs along the cloth, at 45 degrees on the bias; with nap, all one way."""
    for k, placement in enumerate(lay.placements):
        piece = lay.piece(placement.piece)
        if placement.degrees not in (piece.angles if not placement.half else (0.0,)):
            yield _problem(lay, "off-grain", k, "does not lie along its grain")
        if (lay.cloth.nap or piece.one_way) and _is_upside_down(piece, placement):
            yield _problem(lay, "upside-down", k, "lies upside down on cloth that has an up and a down")
    yield from _tilted_apart(lay)
    if lay.cloth.nap and lay.spread.turns_layers:
        yield Problem("upside-down", "Cloth with nap is folded so that some layers lie upside down.")


def _is_upside_down(piece: LayPiece, placement: Placement) -> bool:
    """Whether a piece is turned end for end, or its arrow points back to the cut end as it lies."""
    if piece.grain is None:
        return placement.sign.along < 0
    tail, head = (placement.affine.apply(point) for point in piece.grain)
    return placement.sign.along < 0 or head.x < tail.x - SLACK


def _tilted_apart(lay: Lay) -> Iterator[Problem]:
    """Copies of a piece of which one is tilted off the grain and another is not, or otherwise."""
    for piece in lay.pieces:
        tilts = {one.degrees for one in lay.placements if one.piece == piece.name and not one.half}
        if piece.tilt and len(tilts) > 1 and tilts & {piece.tilt, -piece.tilt}:
            yield Problem(
                "tilted-apart",
                f'The copies of "{piece.name}" are not tilted alike.',
                place=Place(piece=piece.name),
            )


@_check
def stripes(lay: Lay) -> Iterator[Problem]:
    """The matching point of a piece lies on the repeat."""
    repeat = lay.cloth.repeat
    if repeat is None:
        return
    for k, placement in enumerate(lay.placements):
        piece = lay.piece(placement.piece)
        match = piece.match
        is_upright = placement.degrees in (0.0, piece.tilt, -piece.tilt)
        if match is None or not is_upright:
            continue
        at = placement.affine.apply(match)
        along_off = repeat.along > 0 and abs(remainder(at.x, repeat.along)) > SLACK
        bound_across = repeat.across > 0 and not placement.half
        if along_off or (bound_across and abs(remainder(at.y, repeat.across)) > SLACK):
            yield _problem(lay, "stripes-do-not-meet", k, "does not meet the stripes at its matching point")


@_check
def uneven_stripes(lay: Lay) -> Iterator[Problem]:
    """Where stripes are read otherwise turned round, no layer of a cut shows them so."""
    for k, placement in enumerate(lay.placements):
        piece = lay.piece(placement.piece)
        is_turned = lay.spread.turns_layers or _is_upside_down(piece, placement)
        if is_turned and shows_way_up(piece, lay.cloth):
            yield _problem(lay, "stripes-turned-round", k, "shows uneven stripes turned round")


@_check
def numbers(lay: Lay) -> Iterator[Problem]:
    """Every piece is there in its number, with as many lefts as rights where it is a pair."""
    names = Counter(piece.name for piece in lay.pieces)
    assert max(names.values(), default=1) == 1, "pieces need names of their own"  # noqa: S101 - our own mistake
    for piece in lay.pieces:
        plain, mirrored, either = _hands(lay, piece.name)
        total = plain + mirrored + either
        place = Place(piece=piece.name)
        counts = (Number("wanted", piece.copies, "count"), Number("cut", total, "count"))
        if total != piece.copies:
            words = f'"{piece.name}" is wanted {piece.copies} times and cut {total} times.'
            yield Problem("wrong-number", words, place=place, numbers=counts)
        right_way = (piece.copies + 1) // 2 if piece.pair else piece.copies
        most_mirrored = piece.copies // 2 if piece.pair else 0
        wrong = max(0, mirrored - most_mirrored, plain - right_way)
        if wrong and not may_be_turned_over(piece, lay.cloth):
            yield Problem(
                "same-hand-twice", f'"{piece.name}" has too many of one side.', place=place, numbers=counts
            )


def _hands(lay: Lay, name: str) -> tuple[int, int, int]:
    """How many copies come out as drawn, mirrored, and as one likes."""
    plain = mirrored = either = 0
    for placement in lay.placements:
        if placement.piece != name:
            continue
        if placement.half:
            either += placement.layers // 2
        elif placement.layers > 1:
            plain += placement.layers // 2
            mirrored += placement.layers // 2
        elif max((zone.layers for zone in _zones_under(lay, placement)), default=1) > 1:
            either += 1
        else:
            flips = placement.sign.along * placement.sign.across < 0
            plain, mirrored = plain + (not flips), mirrored + flips
    return plain, mirrored, either


def _zones_under(lay: Lay, placement: Placement) -> list[Zone]:
    _, low, _, high = lay.shape(placement).bounds
    middle = (low + high) / 2
    return [zone for zone in lay.spread.zones if zone.low - SLACK <= middle <= zone.high + SLACK]


def _problem(lay: Lay, code: str, number: int, words: str) -> Problem:
    name = lay.placements[number].piece
    return Problem(code, f'Cut {number + 1} ("{name}") {words}.', place=Place(piece=name))
