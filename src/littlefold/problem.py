"""What any stage may report about the user's work: a sentence, a place, the numbers, a cure.

A user's mistake is a value, never an exception; all problems of a stage come back together, beside as much
result as could be made.  Our own mistakes are exceptions.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    """How much a problem matters: an error spoils the garment or hurts the child, a warning may, a note informs."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Place:
    """Where a problem lies: in a recipe text, on a piece, or both.

    `line` and `column` count from 1 in the recipe named by `file`.  `edge` is an edge of `piece`; `point` is a
    qualified name such as `body.A`.
    """

    file: str | None = None
    line: int | None = None
    column: int | None = None
    piece: str | None = None
    edge: str | None = None
    point: str | None = None


@dataclass(frozen=True, slots=True)
class Number:
    """One of the numbers a problem compares; `unit` is 'mm', 'degrees', 'count', 'ratio', 'months' or 'mm2'."""

    name: str
    value: float
    unit: str = "mm"


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing that is wrong or worth knowing.

    Attributes:
        code: A stable name in kebab case, such as `seam-lengths-differ`.
        message: What is wrong, where, both numbers, what to do; plain sentences.
        severity: How much it matters.
        place: Where it is.
        numbers: The numbers compared, so that a program need not read the message.
        rule: The rule or standard that stands behind it, e.g. `EN 14682`; empty when there is none.
        cure: What to do, alone, where a cure can be named; the message says it too.
    """

    code: str
    message: str
    severity: Severity = Severity.ERROR
    place: Place = Place()
    numbers: tuple[Number, ...] = ()
    rule: str = ""
    cure: str = ""


def has_errors(problems: tuple[Problem, ...]) -> bool:
    """Whether any of the problems is an error."""
    return any(problem.severity is Severity.ERROR for problem in problems)
