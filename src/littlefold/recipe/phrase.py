"""One statement in its canonical words: single spaces, even signs, and lines no longer than 100 columns."""

from __future__ import annotations

from typing import Final

from lark import Token
from lark.exceptions import UnexpectedInput

from littlefold.recipe.grammar import grammar
from littlefold.recipe.parse import is_too_long, read_statement

WIDEST: Final = 100

_NO_SPACE_BEFORE: Final = frozenset({"_COMMA", "RPAR"})
# After these a minus is a sign between two numbers, after all others it is the sign of one.
_ENDS_A_NUMBER: Final = frozenset({"NAME", "NUMBER", "PI", "RPAR", "SPAN", "TRIPLE"})
# After these the word `to` belongs to the direction of a curve and not to its end.
_DIRECTED: Final = frozenset({"SQUARE", "TANGENT"})
_BARE_END: Final = 4  # where `to` stands in a curve without a starting direction
_BENDS: Final = frozenset({"DEPTH", "PASSING"})


def phrase(text: str, indent: int = 0) -> str | None:
    """The canonical text of a statement, its lines indented; None when it cannot be read.

    A statement that is too wide is broken after commas, and what goes on below stands under its second word.
    """
    tokens = _tokens(text)
    if tokens is None:
        return None
    return _broken("".join(_spelt(_commas_in_place(tokens))), indent)


def _tokens(text: str) -> list[Token] | None:
    """The words of a statement as the grammar tells them apart; None when it cannot be read."""
    if is_too_long(text):
        return None
    try:
        read_statement(text)
    except UnexpectedInput:
        return None
    return list(grammar().parse_interactive(text).iter_parse())


def _spelt(tokens: list[Token]) -> list[str]:
    """Each token with the space that stands before it; a break may be made at a line end."""
    words: list[str] = []
    before = ""
    for index, token in enumerate(tokens):
        space = "" if token.type in _NO_SPACE_BEFORE else before
        words.append(space + _even(token))
        before = _space_after(tokens, index)
    return words


def _space_after(tokens: list[Token], index: int) -> str:
    token = tokens[index]
    if token.type == "_COMMA":
        return "\n"
    is_sign = token.type == "MINUS" and (not index or tokens[index - 1].type not in _ENDS_A_NUMBER)
    return "" if is_sign or token.type == "LPAR" else " "


def _even(token: Token) -> str:
    """The words of a token with even spaces between them; quoted words stay as they are."""
    if token.type == "STRING":
        return str(token)
    words = " ".join(token.split())
    return "on fold" if words == "on the fold" else words


def _commas_in_place(tokens: list[Token]) -> list[Token]:
    """In a curve from point to point a comma stands after each direction that is said, and nowhere else."""
    if [token.type for token in (*tokens[:1], *tokens[2:3])] != ["CURVE", "FROM"]:
        return tokens
    bare = [token for token in tokens if token.type != "_COMMA"]
    kinds = [token.type for token in bare]
    end = next(at for at in range(4, len(bare)) if kinds[at] == "TO" and kinds[at - 1] not in _DIRECTED)
    bend = next((at for at in range(end + 2, len(bare)) if kinds[at] in _BENDS), end + 2)
    said = {end} if end > _BARE_END else set()
    return _with_commas(bare, said | ({bend} if bend > end + 2 else set()))


def _with_commas(tokens: list[Token], places: set[int]) -> list[Token]:
    with_commas: list[Token] = []
    for index, token in enumerate(tokens):
        with_commas += [Token("_COMMA", ","), token] if index in places else [token]
    return with_commas


def _broken(words: str, indent: int) -> str:
    """The words on as few lines as they need, broken after commas."""
    parts = words.split("\n")
    margin = " " * indent
    below = " " * (indent + len(parts[0].split(" ")[0]) + 1)
    lines = [margin + parts[0]]
    for part in parts[1:]:
        if len(lines[-1]) + 1 + len(part) + 1 <= WIDEST:
            lines[-1] += f" {part}"
        else:
            lines.append(below + part)
    return "\n".join(lines)
