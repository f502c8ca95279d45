"""The whole flow on one page: what Littlefold does, stage by stage.

    recipe text  --parse-->     recipe
    measurements --examine-->   doubts     readings that look wrong
    measurements --complete-->  every measurement the draft may ask for
    both         --evaluate-->  draft      named points and lines, steps, pieces as stated
    draft        --trace-->     pattern    stitch lines, cutting lines, notches, seams
    pattern      --check-->     findings

Each stage is a function from values to a value.  Outcomes are remembered here and nowhere else.
"""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass, field, replace
from functools import lru_cache
from threading import Lock
from typing import TYPE_CHECKING

from littlefold.body.filling import complete
from littlefold.body.measurements import Origin
from littlefold.body.plausible import examine
from littlefold.body.register import REGISTER
from littlefold.check import check
from littlefold.draft.evaluate import evaluate
from littlefold.pattern.trace import trace
from littlefold.problem import Place, Problem, Severity, say
from littlefold.recipe.analyse import analyse
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_text

if TYPE_CHECKING:
    from collections.abc import Hashable, Mapping

    from littlefold.body.measurements import Measurements
    from littlefold.body.tape import TapeMark
    from littlefold.check import Circumstances
    from littlefold.draft.model import Draft
    from littlefold.pattern.model import Pattern
    from littlefold.recipe.recipe import Recipe


@dataclass(frozen=True, slots=True)
class Wish:
    """What a maker wishes for: a garment, for a child, with her choices, as her tape can measure it."""

    recipe: Recipe
    measurements: Measurements
    circumstances: Circumstances
    choices: tuple[tuple[str, float | str], ...] = ()
    tape: TapeMark | None = None
    language: str = "en"

    @property
    def key(self) -> Hashable:
        """What the outcome depends on; two wishes with the same key have the same outcome."""
        wished = (self.measurements, self.choices, self.tape, self.language, self.circumstances)
        return (self.recipe.fingerprint, *wished)


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of a wish; `problems` are all findings, in the order of the flow."""

    recipe: Recipe
    draft: Draft
    pattern: Pattern
    problems: tuple[Problem, ...]


def fulfil(wish: Wish) -> Outcome:
    """A recipe and a child's measurements make a checked pattern."""
    doubts = examine(wish.measurements.only(Origin.GIVEN))
    measurements, gaps = complete(wish.measurements)
    draft = evaluate(
        wish.recipe,
        measurements,
        dict(wish.choices),
        tape=wish.tape,
        shelf=on_the_shelf,
        language=wish.language,
    )
    pattern = trace(draft)
    findings = check(pattern, replace(wish.circumstances, stretch=draft.stretch))
    remarks = _remarks(wish.recipe.text, wish.recipe.file)
    drawn = (*draft.problems, *_nothing_drawn(draft), *pattern.problems)
    problems = (*remarks, *doubts, *_serious(gaps, draft), *drawn, *findings)
    return Outcome(wish.recipe, draft, pattern, _once(problems))


@lru_cache(maxsize=64)
def _remarks(text: str, file: str) -> tuple[Problem, ...]:
    """What a recipe's text alone shows; remembered, since a slider moves but the text stays."""
    return analyse(parse(text, file), tuple(REGISTER))


@lru_cache(maxsize=64)
def on_the_shelf(name: str) -> Recipe | None:
    """A shipped recipe by name; None where there is none."""
    text = shipped_text(name)
    return None if text is None else parse(text, name)


def _once(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """The problems, each once: two stages may see the same."""
    return tuple(dict.fromkeys(problems))


@dataclass(slots=True)
class Workroom:
    """Fulfils wishes and remembers the last outcomes, so that a wish made again costs nothing.

    Safe for several threads; two that make the same wish at once both work it out.
    """

    keep: int = 64
    _done: OrderedDict[Hashable, Outcome] = field(default_factory=OrderedDict)
    _lock: Lock = field(default_factory=Lock)

    def fulfil(self, wish: Wish) -> Outcome:
        """The outcome of a wish, remembered or worked out."""
        key = wish.key
        with self._lock:
            if key in self._done:
                self._done.move_to_end(key)
                return self._done[key]
        outcome = fulfil(wish)
        with self._lock:
            self._done[key] = outcome
            while len(self._done) > self.keep:
                self._done.popitem(last=False)
        return outcome


def settings(choices: Mapping[str, float | str]) -> tuple[tuple[str, float | str], ...]:
    """Choices as a wish holds them: in the order of their names."""
    return tuple(sorted(choices.items()))


def _nothing_drawn(draft: Draft) -> tuple[Problem, ...]:
    """The problem of a recipe that draws nothing at all."""
    if draft.points or draft.pieces:
        return ()
    said = say("{recipe}: the recipe draws nothing. Begin with a line: drawing NAME.", recipe=draft.recipe)
    return (Problem("nothing-drawn", str(said), place=Place(draft.recipe, 1, 1), said=(said,)),)


def _serious(gaps: tuple[Problem, ...], draft: Draft) -> tuple[Problem, ...]:
    """Of what completing the measurements remarks, what the draft suffers from.

    A garment of one size, or one that has a number to fall back on, misses nothing; and the checks name the
    estimates that were used.
    """
    if not any(problem.code == "measurement-missing" for problem in draft.problems):
        return ()
    return tuple(problem for problem in gaps if problem.severity is not Severity.NOTE)
