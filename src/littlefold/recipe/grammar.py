"""The grammar made ready for reading, from tables that were worked out beforehand.

Working out the reading tables from `grammar.lark` takes about 0.35 s, more than half of what the start of a
command may take.  So the finished tables stand beside the grammar in `grammar.json` (written by
`tools/grammar_tables.py`, kept current by a test) and are taken up in about 0.03 s.  The file names the
grammar it was made from; should it ever be another one, the tables are worked out anew: slower, never wrong.
"""

from __future__ import annotations

import json
from functools import lru_cache
from hashlib import sha256
from importlib.resources import files
from typing import Any

from lark import Lark
from lark import __version__ as lark_version
from lark.grammar import Rule
from lark.lexer import PatternStr, TerminalDef

from littlefold.recipe.build import Builder


@lru_cache(maxsize=1)
def grammar() -> Lark:
    """The grammar, which gives the value of `recipe.tree` for a statement; made ready once a program."""
    text = _resource("grammar.lark")
    tables = json.loads(_resource("grammar.json"))
    current = tables["made_from"] == fingerprint(text)
    read = _taken_up(tables["data"], tables["memo"]) if current else worked_out(text, Builder())
    return _in_whole_words(read)


def _in_whole_words(read: Lark) -> Lark:
    """The grammar, its words no longer found within others: `bye` is not `by` and the name `e`.

    The library takes a word for one wherever its letters stand; each is given the border after it.
    """
    for terminal in read.terminals:
        pattern = terminal.pattern
        if isinstance(pattern, PatternStr) and pattern.value.isalpha():
            bordered = rf"{pattern.value}\b"
            pattern.to_regexp = lambda bordered=bordered: bordered  # type: ignore[method-assign,misc]
    return read


def fingerprint(grammar_text: str) -> str:
    """What the tables depend on: the text of the grammar and the version of the library that reads them."""
    return sha256(f"{lark_version}\n{grammar_text}".encode()).hexdigest()


def worked_out(grammar_text: str, builder: Builder | None = None) -> Lark:
    """The grammar with its tables worked out anew; without a builder it gives bare trees."""
    return Lark(grammar_text, parser="lalr", start="statement", maybe_placeholders=True, transformer=builder)


def written_down(grammar_text: str) -> str:
    """The tables of a grammar as JSON, a part a line so that changes can be seen."""
    data, memo = worked_out(grammar_text).memo_serialize([TerminalDef, Rule])
    tables = {"made_from": fingerprint(grammar_text), "data": data, "memo": memo}
    return _spread(tables, 4) + "\n"


def _spread(value: Any, levels: int) -> str:
    """JSON with the outer levels of its objects spread over lines."""
    if levels == 0 or not isinstance(value, dict) or not value:
        return json.dumps(value, separators=(",", ":"))
    rows = (f"{json.dumps(str(key))}:{_spread(part, levels - 1)}" for key, part in value.items())
    return "{\n" + ",\n".join(rows) + "}"


def _taken_up(data: Any, memo: Any) -> Lark:
    """The grammar from its tables; JSON knows only words as keys, the tables have numbers."""
    parser = data["parser"]["parser"]
    parser["tokens"] = _numbered(parser["tokens"])
    parser["states"] = {int(state): _numbered(row) for state, row in parser["states"].items()}
    data["options"]["transformer"] = Builder()
    return Lark.load({"data": data, "memo": _numbered(memo)})


def _numbered(table: dict[str, Any]) -> dict[int, Any]:
    return {int(key): value for key, value in table.items()}


def _resource(name: str) -> str:
    return files("littlefold.recipe").joinpath(name).read_text(encoding="utf-8")
