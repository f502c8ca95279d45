"""What any stage may report about the user's work: a sentence, a place, the numbers, a cure.

A user's mistake is a value, never an exception; all problems of a stage come back together, beside as much
result as could be made.  Our own mistakes are exceptions.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import floor


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
class Measured:
    """A value within a sentence.

    `unit` is 'mm', 'mm2', 'degrees', 'ratio', 'share' (said as per cent) or 'count'; or of a length [mm] that is said no
    finer than a tape shows it 'tape', and 'estimate' where nobody took it.
    """

    value: float
    unit: str = "mm"

    def __str__(self) -> str:
        """In English and centimetres: `21.25 cm`, `87.5 degrees`, `1.25`, `40%`."""
        match self.unit:
            case "mm":
                return f"{shortest(self.value / 10)} cm"
            case "tape" | "estimate":
                return f"{shortest(floor(self.value + 0.5) / 10)} cm"
            case "mm2":
                return f"{self.value / 100:.1f}"
            case "degrees":
                return f"{self.value:.1f} degrees"
            case "share":
                return f"{self.value:.0%}"
            case "ratio":
                return f"{self.value:.2f}"
            case _:
                return f"{self.value:g}"


def shortest(value: float) -> str:
    """A number to two decimals, with no more of them than needed."""
    said = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if said == "-0" else said


@dataclass(frozen=True, slots=True)
class Saying:
    """A sentence in English with {places}, and what stands in them, so that it can be said in another language.

    A part is a name as the recipe writes it, a value, or a saying: a word or sentence that is translated too.
    """

    pattern: str
    parts: tuple[tuple[str, str | Measured | Saying], ...] = ()

    def __str__(self) -> str:
        return self.pattern.format_map({name: str(part) for name, part in self.parts})


def say(pattern: str, /, **parts: str | float | Measured | Saying) -> Saying:
    """A saying; a bare number is a count."""
    told = (
        (name, Measured(part, "count") if isinstance(part, int | float) else part)
        for name, part in parts.items()
    )
    return Saying(pattern, tuple(told))


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
        said: The message as sayings, what is wrong and what to do, where it can be said in other languages.
    """

    code: str
    message: str
    severity: Severity = Severity.ERROR
    place: Place = Place()
    numbers: tuple[Number, ...] = ()
    rule: str = ""
    cure: str = ""
    said: tuple[Saying, ...] = ()


def has_errors(problems: tuple[Problem, ...]) -> bool:
    """Whether any of the problems is an error."""
    return any(problem.severity is Severity.ERROR for problem in problems)
