"""The names in an expression, and the lines it measures."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from functools import lru_cache
from typing import Any

from littlefold.recipe import tree
from littlefold.recipe.walk import every


@lru_cache(maxsize=4096)
def names_in(expr: Any) -> tuple[str, ...]:
    """The names of values in an expression, each once, in order."""
    if isinstance(expr, tree.Named):
        return (expr.name.text,)
    if not is_dataclass(expr):
        return ()
    inner = [name for part in fields(expr) for name in names_in(getattr(expr, part.name))]
    return tuple(dict.fromkeys(inner))


@lru_cache(maxsize=4096)
def lengths_in(expr: Any) -> tuple[tree.LengthOf, ...]:
    """The lengths of lines in an expression, each once, in order."""
    return tuple(dict.fromkeys(every(tree.LengthOf, expr)))
