"""How wide the cloth beyond an edge is."""

from __future__ import annotations

import pytest

from littlefold.draft.model import EdgeKind
from littlefold.pattern.allowance import fold_distances, width
from tests.pattern.shapes import edge, straight

LINE = straight((0, 0), (100, 0))


@pytest.mark.parametrize(
    ("kind", "allowance", "turns", "included", "wide", "folds"),
    [
        (EdgeKind.SEAM, 12.0, 1, False, 12.0, ()),
        (EdgeKind.FOLD, 12.0, 1, False, 0.0, ()),
        (EdgeKind.BOUND, 0.0, 1, False, 0.0, ()),
        (EdgeKind.HEM, 20.0, 1, False, 20.0, (0.0,)),
        (EdgeKind.HEM, 20.0, 2, False, 30.0, (0.0, 20.0)),  # 20 deep and 10 turned under
        (EdgeKind.HEM, 6.0, 2, False, 12.0, (0.0, 6.0)),  # a narrow hem: rolled over by its own depth
        (EdgeKind.CASING, 25.0, 2, False, 35.0, (0.0, 25.0)),
        (EdgeKind.HEM, 25.0, 2, True, 25.0, (0.0, 15.0)),  # included: the turn under comes out of it
        (EdgeKind.HEM, 0.0, 2, False, 0.0, ()),
    ],
)
def test_width_and_folds(kind, allowance, turns, included, wide, folds):  # noqa: PLR0917 - a table
    made = edge("e", LINE, kind, allowance, turns=turns, included=included)
    assert width(made) == wide
    assert fold_distances(made) == folds
