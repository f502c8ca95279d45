"""What may stand on a card: names that can be told apart, words that every file can hold, lengths that are lengths."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from littlefold.problem import Number, Problem

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.store.card import Card, Measured, PastDraft

LONGEST_NAME: Final = 80
LONGEST_WORDS: Final = 10_000
LONGEST_RECIPE: Final = 1_000_000
_MOST_MM: Final = 100_000.0  # as on the tape: longer is a typing mistake


def faults_of(card: Card) -> tuple[Problem, ...]:
    """Why a card cannot be kept; nothing where it can."""
    return (*_name(card.name), *_words(card), *_lengths(card))


def _name(name: str) -> Iterator[Problem]:
    if not name.strip() or len(name) > LONGEST_NAME:
        yield Problem("card-name", f"A child's name has 1 to {LONGEST_NAME} letters.")
    elif name != name.strip() or not name.isprintable():
        yield Problem("card-name", "A child's name has no space before or after it and no invisible signs.")
    elif name.lower() == "sample" or name.lower().endswith(".json"):
        yield Problem(
            "card-name", f"“{name}” cannot be a child's name here: the commands read it as something else."
        )


def _words(card: Card) -> Iterator[Problem]:
    texts = (
        *((text, LONGEST_WORDS) for one in card.measured for text in (one.by, one.over)),
        *((name, LONGEST_NAME) for one in card.measured for name, _ in one.readings),
        *(
            (text, LONGEST_WORDS)
            for one in card.measured
            for own in one.own
            for text in (own.recipe, own.how)
        ),
        *((note.text, LONGEST_WORDS) for note in card.notes),
        *(pair for draft in card.drafts for pair in _draft_words(draft)),
    )
    for text, longest in texts:
        if len(text) > longest:
            message = f"“{text[:30]}…” has {len(text)} letters; at most {longest} are kept."
            numbers = (Number("letters", len(text), "count"), Number("most", longest, "count"))
            yield Problem("card-words-long", message, numbers=numbers)
        elif any(letter == "\0" or "\ud800" <= letter <= "\udfff" for letter in text):
            yield Problem("card-words", "Some words on the card hold signs that no file can hold.")


def _draft_words(draft: PastDraft) -> Iterator[tuple[str, int]]:
    yield from ((recipe.name, LONGEST_WORDS) for recipe in draft.recipes)
    yield from ((recipe.text, LONGEST_RECIPE) for recipe in draft.recipes)
    yield from ((word, LONGEST_WORDS) for pair in draft.choices for word in pair if isinstance(word, str))
    yield from ((fitting.showed, LONGEST_WORDS) for fitting in draft.fittings)
    yield from (
        (word, LONGEST_WORDS)
        for word in (draft.tape, draft.language, draft.pattern_hash, draft.body.nickname)
    )
    yield from ((name, LONGEST_NAME) for name in draft.body)
    yield from (
        (word, LONGEST_WORDS)
        for found in draft.findings
        for word in (found.code, found.message, found.rule, found.cure)
    )


def _own_words(one: Measured) -> Iterator[Problem]:
    """Words on how a reading is taken belong to one that is there, and to a recipe."""
    described = [own.name for own in one.own]
    if len(described) != len(set(described)):
        yield Problem("card-reading-twice", f"A measurement is described twice in the set of {one.day}.")
    if not all(own.recipe for own in one.own):
        yield Problem("card-reading", f"A measurement of no recipe is described in the set of {one.day}.")
    for name in sorted(set(described) - {name for name, _ in one.readings}):
        message = f"{name[:LONGEST_NAME]} is described in the set of {one.day} and was not read."
        yield Problem("card-reading", message)


def _lengths(card: Card) -> Iterator[Problem]:
    for one in card.measured:
        names = [name for name, _ in one.readings]
        if len(names) != len(set(names)):
            yield Problem("card-reading-twice", f"A measurement stands twice in the set of {one.day}.")
        yield from _own_words(one)
        for name, mm in one.readings:
            if not 0 < mm <= _MOST_MM:
                message = f"{name[:LONGEST_NAME]} is {mm:g} mm on {one.day}. A reading is more than nothing."
                yield Problem("card-reading", message)
    for draft in card.drafts:
        numbers = [*draft.body.lengths().values(), draft.let_down]
        numbers += [value for _, value in draft.choices if not isinstance(value, str)]
        numbers += [number.value for found in draft.findings for number in found.numbers]
        if not all(map(math.isfinite, numbers)):
            yield Problem("card-draft", f"The draft of {draft.made} holds a number that is none.")
