"""Arithmetic as written."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.recipe.tree.names import LineRef, Name, Numeral, Spot


@dataclass(frozen=True, slots=True)
class Plain:
    """A number without a unit."""

    numeral: Numeral


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with a unit: `3 1/4 in`."""

    numeral: Numeral
    unit: Name


@dataclass(frozen=True, slots=True)
class Share:
    """A number of something: `1/4 of chest`."""

    numeral: Numeral
    whole: Expr


@dataclass(frozen=True, slots=True)
class Named:
    """A measurement, choice, amount, table or found value, by name."""

    name: Name


@dataclass(frozen=True, slots=True)
class Pi:
    """The ratio of a circle's girth to its width."""

    spot: Spot = field(default=(1, 1), compare=False)


@dataclass(frozen=True, slots=True)
class Negative:
    """Minus something."""

    of: Expr


@dataclass(frozen=True, slots=True)
class Plus:
    """A sum."""

    left: Expr
    right: Expr


@dataclass(frozen=True, slots=True)
class Minus:
    """A difference."""

    left: Expr
    right: Expr


@dataclass(frozen=True, slots=True)
class Times:
    """A product."""

    left: Expr
    right: Expr


@dataclass(frozen=True, slots=True)
class Over:
    """A quotient."""

    left: Expr
    right: Expr


@dataclass(frozen=True, slots=True)
class AtLeast:
    """A value that is not let fall below a floor."""

    value: Expr
    floor: Expr


@dataclass(frozen=True, slots=True)
class AtMost:
    """A value that is not let rise above a ceiling."""

    value: Expr
    ceiling: Expr


@dataclass(frozen=True, slots=True)
class Larger:
    """The larger of two."""

    left: Expr
    right: Expr


@dataclass(frozen=True, slots=True)
class Smaller:
    """The smaller of two."""

    left: Expr
    right: Expr


@dataclass(frozen=True, slots=True)
class RoundUp:
    """The next multiple of a step that is not smaller."""

    value: Expr
    step: Expr


@dataclass(frozen=True, slots=True)
class SquareRoot:
    """The square root, of an area or of a plain number."""

    of: Expr


@dataclass(frozen=True, slots=True)
class LengthOf:
    """The length of a line as drawn."""

    line: LineRef


@dataclass(frozen=True, slots=True)
class RoundOf:
    """The opening or girth as worn: fold, pair and all pieces counted, laps taken off, slits added."""

    edges: tuple[Name, ...]


@dataclass(frozen=True, slots=True)
class Bracketed:
    """An expression in brackets."""

    inner: Expr


Expr = (
    Plain
    | Quantity
    | Share
    | Named
    | Pi
    | Negative
    | Plus
    | Minus
    | Times
    | Over
    | AtLeast
    | AtMost
    | Larger
    | Smaller
    | RoundUp
    | SquareRoot
    | LengthOf
    | RoundOf
    | Bracketed
)


@dataclass(frozen=True, slots=True)
class Compared:
    """Two values compared, in a condition."""

    left: Expr
    sign: str
    right: Expr


@dataclass(frozen=True, slots=True)
class Chosen:
    """A choice stands at an option."""

    choice: Name
    option: Name


@dataclass(frozen=True, slots=True)
class NotChosen:
    """A choice stands at another option."""

    choice: Name
    option: Name


@dataclass(frozen=True, slots=True)
class Negation:
    """A condition that must not hold."""

    of: Condition


@dataclass(frozen=True, slots=True)
class Either:
    """One of two conditions holds, or both."""

    left: Condition
    right: Condition


@dataclass(frozen=True, slots=True)
class BothHold:
    """Two conditions hold."""

    left: Condition
    right: Condition


Condition = Compared | Chosen | NotChosen | Negation | Either | BothHold
