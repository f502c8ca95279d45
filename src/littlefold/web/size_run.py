"""Runs of sizes and their sheets, drawn size by size; the last ones are remembered, since every file is asked for alone."""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import dataclass, field, replace
from functools import cached_property
from threading import Lock
from typing import TYPE_CHECKING, Final

from littlefold.body.chart import chart_row
from littlefold.booklet.run_sheets import run_sheets
from littlefold.grading import SizeRun
from littlefold.grading.grade import grade_bodies
from littlefold.pipeline import on_the_shelf
from littlefold.web.patience import PATIENCE, within

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable, Iterator
    from datetime import date

    from littlefold.booklet.bundle import Sheet
    from littlefold.sheet.paper import Paper
    from littlefold.web.asked import Asked

REMEMBERED: Final = 4
SHEETS: Final = 5
"""So many sheets a run has at most."""


@dataclass(frozen=True, slots=True)
class AskedRun:
    """A garment in several sizes as it was asked for: two are the same when they draw the same."""

    asked: Asked = field(compare=False)
    sizes: tuple[int, ...]
    paper: Paper
    today: date

    @property
    def key(self) -> Hashable:
        """What tells it from others."""
        return (self.asked.wish.key, self.asked.speech, self.sizes, self.paper, self.today)


class DrawnRun:
    """A run that was drawn, with its sheets; each is made once.

    Args:
        asked: What was asked for.
        run: The sizes.
    """

    def __init__(self, asked: AskedRun, run: SizeRun) -> None:
        self.asked = asked
        self.run = run
        self._made: dict[str, bytes] = {}

    @cached_property
    def sheets(self) -> tuple[Sheet, ...]:
        """Its sheets by name."""
        of = self.asked
        circumstances, speech = of.asked.wish.circumstances, of.asked.speech
        return tuple(run_sheets(self.run, circumstances, speech, of.paper, of.today))

    def make(self, sheet: Sheet) -> bytes:
        """A sheet as a file."""
        if sheet.name not in self._made:
            self._made[sheet.name] = sheet.make()
        return self._made[sheet.name]


class DrawnRuns:
    """The last runs that were drawn."""

    def __init__(self) -> None:
        self._known: OrderedDict[Hashable, DrawnRun] = OrderedDict()
        self._turn = Lock()

    def find(self, asked: AskedRun) -> DrawnRun | None:
        """The run, where it is drawn already."""
        with self._turn:
            return self._known.get(asked.key)

    def drawn(self, asked: AskedRun) -> DrawnRun:
        """The run, drawn now where it is not yet.

        Raises:
            TooLongError: The draft of a size was cut off.
        """
        for _ in () if self.find(asked) else self._sizes(asked):
            pass
        found = self.find(asked)
        assert found is not None  # noqa: S101 - it was drawn before the last size was told
        return found

    def work(self, asked: AskedRun) -> Callable[[Callable[[], bool]], Iterator[str]]:
        """The work of drawing a run and making its sheets, which tells of every size and sheet."""

        def drawing(_: Callable[[], bool]) -> Iterator[str]:
            yield from self._sizes(asked)
            drawn = self.drawn(asked)
            for sheet in drawn.sheets:
                drawn.make(sheet)
                yield sheet.name

        return drawing

    def _sizes(self, asked: AskedRun) -> Iterator[str]:
        """Draws size after size; before the last one is told the run is remembered."""
        run = SizeRun(asked.asked.recipe.title, ())
        for size in asked.sizes:
            one = within(PATIENCE, lambda size=size: _drawn(asked, size))  # type: ignore[misc]
            run = replace(one, sizes=(*run.sizes, *one.sizes))
            if size == asked.sizes[-1]:
                self._remember(DrawnRun(asked, run))
            yield str(size)

    def _remember(self, drawn: DrawnRun) -> None:
        with self._turn:
            self._known[drawn.asked.key] = drawn
            while len(self._known) > REMEMBERED:
                self._known.popitem(last=False)


def _drawn(asked: AskedRun, size: int) -> SizeRun:
    """One size, as a run of its own."""
    wish = asked.asked.wish
    return grade_bodies(
        wish.recipe,
        ((str(size), chart_row(size)),),
        dict(wish.choices),
        tape=wish.tape,
        language=wish.language,
        shelf=on_the_shelf,
    )
