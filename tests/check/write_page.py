"""Writes docs/checks.md anew from the register of rules and from the count of seeded faults."""

from __future__ import annotations

from pathlib import Path

from littlefold.check.manual import checks_page
from tests.check.faults.tally import faults_section, tally

PAGE = Path(__file__).parents[2] / "docs" / "checks.md"


if __name__ == "__main__":
    # run from the top of the project: python -m tests.check.write_page
    PAGE.write_text(checks_page() + "\n" + faults_section(tally()), "utf-8")
