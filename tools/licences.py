"""Writes docs/licences.md: the licence of every package that Littlefold or its tests use, as the package states it."""

from __future__ import annotations

import re
from importlib.metadata import PackageNotFoundError, metadata
from pathlib import Path

ROOT = Path(__file__).parents[1]
SETS = {"product": "What the product uses", "tests": "What only the tests and `make check` use"}
# Packages that state their licence in a file alone, or in words that need a look; read on the day of the lock.
READ_BY_HAND = {
    "psycopg": "LGPL-3.0-only",
    "psycopg-binary": "LGPL-3.0-only",
    "spyrrow": "MIT (its file; jagua-rs inside is MPL-2.0)",
    "colorama": "BSD-3-Clause (only on Windows)",
    "tzdata": "Apache-2.0 (only on Windows)",
    "httpx2-jsfetch": "BSD-3-Clause (only in a browser)",
}


def names(which: str) -> list[str]:
    """The packages of a requirement file, in order."""
    text = (ROOT / "requirements" / f"{which}.txt").read_text(encoding="utf-8")
    return re.findall(r"^([a-z0-9-]+)(?:\[.*\])?==", text, flags=re.MULTILINE)


def licence(name: str) -> str:
    """The licence a package states."""
    if name in READ_BY_HAND:
        return READ_BY_HAND[name]
    try:
        about = metadata(name)
    except PackageNotFoundError:
        return "not installed on this system"
    stated = about.get("License-Expression") or about.get("License") or ""
    if stated and len(stated) < 60:
        return stated.strip()
    classes = [
        one.rsplit("::", 1)[-1].strip() for one in about.get_all("Classifier") or [] if "License" in one
    ]
    first = next(iter(stated.strip().splitlines()), "")
    return ", ".join(classes) or first[:60] or "see the package"


def page() -> str:
    """The whole page."""
    lines = [
        "# Licences",
        "",
        "Littlefold is under the MIT licence (`LICENSE`). No third-party code, font or data dump is committed; packages bring",
        "what they bring. This page is written by `tools/licences.py` from what the packages state.",
        "",
        "The PDF sheets are set in Libertinus Serif (SIL Open Font License 1.1), which the `typst` package carries.",
        "PostgreSQL is optional; its driver `psycopg` is LGPL and used unchanged, as a library.",
    ]
    known: set[str] = set()
    for which, title in SETS.items():
        found = sorted(set(names(which)) - known)
        known |= set(found)
        lines += ["", f"## {title}", "", "| package | licence |", "|---|---|"]
        lines += [f"| {name} | {licence(name)} |" for name in found]
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    (ROOT / "docs" / "licences.md").write_text(page(), encoding="utf-8")
