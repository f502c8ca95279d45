"""One look for every meaning, told apart in black and white on a home printer.

The conventions are those of textbooks: helping lines dotted and thin, the final line of the draft solid,
the cutting line solid and heavy, the stitching line broken, the fold a long dash and a dot, the grain a
double arrow (sheets of pattern markings: skuola.net; scribd.com/document/427806985).  Everything is ink on
paper: no colour carries a meaning.
"""

from __future__ import annotations

from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from littlefold.drawing.marks import Meaning

if TYPE_CHECKING:
    from collections.abc import Mapping

Face = Literal["upright", "slanted", "heavy"]


@dataclass(frozen=True, slots=True)
class Look:
    """How a meaning looks on paper.

    Attributes:
        width: The width of a line [mm].
        dash: Lengths drawn and left out in turn [mm]; empty for a whole line.
        grey: 0 is black ink, 1 is bare paper.
        dot: The diameter of a point [mm].
        face: The cut of the letters.
    """

    width: float
    dash: tuple[float, ...] = ()
    grey: float = 0.0
    dot: float = 1.2
    face: Face = "upright"


LOOKS: Mapping[Meaning, Look] = MappingProxyType(
    {
        Meaning.CUT: Look(0.6),
        Meaning.STITCH: Look(0.35, (4.0, 2.0)),
        Meaning.FOLD: Look(0.4, (10.0, 1.8, 1.0, 1.8), face="slanted"),
        Meaning.TURN: Look(0.3, (7.0, 1.2, 0.7, 1.2, 0.7, 1.2), face="slanted"),
        Meaning.GRAIN: Look(0.25, face="slanted"),
        Meaning.NOTCH: Look(0.45),
        Meaning.INSIDE: Look(0.35, (1.6, 1.2)),
        Meaning.CONSTRUCTION: Look(0.2, (0.3, 1.3), grey=0.2),
        Meaning.DRAFT: Look(0.4, face="slanted"),
        Meaning.NEW: Look(0.8, dot=1.8, face="heavy"),
        Meaning.OLD: Look(0.3, grey=0.58, dot=0.9),
        Meaning.GUIDE: Look(0.15, grey=0.25, dot=0.7),
        Meaning.LETTER: Look(0.2, dot=1.1),
        Meaning.TEXT: Look(0.2),
        Meaning.TITLE: Look(0.3, face="heavy"),
        Meaning.CAUTION: Look(0.5, face="heavy"),
        Meaning.FRAME: Look(0.15, grey=0.35),
        Meaning.RULER: Look(0.18),
        Meaning.FINDING: Look(0.7, (0.7, 0.9), dot=2.2),
        Meaning.CLOTH: Look(0.5, (14.0, 2.5)),
        Meaning.SIZE_1: Look(0.4),
        Meaning.SIZE_2: Look(0.35, (5.0, 1.5)),
        Meaning.SIZE_3: Look(0.35, (9.0, 1.3, 0.5, 1.3)),
        Meaning.SIZE_4: Look(0.5, (0.6, 1.1)),
        Meaning.SIZE_5: Look(0.35, (2.2, 1.2)),
        Meaning.SIZE_6: Look(0.7),
        Meaning.SIZE_7: Look(0.35, (9.0, 1.3, 0.5, 1.3, 0.5, 1.3)),
        Meaning.SIZE_8: Look(0.6, (8.0, 3.0)),
    }
)


def look(meaning: Meaning) -> Look:
    """The look of a meaning; every meaning has one."""
    return LOOKS[meaning]
