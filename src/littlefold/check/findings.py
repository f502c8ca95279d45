"""All rules over one pattern."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.problem import Severity

from . import rules, safety  # noqa: F401 - to import a rule is to enter it into the register
from .circumstances import Circumstances
from .register import registered

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.pattern.model import Pattern
    from littlefold.problem import Problem

    from .register import Rule

_WEIGHT: Final = {Severity.ERROR: 0, Severity.WARNING: 1, Severity.NOTE: 2}


def check(pattern: Pattern, circumstances: Circumstances | None = None) -> tuple[Problem, ...]:
    """What every rule finds in a pattern, errors first; within a weight, safety first.

    A rule that fails by exception is our own mistake and is not caught.
    """
    asked = circumstances or Circumstances()
    findings = [problem for rule in registered() for problem in _judged(rule, pattern, asked)]
    return tuple(sorted(findings, key=lambda problem: _WEIGHT[problem.severity]))


def _judged(rule: Rule, pattern: Pattern, circumstances: Circumstances) -> Iterator[Problem]:
    for problem in rule.judge(pattern, circumstances):
        if problem.code != rule.code:
            raise ValueError(f"the rule {rule.code!r} reports {problem.code!r}")
        yield problem
