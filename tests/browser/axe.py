"""axe-core, fetched by npm for the tests alone: one fixed version, whose content is checked before it is run.

Nothing of it is in the repository.  Where npm or the network is absent the tests that need it are skipped, aloud.
"""

from __future__ import annotations

import base64
import hashlib
import json
import shutil
import subprocess
import tarfile
import tempfile
from contextlib import suppress
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Page

VERSION = "4.10.3"
INTEGRITY = "sha512-Xm7bpRXnDSX2YE2YFfBk2FnF0ep6tmG7xPh8iHee8MIcrgq762Nkce856dYtJYLkuIoYZvGfTs/PbZhideTcEg=="
CACHE = Path(tempfile.gettempdir()) / f"littlefold-axe-core-{VERSION}"
PATIENCE = 120
"""How long npm may take [s]."""
WCAG = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
GRAVE = {"serious", "critical"}


@lru_cache(maxsize=1)
def _script() -> str:
    CACHE.mkdir(exist_ok=True)
    packed = CACHE / f"axe-core-{VERSION}.tgz"
    if not packed.exists() or not _is_whole(packed):
        _fetch()
    if not packed.exists():
        pytest.skip("axe-core cannot be fetched by npm: no page is looked at for accessibility")
    assert _is_whole(packed), "what npm fetched is not the axe-core that was looked at"
    with tarfile.open(packed) as inside:
        found = inside.extractfile("package/axe.min.js")
        assert found is not None
        return found.read().decode()


def _fetch() -> None:
    npm = shutil.which("npm")
    if npm is None:
        pytest.skip("axe-core cannot be fetched, npm is absent: no page is looked at for accessibility")
    wanted = [npm, "pack", f"axe-core@{VERSION}", "--silent"]
    with tempfile.TemporaryDirectory(dir=CACHE) as alone, suppress(subprocess.TimeoutExpired):
        subprocess.run(wanted, cwd=alone, check=False, capture_output=True, timeout=PATIENCE)
        for packed in Path(alone).glob("*.tgz"):
            packed.replace(CACHE / packed.name)  # whole at once: another worker may fetch it at the same time


def _is_whole(packed: Path) -> bool:
    content = hashlib.sha512(packed.read_bytes()).digest()
    return f"sha512-{base64.b64encode(content).decode()}" == INTEGRITY


def grave_faults(page: Page, *, only: str = "") -> list[str]:
    """What axe-core finds serious or critical on a page, by the rules of WCAG 2.2 A and AA, or by one rule of its own."""
    page.evaluate(_script())
    asked: dict[str, Any] = {"resultTypes": ["violations"]}
    asked["runOnly"] = {"type": "rule", "values": [only]} if only else {"type": "tag", "values": WCAG}
    found = page.evaluate(f"axe.run(document, {json.dumps(asked)})")
    assert only or found["testEngine"]["version"] == VERSION
    return [
        f"{fault['id']}: {node['html'][:160]} ({node['failureSummary'][:300]})"
        for fault in found["violations"]
        if fault["impact"] in GRAVE
        for node in fault["nodes"]
    ]
