"""Every shipped recipe drafted for every child: made-up ones, real ones, and those that it is not meant for.

Nothing raises; whatever is drafted is a sound outline with matching seams; whatever is refused is refused in words.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

import pytest

from littlefold.body.measurements import Measurements
from littlefold.body.population import bodies
from littlefold.draft.suits import stature_range
from littlefold.pipeline import on_the_shelf
from littlefold.problem import Problem, Severity
from littlefold.recipe.shelf import shipped_names
from tests.body.survey import survey_children
from tests.journeys.children import ELEVEN
from tests.journeys.soundness import drafted, unsound

if TYPE_CHECKING:
    from collections.abc import Iterable

COUNT, SEED = 200, 1977

# Of the children that a recipe suits, at least this share gets a garment without an error.
SERVED = 0.99

# Every so many children of the survey are drafted here; `make bench` drafts all.
EVERY = 150


@lru_cache(maxsize=1)
def population() -> tuple[Measurements, ...]:
    return tuple(bodies(COUNT, SEED))


def suited(name: str, child: Measurements) -> bool:
    low, high = stature_range(on_the_shelf(name))
    return low <= child.mm("stature") <= high


def all_sound(name: str, children: Iterable[Measurements]) -> tuple[int, list[tuple[str, Problem]]]:
    """How many children were drafted, and what was refused to those whom the recipe suits."""
    count, refused = 0, []
    for child in children:
        outcome = drafted(name, child)
        assert unsound(outcome) == [], f"{name} for {child.nickname}, stature {child.mm('stature'):.0f} mm"
        errors = [problem for problem in outcome.problems if problem.severity is Severity.ERROR]
        count += 1
        refused.extend((child.nickname, problem) for problem in errors if suited(name, child))
    return count, refused


def told(name: str, count: int, refused: list[tuple[str, Problem]]) -> None:
    print(f"{name}: {count} children, {len({who for who, _ in refused})} with an error")  # noqa: T201 - the issue asks for it
    for who, problem in refused[:5]:
        print(f"  {who}: {problem.message}")  # noqa: T201


@pytest.mark.parametrize("name", shipped_names())
def test_made_up_children(name: str) -> None:
    """200 bodies of 56 to 152 cm: those the recipe suits are served, the others warned (every eighth of them)."""
    inside = [child for child in population() if suited(name, child)]
    outside = [child for child in population() if not suited(name, child)]
    count, refused = all_sound(name, inside)
    told(name, count, refused)
    assert count >= 10, "a recipe that suits hardly anybody is tried on hardly anybody"
    assert len({who for who, _ in refused}) <= (1 - SERVED) * count
    for child in outside[::8]:
        outcome = drafted(name, child)
        assert unsound(outcome) == []
        assert [p for p in outcome.problems if p.code == "body-outside-suits"]


@pytest.mark.parametrize("name", shipped_names())
def test_children_of_the_survey(name: str) -> None:
    """Every 150th child of the 1977 survey that the recipe suits; what was not measured is filled in."""
    children = [child for child in survey_children() if suited(name, child)][::EVERY]
    count, refused = all_sound(name, children)
    told(name, count, refused)
    assert count
    assert len({who for who, _ in refused}) <= (1 - SERVED) * count


@pytest.mark.parametrize("name", shipped_names())
def test_eleven_real_children(name: str) -> None:
    """The eleven named in the notes, stout and lean among them, whatever the recipe suits."""
    count, refused = all_sound(name, ELEVEN)
    told(name, count, refused)
    assert count == len(ELEVEN)
    assert refused == []


def test_a_body_of_nothing_but_a_stature_at_both_ends() -> None:
    for name in shipped_names():
        for stature in (560.0, 1520.0, 1900.0):
            assert unsound(drafted(name, Measurements.of({"stature": stature}))) == []
