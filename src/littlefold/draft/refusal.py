"""The way of a user's mistake inside the drafting stage.

A construction deep in the draft cannot go on when a name is missing.  It raises `Refusal`; the loop over the
statements turns it into a `Problem` with its place and goes on with the next statement.  No `Refusal` leaves the
stage.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.problem import Saying

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.problem import Number
    from littlefold.recipe.recipe import Written
    from littlefold.recipe.tree import Spot


class Refusal(Exception):
    """What is wrong with a statement: a code, a sentence, the spot in the statement, the numbers compared."""

    def __init__(
        self,
        code: str,
        message: str | Saying | Callable[[], Saying],
        spot: Spot = (1, 1),
        numbers: tuple[Number, ...] = (),
    ) -> None:
        super().__init__(code)
        self.code = code
        self.spot = spot
        self.numbers = numbers
        self._message = message

    @property
    def message(self) -> str:
        """The sentence; one given as a function is made when it is told, since a name may be looked up elsewhere."""
        if callable(self._message):
            self._message = self._message()
        return str(self._message)

    @property
    def said(self) -> Saying | None:
        """The sentence with its places, where it can be said in other languages."""
        return self._message if isinstance(self._message, Saying) else None


class Exhausted(Refusal):
    """The recipe asks for more than is drawn for anyone; nothing more is tried.

    `line` is the statement that asked for too much, once it is known.
    """

    line: Written | None = None


class Missing(Refusal):
    """A name that is not there (yet), which `find` has to tell from other mistakes."""
