"""Marks on a plane, each with a meaning: a display list that is measured, moved and cropped once."""

from littlefold.drawing.arrow import arrow_head, dimension, grain_arrow, label_along
from littlefold.drawing.bracket import fold_bracket
from littlefold.drawing.crop import crop, crop_path
from littlefold.drawing.drawing import Drawing, mark_bounds
from littlefold.drawing.letters import text_width
from littlefold.drawing.marks import Dot, Fill, Label, Mark, Meaning, Stroke
from littlefold.drawing.ruler import ruler
from littlefold.drawing.style import LOOKS, Look, look
from littlefold.drawing.words import label_bounds, plain, shortened, text_block, wrapped

__all__ = [
    "LOOKS",
    "Dot",
    "Drawing",
    "Fill",
    "Label",
    "Look",
    "Mark",
    "Meaning",
    "Stroke",
    "arrow_head",
    "crop",
    "crop_path",
    "dimension",
    "fold_bracket",
    "grain_arrow",
    "label_along",
    "label_bounds",
    "look",
    "mark_bounds",
    "plain",
    "ruler",
    "shortened",
    "text_block",
    "text_width",
    "wrapped",
]
