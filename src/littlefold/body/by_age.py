"""A body when only the age is known: the median stature of the age, and what goes with it.

Stature comes from WHO (`stature`) or, on request, from the CDC 2000 growth charts, birth to 14 years
(`tables/cdc_stature.csv`, US public domain, derived by `tools/derive_cdc_table.py`).
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Final, Literal

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.body.proportions import between
from littlefold.body.stature import Lms, stature_at

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.body.measurements import Sex

Reference = Literal["who", "cdc"]

_FIRST_STANDING_MONTH: Final = 24.0


def body_of_age(age_months: float, sex: Sex | None, reference: Reference = "who") -> Measurements:
    """The middle body of an age, every measurement of the register marked as estimated: nobody measured this child.

    The spread of the stature is that of children of this age; those of the others grow with it.
    """
    growth = stature_at(age_months, sex) if reference == "who" else cdc_stature_at(age_months, sex)
    tall = Reading(round(growth.median, 1), Origin.ESTIMATED, round(growth.median * growth.spread, 1))
    body, _ = complete(Measurements((("stature", tall),), None, sex))
    return replace(body, age_months=age_months, nickname=f"age {said_age(age_months)}")


def said_age(months: float) -> str:
    """An age in words: `9 months`, `4 y`, `4 y 6 months`; whole months."""
    years, rest = divmod(round(months), 12)
    part = f"{rest} month{'' if rest == 1 else 's'}"
    if not years:
        return part
    return f"{years} y {part}" if rest else f"{years} y"


def cdc_stature_at(age_months: float, sex: Sex | None) -> Lms:
    """CDC's curve of length (under 2 years) or stature; the mean of girl and boy where sex is not given.

    Ages below birth or above 14 years are read as those ends.
    """
    if sex is None:
        girl, boy = cdc_stature_at(age_months, "girl"), cdc_stature_at(age_months, "boy")
        return Lms(
            (girl.power + boy.power) / 2, (girl.median + boy.median) / 2, (girl.spread + boy.spread) / 2
        )
    posture = "lying" if age_months < _FIRST_STANDING_MONTH else "standing"
    ages, powers, medians, spreads = _cdc()[sex, posture]
    return Lms(*(between(ages, curve, age_months) for curve in (powers, medians, spreads)))


@lru_cache(maxsize=1)
def _cdc() -> Mapping[tuple[str, str], tuple[tuple[float, ...], ...]]:
    lines = files(__package__).joinpath("tables/cdc_stature.csv").read_text("utf-8").splitlines()
    _, *rows = [line.split(",") for line in lines if line and not line.startswith("#")]
    keys = dict.fromkeys((row[0], row[1]) for row in rows)
    return {
        key: tuple(
            zip(*([float(cell) for cell in row[2:]] for row in rows if (row[0], row[1]) == key), strict=True)
        )
        for key in keys
    }
