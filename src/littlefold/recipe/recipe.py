"""A recipe as read: its statements with their lines, and what was wrong with the text."""

from __future__ import annotations

from dataclasses import dataclass
from hashlib import sha256
from typing import TYPE_CHECKING, Any

from littlefold.problem import Place
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.problem import Problem


@dataclass(frozen=True, slots=True)
class Written:
    """A statement where it stands: `line` is the line of the text on which it begins."""

    line: int
    statement: Any
    file: str = "recipe"

    def place(self, spot: tree.Spot = (1, 1)) -> Place:
        """The place of a spot of this statement in the whole text."""
        return Place(file=self.file, line=self.line + spot[0] - 1, column=spot[1])


@dataclass(frozen=True, slots=True)
class Recipe:
    """A recipe as read; `file` is what its problems call it.

    `unread` are the words of lines that could not be read: among them the names of what is missing for that reason.
    """

    file: str
    text: str
    written: tuple[Written, ...]
    problems: tuple[Problem, ...] = ()
    unread: frozenset[str] = frozenset()

    def all_of(self, kind: type) -> Iterator[Any]:
        """The statements of one kind, in order."""
        return (written.statement for written in self.written if isinstance(written.statement, kind))

    def first(self, kind: type) -> Any | None:
        """The first statement of a kind, or None."""
        return next(self.all_of(kind), None)

    @property
    def name(self) -> str:
        """The name the recipe gives itself; the file's where it gives none."""
        named = self.first(tree.RecipeName)
        return named.name if named else self.file

    @property
    def title(self) -> str:
        """The title, as first written; the name where there is none."""
        title = self.first(tree.Title)
        return title.text.words if title else self.name

    @property
    def fingerprint(self) -> str:
        """A hash of the text, so that a draft can be told to come from exactly this recipe."""
        return sha256(self.text.encode()).hexdigest()
