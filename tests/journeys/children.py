"""Eleven real children of the 1977 survey, as listed in ../shared/reference/standards.md 2.1 (R. G. Snyder et al.,
Anthropometry of Infants, Children, and Youths to Age 18 for Product Safety Design, UM-HSRI-77-17, 1977).

Sitting height, axilla height and waist height are left out: no recipe asks for them.
"""

from __future__ import annotations

from littlefold.body.measurements import Measurements

_NAMES = ("stature", "head", "neck", "chest", "waist", "hip", "thigh", "upper_arm", "wrist", "ankle", "foot")

_ROWS = {
    ("91099", "F", 2.442): (905, 480, 225, 490, 476, 505, 277, 164, 112, 140, 141),
    ("90214", "M", 3.411): (959, 508, 247, 514, 496, 517, 274, 139, 105, 145, 164),
    ("90233", "F", 4.079): (1032, 499, 240, 528, 506, 542, 319, 156, 127, 153, 170),
    ("11001", "M", 4.838): (1089, 511, 246, 559, 498, 566, 329, 175, 114, 150, 171),
    ("12032", "F", 6.323): (1150, 508, 255, 573, 515, 593, 347, 171, 116, 157, 177),
    ("38013", "M", 7.101): (1235, 529, 257, 602, 538, 596, 350, 172, 124, 168, 197),
    ("38066", "F", 8.090): (1250, 510, 271, 629, 554, 633, 369, 200, 123, 165, 190),
    ("5043", "M", 10.386): (1376, 529, 275, 641, 591, 681, 414, 212, 135, 187, 221),
    ("4053", "F", 11.901): (1472, 528, 302, 726, 629, 766, 441, 235, 141, 193, 230),
    ("3001, stout", "F", 8.482): (1383, 540, 336, 925, 855, 908, 582, 267, 154, 207, 219),
    ("90729, lean", "M", 8.594): (1399, 530, 271, 593, 622, 715, 425, 204, 142, 187, 239),
}

ELEVEN = tuple(
    Measurements.of(
        dict(zip(_NAMES, map(float, row), strict=True)),
        age_months=age * 12,
        sex="girl" if sex == "F" else "boy",
        nickname=who,
    )
    for (who, sex, age), row in _ROWS.items()
)
