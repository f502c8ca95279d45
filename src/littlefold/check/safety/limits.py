"""The numbers of the safety rules, each with the place where it was read.

The standards themselves are not free; what stands here was read in public notices about them, named beside
each number.  Numbers from memory are marked so.  None of this is legal advice.
"""

from __future__ import annotations

from typing import Final

EN_CORDS: Final = "EN 14682"
US_CORDS: Final = "16 CFR 1120.3(b), ASTM F1816"

# EN 14682: young children are those up to 7 years, that is up to this stature [mm]; tukes.fi.
YOUNG_STATURE: Final = 1340.0
# Older children, up to 14 years: girls and boys up to these statures [mm]; tukes.fi.
GIRL_STATURE: Final = 1760.0
BOY_STATURE: Final = 1820.0
# Older children, neck and hood: the girth of a loop without free ends when drawn to fit [mm]; baijiantest
# (2007).
NECK_LOOP: Final = 150.0
# Waist and lower edge, all ages: each free end with the garment at its largest [mm]; baijiantest, prinfab.
FREE_END: Final = 140.0
# Tied belts and sashes: each end from its fixing [mm]; read in the Chinese list for infants' wear (FZ/T),
# from memory the same in EN 14682.
SASH_END: Final = 360.0

# 16 CFR 1120.3(b): waist and bottom drawstring outside its channel at full width [mm]: 3 in; Federal
# Register.
US_FREE_END: Final = 76.2
# Statures of the US sizes [mm].  2T from 31 in and 12 up to half way from 58.5 to 61 in, read on a trade page
# whose 6X row ends at the limits of CS 151-50; 16 up to 64 in is from memory.
US_2T: Final = 787.0
US_12: Final = 1518.0
US_16: Final = 1626.0

# 16 CFR 1501: the small-parts cylinder, its width and its greatest depth [mm]: 1.25 in and 2.25 in.
CYLINDER_WIDTH: Final = 31.7
CYLINDER_DEPTH: Final = 57.1
# It is for articles for children under this age [months].
SMALL_PARTS_AGE: Final = 36.0
# Where the age is not known: the stature of a child of 36 months, 97th centile of boys 103.1 cm [mm]; WHO.
SMALL_PARTS_STATURE: Final = 1031.0

# 16 CFR 1615: an infant garment is sized up to 9 months, and one piece is up to 64.8 cm long, or two pieces
# up to 40 cm each [months, mm]; eCFR.  The rule also prints 25.75 in = 65.4 cm; the smaller number is used.
INFANT_AGE: Final = 9.0
INFANT_ONE_PIECE: Final = 648.0
INFANT_TWO_PIECE: Final = 400.0
# Where the age is not known: the median length of a boy of 9 months, 71.97 cm [mm]; WHO.
INFANT_STATURE: Final = 720.0

# BS 8510: the neck of a sleep bag, least and most, before and from 6 months [months, mm]; gap-analysis page.
BAG_AGE: Final = 6.0
BAG_NECK_YOUNG: Final = (280.0, 320.0)
BAG_NECK_OLDER: Final = (355.0, 395.0)
# Where the age is not known: the median length of a boy of 6 months, 67.64 cm [mm]; WHO.
BAG_STATURE: Final = 676.0
