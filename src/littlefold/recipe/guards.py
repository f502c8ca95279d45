"""Conditions weighed against each other: whether what is made under some of them is there under others.

A guard is a condition with the answer it must have.  Nothing is worked out: two comparisons are the same when they
are written alike, and of the options of a choice just one stands.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

Guard = tuple[tree.Condition, bool]
Guards = frozenset[Guard]

# Cases told apart in weighing one recipe; a text that needs more is left to drafting, which finds the fault too.
MOST_CASES: Final = 20_000
MOST_GUARDS: Final = 60


def guards_of(condition: tree.Condition, answer: bool = True) -> Guards:  # noqa: FBT001, FBT002 - the answer itself
    """The guards that all hold when a condition has an answer."""
    match condition:
        case tree.Negation(of):
            return guards_of(of, not answer)
        case tree.NotChosen(choice, option):
            return frozenset(((tree.Chosen(choice, option), not answer),))
        case tree.BothHold(left, right) if answer:
            return guards_of(left) | guards_of(right)
        case tree.Either(left, right) if not answer:
            return guards_of(left, answer=False) | guards_of(right, answer=False)
        case _:
            return frozenset(((condition, answer),))


@dataclass(slots=True)
class Weighing:
    """Weighs the guards of one recipe; `options` are those of its choices."""

    options: Mapping[str, Sequence[str]]
    left: int = field(default=MOST_CASES)

    def is_there(self, made: Sequence[Guards], given: Guards) -> bool:
        """Whether what is made under any of some guards is there wherever the given ones hold."""
        self.left -= 1
        if self.left < 0 or len(given) > MOST_GUARDS:
            return True
        known = self._with_options(given)
        if any((condition, not answer) in known for condition, answer in known):
            return True  # this never happens
        possible = [
            guards for guards in made if not any((asked, not answer) in known for asked, answer in guards)
        ]
        if any(guards <= known for guards in possible):
            return True
        asked = next((guard for guards in possible for guard in guards if guard not in known), None)
        return asked is not None and all(self.is_there(possible, known | case) for case in self._cases(asked))

    def _cases(self, guard: Guard) -> Iterator[Guards]:
        """All that can be true instead of each other: the options of a choice, or yes and no."""
        condition = guard[0]
        options = self.options.get(condition.choice.text, ()) if isinstance(condition, tree.Chosen) else ()
        if isinstance(condition, tree.Chosen) and condition.option.text in options:
            for option in options:
                yield frozenset(((tree.Chosen(condition.choice, tree.Name(option)), True),))
        else:
            for answer in (True, False):
                yield guards_of(condition, answer) | {(condition, answer)}

    def _with_options(self, given: Guards) -> Guards:
        """The guards, and that no other option stands where one does."""
        others = (
            (tree.Chosen(condition.choice, tree.Name(option)), False)
            for condition, answer in given
            if answer and isinstance(condition, tree.Chosen)
            for option in self.options.get(condition.choice.text, ())
            if option != condition.option.text
        )
        return given | frozenset(others)
