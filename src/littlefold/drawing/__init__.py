"""Marks on a plane, each with a meaning: a display list that is measured, moved and cropped once."""

from littlefold.drawing.drawing import Drawing
from littlefold.drawing.marks import Dot, Fill, Label, Mark, Meaning, Stroke

__all__ = ["Dot", "Drawing", "Fill", "Label", "Mark", "Meaning", "Stroke"]
