"""The page of docs that lists all rules, made from the register."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from .cords import KINDS
from .register import registered
from .roles import words_by_role

if TYPE_CHECKING:
    from collections.abc import Iterator

    from .register import Rule

HEAD: Final = """\
# Checks

Every pattern is looked at by the rules below before it is printed. A finding says what is wrong, where,
both numbers and what to do. An **error** spoils the garment or can hurt the child, a **warning** may, a
**note** informs.

A rule finds the neck, the armhole, the hem and the rest by the words in the names of edges (`neckline`,
`front_armhole`, `hem`), and cords and elastics by the words in the list of notions (`waist elastic`, `12 mm
wide`). An edge or a notion that is called otherwise is passed by, so use the trade's words.

This page is made from the register of rules; change a rule, not the page.
"""
LEGAL: Final = """\
The numbers were read in public notices about the standards, which are not free
themselves. They guide; they are no legal advice. The rules of the place where a garment is worn or sold
decide.
"""


WORDS: Final = """\
## Words that the rules know

"""


def _words() -> str:
    """The words by which edges, cords and elastics are known."""
    rows = [
        f"- {role.value}: {', '.join(f'`{word}`' for word in words)}"
        for role, words in words_by_role().items()
    ]
    cords = ", ".join(f"`{word}`" for word in sorted(KINDS))
    return (
        WORDS
        + "Edges, by a word in their name; the `hem` of a sleeve is its wrist, that of a trouser piece its leg:\n\n"
        + "\n".join(rows)
        + f"\n\nCords, by a word in the name or remark of a notion: {cords}; never with `elastic`, `bias` or `binding`.\n"
    )


def checks_page() -> str:
    """The whole page, in Markdown."""
    rules = registered()
    return "\n".join(
        (
            HEAD,
            _words(),
            f"## Safety ({sum(rule.safety for rule in rules)})\n",
            LEGAL,
            *_entries(rules, safety=True),
            f"## Drafting, fit and cutting ({sum(not rule.safety for rule in rules)})\n",
            *_entries(rules, safety=False),
        )
    )


def _entries(rules: tuple[Rule, ...], *, safety: bool) -> Iterator[str]:
    return (_entry(rule) for rule in rules if rule.safety is safety)


def _entry(rule: Rule) -> str:
    looks = (rule.judge.__doc__ or "").strip()
    lines = (f"### `{rule.code}`\n", f"{rule.title}.\n", f"- Finds: {looks}", f"- Why: {rule.why}")
    return "\n".join((*lines, f"- Source: {rule.source}.\n"))
