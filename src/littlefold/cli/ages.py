"""Ages and days as people say them: `4y`, `18m`, `4y6m`, `2026-03-01`."""

from __future__ import annotations

import re
from datetime import date

from littlefold.body.stature import OLDEST
from littlefold.problem import Problem

_AGE = re.compile(r"(?:(\d{1,2}(?:[.,]\d)?)y(?:ears?)?)?(?:(\d{1,3})m(?:onths?)?)?")


def read_age(text: str) -> float | Problem:
    """The age a person named [months]; a number alone is refused, since it could be either."""
    found = _AGE.fullmatch(text.replace(" ", "").lower())
    if found is None or not found[0]:
        return Problem("age-not-understood", f"“{text[:40]}” is no age. Write 4y, 18m or 4y6m.")
    months = float((found[1] or "0").replace(",", ".")) * 12 + float(found[2] or 0)
    if months > OLDEST:
        return Problem(
            "age-not-understood",
            f"“{text[:40]}” is older than {OLDEST / 12:.0f} years, where the growth tables end. "
            "Say the measurements instead.",
        )
    return months


def read_day(text: str) -> date | Problem:
    """The day a person wrote."""
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        return Problem("day-not-understood", f"“{text[:40]}” is not a day. Write it like 2026-03-31.")
