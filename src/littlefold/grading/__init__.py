"""Size runs: one recipe for many sizes, all sizes on one sheet, and how far each point moves."""

from littlefold.grading.grade import Graded, SizeRun, grade
from littlefold.grading.moves import Move, moves
from littlefold.grading.stack import stacked

__all__ = ["Graded", "Move", "SizeRun", "grade", "moves", "stacked"]
