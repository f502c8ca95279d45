"""A recipe in its one canonical layout, so that recipes can be compared line by line.

Every statement has one way to be spaced (`phrase`); what belongs to a sheet, a piece or a `when` is indented
by two; one blank line stands before each sheet and piece and after the last line of one; comments stay with
the line they stand on or above.  Lines that cannot be read stay as they are.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.recipe.layout import Layout, layouts
from littlefold.recipe.lines import Stretch, stretches
from littlefold.recipe.parse import oversize
from littlefold.recipe.phrase import phrase

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from littlefold.problem import Problem

_STEP: Final = 2


def format_recipe(text: str, file: str = "recipe") -> str | tuple[Problem, ...]:
    """A recipe in its canonical layout.

    Reading the result gives the same statements in the same order, and a second formatting changes nothing.

    Args:
        text: The recipe.
        file: What its problems call it.

    Returns:
        The text, or the problem when it is larger than any recipe may be, before or after.
    """
    oversized = oversize(text, file)
    if oversized:
        return (oversized,)
    tidy = "".join(f"{line}\n" for line in _without_spare_blanks(_lines(stretches(text))))
    outgrown = oversize(tidy, file)
    return (outgrown,) if outgrown else tidy


def _lines(found: tuple[Stretch, ...]) -> Iterator[str]:
    """The lines of the whole recipe; comments wait for the statement that they stand above."""
    places = iter(layouts([stretch.text.split()[0] for stretch in found if stretch.text]))
    waiting: list[str] = []
    level = 0
    for stretch in found:
        if stretch.text:
            layout = next(places)
            level = layout.level
            yield from [""] * layout.apart
            yield from _indented(waiting, level)
            yield from _statement(stretch, layout)
            waiting = []
        elif stretch.comment:
            waiting.append(stretch.comment)
        else:
            yield from _indented(waiting, level)
            yield ""
            waiting = []
    yield from _indented(waiting, level)


def _statement(stretch: Stretch, layout: Layout) -> Iterator[str]:
    words = phrase(stretch.text, layout.level * _STEP)
    if words is None:
        yield stretch.raw
    else:
        yield f"{words}  {stretch.comment}".rstrip()


def _indented(comments: Iterable[str], level: int) -> Iterator[str]:
    return (" " * level * _STEP + comment for comment in comments)


def _without_spare_blanks(lines: Iterable[str]) -> Iterator[str]:
    """The lines without blank ones at the start, at the end, or after another blank one."""
    blank = False
    begun = False
    for line in lines:
        if not line:
            blank = begun
            continue
        if blank:
            yield ""
        yield line
        blank, begun = False, True
