"""Goes through the parts of a statement, however deep they lie."""

from __future__ import annotations

from dataclasses import fields, is_dataclass, replace
from typing import TYPE_CHECKING, Any, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

T = TypeVar("T")


def every(kind: type[T], node: Any) -> Iterator[T]:
    """All parts of a kind in a statement or a part of one, itself included, in the order of writing."""
    waiting = [node]
    while waiting:
        part = waiting.pop()
        if isinstance(part, kind):
            yield part
        if isinstance(part, tuple):
            waiting.extend(reversed(part))
        elif is_dataclass(part):
            waiting.extend(getattr(part, field.name) for field in reversed(fields(part)))


def replaced(node: Any, kind: type[T], swap: Callable[[T], T]) -> Any:
    """A statement or a part of one with all parts of a kind changed; the same value where nothing is."""
    if isinstance(node, kind):
        return swap(node)
    if isinstance(node, tuple):
        parts = tuple(replaced(part, kind, swap) for part in node)
        return node if all(one is other for one, other in zip(node, parts, strict=True)) else parts
    if not is_dataclass(node):
        return node
    inside = {field.name: getattr(node, field.name) for field in fields(node)}
    changed = {name: replaced(part, kind, swap) for name, part in inside.items()}
    return replace(node, **changed) if any(changed[name] is not inside[name] for name in inside) else node  # type: ignore[type-var]
