"""The whole flow on one page: what Littlefold does, stage by stage.

    recipe text  --parse-->     recipe
    measurements --complete-->  every measurement the draft may ask for
    both         --evaluate-->  draft      named points and lines, steps, pieces as stated
    draft        --trace-->     pattern    stitch lines, cutting lines, notches, seams
    pattern      --check-->     findings
    measurements --examine-->   doubts     readings that look wrong

Each stage is a function from values to a value.  `fulfil` goes all the way; `glimpse` only as far as one sheet can be
seen, since nobody reads findings while a slider moves.  What came of a wish is remembered here and nowhere else.
"""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass, field, replace
from functools import lru_cache
from threading import Lock
from typing import TYPE_CHECKING, Generic, TypeVar

from littlefold.body.filling import complete
from littlefold.body.measurements import Origin
from littlefold.body.plausible import examine
from littlefold.body.register import REGISTER
from littlefold.check import check
from littlefold.draft.evaluate import evaluate
from littlefold.pattern.trace import trace, trace_sheet
from littlefold.problem import Place, Problem, Severity, say
from littlefold.recipe.analyse import analyse
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_text

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable, Mapping

    from littlefold.body.measurements import Measurements
    from littlefold.body.tape import TapeMark
    from littlefold.check import Circumstances
    from littlefold.draft.model import Draft
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.recipe.recipe import Recipe

T = TypeVar("T")


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
class Glimpse:
    """What is seen of a draft: a sheet, by its name, and the pieces traced from it; None for the pieces of all sheets."""

    draft: Draft
    sheet: str | None
    pieces: tuple[Piece, ...]


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of a wish; `problems` are all findings, in the order of the flow."""

    recipe: Recipe
    draft: Draft
    pattern: Pattern
    problems: tuple[Problem, ...]

    def glimpse(self, sheet: str | None) -> Glimpse:
        """What is seen of a sheet; of the first one where there is none of that name."""
        seen = _on_top(self.draft, sheet)
        sheets = {piece.name: piece.sheet for piece in self.draft.pieces}
        pieces = (piece for piece in self.pattern.pieces if seen in {None, sheets.get(piece.name)})
        return Glimpse(self.draft, seen, tuple(pieces))


def fulfil(wish: Wish) -> Outcome:
    """A recipe and a child's measurements make a checked pattern."""
    return finish(wish, draw(wish))


def draw(wish: Wish) -> Draft:
    """The first half of the flow: a recipe and a child's measurements make a draft."""
    measurements, _ = complete(wish.measurements)
    return evaluate(
        wish.recipe,
        measurements,
        dict(wish.choices),
        tape=wish.tape,
        shelf=on_the_shelf,
        language=wish.language,
    )


def glimpse(draft: Draft, sheet: str | None) -> Glimpse:
    """As much of the second half as one look takes: the pieces of one sheet, of which nothing is checked.

    Args:
        draft: The draft.
        sheet: The name of the sheet; the first is seen where there is none such, and None shows all pieces.
    """
    seen = _on_top(draft, sheet)
    pieces = trace(draft).pieces if seen is None else trace_sheet(draft, seen)
    return Glimpse(draft, seen, pieces)


def finish(wish: Wish, draft: Draft) -> Outcome:
    """The second half of the flow: the draft of a wish makes a checked pattern."""
    pattern = trace(draft)
    findings = check(pattern, replace(wish.circumstances, stretch=draft.stretch))
    remarks = _remarks(wish.recipe.text, wish.recipe.file)
    doubts = (*examine(wish.measurements.only(Origin.GIVEN)), *_gaps(wish, draft))
    drawn = (*draft.problems, *_nothing_drawn(draft), *pattern.problems)
    return Outcome(wish.recipe, draft, pattern, _once((*remarks, *doubts, *drawn, *findings)))


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
class _Memory(Generic[T]):
    """The last of what was worked out, by what it depends on.

    Safe for several threads; two that ask for the same at once both work it out.
    """

    keep: int
    _known: OrderedDict[Hashable, T] = field(default_factory=OrderedDict)
    _lock: Lock = field(default_factory=Lock)

    def of(self, key: Hashable, work: Callable[[], T]) -> T:
        """What is known under a key, remembered or worked out."""
        with self._lock:
            if key in self._known:
                self._known.move_to_end(key)
                return self._known[key]
        made = work()
        with self._lock:
            self._known[key] = made
            while len(self._known) > self.keep:
                self._known.popitem(last=False)
        return made


class Workroom:
    """Fulfils wishes and remembers the last drafts and outcomes, so that a wish made again costs nothing."""

    def __init__(self, keep: int = 64) -> None:
        self._drafts: _Memory[Draft] = _Memory(keep)
        self._outcomes: _Memory[Outcome] = _Memory(keep)

    def glimpse(self, wish: Wish, sheet: str | None) -> Glimpse:
        """What is seen of a sheet of a wish, before anything is checked."""
        return glimpse(self._draft(wish), sheet)

    def fulfil(self, wish: Wish) -> Outcome:
        """The outcome of a wish."""
        return self._outcomes.of(wish.key, lambda: finish(wish, self._draft(wish)))

    def _draft(self, wish: Wish) -> Draft:
        return self._drafts.of(wish.key, lambda: draw(wish))


def settings(choices: Mapping[str, float | str]) -> tuple[tuple[str, float | str], ...]:
    """Choices as a wish holds them: in the order of their names."""
    return tuple(sorted(choices.items()))


def _nothing_drawn(draft: Draft) -> tuple[Problem, ...]:
    """The problem of a recipe that draws nothing at all."""
    if draft.points or draft.pieces:
        return ()
    said = say("{recipe}: the recipe draws nothing. Begin with a line: drawing NAME.", recipe=draft.recipe)
    return (Problem("nothing-drawn", str(said), place=Place(draft.recipe, 1, 1), said=(said,)),)


def _gaps(wish: Wish, draft: Draft) -> tuple[Problem, ...]:
    """Of what completing the measurements remarks, what the draft suffers from.

    A garment of one size, or one that has a number to fall back on, misses nothing; and the checks name the
    estimates that were used.
    """
    if not any(problem.code == "measurement-missing" for problem in draft.problems):
        return ()
    _, gaps = complete(wish.measurements)
    return tuple(problem for problem in gaps if problem.severity is not Severity.NOTE)


def _on_top(draft: Draft, sheet: str | None) -> str | None:
    """The sheet of that name, else the first; None where all are seen, or where there is none at all."""
    names = [one.name for one in draft.sheets]
    return sheet if sheet is None or sheet in names else next(iter(names), None)
