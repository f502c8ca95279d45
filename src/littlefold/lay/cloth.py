"""A cloth: what it is, how wide, how it is sold, what it does in the wash.

Widths as met in shops, from memory: 90, 112 (44 in), 115, 120, 140 (54 in), 150 (58-60 in) cm; tubular knit 75 cm
flat; Ankara 46 in and lace 50 in are named in a Nigerian class text.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import ceil, floor

from littlefold.lay.shrink import NONE, Shrinkage, Treatment

WIDTHS = (900.0, 1120.0, 1150.0, 1200.0, 1400.0, 1500.0)
"""Usual widths of cloth [mm], from memory of the trade."""

TUBE_WIDTH = 750.0
"""The usual flat width of tubular knit [mm], from memory of the trade."""

INCH = 25.4
YARD = 36 * INCH
METRIC_STEP = 100.0
"""Cloth is cut by the tenth of a metre [mm]; common practice, no source."""
YARD_STEP = YARD / 8
"""Cloth is cut by the eighth of a yard [mm]; common practice, no source."""

SELVEDGE = 10.0
"""What is left unused at each selvedge [mm]; textbooks of industrial cutting take off 1-2 cm of a woven width."""

END_LOSS = 20.0
"""What straightening the cut end takes [mm]; 2 cm at each end is usual in industry (texeducation), here one end."""

# A length this much over a buying step [mm] still counts as that step, so that 1000.0000001 is not sold as 1100.
ROUNDING = 1e-6


class Structure(StrEnum):
    """How the cloth is made."""

    WOVEN = "woven"
    KNIT = "knit"


@dataclass(frozen=True, slots=True)
class Repeat:
    """The repeat of stripes or checks.

    Attributes:
        along: Along the length, of stripes across the cloth [mm]; 0 where there are none.
        across: Across the width, of stripes along the cloth [mm]; 0 where there are none.
        uneven_along: Whether stripes across the cloth are read otherwise upside down: their repeat is not its own mirror
            image.
        uneven_across: The same of stripes along the cloth, read from the right instead of from the left.
    """

    along: float = 0.0
    across: float = 0.0
    uneven_along: bool = False
    uneven_across: bool = False


@dataclass(frozen=True, slots=True)
class Price:
    """What a length of cloth costs: `amount` of `currency` for each `per` millimetres."""

    amount: float
    currency: str = ""
    per: float = 1000.0

    def of(self, length: float) -> float:
        """The price of a length [mm], to the hundredth as a till rounds it, so that a list adds up as it is printed."""
        return to_the_cent(self.amount * length / self.per)


def to_the_cent(amount: float) -> float:
    """Money to the hundredth, halves up; a hair below a half, as products of decimals are, counts as one."""
    return floor(amount * 100 + 0.5 + 1e-6) / 100


@dataclass(frozen=True, slots=True)
class Cloth:
    """A cloth to be laid on.

    Attributes:
        name: The cloth of the pattern that it is: `main`, `lining`, `interfacing` ...
        width: The whole width [mm]; for a tube the flat width.
        selvedge: What is not used at each selvedge [mm]; a tube has none.
        structure: Woven or knit.
        nap: Whether it must all lie one way: pile, or a print with an up and a down.
        two_faced: Whether face and back are alike, so that a piece may be turned over.
        tube: Whether it is a tube (knit), folded at both sides.
        repeat: Stripes or checks to be matched; None where there is nothing to match.
        in_hand: The length in hand [mm]; None where it is still to be bought.
        price: None where it is not known.
        shrinkage: What it loses in the wash.
        treatment: Whether the pieces are enlarged for the wash or the cloth is washed before it is cut.
        step: The least step by which it is sold [mm].
        end_loss: What straightening the cut end takes [mm].
    """

    width: float
    name: str = "main"
    selvedge: float = SELVEDGE
    structure: Structure = Structure.WOVEN
    nap: bool = False
    two_faced: bool = False
    tube: bool = False
    repeat: Repeat | None = None
    in_hand: float | None = None
    price: Price | None = None
    shrinkage: Shrinkage = NONE
    treatment: Treatment = Treatment.WASH
    step: float = METRIC_STEP
    end_loss: float = END_LOSS

    @property
    def usable_width(self) -> float:
        """The width between the selvedges when it is cut [mm]: a cloth that is washed first is narrower then."""
        bare = self.width if self.tube else self.width - 2 * self.selvedge
        return bare * (1 - self.shrinkage.across) if self.treatment is Treatment.WASH else bare

    def length_to_buy(self, lay_length: float) -> float:
        """The length to ask for in the shop [mm]: with the straightened end, before the wash, in whole steps."""
        needed = lay_length + self.end_loss
        if self.treatment is Treatment.WASH:
            needed /= 1 - self.shrinkage.along
        return ceil((needed - ROUNDING) / self.step) * self.step

    def length_to_lay(self) -> float | None:
        """What the length in hand leaves to lay on [mm]; None where the cloth is still to be bought."""
        if self.in_hand is None:
            return None
        washed = (
            self.in_hand * (1 - self.shrinkage.along) if self.treatment is Treatment.WASH else self.in_hand
        )
        return washed - self.end_loss

    def cost(self, lay_length: float) -> float | None:
        """The price of the length to buy; None where the price is not known."""
        return None if self.price is None else self.price.of(self.length_to_buy(lay_length))
