"""Stored lays: what is written is read back to the last bit, and a lay that was spoilt is refused."""

from __future__ import annotations

import json

import pytest
import shapely
from garments import dress, romper

from littlefold.lay.cloth import Cloth, Price, Repeat
from littlefold.lay.lay import Lay
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.stored import read_stored, stored
from littlefold.lay.ways import Way


def laid(way: Way, cloth: Cloth, **more: object) -> Lay:
    found = prepare(dress() if way is not Way.TWO_FOLDS else romper(), cloth, way, **more)  # type: ignore[arg-type]
    assert isinstance(found, Prepared)
    return next(lays(found, Effort(0)))


@pytest.mark.parametrize("way", [Way.OPEN, Way.FOLDED, Way.TWO_FOLDS, Way.PARTLY])
def test_a_stored_lay_is_read_back_to_the_last_bit(way: Way) -> None:
    lay = laid(way, Cloth(1120, price=Price(8.5, "EUR"), repeat=Repeat(40.0) if way is Way.OPEN else None))
    assert read_stored(stored(lay)) == lay


def test_uneven_stripes_are_stored_and_checked_when_they_are_read() -> None:
    repeat = Repeat(40.0, 50.0, uneven_along=True)
    lay = laid(Way.OPEN, Cloth(1120, repeat=repeat))
    assert read_stored(stored(lay)) == lay
    kept = json.loads(stored(laid(Way.OPEN, Cloth(1120, repeat=Repeat(40.0, 50.0)))))
    assert {one["along"] for one in kept["placements"]} == {1, -1}
    kept["cloth"]["repeat"]["uneven_along"] = True
    found = read_stored(json.dumps(kept))
    assert isinstance(found, tuple)
    assert {one.code for one in found} == {"stripes-turned-round"}


def test_a_lay_that_was_stored_before_stripes_could_be_uneven_is_read_as_even() -> None:
    kept = json.loads(stored(laid(Way.OPEN, Cloth(1120, repeat=Repeat(40.0, 50.0)))))
    kept["cloth"]["repeat"] = {"along": 40.0, "across": 50.0}
    read = read_stored(json.dumps(kept))
    assert isinstance(read, Lay)
    assert read.cloth.repeat == Repeat(40.0, 50.0)


def test_damaged_spots_are_stored_with_it() -> None:
    spot = shapely.box(100.0, 100.0, 200.0, 180.0)
    lay = laid(Way.OPEN, Cloth(1120), holes=(spot,))
    read = read_stored(stored(lay))
    assert isinstance(read, Lay)
    assert [hole.equals(spot) for hole in read.holes] == [True]


def test_a_stored_lay_that_was_spoilt_is_refused_in_words() -> None:
    kept = json.loads(stored(laid(Way.FOLDED, Cloth(1120))))
    moved = {**kept, "placements": [{**kept["placements"][0], "y": 17.0}, *kept["placements"][1:]]}
    found = read_stored(json.dumps(moved))
    assert isinstance(found, tuple)
    assert {one.code for one in found} & {"not-on-the-fold", "cuts-overlap", "cut-off-the-cloth"}
    missing = read_stored(json.dumps({**kept, "placements": kept["placements"][1:]}))
    assert isinstance(missing, tuple)
    assert "wrong-number" in {one.code for one in missing}


def test_a_cut_moved_off_every_layer_is_refused_in_words() -> None:
    kept = json.loads(stored(laid(Way.FOLDED, Cloth(1120))))
    moved = [{**one, "y": 9000.0} for one in kept["placements"]]
    found = read_stored(json.dumps({**kept, "placements": moved}))
    assert isinstance(found, tuple)
    assert "cut-off-the-cloth" in {one.code for one in found}


@pytest.mark.parametrize(
    "spoilt",
    [{"gap": -50.0}, {"length": -1.0}, {"cloth": {"selvedge": -100.0}}, {"cloth": {"width": 15.0}},
     {"cloth": {"step": 0.0}}, {"cloth": {"shrinkage": {"along": 1.0, "across": 0.0}}}],
)  # fmt: skip
def test_a_cloth_or_gap_that_cannot_be_is_refused(spoilt: dict) -> None:
    kept = json.loads(stored(laid(Way.OPEN, Cloth(1120))))
    cloth = kept["cloth"] | spoilt.get("cloth", {})
    if "shrinkage" in spoilt.get("cloth", {}):
        cloth["shrinkage"] = kept["cloth"]["shrinkage"] | spoilt["cloth"]["shrinkage"]
    found = read_stored(json.dumps(kept | spoilt | {"cloth": cloth}))
    assert isinstance(found, tuple)
    assert found[0].code == "lay-not-read"


@pytest.mark.parametrize("text", ["", "[]", "{}", '{"format": "littlefold-lay/2"}'])
def test_what_is_no_lay_is_refused_in_words(text: str) -> None:
    found = read_stored(text)
    assert isinstance(found, tuple)
    assert found[0].code == "lay-not-read"
