"""Uneven stripes: what is told of every seam is reckoned again from the copies as they come off the open cloth."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache
from itertools import product
from math import remainder
from typing import TYPE_CHECKING

import pytest
from garments import rectangle
from hypothesis import given, settings
from hypothesis import strategies as st

from littlefold.cli.asked import Asked
from littlefold.cli.understood import understand
from littlefold.geometry import Affine, Point, Vector
from littlefold.lay.adapter import lay_pieces
from littlefold.lay.chalk import words_for
from littlefold.lay.cloth import Cloth, Repeat
from littlefold.lay.lay import Lay, Placement
from littlefold.lay.meeting import Meeting, Side, meetings
from littlefold.lay.nofit import PLAIN, REVERSED, Sign
from littlefold.lay.one_way import lies_one_way
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.stripes import paired, stripes_met
from littlefold.lay.stripes_told import told
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way
from littlefold.pipeline import fulfil
from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from littlefold.lay.asked import Chosen
    from littlefold.lay.piece import LayPiece
    from littlefold.pattern.model import Pattern

EVEN = Repeat(40.0, 50.0)
UP = Repeat(40.0, 50.0, uneven_along=True)
ROUND = Repeat(40.0, 50.0, uneven_across=True)
BOTH = Repeat(40.0, 50.0, uneven_along=True, uneven_across=True)

OVER = Affine.mirror(Point(0.0, 0.0), Vector(1.0, 0.0))
MEASURED = 0.1

GARMENTS = ("sleeve", "trousers", "pleated-skirt", "a-line-frock", "collar", "drawers")


@lru_cache
def pattern(recipe: str) -> Pattern:
    understood = understand(Asked(recipe, size="104"), date(2026, 1, 1))
    assert not isinstance(understood, tuple), understood
    return fulfil(understood.wish).pattern


def laid(pieces: Sequence[LayPiece], cloth: Cloth, way: Way, steps: int = 40) -> Lay:
    prepared = prepare(pieces, cloth, way)
    assert isinstance(prepared, Prepared), prepared
    lay = list(lays(prepared, Effort(steps=steps)))[-1]
    assert verify(lay) == ()
    return lay


def garment(recipe: str, cloth: Cloth, way: Way, chosen: Sequence[Chosen] = ()) -> Lay:
    pieces, _ = lay_pieces(pattern(recipe))
    held = paired(pieces, meetings(pattern(recipe)), cloth.repeat, chosen)
    assert not isinstance(held, Problem), held
    return laid(held, cloth, way)


@dataclass(frozen=True)
class Copy:
    """What comes off the cloth for the shape as drawn, or for its half: the map to the face of the open cloth."""

    to_cloth: Affine

    @property
    def hand(self) -> int:
        """1 for the piece as drawn, -1 for its mirror image."""
        return -1 if self.to_cloth.flips else 1

    def at(self, point: Point) -> Point:
        return self.to_cloth.apply(point)


def copies(lay: Lay, name: str) -> Iterator[Copy]:
    """Every copy; what is folded or unfolded counts as two halves, one the mirror image of the other.

    Right sides together the upper layer is the lower one mirrored in the fold, which lies at y = 0.
    """
    piece = lay.piece(name)
    for one in (one for one in lay.placements if one.piece == name):
        halves = [Affine.identity(), OVER] if piece.on_fold and not one.half else [Affine.identity()]
        layers = {
            "through 2 layers": [Affine.identity(), OVER],
            "on the fold": [Affine.identity(), OVER],
            "upper layer only": [OVER],
        }.get(words_for(lay, one), [Affine.identity()])
        yield from (Copy(half.then(one.affine).then(layer)) for half in halves for layer in layers)


def is_left(piece: LayPiece, side: Side) -> bool:
    """Whether a piece lies to the left of a seam as one goes along it, by the way its notch points out."""
    foot, tip = piece.notches[side.notch]
    out = tip - foot
    return side.way.x * out.y - side.way.y * out.x < 0


def apart(lay: Lay, seam: Meeting) -> Iterator[tuple[float, float]]:
    """Along and across, how far apart the stripes are at the notch of a seam, for each two copies that are sewn there."""
    repeat = lay.cloth.repeat
    assert repeat is not None
    first, second = lay.piece(seam.first.piece), lay.piece(seam.second.piece)
    hand = 1 if is_left(first, seam.first) != is_left(second, seam.second) else -1
    for one in copies(lay, first.name):
        others = [other for other in copies(lay, second.name) if other.hand == one.hand * hand]
        assert others
        for other in others:
            way = one.at(first.notches[seam.first.notch][0]) - other.at(second.notches[seam.second.notch][0])
            yield abs(remainder(way.x, repeat.along)), abs(remainder(way.y, repeat.across))


@pytest.mark.parametrize(
    ("recipe", "way"), [*product(GARMENTS, (Way.OPEN, Way.FOLDED)), ("sleeve", Way.PARTLY)]
)
def test_what_is_told_of_every_seam_is_so_in_every_copy_of_the_garment(recipe: str, way: Way) -> None:
    lay = garment(recipe, Cloth(1500, repeat=BOTH), way)
    seams = meetings(pattern(recipe))
    matched = [pair for pair in zip(seams, stripes_met(lay, seams), strict=True) if not pair[1].hindrance]
    assert matched
    for seam, met in matched:
        assert met.along is not None
        assert met.across is not None
        for along, across in apart(lay, seam):
            assert along == pytest.approx(met.along, abs=MEASURED)
            assert across == pytest.approx(met.across, abs=MEASURED)


def test_the_notches_of_the_seams_tell_the_side_as_the_outline_does() -> None:
    for recipe in GARMENTS:
        pieces = {piece.name: piece for piece in lay_pieces(pattern(recipe))[0]}
        for seam in meetings(pattern(recipe)):
            for side in (seam.first, seam.second):
                if side.notch >= 0:
                    assert side.left == is_left(pieces[side.piece], side), (recipe, side)


@settings(max_examples=15, deadline=None)
@given(
    places=st.tuples(*[st.integers(20, 180)] * 3),
    ups=st.tuples(st.booleans(), st.booleans()),
    way=st.sampled_from([Way.OPEN, Way.FOLDED]),
    two_faced=st.booleans(),
)
def test_panels_run_on_into_each_other_whichever_way_they_are_drawn(
    places: tuple[int, int, int], ups: tuple[bool, bool], way: Way, *, two_faced: bool
) -> None:
    """A front on the fold, a side panel and a back, pairs, drawn with the seam above or below."""
    front = _panel("front", ((places[0], True),), on_fold=True)
    side = _panel("side", ((places[1], ups[0]), (places[2], not ups[0])), 2, pair=True)
    back = _panel("back", ((100, ups[1]),), 2, pair=True)
    seams = (
        Meeting(_side(front, 0, is_upper=True), _side(side, 0, is_upper=ups[0])),
        Meeting(_side(side, 1, is_upper=not ups[0]), _side(back, 0, is_upper=ups[1])),
    )
    held = paired((front, side, back), seams, BOTH)
    assert not isinstance(held, Problem)
    lay = laid(held, Cloth(1400, repeat=BOTH, two_faced=two_faced), way, steps=5)
    for seam in seams:
        assert max(off for pair in apart(lay, seam) for off in pair) <= MEASURED
    found = stripes_met(lay, seams)
    assert max(one.along or 0.0 for one in found) <= MEASURED
    assert max(one.across or 0.0 for one in found) <= MEASURED


WIDE = 130.0


def _panel(name: str, notches: tuple[tuple[int, bool], ...], copies: int = 1, **more: bool) -> LayPiece:
    """A panel with notches in its long edges, each so far from the hem, above or below."""
    feet = [Point(float(at), WIDE if is_upper else 0.0) for at, is_upper in notches]
    marks = tuple((foot, foot + Vector(0.0, 6.0 if foot.y else -6.0)) for foot in feet)
    return replace(rectangle(name, 200, WIDE, copies, **more), notches=marks, match=feet[0])


def _side(piece: LayPiece, notch: int, *, is_upper: bool) -> Side:
    return Side(piece.name, "upper" if is_upper else "lower", notch, Vector(200.0, 0.0), not is_upper)


def test_uneven_stripes_across_the_cloth_lay_all_pieces_one_way_up() -> None:
    upright = garment("trousers", Cloth(1500, repeat=UP), Way.OPEN)
    assert {one.sign.along for one in upright.placements} == {1}
    pieces, _ = lay_pieces(pattern("a-line-frock"))
    binding = next(piece for piece in pieces if piece.match is None)
    assert lies_one_way(binding, Cloth(1500, repeat=UP))
    assert not lies_one_way(binding, Cloth(1500, repeat=EVEN))


def test_uneven_stripes_along_the_cloth_bind_only_what_meets_them() -> None:
    """A piece without a notch, or one that the maker leaves free, may be turned end for end."""
    cloth = Cloth(1500, repeat=ROUND)
    held = replace(rectangle("held", 100, 50), match=Point(10.0, 0.0))
    assert lies_one_way(held, cloth)
    assert not lies_one_way(replace(held, match=None), cloth)
    assert not lies_one_way(replace(held, bias=True), cloth)
    assert not lies_one_way(held, replace(cloth, repeat=EVEN))


@pytest.mark.parametrize("repeat", [UP, ROUND])
@pytest.mark.parametrize("way", [Way.CROSSWISE, Way.FOUR_LAYERS])
def test_cloth_with_uneven_stripes_is_not_folded_across(repeat: Repeat, way: Way) -> None:
    pieces, _ = lay_pieces(pattern("trousers"))
    refused = prepare(pieces, Cloth(1500, repeat=repeat), way)
    assert isinstance(refused, tuple)
    assert [problem.code for problem in refused] == ["stripes-folded-crosswise"]
    assert isinstance(prepare(pieces, Cloth(1500, repeat=EVEN), Way.CROSSWISE), Prepared)


@pytest.mark.parametrize("repeat", [UP, ROUND])
def test_a_lay_whose_planner_took_the_stripes_for_even_is_found_out(repeat: Repeat) -> None:
    lay = garment("trousers", Cloth(1500, repeat=EVEN), Way.OPEN)
    assert {one.sign.along for one in lay.placements} == {1, -1}
    found = verify(replace(lay, cloth=replace(lay.cloth, repeat=repeat)))
    assert {problem.code for problem in found} == {"stripes-turned-round"}
    across = garment("trousers", Cloth(1500, repeat=EVEN), Way.CROSSWISE)
    turned = verify(replace(across, cloth=replace(across.cloth, repeat=repeat)))
    assert {problem.code for problem in turned} == {"stripes-turned-round"}


def _by_hand(piece: LayPiece, cloth: Cloth, way: Way, *places: Placement) -> Lay:
    prepared = prepare((piece,), cloth, way)
    assert isinstance(prepared, Prepared)
    return Lay(cloth, prepared.spread, (piece,), places, 300.0, 3.0, "hand")


def test_two_alike_from_two_layers_would_run_opposite_ways_and_are_found_out() -> None:
    """Right sides together the second is striped as a mirror image, whatever its outline is."""
    piece = replace(rectangle("leg", 100, 50, 2, on_fold=True), match=Point(0.0, 0.0))
    place = Placement("leg", half=False, layers=2, degrees=0.0, sign=PLAIN, at=Point(0.0, 100.0))
    even, uneven = Cloth(1000, selvedge=0, repeat=EVEN), Cloth(1000, selvedge=0, repeat=ROUND)
    assert verify(_by_hand(piece, even, Way.FOLDED, place)) == ()
    found = verify(_by_hand(piece, uneven, Way.FOLDED, place))
    assert {problem.code for problem in found} == {"same-hand-twice"}
    assert {(one.half, one.layers) for one in laid((piece,), uneven, Way.FOLDED).placements} == {(True, 2)}


def test_a_piece_turned_over_on_two_faced_cloth_runs_the_other_way_and_is_found_out() -> None:
    piece = replace(rectangle("band", 80, 50), match=Point(0.0, 0.0))
    over = Placement("band", half=False, layers=1, degrees=0.0, sign=Sign(1, -1), at=Point(0.0, 100.0))
    even, uneven = (Cloth(1000, selvedge=0, two_faced=True, repeat=repeat) for repeat in (EVEN, ROUND))
    assert verify(_by_hand(piece, even, Way.OPEN, over)) == ()
    assert {one.code for one in verify(_by_hand(piece, uneven, Way.OPEN, over))} == {"same-hand-twice"}
    upside = replace(over, sign=REVERSED, at=Point(80.0, 100.0))
    assert {one.code for one in verify(_by_hand(piece, uneven, Way.OPEN, upside))} == {"stripes-turned-round"}


def test_of_a_piece_that_is_its_own_mirror_image_the_layer_is_told() -> None:
    piece = replace(rectangle("band", 80, 50), match=Point(0.0, 0.0))
    cuts = {
        repeat: words_for(lay, lay.placements[0])
        for repeat in (EVEN, ROUND)
        for lay in [laid((piece,), Cloth(1000, repeat=repeat), Way.FOLDED)]
    }
    assert cuts[EVEN] == "one layer only"
    assert cuts[ROUND] in {"lower layer only", "upper layer only"}


def test_at_the_middle_of_a_pair_uneven_stripes_meet_only_where_that_is_chosen() -> None:
    """Round the body they run on: left and right of the crotch seam meet where it lies on the line that is held."""
    cloth = Cloth(1500, repeat=ROUND)
    seams = meetings(pattern("trousers"))
    across = {
        one.first: one.across
        for one in stripes_met(garment("trousers", cloth, Way.OPEN), seams)
        if one.across
    }
    assert across["front", "crotch"] > 1
    chosen = garment("trousers", cloth, Way.OPEN, (("front", "crotch"),))
    off = {one.first: one.across for one in stripes_met(chosen, seams)}
    assert off["front", "crotch"] == pytest.approx(0.0, abs=0.01)
    assert off["front", "side"] == pytest.approx(0.0, abs=0.01)


@pytest.mark.parametrize("repeat", [EVEN, BOTH])
def test_the_seam_that_is_chosen_comes_before_the_one_that_runs_further(repeat: Repeat) -> None:
    lay = garment("trousers", Cloth(1500, repeat=repeat), Way.OPEN, (("back", "inseam"),))
    met = {one.first: one for one in stripes_met(lay, meetings(pattern("trousers")))}
    assert met["front", "inseam"].across == pytest.approx(0.0, abs=0.01)
    assert met["front", "inseam"].along == pytest.approx(0.0, abs=0.01)
    side = met["front", "side"].across
    assert side is not None
    assert side > 1


@pytest.mark.parametrize(
    ("recipe", "chosen", "words"),
    [
        ("trousers", (("front", "sid"),), "Edges of it at which they can: side, inseam, crotch."),
        ("trousers", (("cuff", "side"),), "There is no piece"),
        ("yoke-frock", (("front_skirt", "yoke_line"),), "gathered"),
        ("trousers", (("front", 0), ("front", "side")), "not to be matched"),
    ],
)
def test_a_seam_that_cannot_be_chosen_is_told(recipe: str, chosen: tuple[Chosen, ...], words: str) -> None:
    pieces, _ = lay_pieces(pattern(recipe))
    for repeat in (EVEN, None):
        refused = paired(pieces, meetings(pattern(recipe)), repeat, chosen)
        assert isinstance(refused, Problem)
        assert words in refused.message


def test_what_uneven_stripes_mean_is_told_in_words() -> None:
    def said(recipe: str, repeat: Repeat) -> str:
        lay = garment(recipe, Cloth(1500, repeat=repeat), Way.FOLDED)
        return " ".join(told(lay, stripes_met(lay, meetings(pattern(recipe)))))

    up, both, even = (said("pleated-skirt", repeat) for repeat in (UP, BOTH, EVEN))
    assert "the cut end along any one line of a crosswise stripe" in up
    assert "The lengthwise ones must be even" in up
    assert "all pieces lie the same way up" in up
    assert "run on round the body" not in up
    assert "Not striped alike to both sides of the middle, folded or unfolded: Front." in both
    assert (
        "Striped the other way round on the left than on the right, seen from the middle: Back, Back waistband."
        in both
    )
    assert "must be even" not in both
    assert "The stripes must be even" in even
    assert "neven" not in even
