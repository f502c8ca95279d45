"""The names in an expression."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from functools import lru_cache
from typing import Any

from littlefold.recipe import tree


@lru_cache(maxsize=4096)
def names_in(expr: Any) -> tuple[str, ...]:
    """The names of values in an expression, each once, in order."""
    if isinstance(expr, tree.Named):
        return (expr.name.text,)
    if not is_dataclass(expr):
        return ()
    inner = [name for part in fields(expr) for name in names_in(getattr(expr, part.name))]
    return tuple(dict.fromkeys(inner))
