"""Figures quoted from elsewhere that the 1977 survey does not hold, each with its source.

Used only by tools/derive_body_tables.py.  Statures and values in mm.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from collections.abc import Callable

    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

# Our name: the column of the survey, or the sum of two columns.
SURVEYED = {
    "stature": "stature",
    "head": "head_girth",
    "neck": "neck_girth",
    "chest": "chest_girth",
    "waist": "waist_girth",
    "hip": "hip_girth",
    "upper_arm": "upper_arm_girth",
    "arm": "acromion_radiale+radiale_stylion",
    "wrist": "wrist_girth",
    "fist": "fist_girth",
    "thigh": "upper_thigh_girth",
    "calf": "calf_girth",
    "ankle": "ankle_girth",
    "foot": "foot_length",
    # The crotch was not measured; the gluteal furrow lies near its level.  A printed trouser draft for stature 134
    # (Russian half-size method, waist 59.2, hip 76.8) gives inside leg 60.5 where the survey's furrow median is 62.5.
    "inside_leg": "gluteal_furrow_height",
    "biacromial": "biacromial_breadth",
    "suprasternale": "suprasternale_height",
    "axilla": "axilla_chest_height",
    "waist_height": "waist_height",
    "sitting_height": "sitting_height",
}

# Surveyed, used for the measurements of DERIVED, and not kept.
AUXILIARY = ("biacromial", "suprasternale", "axilla", "waist_height", "sitting_height")

# Length of a baby at the middle of the age cells of the survey's infants: WHO 2006 medians, mean of girl and boy, at
# 1, 4.5, 7.5, 10.5, 14, 18 and 22 months.
INFANT_LENGTHS = (542.0, 641.0, 685.0, 724.0, 771.0, 815.0, 853.0)


def _infants(*centimetres: float) -> tuple[tuple[float, float], ...]:
    return tuple((s, cm * 10) for s, cm in zip(INFANT_LENGTHS, centimetres, strict=True))


# Snyder et al. 1977, infants of 0-2, 3-5, 6-8, 9-11, 12-15, 16-19 and 20-23 months, means, n = 27 to 45 a cell.
# The first cell mixes newborn and three months, while a head grows 5 cm: there WHO's medians stand instead.
# WHO 2006, mean of girl and boy at birth, 1 and 2 months.
_WHO_HEAD = ((495.0, 341.7), (542.0, 368.8), (577.0, 387.0))
_HEAD = (*_WHO_HEAD, *_infants(38.5, 41.7, 43.9, 45.5, 46.6, 46.8, 47.8)[1:])
_UPPER_ARM = _infants(11.8, 13.0, 14.0, 14.8, 14.5, 14.7, 15.0)
_MID_THIGH = _infants(16.9, 20.7, 21.2, 23.2, 23.4, 24.4, 24.7)
_CALF = _infants(13.7, 15.6, 16.9, 18.1, 18.1, 18.4, 19.0)
_ANKLE = _infants(10.2, 11.6, 12.3, 12.9, 13.2, 13.3, 13.6)
_FOOT = _infants(8.2, 9.1, 10.0, 10.9, 11.7, 11.9, 12.5)
# Shoulder to elbow and elbow to fingertip, less the hand.
_ARM = _infants(19.0, 21.5, 23.1, 25.2, 25.6, 26.8, 28.2)

# Dutch growth study 1997 (Fredriks et al. 2000, 2005), medians, mean of girl and boy, at birth (waist only), 3, 6, 12
# and 18 months; WHO 2006 median lengths 495, 606, 667, 749, 815 mm.
_WAIST = ((495.0, 322.0), (606.0, 388.7), (667.0, 415.0), (749.0, 437.4), (815.0, 451.6))
_HIP = ((606.0, 370.5), (667.0, 412.4), (749.0, 445.6), (815.0, 466.9))
# The same study, stature less sitting height at 6 and 12 months: the leg of a baby.
_LEG = ((667.0, 218.3), (749.0, 266.4))
# Craft Yarn Council baby chart at 3, 6 and 12 months (from memory); at birth about 2 cm under the head (from memory,
# textbooks of child health: head and chest are equal at about one year).
_CHEST = ((495.0, 325.0), (606.0, 405.0), (667.0, 430.0), (749.0, 455.0))
# WHO 2006 medians of length, mean of girl and boy: length to age in months (0.2 for a newborn, so that a ratio exists).
_AGE = (
    (495.0, 0.2), (542.0, 1.0), (577.0, 2.0), (606.0, 3.0), (641.0, 4.5), (667.0, 6.0),
    (710.0, 9.0), (749.0, 12.0), (815.0, 18.0), (853.0, 22.0),
)  # fmt: skip

# Neck, wrist, fist and shoulder breadth of babies: no open figures; the survey's straight line carried on.
_LINES = {
    "neck": (0.1028, 139.0),
    "wrist": (0.0545, 59.4),
    "fist": (0.1319, 36.8),
    "biacromial": (0.1934, 34.6),
}
_CARRIED_ON = {
    n: tuple((s, a * s + b) for s in (500.0, 560.0, 620.0, 680.0, 740.0, 800.0))
    for n, (a, b) in _LINES.items()
}

BABY_NODES = {
    "head": _HEAD,
    "chest": _CHEST,
    "waist": _WAIST,
    "hip": _HIP,
    "upper_arm": _UPPER_ARM,
    "arm": _ARM,
    "thigh": _MID_THIGH,
    "calf": _CALF,
    "ankle": _ANKLE,
    "foot": _FOOT,
    "inside_leg": _LEG,
    "age": _AGE,
    **_CARRIED_ON,
}

# Nape to waist: Craft Yarn Council baby chart 3 to 24 months (from memory) with WHO lengths; a bodice draft for 18 to
# 24 months (230 at 860); a published Nordic size chart 92 to 122 (225 to 295); a Russian dress draft 152 (368).
_BACK_WAIST = (
    (606.0, 155.0), (667.0, 175.0), (749.0, 190.0), (815.0, 205.0), (865.0, 215.0), (860.0, 230.0),
    (920.0, 225.0), (980.0, 240.0), (1040.0, 250.0), (1100.0, 265.0), (1160.0, 280.0), (1220.0, 295.0), (1520.0, 368.0),
)  # fmt: skip
# Body rise: the Nordic chart's outside leg less the survey's furrow height, 92 to 122; the trouser draft for 134.
_BODY_RISE = (
    (920.0, 170.0), (980.0, 186.0), (1040.0, 186.0), (1100.0, 184.0), (1160.0, 184.0), (1220.0, 193.0), (1340.0, 221.0),
)  # fmt: skip


def _line(points: tuple[tuple[float, float], ...], degree: int = 1) -> Floats:
    return np.polyfit([s for s, _ in points], [v for _, v in points], degree)


def body_rise_line(stature: Floats) -> Floats:
    """The straight line through the body rises [mm]."""
    return np.polyval(_line(_BODY_RISE), stature)


def back_waist_line(stature: Floats) -> Floats:
    """The straight line through the lengths from nape to waist [mm]."""
    return np.polyval(_line(_BACK_WAIST), stature)


@dataclass(frozen=True)
class Derived:
    """A measurement that nobody surveyed.

    Attributes:
        parts: The surveyed measurements whose sum it follows, with their shares.
        median: Its median, from stature and from the medians found so far.
        own_share: The share of its variance that is its own.
        factor: On the spread of the sum: the difference of two heights taken on different children spreads too far.
        skew_of: The measurement whose skew it takes; none: even.

    The own shares and the factors are judged, not measured.
    """

    parts: dict[str, float]
    median: Callable[[Floats, dict[str, Floats]], Floats]
    own_share: float
    factor: float = 1.0
    skew_of: str | None = None


DERIVED = {
    # 0.975 of shoulder breadth: a bodice draft for 18-24 months 198 (survey 203 at 86); a UK shop's chart 234 at 105
    # (240); a Russian dress draft 322 at 152 (331).
    "across_back": Derived({"biacromial": 1.0}, lambda _, m: 0.975 * m["biacromial"], own_share=0.1),
    # 0.37 of shoulder breadth: a Nordic chart 80 at 92 (214), 88 at 104 (238), 100 at 122 (270); Russian 122 at 152.
    "shoulder": Derived({"biacromial": 0.37}, lambda _, m: 0.37 * m["biacromial"], own_share=0.3),
    "back_waist": Derived(
        {"suprasternale": 1.0, "waist_height": -1.0},
        lambda s, _: back_waist_line(s),
        own_share=0.1,
        factor=0.8,
    ),
    # A bodice draft for 18-24 months: the side neck 15 mm over the nape, in front 10 mm more: 255 / 230.
    "front_waist": Derived(
        {"suprasternale": 1.0, "waist_height": -1.0},
        lambda s, _: 1.1 * back_waist_line(s),
        own_share=0.2,
        factor=0.88,
    ),
    # 124 at 18-24 months (bodice draft, size 86); 6 mm a size (German grade 98 to 116); 190 at 152 (Russian draft).
    "scye_depth": Derived(
        {"suprasternale": 1.0, "axilla": -1.0},
        lambda s, _: 124.0 + 0.1 * (s - 860.0),
        own_share=0.1,
        factor=0.45,
    ),
    # Between calf and thigh: common practice, no source.
    "knee": Derived(
        {"calf": 0.85, "thigh": 0.15},
        lambda _, m: 0.85 * m["calf"] + 0.15 * m["thigh"],
        own_share=0.2,
        skew_of="calf",
    ),
    "body_rise": Derived(
        {"waist_height": 1.0, "inside_leg": -1.0}, lambda s, _: body_rise_line(s), own_share=0.1, factor=0.6
    ),
    "outside_leg": Derived(
        {"waist_height": 1.0}, lambda s, m: m["inside_leg"] + body_rise_line(s), own_share=0.1
    ),
}
