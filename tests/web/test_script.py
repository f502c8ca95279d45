"""The pure functions of the pages, tested by node's own runner over the server's own answers."""

from __future__ import annotations

import json
import os
import random
import shutil
import subprocess
from pathlib import Path

import pytest

from littlefold.body.tape import read_length, say_length

SCRIPTS = sorted((Path(__file__).parent / "script").glob("*.test.mjs"))
WRITTEN = (
    "56 cm",
    "560 mm",
    "1.04 m",
    "22 1/4 in",
    '22 1/4"',
    "22.25in",
    "56,5 cm",
    "1/2 in",
    ".5 cm",
    "0.5cm",
    "3-1/2 in",
)
BARE = (("56", "cm"), ("22", "in"), ("5.5", "cm"), ("1/4", "in"))


@pytest.fixture(scope="module")
def node() -> str:
    found = shutil.which("node")
    if found is None:
        pytest.skip("node is not here: the scripts of the pages are not tested")
    return found


@pytest.fixture
def cases(tmp_path: Path) -> Path:
    chance = random.Random(5)  # noqa: S311 - a sample, no secret
    lengths = [0.0, 0.04, 0.05, 3.175, 25.4, 1000.0, *(round(chance.uniform(0, 1600), 3) for _ in range(600))]
    said = [(mm, say_length(mm, "cm"), say_length(mm, "in")) for mm in lengths]
    read = [(text, "cm", read_length(text)) for text in WRITTEN]
    read += [(text, unit, read_length(text, unit)) for text, unit in BARE]  # type: ignore[arg-type]
    path = tmp_path / "cases.json"
    path.write_text(json.dumps({"said": said, "read": read}))
    return path


@pytest.mark.parametrize("script", SCRIPTS, ids=lambda path: path.name)
def test_scripts(node: str, script: Path, cases: Path) -> None:
    seen = subprocess.run(
        [node, "--test", str(script)],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
        env={**os.environ, "LITTLEFOLD_CASES": str(cases)},
    )
    assert seen.returncode == 0, seen.stdout + seen.stderr
    assert "# fail 0" in seen.stdout
    assert "# pass 0" not in seen.stdout


def test_there_are_scripts_to_test() -> None:
    assert len(SCRIPTS) >= 4


def test_every_module_of_the_pages_is_small_and_ours() -> None:
    folder = Path(__file__).parents[2] / "src" / "littlefold" / "web" / "static"
    modules = sorted(folder.glob("*.js"))
    assert modules
    for module in modules:
        text = module.read_text(encoding="utf-8")
        assert len(text.splitlines()) < 250, module.name
        assert "http://" not in text.replace("http://www.w3.org/2000/svg", ""), module.name
        assert "https://" not in text, module.name
        assert "eval(" not in text, module.name
        assert "innerHTML" not in text, module.name
