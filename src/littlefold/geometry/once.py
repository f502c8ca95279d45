"""What a value works out when it is first asked for, and keeps."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Generic, Self, TypeVar, overload

if TYPE_CHECKING:
    from collections.abc import Callable

T = TypeVar("T")


class once(Generic[T]):  # noqa: N801 - it is read as a decorator
    """A property that is worked out once; its value is one that does not change, and has no slots.

    `functools.cached_property` does the same under a lock, which costs more than most of what is kept here; two
    threads that ask at the same time work out the same.
    """

    def __init__(self, work: Callable[[Any], T]) -> None:
        self.work = work
        self.__doc__ = work.__doc__

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    @overload
    def __get__(self, holder: None, owner: type) -> Self: ...
    @overload
    def __get__(self, holder: object, owner: type) -> T: ...
    def __get__(self, holder: object | None, owner: type) -> Self | T:
        if holder is None:
            return self
        found = holder.__dict__[self.name] = self.work(holder)
        return found


def hand_on(one: T, other: T, name: str) -> T:
    """The other of two values, told an answer of the one that is its own too, if that has been worked out."""
    if name in one.__dict__:
        other.__dict__[name] = one.__dict__[name]
    return other
