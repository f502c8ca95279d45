"""Where each statement of a recipe stands: how far in, and whether a blank line stands before it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Sequence


class Role(Enum):
    """What a statement is in the layout."""

    SHEET = auto()
    PIECE = auto()
    ON_SHEET = auto()
    ON_PIECE = auto()
    WHEN = auto()
    OTHERWISE = auto()
    END = auto()
    TOP = auto()


@dataclass(frozen=True, slots=True)
class Layout:
    """How many steps a statement stands in, and whether a blank line stands before it."""

    level: int
    apart: bool


_WORDS: Final = {
    Role.SHEET: ("drawing", "continue", "redraw"),
    Role.PIECE: ("piece",),
    Role.ON_SHEET: (
        *("point", "line", "curve", "arc", "circle", "copy", "run", "with", "without", "trace", "lay"),
        *("outline", "split", "slash", "close", "pleats", "tucks", "gathers", "join", "button"),
    ),
    Role.ON_PIECE: ("edges", "grain", "notch", "inside", "mark"),
    Role.WHEN: ("when",),
    Role.OTHERWISE: ("otherwise",),
    Role.END: ("end",),
}
_ROLES: Final = {word: role for role, words in _WORDS.items() for word in words}
# Branches within branches are set in so far and no further.
DEEPEST: Final = 12
# Numbers that may be worked out in the middle of a drawing.
_NUMBERS: Final = frozenset({"amount", "find"})
_BRANCHES: Final = frozenset({Role.WHEN, Role.OTHERWISE, Role.END})
_BELONGS: Final = {Role.ON_SHEET: Role.SHEET, Role.ON_PIECE: Role.PIECE}


def layouts(keywords: Sequence[str]) -> list[Layout]:
    """The layout of each statement, from the words that the statements begin with."""
    return _Margin(_roles(keywords)).layouts()


def _roles(keywords: Sequence[str]) -> list[Role]:
    """The role of each statement; a number belongs to a sheet when more is drawn there after it."""
    roles: list[Role] = []
    following = Role.TOP
    for keyword in reversed(keywords):
        role = _ROLES.get(keyword, Role.TOP)
        if keyword in _NUMBERS:
            role = Role.ON_SHEET if following is Role.ON_SHEET else Role.TOP
        if role not in _BRANCHES:
            following = role
        roles.append(role)
    return roles[::-1]


def _contents(roles: list[Role]) -> list[Role]:
    """The role of each statement; of a branch, that of the first statement inside it."""
    contents: list[Role] = []
    following = Role.TOP
    for role in reversed(roles):
        following = following if role in _BRANCHES else role
        contents.append(following)
    return contents[::-1]


class _Margin:
    """Goes down the statements and remembers in which sheet or piece, and in how many branches, they stand."""

    def __init__(self, roles: list[Role]) -> None:
        self._roles = roles
        self._contents = _contents(roles)
        self._within: Role | None = None
        self._branches: list[tuple[int, Role | None]] = []

    def layouts(self) -> list[Layout]:
        return [self._next(index, role) for index, role in enumerate(self._roles)]

    def _next(self, index: int, role: Role) -> Layout:
        before = self._within
        level = min(self._level(index, role), DEEPEST)
        above = self._roles[index - 1] if index else Role.WHEN
        if above in {Role.WHEN, Role.OTHERWISE} or role in {Role.OTHERWISE, Role.END}:
            return Layout(level, apart=False)
        opens = role in {Role.SHEET, Role.PIECE} and not (role is above is Role.PIECE)
        return Layout(level, apart=opens or (before is not None and self._within is None))

    def _level(self, index: int, role: Role) -> int:
        if role is Role.END and self._branches:
            level, self._within = self._branches.pop()
            return level
        if role is Role.OTHERWISE and self._branches:
            level, self._within = self._branches[-1]
            return level
        base = len(self._branches)
        level = base + self._enter(self._contents[index])
        if role is Role.WHEN:
            self._branches.append((level, self._within))
        return level

    def _enter(self, role: Role) -> int:
        """One where the statement belongs to the sheet or piece in hand, else nought; notes what is in hand."""
        belongs = role in _BELONGS and _BELONGS[role] is self._within
        if not belongs:
            self._within = role if role in {Role.SHEET, Role.PIECE} else None
        return int(belongs)
