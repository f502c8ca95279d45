"""A recipe drafted for one size after another.

A grade is not added to a pattern; it comes out of drafting again, so that every size fits its own body and every seam
meets in every size.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.body.chart import chart_row
from littlefold.draft.evaluate import evaluate
from littlefold.pattern.trace import trace
from littlefold.problem import Number, Problem

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from littlefold.body.measurements import Measurements
    from littlefold.body.tape import TapeMark
    from littlefold.pattern.model import Pattern, Seam
    from littlefold.recipe.recipe import Recipe

    Shelf = Callable[[str], Recipe | None]


UNMATCHED = "seam-lengths-differ"
"""The code of a seam that does not meet in some size."""


@dataclass(frozen=True, slots=True)
class Graded:
    """One size of a run: its label, such as `104`, and its pattern."""

    label: str
    pattern: Pattern


@dataclass(frozen=True, slots=True)
class SizeRun:
    """A garment in several sizes, the smallest first."""

    title: str
    sizes: tuple[Graded, ...]

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What was found while drafting, each once, and every seam that does not meet in some size."""
        found = (
            problem
            for size in self.sizes
            for problem in (*size.pattern.draft.problems, *size.pattern.problems)
        )
        unmatched = (
            _unmatched(size, seam) for size in self.sizes for seam in size.pattern.seams if not seam.matched
        )
        return tuple(dict.fromkeys((*found, *unmatched)))


def grade(
    recipe: Recipe,
    sizes: tuple[int, ...],
    choices: Mapping[str, float | str] | None = None,
    *,
    tape: TapeMark | None = None,
    language: str = "en",
    shelf: Shelf = lambda name: None,  # noqa: ARG005
) -> SizeRun:
    """The sizes of the built-in chart, drafted from a recipe; the other arguments are those of `evaluate`."""
    bodies = tuple((str(size), chart_row(size)) for size in sizes)
    return grade_bodies(recipe, bodies, choices, tape=tape, language=language, shelf=shelf)


def grade_bodies(
    recipe: Recipe,
    bodies: tuple[tuple[str, Measurements], ...],
    choices: Mapping[str, float | str] | None = None,
    *,
    tape: TapeMark | None = None,
    language: str = "en",
    shelf: Shelf = lambda name: None,  # noqa: ARG005
) -> SizeRun:
    """Any bodies with their labels, such as the rows of the maker's own chart, drafted from a recipe."""
    graded = tuple(
        Graded(label, trace(evaluate(recipe, body, choices, tape=tape, shelf=shelf, language=language)))
        for label, body in bodies
    )
    return SizeRun(graded[0].pattern.draft.title if graded else recipe.title, graded)


def _unmatched(size: Graded, seam: Seam) -> Problem:
    first, second = (
        " + ".join(f"{ref.piece}.{ref.edge}" for ref in run) for run in (seam.first, seam.second)
    )
    return Problem(
        UNMATCHED,
        f"Size {size.label}: {first} is {seam.first_length:.1f} mm long, {second} {seam.second_length:.1f} mm; "
        f"with an ease of {seam.ease:.1f} mm they do not meet.",
        place=seam.place,
        numbers=(Number("first", seam.first_length), Number("second", seam.second_length)),
    )
