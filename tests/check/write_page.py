"""Writes docs/checks.md anew from the register of rules and from the count of seeded faults."""

from __future__ import annotations

from pathlib import Path

from littlefold.check.manual import checks_page

PAGE = Path(__file__).parents[2] / "docs" / "checks.md"


if __name__ == "__main__":
    PAGE.write_text(checks_page(), "utf-8")
