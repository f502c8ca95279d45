"""Goes through the parts of a statement, however deep they lie."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from typing import TYPE_CHECKING, Any, TypeVar

if TYPE_CHECKING:
    from collections.abc import Iterator

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
