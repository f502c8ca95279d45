"""A class: pupils who draw the same garment, each with her own numbers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from littlefold.problem import Problem
from littlefold.store.allowed import LONGEST_NAME, LONGEST_WORDS
from littlefold.store.card import key_of

if TYPE_CHECKING:
    from collections.abc import Iterator

MOST_PUPILS: Final = 60
"""More than any sewing room seats; a bound, so that a page of a class stays a page."""


@dataclass(frozen=True, slots=True)
class SewingClass:
    """One class.

    Attributes:
        name: What it is called.
        recipe: The name of the recipe that all draw.
        choices: Pairs of name and words, as a link says them; the same for all pupils.
        pupils: Names on cards of the box, each once; a card that is erased is gone from the class too.
    """

    name: str
    recipe: str
    choices: tuple[tuple[str, str], ...] = ()
    pupils: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """What tells classes apart, as children are told apart."""
        return key_of(self.name)


def class_faults(one: SewingClass) -> tuple[Problem, ...]:
    """Why a class cannot be kept; nothing where it can."""
    return tuple(_faults(one))


def _faults(one: SewingClass) -> Iterator[Problem]:
    if not one.name.strip() or len(one.name) > LONGEST_NAME:
        yield Problem("class-name", f"A class's name has 1 to {LONGEST_NAME} letters.")
    elif one.name != one.name.strip() or not one.name.isprintable():
        yield Problem("class-name", "A class's name has no space before or after it and no invisible signs.")
    if not one.recipe:
        yield Problem("class-recipe", "Choose the garment that the class draws.")
    if len(one.pupils) > MOST_PUPILS:
        yield Problem("class-large", f"A class has at most {MOST_PUPILS} pupils.")
    words = (one.recipe, *(word for pair in one.choices for word in pair))
    if any(len(word) > LONGEST_WORDS or "\0" in word for word in words):
        yield Problem(
            "class-words", "Some words of the class are too long, or hold signs that no file can hold."
        )
