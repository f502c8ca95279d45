"""Every shipped recipe at three sizes against its golden file."""

from __future__ import annotations

import re
from itertools import zip_longest
from pathlib import Path

import pytest

from littlefold.body.measurements import Measurements
from littlefold.check import Circumstances
from littlefold.draft.suits import stature_range
from littlefold.pipeline import Wish, fulfil, on_the_shelf
from littlefold.recipe.shelf import shipped_names
from tests.golden.dump import dump

FOLDER = Path(__file__).with_name("drafts")
SHARES = {"small": 0.1, "middle": 0.5, "large": 0.9}
CASES = [(name, size) for name in shipped_names() for size in SHARES]


@pytest.mark.parametrize(("name", "size"), CASES)
def test_golden_draft(name: str, size: str, request: pytest.FixtureRequest) -> None:
    recipe = on_the_shelf(name)
    assert recipe is not None
    low, high = stature_range(recipe)
    body = Measurements.of({"stature": round(low + (high - low) * SHARES[size])})
    found = dump(fulfil(Wish(recipe, body, Circumstances())))
    file = FOLDER / f"{name}-{size}.txt"
    if request.config.getoption("--update-golden"):
        file.write_text(found, encoding="utf-8")
    assert file.is_file(), f"no golden file {file.name}: look at the draft, then run with --update-golden"
    assert found == file.read_text(encoding="utf-8"), moved(file.read_text(encoding="utf-8"), found)


def test_no_orphans() -> None:
    assert {path.stem for path in FOLDER.glob("*.txt")} == {f"{name}-{size}" for name, size in CASES}


def moved(before: str, after: str) -> str:
    """What changed, in words of geometry: how far each point went, by how much each length changed."""
    said = []
    for old, new in zip_longest(before.splitlines(), after.splitlines(), fillvalue=""):
        if old == new:
            continue
        numbers = [list(map(float, re.findall(r"-?\d+\.\d\d", line))) for line in (old, new)]
        change = [f"{b - a:+.2f}" for a, b in zip(*numbers, strict=False)]
        same_thing = re.sub(r"-?\d+\.\d+", "", old) == re.sub(r"-?\d+\.\d+", "", new)
        said.append(f"{new}: moved by {', '.join(change)} mm" if same_thing else f"was: {old}\n now: {new}")
    return "\n".join(said)
