from __future__ import annotations

from garments import rectangle, ring

from littlefold.lay.cloth import Cloth
from littlefold.lay.place import Effort
from littlefold.lay.scraps import FromScraps, lay_on_scraps
from littlefold.lay.verify import verify

SCRAP = ring([(0, 0), (300, 0), (300, 100), (120, 100), (120, 300), (0, 300)])
OTHER = ring([(0, 0), (200, 0), (100, 200)])


def test_small_pieces_find_their_place_on_scraps() -> None:
    pieces = (rectangle("pocket", 110, 110), rectangle("tab", 60, 40, 2), rectangle("band", 160, 80))
    found = lay_on_scraps(pieces, Cloth(1000), (SCRAP, OTHER), Effort(steps=2000))
    assert isinstance(found, FromScraps)
    assert found.left_out == ()
    assert found.problems == ()
    assert verify(found.lay) == ()
    assert len(found.lay.placements) == 4


def test_what_does_not_fit_is_named() -> None:
    pieces = (rectangle("pocket", 110, 110), rectangle("back", 280, 280))
    found = lay_on_scraps(pieces, Cloth(1000), (SCRAP, OTHER), Effort(steps=300))
    assert isinstance(found, FromScraps)
    assert found.left_out == ("back",)
    assert "back" in found.problems[0].message
