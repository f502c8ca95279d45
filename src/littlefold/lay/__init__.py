"""Cloth: lays to cut by, how much to buy, what the cloth does in the wash."""

from littlefold.lay.adapter import enlarged, lay_pieces
from littlefold.lay.cloth import Cloth, Price, Repeat, Structure
from littlefold.lay.compare import Row, compare
from littlefold.lay.lay import Lay, Placement
from littlefold.lay.piece import LayPiece
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.shrink import Shrinkage, Treatment
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way

__all__ = [
    "Cloth",
    "Effort",
    "Lay",
    "LayPiece",
    "Placement",
    "Prepared",
    "Price",
    "Repeat",
    "Row",
    "Shrinkage",
    "Structure",
    "Treatment",
    "Way",
    "compare",
    "enlarged",
    "lay_pieces",
    "lays",
    "prepare",
    "verify",
]
