"""How much a rule of one region weighs in another."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.problem import Severity

if TYPE_CHECKING:
    from .circumstances import Circumstances


def en_severity(circumstances: Circumstances) -> Severity:
    """An error, except in the United States, where the European rule is not in force and stays a warning."""
    return Severity.WARNING if circumstances.region == "us" else Severity.ERROR
