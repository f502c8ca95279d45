"""What a pattern cutter does with a closed outline: cut it, open it, fold it in, gather it, put it together.

Every operation leaves its originals as they are and puts what it makes on a new sheet; see README.md.
"""

from __future__ import annotations

from littlefold.draft.shapes import dart, folded_in, gathers, join, outline, slash, split, stand
from littlefold.draft.shapes.register import SHAPE_ACTS

__all__ = ["SHAPE_ACTS", "dart", "folded_in", "gathers", "join", "outline", "slash", "split", "stand"]
