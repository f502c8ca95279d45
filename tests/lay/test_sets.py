"""The public sets of the literature, if they are here: every lay sound, and no worse than greedy."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

SETS = Path(os.environ.get("LITTLEFOLD_SETS", Path(__file__).parents[3] / "shared/reference/data/packing"))

pytestmark = pytest.mark.skipif(not SETS.is_dir(), reason="the public packing sets of ../shared are not here")


@pytest.mark.parametrize("name", ["albano", "dagli", "fu", "jakobs1", "shapes1"])
def test_a_public_set_is_laid_soundly(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    from bench import lay_sets  # noqa: PLC0415 - reads the environment when it is loaded
    from littlefold.lay.place import Effort, lays  # noqa: PLC0415
    from littlefold.lay.verify import verify  # noqa: PLC0415

    monkeypatch.setattr(lay_sets, "SETS", SETS)
    shown = list(lays(lay_sets.load(name), Effort(steps=150)))
    assert all(verify(lay) == () for lay in shown)
    # Bottom-left filling alone reaches 55-75 % on these sets; a mistake in the stances falls far below.
    assert shown[-1].share_used > 0.55
