"""What the top of a recipe says: once, completely, and in words that are known."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.problem import Severity
from littlefold.recipe import tree
from littlefold.recipe.faults.fault import absence, did_you_mean, fault
from littlefold.recipe.faults.languages import LANGUAGES
from littlefold.recipe.walk import every

if TYPE_CHECKING:
    from collections.abc import Collection, Iterator

    from littlefold.problem import Problem
    from littlefold.recipe.recipe import Recipe

# Garments that the checks and safety rules tell apart.
GARMENTS: Final = (
    *("top", "dress", "skirt", "trousers", "shorts", "drawers", "bloomers", "pyjamas", "nightdress"),
    *("overall", "jacket", "coat", "apron", "bib", "nappy_cover", "hat", "block"),
)
_ONCE: Final = {
    tree.RecipeName: "recipe",
    tree.Title: "title",
    tree.Suits: "suits",
    tree.Garment: "garment",
    tree.Knit: "cloth knit",
}
_WANTED: Final = {
    tree.RecipeName: ("no-name", "the recipe has no name. Begin with a line such as: recipe casing-top"),
    tree.Title: ("no-title", 'the recipe has no title. Add a line such as: title "Loose top"'),
    tree.Suits: (
        "no-suits",
        "nobody is told whom it fits. Add a line such as: suits stature 62 cm to 134 cm",
    ),
    tree.Source: ("no-source", 'no source is named. Add a line: source "...", or: source common practice'),
}


def said_once(recipe: Recipe) -> Iterator[Problem]:
    """Name, title, range, garment and cloth are said once."""
    first: dict[type, int] = {}
    for written in recipe.written:
        kind = type(written.statement)
        if kind in first:
            words = f"`{_ONCE[kind]}` stands in line {first[kind]} already. Keep one of the two lines."
            yield fault(written, (1, 1), "said-twice", words)
        elif kind in _ONCE:
            first[kind] = written.line


def said_at_all(recipe: Recipe) -> Iterator[Problem]:
    """A recipe has a name, a title, a range and a source."""
    for kind, (code, words) in _WANTED.items():
        if recipe.first(kind) is None:
            yield absence(recipe, code, words)


def known_garment(recipe: Recipe) -> Iterator[Problem]:
    """The garment is one of those that the safety rules know."""
    for written in recipe.written:
        if isinstance(written.statement, tree.Garment) and written.statement.kind.text not in GARMENTS:
            kind = written.statement.kind
            words = (
                f'no rule knows a garment "{kind}", so the strictest are used.{did_you_mean(kind.text, GARMENTS)} '
                f"Garments: {', '.join(GARMENTS)}."
            )
            yield fault(written, kind.spot, "unknown-garment", words, Severity.WARNING)


def known_measures(recipe: Recipe, measures: Collection[str]) -> Iterator[Problem]:
    """A measurement is one of the register; others are the recipe's own and say how they are taken."""
    for written in recipe.written:
        if isinstance(written.statement, tree.Measure):
            for wanted in written.statement.wanted:
                if wanted.name.text not in measures:
                    words = (
                        f'"{wanted.name}" is no measurement of the register.'
                        f"{did_you_mean(wanted.name.text, measures)} For one of the recipe's own write: "
                        f'own measure {wanted.name} "how to take it"'
                    )
                    yield fault(written, wanted.name.spot, "unknown-measure", words)


def known_languages(recipe: Recipe) -> Iterator[Problem]:
    """A translation names its language by a code of ISO 639; three letters are taken as they are."""
    for written in recipe.written:
        for translation in every(tree.Translation, written.statement):
            code = translation.language
            if len(code) == 2 and code not in LANGUAGES:  # noqa: PLR2004 (codes of two letters)
                words = f'no language has the code "{code}". Write its ISO 639 code, such as de or fr.'
                yield fault(written, (1, 1), "unknown-language", words)
