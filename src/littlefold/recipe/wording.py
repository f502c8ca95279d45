"""How an expression, a condition or a line is written: its canonical text, and the spot where it begins."""

from __future__ import annotations

from functools import lru_cache
from typing import Any, Final

from littlefold.recipe import tree

# One pattern a class; the places are the parts of the class, in order.
_PATTERNS: Final[dict[type, str]] = {
    tree.Plain: "{}",
    tree.Quantity: "{} {}",
    tree.Share: "{} of {}",
    tree.Named: "{}",
    tree.Pi: "pi",
    tree.Negative: "-{}",
    tree.Plus: "{} + {}",
    tree.Minus: "{} - {}",
    tree.Times: "{} * {}",
    tree.Over: "{} / {}",
    tree.AtLeast: "{} at least {}",
    tree.AtMost: "{} at most {}",
    tree.Larger: "larger of {} and {}",
    tree.Smaller: "smaller of {} and {}",
    tree.RoundUp: "round up {} to {}",
    tree.SquareRoot: "square root of {}",
    tree.LengthOf: "length of {}",
    tree.RoundOf: "round of {}",
    tree.Bracketed: "({})",
    tree.Compared: "{} {} {}",
    tree.Chosen: "{} is {}",
    tree.NotChosen: "{} is not {}",
    tree.Negation: "not {}",
    tree.Either: "{} or {}",
    tree.BothHold: "{} and {}",
    tree.Span: "{}-{}",
    tree.Corner: "{}-{}-{}",
}

# Conditions keep no brackets of their own, so they are put where a part binds less tightly than its place asks.
_LOOSENESS: Final[dict[type, int]] = {tree.Either: 2, tree.BothHold: 1}
_LOOSEST: Final[dict[type, tuple[int, ...]]] = {
    tree.Either: (2, 1),
    tree.BothHold: (1, 0),
    tree.Negation: (0,),
}

Node = tree.Expr | tree.Condition | tree.LineRef


# A recipe has some hundred formulas, each of which is written down again for every child.
@lru_cache(maxsize=4096)
def written(node: Node) -> str:
    """The canonical text of an expression, a condition or a line: `chest / 4 + 1 cm`.

    Reading the text again gives the same value, for every value that was read from a text.
    """
    return _text(node)


def _text(part: Any) -> str:
    if isinstance(part, tree.Name | tree.Numeral):
        return part.text
    if isinstance(part, str):
        return part
    if isinstance(part, tuple):
        return " then ".join(map(_text, part))
    words = [_text(getattr(part, name)) for name in _parts_of(part)]
    if type(part) in _LOOSEST:
        words = _with_brackets(part, words)
    return _PATTERNS[type(part)].format(*words)


def _with_brackets(condition: Any, words: list[str]) -> list[str]:
    """The parts of a condition, in brackets where they would be read otherwise."""
    kinds = (type(getattr(condition, name)) for name in _parts_of(condition))
    return [
        f"({text})" if _LOOSENESS.get(kind, 0) > loosest else text
        for kind, loosest, text in zip(kinds, _LOOSEST[type(condition)], words, strict=True)
    ]


def _parts_of(part: Any) -> tuple[str, ...]:
    """The names of the parts of a value, in the order in which they are written."""
    return () if isinstance(part, tree.Pi) else type(part).__match_args__


def leftmost_spot(node: Any) -> tree.Spot:
    """Where an expression, a condition or a line begins, within its statement.

    The spot is that of its first name or number: a bracket, a minus or a word before it has no spot.
    """
    while not isinstance(node, tree.Name | tree.Numeral | tree.Pi):
        node = node[0] if isinstance(node, tuple) else getattr(node, type(node).__match_args__[0])
    return node.spot
