"""Names, lines by name and numbers, each with its spot in the statement.

A spot is (line, column) within the statement's own text, counted from 1; `recipe.Written` adds the line on
which the statement begins.  Spots take no part in comparisons: statements are equal when they say the same.
"""

from __future__ import annotations

from dataclasses import dataclass, field

Spot = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Name:
    """A name as written; qualified names (`front.N`) keep their dot."""

    text: str
    spot: Spot = field(default=(1, 1), compare=False)

    def __str__(self) -> str:
        return self.text


@dataclass(frozen=True, slots=True)
class Span:
    """The straight line between two points, written `A-B`."""

    start: Name
    end: Name

    @property
    def spot(self) -> Spot:
        """Where it is written."""
        return self.start.spot

    def __str__(self) -> str:
        return f"{self.start}-{self.end}"


@dataclass(frozen=True, slots=True)
class Corner:
    """The two straight lines that meet in the middle point, written `A-K-B`."""

    start: Name
    corner: Name
    end: Name

    @property
    def spot(self) -> Spot:
        """Where it is written."""
        return self.start.spot

    def __str__(self) -> str:
        return f"{self.start}-{self.corner}-{self.end}"


LineRef = Name | Span | Corner


@dataclass(frozen=True, slots=True)
class Numeral:
    """A number as written: `3`, `2.5`, `1/2` or `3 1/4`; over nought it has no value (nan)."""

    text: str
    value: float = field(compare=False)
    spot: Spot = field(default=(1, 1), compare=False)

    @property
    def is_fraction(self) -> bool:
        """Whether it is written with a fraction stroke."""
        return "/" in self.text


@dataclass(frozen=True, slots=True)
class Translation:
    """The same words in another language, named by its ISO 639 code."""

    language: str
    words: str


@dataclass(frozen=True, slots=True)
class Text:
    """Words of the recipe, with their translations."""

    words: str
    translations: tuple[Translation, ...] = ()

    def said_in(self, language: str) -> str:
        """The words in a language, or as first written where there is no translation."""
        for translation in self.translations:
            if translation.language == language:
                return translation.words
        return self.words
