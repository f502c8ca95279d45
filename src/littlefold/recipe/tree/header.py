"""What a recipe is called, for whom it is meant and where it comes from; and the numbers it works with."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from littlefold.recipe.tree.clauses import Clauses, CommonPractice, Setting
    from littlefold.recipe.tree.expressions import Expr
    from littlefold.recipe.tree.names import Name, Text


@dataclass(frozen=True, slots=True)
class RecipeName:
    """The name by which the recipe is called."""

    name: str


@dataclass(frozen=True, slots=True)
class Title:
    """What the garment is called on paper."""

    text: Text


@dataclass(frozen=True, slots=True)
class Suits:
    """The bodies it is meant for, by stature or age."""

    scale: str
    low: Expr
    high: Expr


@dataclass(frozen=True, slots=True)
class Source:
    """Where the draft comes from."""

    source: Text | CommonPractice


@dataclass(frozen=True, slots=True)
class Garment:
    """The kind of garment, which the safety rules ask for."""

    kind: Name


@dataclass(frozen=True, slots=True)
class Knit:
    """The main cloth is a knit that stretches by a share of its width."""

    stretch: Expr
    text: Text | None


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution of the recipe's own, printed on every sheet."""

    text: Text


@dataclass(frozen=True, slots=True)
class Remark:
    """A remark of the recipe's own, printed with the instructions."""

    text: Text


@dataclass(frozen=True, slots=True)
class BeginWith:
    """The draft starts from another recipe's draft, with choices set."""

    recipe: str
    choosing: tuple[Setting, ...] | None


@dataclass(frozen=True, slots=True)
class Example:
    """A book's own measurements and choices, for which it prints its numbers."""

    text: Text
    measures: tuple[Setting, ...] | None
    choosing: tuple[Setting, ...] | None


@dataclass(frozen=True, slots=True)
class Wanted:
    """A measurement the draft needs, with what stands in for it."""

    name: Name
    fallback: Expr | None


@dataclass(frozen=True, slots=True)
class Measure:
    """The measurements the draft needs."""

    wanted: tuple[Wanted, ...]


@dataclass(frozen=True, slots=True)
class OwnMeasure:
    """A measurement of the recipe's own, and how to take it."""

    name: Name
    how: Text
    fallback: Expr | None


@dataclass(frozen=True, slots=True)
class Unit:
    """An old unit, in known ones."""

    name: Name
    value: Expr


@dataclass(frozen=True, slots=True)
class ChoiceLength:
    """A choice between two bounds, with what it is when nobody chooses."""

    name: Name
    default: Expr
    low: Expr
    high: Expr
    text: Text | None
    source: Text | CommonPractice | None


@dataclass(frozen=True, slots=True)
class ChoiceOption:
    """A choice between named options; the first is taken when nobody chooses."""

    name: Name
    options: tuple[Name, ...]
    text: Text | None
    source: Text | CommonPractice | None


@dataclass(frozen=True, slots=True)
class Amount:
    """A value with a name, worked out once and used as often as needed."""

    name: Name
    value: Expr
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a table."""

    key: Expr
    value: Expr


@dataclass(frozen=True, slots=True)
class Table:
    """Values by age, stature or size; stepped, or in between by straight lines."""

    name: Name
    key: str
    way: str
    rows: tuple[Row, ...]
    text: Text | None
    source: Text | CommonPractice | None


@dataclass(frozen=True, slots=True)
class Find:
    """The value between two bounds for which two quantities become equal."""

    name: Name
    low: Expr
    high: Expr
    start: Expr | None
    left: Expr
    right: Expr
    within: Expr | None
    clauses: Clauses


@dataclass(frozen=True, slots=True)
class AllowanceRule:
    """The allowance of edges of one kind, unless an edge says otherwise."""

    kind: Name
    width: Expr


@dataclass(frozen=True, slots=True)
class Allowances:
    """The allowances of the recipe, by kind of edge."""

    rules: tuple[AllowanceRule, ...]
