"""What a construction gives back: a point or a line, and what its sentence has to say."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import lru_cache
from typing import TYPE_CHECKING

from littlefold.body.tape import round_to_mark
from littlefold.draft.arithmetic import evaluate_length
from littlefold.draft.model import LineKind, Said
from littlefold.draft.names import names_in
from littlefold.draft.old_units import in_old_unit

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.desk import Desk
    from littlefold.geometry import Path, Point
    from littlefold.recipe import tree


@dataclass(frozen=True, slots=True)
class Distance:
    """A distance given to the pencil: worked out, and rounded to the tape's mark [mm]; `own` in an old unit."""

    expr: tree.Expr
    exact: float
    value: float
    own: str = ""

    @property
    def said(self) -> Said:
        """The distance as a sentence speaks it."""
        return Said("length", self.value, self.own)

    @property
    def size(self) -> Said:
        """The distance as a hand measures it, never less than nothing."""
        return Said("length", abs(self.value), self.own.removeprefix("-"))


def pencil(expr: tree.Expr, desk: Desk) -> Distance:
    """A distance for the pencil.  Only such distances are rounded to the tape; the amounts in between are not.

    Nor is a distance that `find` still seeks: it would move in steps, and the goal would never be met.
    """
    exact = evaluate_length(expr, desk)
    value = exact if desk.tape is None or _is_sought(expr, desk) else round_to_mark(exact, desk.tape)
    return Distance(expr, exact, value, in_old_unit(exact, expr, desk))


def _is_sought(expr: tree.Expr, desk: Desk) -> bool:
    return bool(desk.sought) and not desk.sought.isdisjoint(names_in(expr))


def named(name: object) -> Said:
    """A name as a sentence speaks it."""
    return _name(str(name))


@lru_cache(maxsize=1024)
def _name(text: str) -> Said:
    return Said("name", text)


@lru_cache(maxsize=1024)
def word(text: str) -> Said:
    """A word that the table of sentences has in each language."""
    return Said("word", text)


@dataclass(frozen=True, slots=True)
class NewPoint:
    """A point to be marked."""

    at: Point
    words: Mapping[str, Said] = field(default_factory=dict)
    distance: Distance | None = None


@dataclass(frozen=True, slots=True)
class NewLine:
    """A line, arc or curve to be drawn; `start` and `end` name the points at its ends where they have names."""

    path: Path
    kind: LineKind
    start: str = ""
    end: str = ""
    words: Mapping[str, Said] = field(default_factory=dict)
    distance: Distance | None = None


Drawn = NewPoint | NewLine
