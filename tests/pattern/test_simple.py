from __future__ import annotations

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.pattern.model import Outline
from littlefold.pattern.trace import trace
from littlefold.pipeline import on_the_shelf


def test_outlines_that_share_a_fold_but_for_rounding():
    """For just this skirt the plain difference of stitch and cutting polygon is the whole stitch polygon (GEOS 3.13)."""
    child, _ = complete(Measurements.of({"stature": 1344.0, "hip": 691.0, "waist": 603.0}))
    pattern = trace(evaluate(on_the_shelf("circle-skirt"), child, shelf=on_the_shelf))
    assert pattern.problems == ()
    outline = pattern.piece("skirt").outline
    assert outline.is_round()
    assert not Outline(outline.cut, outline.stitch).is_round()
