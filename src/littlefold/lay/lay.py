"""A lay: pieces in their places on spread cloth."""

from __future__ import annotations

from dataclasses import dataclass
from math import radians
from typing import TYPE_CHECKING

import numpy as np
import shapely

from littlefold.geometry import Affine, Point, Vector
from littlefold.lay.ways import Way

if TYPE_CHECKING:
    from littlefold.lay.cloth import Cloth
    from littlefold.lay.nofit import Sign
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.ways import Spread


@dataclass(frozen=True, slots=True)
class Placement:
    """A cut in its place.

    The piece is turned by `degrees`, then mirrored by `sign`, then moved so that its own origin comes to `at`.

    Attributes:
        piece: The name of the piece.
        half: Whether the half lies on a fold; otherwise the whole piece is cut.
        layers: Through how many layers it is cut.
        degrees: 0, or 45 or -45 for a piece on the bias.
        sign: As drawn, mirrored, or turned end for end.
        at: Where the piece's own origin lies [mm].
        mirrored_layer: For a cut through one of several layers, whether it gives the mirror image.
    """

    piece: str
    half: bool
    layers: int
    degrees: float
    sign: Sign
    at: Point
    mirrored_layer: bool = False

    @property
    def affine(self) -> Affine:
        """The map that takes the piece as drawn to its place."""
        turn = Affine.rotation(radians(self.degrees))
        sign = Affine(float(self.sign.along), 0.0, 0.0, float(self.sign.across), 0.0, 0.0)
        return turn.then(sign).then(Affine.translation(Vector(self.at.x, self.at.y)))


@dataclass(frozen=True, slots=True)
class Lay:
    """Pieces placed on a cloth.

    Attributes:
        cloth: The cloth.
        spread: How it is spread.
        pieces: What is to be cut, already enlarged for the wash where that was chosen.
        placements: Where.
        length: The length of spread cloth that they take [mm].
        gap: The least distance between two cuts [mm].
        maker: Which search found it.
        holes: Parts of the spread that cannot be used (damage, the outside of scraps).
    """

    cloth: Cloth
    spread: Spread
    pieces: tuple[LayPiece, ...]
    placements: tuple[Placement, ...]
    length: float
    gap: float
    maker: str
    holes: tuple[shapely.Polygon, ...] = ()

    @property
    def cloth_length(self) -> float:
        """The length of cloth that it takes [mm]: twice that of the spread where the cloth is folded across."""
        return self.length * self.spread.sheets

    @property
    def to_buy(self) -> float:
        """The length to buy for it [mm]; nothing where it is cut from scraps."""
        return 0.0 if self.spread.way is Way.SCRAPS else self.cloth.length_to_buy(self.cloth_length)

    @property
    def price(self) -> float | None:
        """What that costs; None where the price is not known."""
        return None if self.cloth.price is None else self.cloth.price.of(self.to_buy)

    @property
    def share_used(self) -> float:
        """The area of all pieces as a share of the usable cloth."""
        cloth = self.cloth_length * self.spread.cloth_width
        return sum(piece.area for piece in self.pieces) / cloth if cloth else 0.0

    def piece(self, name: str) -> LayPiece:
        """The piece of that name.

        Raises:
            KeyError: There is no such piece.
        """
        for piece in self.pieces:
            if piece.name == name:
                return piece
        raise KeyError(name)

    def shape(self, placement: Placement) -> shapely.Polygon:
        """The cut in its place, as a polygon."""
        piece = self.piece(placement.piece)
        return placed(piece.polygon if placement.half else piece.whole, placement.affine)


def placed(polygon: shapely.Polygon, affine: Affine) -> shapely.Polygon:
    """A polygon taken through a map."""
    matrix = np.array(((affine.a, affine.b), (affine.c, affine.d)))
    offset = np.array((affine.e, affine.f))
    return shapely.transform(polygon, lambda xy: xy @ matrix + offset)
