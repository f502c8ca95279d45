"""Questions about a pattern that many rules ask, each answered once."""

from __future__ import annotations

from functools import wraps
from typing import TYPE_CHECKING, Concatenate, ParamSpec, TypeVar, cast

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.pattern.model import Pattern

T = TypeVar("T")
More = ParamSpec("More")


def once(question: Callable[Concatenate[Pattern, More], T]) -> Callable[Concatenate[Pattern, More], T]:
    """Let a function of a pattern, and of names and the like, keep its answers with the pattern.

    A pattern is a value and its answers follow from it; they are gone when it is.
    """

    @wraps(question)
    def asked(pattern: Pattern, /, *args: More.args, **kwargs: More.kwargs) -> T:
        key = (question, *args)
        if key not in pattern.answers:
            pattern.answers[key] = question(pattern, *args, **kwargs)
        return cast("T", pattern.answers[key])

    return asked
