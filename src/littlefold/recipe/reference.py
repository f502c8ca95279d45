"""The reference page of the language, made from the grammar, the classes of the tree and the table of forms.

Every statement has its form, what it means, its examples, and for acts of the pencil the sentence that the
instruction sheet says.  Sentences belong to a later stage and are handed in.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from importlib.resources import files
from typing import TYPE_CHECKING, Final

from littlefold.recipe.build import class_of
from littlefold.recipe.expected import fitting
from littlefold.recipe.forms import FORMS
from littlefold.recipe.parse import read_statement

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

_GROUPS: Final[Mapping[str, str]] = {
    "header": "What the recipe is",
    "value": "Numbers",
    "sheet": "Sheets of paper",
    "point": "Points",
    "stroke": "Lines, curves, arcs, copies",
    "shape": "Outlines, cut and opened",
    "part": "Pieces",
    "finish": "Sewing and checking",
    "branch": "Branches",
}
# How the small rules that many statements share are shown; all others are shown as the grammar has them.
_SHOWN: Final[Mapping[str, str]] = {
    "expr": "VALUE",
    "NAME": "NAME",
    "line": "LINE",
    "NUMBER": "NUMBER",
    "TRIPLE": "A-K-B",
    "slug": "RECIPE",
    "condition": "CONDITION",
    "text": '"WORDS"',
    "texts": '"WORDS", "WORDS" ...',
    "said": '["WORDS"]',
    "names": "NAME, NAME ...",
    "chain": "NAME then NAME ...",
    "stops": "to NAME to NAME ...",
    "settings": "NAME = VALUE, ...",
    "wanteds": "NAME [or else VALUE], ...",
    "options": "NAME | NAME ...",
    "rows": "VALUE gives VALUE, ...",
    "allowance_rules": "NAME VALUE, ...",
    "lines_named": "LINE [as NAME], ...",
    "cuts": "LINE, LINE ...",
    "edge_list": "LINE [as NAME] KIND [VALUE] [included] [turned once|turned twice] [lap VALUE], ...",
    "clauses": "ENDING",
    "sourced": "[source SOURCE]",
    "source_words": 'common practice|"WORDS"',
    "side": "SIDE",
    "direction": "DIRECTION",
    "bearing": "[DIRECTION,]",
    "bend": "BEND",
    "point": "point ...",
    "stroke": "line ...",
    "shape": "outline ...",
    "find": "find ...",
    "sign": ">=|<=|>|<|=",
    "seam_way": "easing VALUE|gathered",
    "fold_way": "leftward|rightward|upward|downward|boxed|inverted",
    "_COMMA": ",",
}
_RULE: Final = re.compile(r"^\??([a-z_]+):\s*(.+?)(?=^\S|\Z)", re.MULTILINE | re.DOTALL)
_PART: Final = re.compile(r'"[^"]*"|[A-Za-z_]+|[^\sA-Za-z_"]')


@dataclass(frozen=True, slots=True)
class Entry:
    """A statement on the page: its form, the class it is read as, and its examples."""

    rule: str
    form: str
    kind: type
    examples: tuple[str, ...]


def entries(group: str) -> tuple[Entry, ...]:
    """The statements of a group of the grammar, in its order."""
    rules = _rules()
    names = [name.strip() for name in rules[group].split("|")]
    return tuple(Entry(name, _form(rules[name], rules), class_of(name), _examples(name)) for name in names)


def reference(introduction: str, sentences: Mapping[str, str]) -> str:
    """The whole page.

    Args:
        introduction: What stands before the statements, in Markdown.
        sentences: For an example, the sentence that the instruction sheet says for it.
    """
    return introduction.rstrip() + "\n\n" + "\n".join(_sections(sentences))


def _sections(sentences: Mapping[str, str]) -> Iterator[str]:
    for group, title in _GROUPS.items():
        yield f"## {title}\n"
        for entry in entries(group):
            yield from _section(entry, sentences)


def _section(entry: Entry, sentences: Mapping[str, str]) -> Iterator[str]:
    meaning = " ".join((entry.kind.__doc__ or "").split("\n\n")[0].split())
    yield f"**{meaning}**\n\n```\n{entry.form}\n```\n"
    for example in entry.examples:
        said = sentences.get(example)
        yield f"- `{example}`" + (f"  \n  *{said}*" if said else "")
    yield ""


def _rules() -> dict[str, str]:
    """The rules of the grammar as they are written there, by name."""
    text = files("littlefold.recipe").joinpath("grammar.lark").read_text(encoding="utf-8")
    bare = re.sub(r"^//.*$|^%.*$", "", text, flags=re.MULTILINE)
    return dict(_RULE.findall(bare))


def _form(body: str, rules: Mapping[str, str]) -> str:
    """A rule in the words of a maker: fixed words small, what is to be filled in capital."""
    words = " ".join(_shown(part, rules) for part in _PART.findall(body.partition("->")[0]))
    return re.sub(r" +([\],)])", r"\1", re.sub(r"([\[(]) +", r"\1", words))


def _shown(part: str, rules: Mapping[str, str]) -> str:
    if part.startswith('"'):
        return part[1:-1]
    if part in _SHOWN:
        return _SHOWN[part]
    if part.isupper():
        return "|".join(fitting(part))
    return _form(rules[part], rules) if part in rules else part


def _examples(rule: str) -> tuple[str, ...]:
    kind = class_of(rule)
    return tuple(form for forms in FORMS.values() for form in forms if isinstance(read_statement(form), kind))
