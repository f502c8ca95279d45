"""Choices that cure a finding, found by trying.

No rule knows the choices of a recipe.  So each choice is tried towards both of its bounds, or at its other options;
where the finding is gone then, the smallest change that does it is sought among the marks of a tape.  What is offered
was drafted: the finding is gone with it, and nothing came in its place.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from math import ceil, floor, radians
from typing import TYPE_CHECKING, Final

from littlefold.pipeline import settings
from littlefold.problem import Severity

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from littlefold.pipeline import Outcome, Wish
    from littlefold.problem import Problem
    from littlefold.web.readings import Slip

MOST_TRIALS: Final = 80
"""Drafts made for the findings of one draft, all together."""
AT_MOST: Final = 2
"""Cures offered for one finding."""
OF_THE_CHILD: Final = "reading-"
"""What the code of a doubt begins with: it lies in the measuring, which no choice mends."""
SAME: Final = 1e-6
"""Values of a choice that differ by less are the same."""

Trouble = tuple[str, str | None, int | None, str | None, str | None, str | None]


@dataclass(frozen=True, slots=True)
class Cure:
    """A choice and the value that cures a finding: mm, degrees or a plain number, or the name of an option."""

    slip: Slip
    value: float | str

    @property
    def size(self) -> float:
        """How great the change is, as a part of what the choice allows; an option is a great change."""
        low, high, now = self.slip.low, self.slip.high, self.slip.value
        if isinstance(self.value, str) or isinstance(now, str) or low is None or high is None:
            return 1.0
        return abs(self.value - now) / max(high - low, SAME)


def trouble_of(problem: Problem) -> Trouble:
    """What makes a finding the same in two drafts: its code and place, not its numbers."""
    place = problem.place
    return problem.code, place.file, place.line, place.piece, place.edge, place.point


@dataclass(slots=True)
class _Trials:
    """What was found in each draft that was tried; at most so many are made, and none when `goes_on` says no."""

    wish: Wish
    fulfil: Callable[[Wish], Outcome]
    goes_on: Callable[[], bool]
    now: frozenset[Trouble]
    tried: dict[tuple[str, float | str], frozenset[Trouble]] = field(default_factory=dict)

    def after(self, cure: Cure) -> frozenset[Trouble] | None:
        """What would be found with another value of a choice; None where it was not tried for want of time."""
        key = (cure.slip.name, cure.value)
        if key not in self.tried:
            if len(self.tried) >= MOST_TRIALS or not self.goes_on():
                return None
            value = cure.value
            drafted = radians(value) if cure.slip.unit == "degrees" and not isinstance(value, str) else value
            choices = dict(self.wish.choices) | {cure.slip.name: drafted}
            outcome = self.fulfil(replace(self.wish, choices=settings(choices)))
            self.tried[key] = frozenset(troubles(outcome.problems))
        return self.tried[key]

    def ends(self, trouble: Trouble, cure: Cure) -> bool:
        """Whether the finding is gone then."""
        found = self.after(cure)
        return found is not None and trouble not in found

    def heals(self, trouble: Trouble, cure: Cure) -> bool:
        """Whether the finding is gone then, and nothing came in its place."""
        found = self.after(cure)
        return found is not None and trouble not in found and found <= self.now


def troubles(problems: tuple[Problem, ...]) -> Iterator[Trouble]:
    """The findings for which a cure is sought; a note needs none."""
    for problem in problems:
        if problem.severity is not Severity.NOTE and not problem.code.startswith(OF_THE_CHILD):
            yield trouble_of(problem)


def cures(
    wish: Wish,
    slips: tuple[Slip, ...],
    fulfil: Callable[[Wish], Outcome],
    *,
    mark: float,
    goes_on: Callable[[], bool],
) -> dict[Trouble, tuple[Cure, ...]]:
    """For each finding the choices that cure it, the smallest change first; without an entry where none does.

    Args:
        wish: What is drafted now.
        slips: Its choices.
        fulfil: The pipeline.
        mark: The marks of the tape to which lengths are rounded [mm].
        goes_on: Whether there is time for another trial.
    """
    now = tuple(dict.fromkeys(troubles(fulfil(wish).problems)))
    trials = _Trials(wish, fulfil, goes_on, frozenset(now))
    found = {}
    for trouble in now:
        those = [cure for slip in slips for cure in _by(slip, trouble, trials, mark)]
        if those:
            found[trouble] = tuple(sorted(those, key=lambda cure: cure.size)[:AT_MOST])
    return found


def _by(slip: Slip, trouble: Trouble, trials: _Trials, mark: float) -> Iterator[Cure]:
    """The cures by one choice: one towards each bound, or its options."""
    if slip.options:
        options = (Cure(slip, option) for option in slip.options if option != slip.value)
        yield from (cure for cure in options if trials.heals(trouble, cure))
        return
    if isinstance(slip.value, str) or slip.low is None or slip.high is None:
        return
    found = (_towards(bound, slip, trouble, trials, mark) for bound in (slip.low, slip.high))
    yield from dict.fromkeys(cure for cure in found if cure is not None)


def _towards(bound: float, slip: Slip, trouble: Trouble, trials: _Trials, mark: float) -> Cure | None:
    """The least change towards a bound after which the finding is gone; None where there is none."""
    way = _marks(slip, bound, mark if slip.unit == "mm" else slip.step)
    if not way:
        return None
    far = next((k for k in (len(way) // 2, len(way) - 1) if trials.ends(trouble, Cure(slip, way[k]))), None)
    if far is None:
        return None
    near = -1
    while far - near > 1:
        middle = (near + far) // 2
        near, far = (near, middle) if trials.ends(trouble, Cure(slip, way[middle])) else (middle, far)
    found = Cure(slip, way[far])
    return found if trials.heals(trouble, found) else None


def _marks(slip: Slip, bound: float, mark: float) -> list[float]:
    """The marks that are allowed from where a choice stands to a bound, the bound itself the last."""
    assert isinstance(slip.value, float | int)  # noqa: S101 - only a choice between bounds comes here
    assert slip.low is not None  # noqa: S101
    assert slip.high is not None  # noqa: S101
    now = min(max(slip.value, slip.low), slip.high)
    way = 1 if bound > slip.value else -1
    first = floor(way * now / mark + SAME) + 1
    last = ceil(way * bound / mark - SAME) - 1
    marks = [*(way * k * mark for k in range(first, last + 1)), bound]
    return [now, *marks] if now != slip.value else [mark for mark in marks if abs(mark - now) > SAME]
