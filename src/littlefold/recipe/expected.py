"""What may stand at a place of a statement, in words a maker reads."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING, Final

from lark.lexer import PatternStr

from littlefold.recipe.grammar import grammar

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

END: Final = "$END"
# Kinds of words that the grammar knows by a pattern, each with the words that fit it.
_FITTING: Final[Mapping[str, tuple[str, ...]]] = {
    "SCALE": ("stature", "age"),
    "TABLE_KEY": ("stature", "age", "size"),
    "TABLE_WAY": ("stepped", "between"),
    "TURNED_OVER": ("turned over",),
    "START": ("fold", "start"),
    "END": ("beginning", "end"),
    "LEVEL": ("level", "plumb"),
    "CLOCK": ("clockwise", "anticlockwise"),
    "WAY_OF": ("below", "above", "left of", "right of"),
    "WAY": ("below", "above", "left", "right"),
    "HEADING": ("upward", "downward", "leftward", "rightward"),
    "GOING": ("down", "up", "left", "right"),
    "FOLD_KIND": ("pleats", "tucks"),
    "FOLD_WAY": ("boxed", "inverted"),
    "GATHER_WAY": ("by ratio", "to"),
    "CUT_WAY": ("on fold", "as a pair", "for the wearer's left", "for the wearer's right"),
    "INCLUDED": ("included", "added"),
    "TURNS": ("turned once", "turned twice"),
    "DOUBLE": ("double",),
    "HOLES": ("buttonholes", "buttons"),
    "SIGN": (">=", "<=", ">", "<"),
    "WEIGHT": ("warning", "note"),
    "FIXED": ("fixed",),
}
_KINDS: Final[Mapping[str, str]] = {
    "NAME": "a name",
    "NUMBER": "a number",
    "STRING": 'words in "quotes"',
    "SPAN": "a line such as A-B",
    "TRIPLE": "a corner such as A-K-B",
    "SLUG": "the name of a recipe",
    "LANGUAGE": 'a translation such as de: "..."',
    "_COMMA": "a comma",
    END: "the end of the line",
}
_BEGIN_A_VALUE: Final = frozenset({"NAME", "NUMBER", "LPAR", "MINUS", "PI", "ROUND", "SQUARE", "LENGTH"})
_BEGIN_A_WHOLE_VALUE: Final = frozenset({"LARGER", "SMALLER", "NOT"})
_GO_ON_WITH_A_VALUE: Final = frozenset({"PLUS", "MINUS", "STAR", "_AT_LEAST", "_AT_MOST"})
_GO_ON_WITH_A_NUMBER: Final = frozenset({"OF"}) | _GO_ON_WITH_A_VALUE
_MOST_NAMED: Final = 8


@lru_cache(maxsize=1)
def _keywords() -> Mapping[str, str]:
    """The fixed words and signs of the grammar, by the name of their kind."""
    terminals = grammar().terminals
    return {term.name: term.pattern.value for term in terminals if isinstance(term.pattern, PatternStr)}


def fitting(kind: str) -> tuple[str, ...]:
    """The words that a kind of word may be: itself where it is fixed, one of several where it is not."""
    return _FITTING.get(kind, (_keywords().get(kind, ""),))


def fitting_words(kinds: Iterable[str]) -> tuple[str, ...]:
    """All words that could be written out at a place, for kinds of words that may stand there."""
    words = [word for kind in kinds for word in fitting(kind)]
    return tuple(sorted(word for word in words if word[:1].isalpha()))


@lru_cache(maxsize=1)
def all_words() -> frozenset[str]:
    """Every word of the language."""
    kinds = set(_keywords()) | set(_FITTING)
    return frozenset(part for words in fitting_words(kinds) for part in words.split())


def missing_word(kinds: frozenset[str]) -> str | None:
    """The one word that must come next, where only one can."""
    words = fitting_words(kinds)
    others = kinds - _GO_ON_WITH_A_NUMBER - {"NAME"} - set(_keywords())
    return words[0] if len(words) == 1 and not others & {*_KINDS, *_FITTING} else None


def spoken(kinds: frozenset[str], before: str = "") -> str:
    """What may stand at a place: `a name`, `"by"`, or a list with `or`; empty when nothing is known.

    Args:
        kinds: The kinds of words that the grammar takes there.
        before: The word that stands before; after a number a name is its unit.
    """
    left = set(kinds)
    said: list[str] = []
    if left >= _BEGIN_A_VALUE:
        said.append("a length or a number")
        left -= _BEGIN_A_VALUE | _BEGIN_A_WHOLE_VALUE
    if {"SPAN", "NAME"} <= left:
        said.append("a line (its name, or its ends as in A-B)")
        left -= {"SPAN", "NAME", "TRIPLE"}
    if before[-1:].isdigit() and {"NAME", "OF"} <= left:
        said.append("a unit such as cm")
        left -= {"NAME", "OF"}
    left -= _GO_ON_WITH_A_VALUE
    said += [_KINDS[kind] for kind in _KINDS if kind in left]
    words = [f'"{word}"' for word in fitting_words(left - set(_KINDS))]
    signs = [f'"{sign}"' for sign in sorted(_keywords().get(kind, "") for kind in left) if _is_sign(sign)]
    return _listed((said + words + signs)[:_MOST_NAMED])


def _is_sign(word: str) -> bool:
    """Whether a word is a sign that is worth naming; the signs of arithmetic may stand after any number."""
    return bool(word) and not word[0].isalpha() and word not in "+-*/,"


def _listed(words: list[str]) -> str:
    return " or ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)
