"""A printed grade: a girl's dress from 98 to 116 in three steps (Mueller & Sohn, "Grading a dress for girls").

Printed for the whole way [mm]: depth of the scye 18, back width 6, neck width 1.5, shoulder 9 along its line, half the scye
width 1.5, back waist 36, hem 90; chest 10 for each size.  The page's own check: back 6 + scye 3 + front 6 = 15, which is half
of 3 times 10.  The bodies here grow by those steps; the recipe is drafted for each, and the points must move as printed.
"""

from __future__ import annotations

import pytest

from littlefold.body.measurements import Measurements
from littlefold.geometry import Vector
from littlefold.grading import SizeRun, moves
from littlefold.grading.grade import grade_bodies
from littlefold.recipe.parse import parse

RECIPE = """\
recipe dress
title "Girl's dress, half of it"

measure chest, across_back, neck, scye_depth, back_waist, shoulder
own measure hem "Nape to hem"

amount back = across_back / 2 "Half the back"
amount scye = chest / 2 - across_back "The scye; the front is as wide as the back"

drawing dress
point A at the fold
point B below A by scye_depth
point W below A by back_waist
point H below A by hem
point N right of A by neck / 6
point C right of B by back
point E right of C by scye / 2
point D right of C by scye
point F right of D by back
point M right of N by 10 cm
point S from N by shoulder at 20 degrees clockwise from N-M
"""

# Of size 98 [mm]; only the steps are printed, so the beginnings are ours.
FIRST = {
    "chest": 560.0,
    "across_back": 220.0,
    "neck": 252.0,
    "scye_depth": 140.0,
    "back_waist": 240.0,
    "shoulder": 85.0,
    "hem": 560.0,
}
STEP = {
    "chest": 10.0,
    "across_back": 4.0,
    "neck": 3.0,
    "scye_depth": 6.0,
    "back_waist": 12.0,
    "shoulder": 3.0,
    "hem": 30.0,
}
SIZES = (98, 104, 110, 116)


@pytest.fixture(scope="module")
def run() -> SizeRun:
    bodies = tuple(
        (str(size), Measurements.of({name: FIRST[name] + step * STEP[name] for name in FIRST}))
        for step, size in enumerate(SIZES)
    )
    found = grade_bodies(parse(RECIPE, "dress"), bodies)
    assert found.problems == ()
    return found


@pytest.mark.parametrize(
    ("point", "way"),
    [
        ("A", (0.0, 0.0)),
        ("B", (0.0, -18.0)),
        ("C", (6.0, -18.0)),
        ("E", (6.0 + 1.5, -18.0)),
        ("F", (6.0 + 3.0 + 6.0, -18.0)),
        ("N", (1.5, 0.0)),
        ("W", (0.0, -36.0)),
        ("H", (0.0, -90.0)),
    ],
)
def test_points_move_as_printed(run: SizeRun, point: str, way: tuple[float, float]) -> None:
    (move,) = (move for move in moves(run) if move.point == f"dress.{point}")
    assert (move.whole.x, move.whole.y) == pytest.approx(way, abs=1e-9)
    assert len(move.steps) == 3
    assert all((step - move.steps[0]).length < 1e-9 for step in move.steps)


def test_the_shoulder_lengthens_along_its_line(run: SizeRun) -> None:
    lengths = [draft.points["dress.N"].at.distance(draft.points["dress.S"].at) for draft in _drafts(run)]
    assert lengths[-1] - lengths[0] == pytest.approx(9.0)


def test_the_neck_point_goes_a_quarter_of_a_step_less_than_the_back(run: SizeRun) -> None:
    """Printed: 6 - 1.5 = 4.5."""
    ways = {move.point: move.whole for move in moves(run)}
    between = ways["dress.C"] - ways["dress.N"]
    assert between.x == pytest.approx(4.5)
    assert isinstance(between, Vector)


def _drafts(run: SizeRun) -> list:
    return [size.pattern.draft for size in run.sizes]
