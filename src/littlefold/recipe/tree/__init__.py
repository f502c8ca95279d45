"""A recipe as a tree of small values, one class a statement, each with its parts in the order of the grammar."""

from littlefold.recipe.tree.clauses import *  # noqa: F403
from littlefold.recipe.tree.expressions import *  # noqa: F403
from littlefold.recipe.tree.finish import *  # noqa: F403
from littlefold.recipe.tree.header import *  # noqa: F403
from littlefold.recipe.tree.names import *  # noqa: F403
from littlefold.recipe.tree.parts import *  # noqa: F403
from littlefold.recipe.tree.points import *  # noqa: F403
from littlefold.recipe.tree.shapes import *  # noqa: F403
from littlefold.recipe.tree.sheets import *  # noqa: F403
from littlefold.recipe.tree.strokes import *  # noqa: F403
