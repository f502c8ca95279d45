"""The register of rules: each says what it looks for, why, and on whose word."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

    from .circumstances import Circumstances

    Judge = Callable[[Pattern, Circumstances], Iterable[Problem]]

COMMON_PRACTICE: Final = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Rule:
    """One thing to look for.

    Attributes:
        code: The code of every problem it reports.
        title: What must hold, in a few words.
        why: What goes wrong on the table or on the child when it does not.
        source: On whose word; numbers that nobody published are marked as common practice.
        judge: Looks at a pattern and reports what is wrong with it.
        safety: Whether it guards the child rather than the garment.
    """

    code: str
    title: str
    why: str
    source: str
    judge: Judge
    safety: bool = False


_RULES: Final[dict[str, Rule]] = {}


def rule(*, code: str, title: str, why: str, source: str, safety: bool = False) -> Callable[[Judge], Judge]:
    """Enter a function into the register.

    Raises:
        ValueError: Another rule has this code.
    """

    def enter(judge: Judge) -> Judge:
        if code in _RULES:
            raise ValueError(f"two rules are called {code!r}")
        _RULES[code] = Rule(code, title, why, source, judge, safety)
        registered.cache_clear()
        return judge

    return enter


@cache
def registered() -> tuple[Rule, ...]:
    """All rules in the order of their codes, those of safety first."""
    return tuple(sorted(_RULES.values(), key=lambda rule: (not rule.safety, rule.code)))
