"""Stripes: neighbours meet them notch to notch.  Reckoned from the paper and the chalk table, not from the lay's frame."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import lru_cache
from math import remainder
from typing import TYPE_CHECKING

import pytest
import shapely
from garments import rectangle

from littlefold.cli.asked import Asked
from littlefold.cli.understood import understand
from littlefold.geometry import Point, Vector
from littlefold.lay.adapter import enlarged, lay_pieces
from littlefold.lay.chalk import chalk_table
from littlefold.lay.cloth import Cloth, Repeat
from littlefold.lay.meeting import Meeting, Side, meetings
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.shrink import Shrinkage, Treatment
from littlefold.lay.stripes import paired, stripes_met
from littlefold.lay.stripes_told import AS_SEWN, told
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way
from littlefold.pipeline import fulfil
from littlefold.problem import Problem

if TYPE_CHECKING:
    from littlefold.lay.lay import Lay
    from littlefold.pattern.model import Notch, Pattern

# What the chalk on two pieces may differ by where they meet [mm].
MEASURED = 0.1

CHECKS = Repeat(along=40.0, across=50.0)


@lru_cache
def pattern(recipe: str, size: str = "104") -> Pattern:
    understood = understand(Asked(recipe, size=size), date(2026, 1, 1))
    assert not isinstance(understood, tuple), understood
    return fulfil(understood.wish).pattern


def striped(recipe: str, way: Way, cloth: Cloth, chosen: tuple[tuple[str, int], ...] = ()) -> Lay:
    pieces, _ = lay_pieces(pattern(recipe))
    held = paired(enlarged(pieces, cloth), meetings(pattern(recipe)), cloth.repeat, chosen)
    assert not isinstance(held, Problem), held
    prepared = prepare(held, cloth, way)
    assert isinstance(prepared, Prepared), prepared
    lay = list(lays(prepared, Effort(steps=60)))[-1]
    assert verify(lay) == ()
    return lay


def on_cloth(lay: Lay, recipe: str, notch: Notch, piece: str) -> set[tuple[float, float]]:
    """How far a notch of the paper lies from the nearest stripes' middles [mm], for each copy that is cut.

    Every copy is found by its two chalked points alone: the notch is as far along the grain arrow as on the paper,
    and as far beside it, on the side on which the copy has its edge there.
    """
    repeat = lay.cloth.repeat
    assert repeat is not None
    drawn = pattern(recipe).piece(piece)
    tail, head = drawn.grain
    grain = (head - tail).unit()
    there = notch.foot - tail
    along, beside = there.x * grain.x + there.y * grain.y, grain.x * there.y - grain.y * there.x
    found = set()
    for placement in (one for one in lay.placements if one.piece == piece):
        edge = shapely.boundary(lay.shape(placement))
        row = next(row for row in chalk_table(replace(lay, placements=(placement,))))
        way = (row.end - row.start).unit()
        foots = [
            Point(row.start.x + way.x * along - way.y * off, row.start.y + way.y * along + way.x * off)
            for off in (beside, -beside)
        ]
        at = min(foots, key=lambda foot: edge.distance(shapely.Point(foot.x, foot.y)))
        apart_x = abs(remainder(at.x, repeat.along)) if repeat.along else 0.0
        apart_y = abs(remainder(at.y, repeat.across)) if repeat.across else 0.0
        found.add((apart_x, apart_y))
    return found


GARMENTS = (
    "bodice",
    "sleeve",
    "trousers",
    "yoke-frock",
    "pleated-skirt",
    "a-line-frock",
    "casing-top",
    "bloomers",
)


@pytest.mark.parametrize("way", [Way.OPEN, Way.FOLDED])
@pytest.mark.parametrize("recipe", GARMENTS)
def test_side_seams_meet_the_crosswise_stripes_notch_to_notch(recipe: str, way: Way) -> None:
    lay = striped(recipe, way, Cloth(1500, repeat=CHECKS))
    found = pattern(recipe)
    sides = [
        one for one in meetings(found) if "side" in one.first.edge and one.first.piece != one.second.piece
    ]
    assert sides
    for one in sides:
        places = {
            x
            for side in (one.first, one.second)
            for x, _ in on_cloth(lay, recipe, found.piece(side.piece).notches[side.notch], side.piece)
        }
        assert max(places) - min(places) <= MEASURED


@pytest.mark.parametrize("way", [Way.OPEN, Way.FOLDED])
@pytest.mark.parametrize("recipe", GARMENTS)
def test_what_is_told_of_every_seam_is_what_is_on_the_cloth(recipe: str, way: Way) -> None:
    lay = striped(recipe, way, Cloth(1500, repeat=CHECKS))
    found = pattern(recipe)
    for one, met in zip(meetings(found), stripes_met(lay, meetings(found)), strict=True):
        if met.hindrance:
            continue
        first, second = (
            on_cloth(lay, recipe, found.piece(side.piece).notches[side.notch], side.piece)
            for side in (one.first, one.second)
        )
        for axis, off, repeat in ((0, met.along, CHECKS.along), (1, met.across, CHECKS.across)):
            assert off is not None
            for here in first:
                for there in second:
                    sums = (here[axis] - there[axis], here[axis] + there[axis])
                    assert min(abs(abs(remainder(apart, repeat)) - off) for apart in sums) <= MEASURED


def test_a_pair_meets_both_kinds_of_stripes_at_its_side_and_cannot_at_the_inside_leg_too() -> None:
    lay = striped("trousers", Way.OPEN, Cloth(1500, repeat=CHECKS))
    met = {one.first: one for one in stripes_met(lay, meetings(pattern("trousers")))}
    side, inside = met["front", "side"], met["front", "inseam"]
    assert side.along == pytest.approx(0.0, abs=0.01)
    assert side.across == pytest.approx(0.0, abs=0.01)
    assert inside.across is not None
    assert inside.across > AS_SEWN
    words = told(lay, tuple(met.values()))
    assert any("cannot meet as well" in line and "inseam" in line for line in words)
    assert any("meet notch to notch" in line and "side" in line for line in words)


def test_the_front_of_a_sleeve_goes_with_the_front_armhole() -> None:
    pairs = {
        (one.first.edge, one.second.edge)
        for one in meetings(pattern("sleeve"))
        if one.second.piece == "sleeve"
    }
    assert {("armhole", "front_cap"), ("armhole", "back_cap")} <= pairs
    of_front = {
        one.second.edge
        for one in meetings(pattern("sleeve"))
        if one.first == replace(one.first, piece="front")
    }
    assert "front_cap" in of_front
    assert "back_cap" not in of_front


def test_a_notch_chosen_by_hand_goes_before_the_seams() -> None:
    """The front is held at its second notch; the back still follows it at the side."""
    cloth = Cloth(1500, repeat=CHECKS)
    number = next(
        k for k, notch in enumerate(pattern("bodice").piece("front").notches) if notch.edge == "armhole"
    )
    lay = striped("bodice", Way.OPEN, cloth, (("front", number + 1),))
    notch = pattern("bodice").piece("front").notches[number]
    assert {round(x, 2) for x, _ in on_cloth(lay, "bodice", notch, "front")} == {0.0}
    side = next(
        one for one in stripes_met(lay, meetings(pattern("bodice"))) if one.first == ("front", "side")
    )
    assert side.along == pytest.approx(0.0, abs=0.01)


def test_a_piece_that_is_not_to_be_matched_is_told() -> None:
    lay = striped("bodice", Way.OPEN, Cloth(1500, repeat=CHECKS), (("front", 0),))
    met = stripes_met(lay, meetings(pattern("bodice")))
    assert all(one.hindrance == "not to be matched" for one in met if "no notches" not in one.hindrance)
    assert lay.piece("front").match is None
    assert any("not to be matched" in line for line in told(lay, met))


@pytest.mark.parametrize("repeat", [Repeat(along=40.0), Repeat(across=50.0)])
def test_stripes_one_way_are_told_alone(repeat: Repeat) -> None:
    lay = striped("trousers", Way.FOLDED, Cloth(1500, repeat=repeat))
    met = stripes_met(lay, meetings(pattern("trousers")))
    assert all((one.along is None) == (repeat.along == 0) for one in met if not one.hindrance)
    words = " ".join(told(lay, met))
    assert ("Crosswise" in words, "Lengthwise" in words) == (repeat.along > 0, repeat.across > 0)


def test_pieces_enlarged_for_the_wash_still_meet() -> None:
    wash = Shrinkage(0.05, 0.03, "a washed square")
    cloth = Cloth(1500, repeat=CHECKS, shrinkage=wash, treatment=Treatment.ENLARGE)
    lay = striped("bodice", Way.OPEN, cloth)
    met = {one.first: one for one in stripes_met(lay, meetings(pattern("bodice")))}
    places = [
        abs(remainder(one.affine.apply(piece.notches[number][0]).x, CHECKS.along))
        for one in lay.placements
        for piece in [lay.piece(one.piece)]
        for number, notch in enumerate(pattern("bodice").piece(one.piece).notches)
        if notch.edge == "side"
    ]
    assert len(places) == 2
    assert places[0] == pytest.approx(places[1], abs=MEASURED)
    assert met["front", "side"].along == pytest.approx(0.0, abs=0.01)


def test_plain_cloth_changes_nothing_and_says_nothing() -> None:
    pieces, _ = lay_pieces(pattern("bodice"))
    assert paired(pieces, meetings(pattern("bodice")), None) == pieces
    prepared = prepare(pieces, Cloth(1500), Way.OPEN)
    assert isinstance(prepared, Prepared)
    lay = next(lays(prepared, Effort(0)))
    assert stripes_met(lay, meetings(pattern("bodice"))) == ()
    assert told(lay, ()) == ()


def test_a_piece_that_counts_the_other_way_meets_all_along_the_seam() -> None:
    """A half on the fold, and one of a pair that is drawn to the other side: outwards is up on the one, down on the other."""
    yoke = replace(
        rectangle("yoke", 100, 180, on_fold=True),
        notches=((Point(0.0, 97.0), Point(-6.0, 97.0)),),
        match=Point(0, 0),
    )
    skirt = replace(
        rectangle("skirt", 300, 180, 2, pair=True),
        notches=((Point(300.0, 83.0), Point(306.0, 83.0)),),
        match=Point(300.0, 83.0),
    )
    meeting = Meeting(
        Side("yoke", "hem", 0, Vector(0.0, 180.0), left=False),
        Side("skirt", "waist", 0, Vector(0.0, -180.0), left=False),
    )
    held = paired((yoke, skirt), (meeting,), CHECKS)
    assert not isinstance(held, Problem)
    above, below = (piece.match for piece in held)
    assert above is not None
    assert below is not None
    for on in range(-80, 80, 7):  # so far outwards from the notch [mm]
        here, there = 97.0 + on - above.y, 83.0 - on - below.y
        assert abs(remainder(here, 50.0)) == pytest.approx(abs(remainder(there, 50.0)), abs=1e-9)
