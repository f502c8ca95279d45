"""Ways and widths compared with damaged spots and kept pieces: carried over where it can be, else refused in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from littlefold.lay.ways import Way
from littlefold.web.asked import understand
from littlefold.web.pages.cloth_asked import COMPARED_WAYS
from littlefold.web.pages.cloth_compared import comparing, parts_of, remarks_on
from littlefold.web.pages.cloth_laid import on_cloths
from tests.web.test_cloth import found_by

if TYPE_CHECKING:
    from fastapi.testclient import TestClient

    from littlefold.lay.compare import Row
    from littlefold.web.pages.cloth_laid import OnCloth
    from littlefold.web.room import Room

SPOILT = "0 x 0 cm + 10 x 150 cm"
"""The first 10 cm of the cloth in all its width, which is the same place however it is folded lengthwise."""


def asked(room: Room, fields: dict[str, str]) -> OnCloth:
    recipe = room.recipe("trousers")
    assert recipe is not None
    return on_cloths(room.fulfil(understand(recipe, {}, room.preferences).wish), fields, "cm")[0]


def rows(on: OnCloth) -> dict[tuple[Way, float], Row]:
    found = {(row.way, row.width): row for row in comparing(on)(lambda: True)}
    assert len(found) == parts_of(on)
    return found


@pytest.mark.parametrize("way", [Way.OPEN, Way.FOLDED, Way.TWO_FOLDS])
def test_no_way_lays_a_piece_on_a_damaged_spot(room: Room, way: Way) -> None:
    on = asked(room, {"cloth-way": way, "cloth-spots": SPOILT})
    found = rows(on)
    assert {width for _, width in found} == {1400.0}  # another width is another cloth
    assert remarks_on(on) == ("The damaged spots are those of this cloth, so other widths are left out.",)
    laid = {one: row.lay for (one, _), row in found.items() if row.lay is not None}
    assert {Way.OPEN, Way.FOLDED} <= set(laid)
    for lay in laid.values():
        assert min(lay.shape(one).bounds[0] for one in lay.placements) >= 100.0
    for crosswise in (Way.CROSSWISE, Way.FOUR_LAYERS):
        row = found[crosswise, 1400.0]
        assert row.lay is None
        assert "depends on the length of the lay" in row.problems[0].message


def test_a_kept_place_is_one_of_the_way_that_it_was_told_for(room: Room) -> None:
    on = asked(room, {"cloth-way": "open", "cloth-kept": "front = 40 x 60 cm"})
    found = rows(on)
    tail = next(piece for piece in on.pieces if piece.name == "front").arrow[0]
    for width in (1120.0, 1400.0, 1500.0):
        lay = found[Way.OPEN, width].lay
        assert lay is not None
        tails = [one.affine.apply(tail) for one in lay.placements if one.piece == "front"]
        assert any((round(at.x), round(at.y)) == (400, 600) for at in tails)
    others = [row for (way, _), row in found.items() if way is not Way.OPEN]
    assert len(others) == 3 * (len(COMPARED_WAYS) - 1)
    assert all(row.lay is None and "kept for front" in row.problems[0].message for row in others)


def test_with_nothing_told_of_single_places_all_widths_are_compared(room: Room) -> None:
    on = asked(room, {"cloth-way": "open", "cloth-width": "90 cm"})
    assert remarks_on(on) == ()
    assert {width for _, width in rows(on)} == {900.0, 1120.0, 1400.0, 1500.0}


def test_the_page_says_why_a_way_is_left_out(client: TestClient) -> None:
    query = f"cloth-way=open&cloth-spots={SPOILT.replace('+', '%2B')}"
    started = client.post("/cloth/bib/search", data={"query": query, "kind": "ways"})
    told = str(found_by(client, started.headers["location"].partition("#")[0])["html"])
    assert "other widths are left out" in told
    assert "depends on the length of the lay" in told
    assert told.count("least cloth") == 1
