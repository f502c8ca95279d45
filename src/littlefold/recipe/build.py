"""From the grammar's bare tree to the values of `recipe.tree`: one class a rule, its parts in order."""

from __future__ import annotations

import re
from typing import Any
from unicodedata import normalize

from lark import Token, Transformer, Tree, v_args

from littlefold.recipe import tree

# Rules whose class bears another name than the rule.
_CLASS_OF = {
    "number": "Plain",
    "cutting": "CutOrder",
    "notion": "NotionLine",
    "inside": "InsideLine",
    "depth": "Depth",
    "end_when": "EndWhen",
}
# Rules that are nothing but a list.
_LISTS = frozenset(
    ("settings", "wanteds", "options", "rows", "allowance_rules", "stops", "names", "chain", "texts", "cuts")
) | {"lines_named", "edge_list"}
# Rules that stand for their one part.
_PLAIN_PARTS = frozenset(
    ("source_words", "fold_way", "sourced", "bearing", "included", "turns", "within", "counted")
) | {"place", "fixed", "free", "said"}
# Which part of a rule is a word that is there or not.
_SWITCH_AT = {"placing": 5, "notch_at": 2, "notch_share": 3, "notch_by": 3, "notion": 4}


class Builder(Transformer[Token, Any]):
    """Builds the values of `recipe.tree`, leaves first."""

    def __default__(self, data: Token, children: list[Any], meta: object) -> Any:
        """The value of a rule."""
        if data in _LISTS:
            return tuple(children)
        if data in _PLAIN_PARTS:
            return children[0]
        if data in _SWITCH_AT:
            children[_SWITCH_AT[data]] = children[_SWITCH_AT[data]] is not None
        if data.startswith("__"):  # a repetition within a rule, which the reader takes apart itself
            return Tree(data, children)
        return _CLASSES[data](*children)

    def slug(self, children: list[Any]) -> str:
        """The name of a recipe, with hyphens or without."""
        return str(children[0])

    def word(self, token: Token) -> str:
        """A word that a rule keeps, or several with the spaces between them made even."""
        return " ".join(token.split())

    SCALE = TABLE_KEY = TABLE_WAY = START = END = LEVEL = CLOCK = WAY_OF = WAY = HEADING = GOING = word
    TURNED_OVER = FOLD_KIND = FOLD_WAY = GATHER_WAY = INCLUDED = TURNS = DOUBLE = HOLES = word
    SIGN = EQUALS = WEIGHT = FIXED = word

    def CUT_WAY(self, token: Token) -> str:  # noqa: N802
        """`on fold` may be written `on the fold`."""
        return self.word(token).replace("on the fold", "on fold")

    def NAME(self, token: Token) -> tree.Name:  # noqa: N802, D102
        return tree.Name(_one_spelling(token), _spot(token))

    def NUMBER(self, token: Token) -> tree.Numeral:  # noqa: N802, D102
        text = " ".join(token.split())
        return tree.Numeral(text, read_number(text), _spot(token))

    def SPAN(self, token: Token) -> tree.Span:  # noqa: N802, D102
        return tree.Span(*_parts(token))

    def TRIPLE(self, token: Token) -> tree.Corner:  # noqa: N802, D102
        return tree.Corner(*_parts(token))

    def STRING(self, token: Token) -> str:  # noqa: N802, D102
        return re.sub(r"\\(.)", r"\1", token[1:-1])

    def PI(self, token: Token) -> tree.Pi:  # noqa: N802, D102
        return tree.Pi(_spot(token))

    def LANGUAGE(self, token: Token) -> str:  # noqa: N802, D102
        return str(token[:-1])

    @v_args(inline=True)
    def text(self, words: str, *translations: tree.Translation) -> tree.Text:  # noqa: D102
        return tree.Text(words, translations)

    @v_args(inline=True)
    def round_of(self, edges: tuple[tree.Name, ...]) -> tree.RoundOf:  # noqa: D102
        return tree.RoundOf(edges)


def _spot(token: Token) -> tree.Spot:
    return (token.line or 1, token.column or 1)


def _one_spelling(name: str) -> str:
    """A name as all keyboards would write it: a letter and its accent are one sign, not two."""
    return normalize("NFC", str(name))


def _parts(token: Token) -> list[tree.Name]:
    line, column = _spot(token)
    names = []
    for text in token.split("-"):
        names.append(tree.Name(_one_spelling(text), (line, column)))
        column += len(text) + 1
    return names


def read_number(text: str) -> float:
    """The value of `3`, `2.5`, `1/2` or `3 1/4`; a fraction over nought is not a number (nan)."""
    whole, _, fraction = text.rpartition(" ")
    if "/" not in fraction:
        return float(text)
    above, below = fraction.split("/")
    if float(below) == 0:
        return float("nan")
    return float(whole or 0) + float(above) / float(below)


def class_of(rule: str) -> Any:
    """The class of `recipe.tree` that a rule of the grammar is read as."""
    name = _CLASS_OF.get(rule) or "".join(part.capitalize() for part in rule.split("_"))
    return getattr(tree, name)


class _Classes(dict[str, Any]):
    """Looks a class up once and remembers it."""

    def __missing__(self, rule: str) -> Any:
        self[rule] = class_of(str(rule))
        return self[rule]


_CLASSES = _Classes()
