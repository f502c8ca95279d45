"""`littlefold measurements`: what each short name means, how it is taken, and which recipes ask for it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from rich.text import Text

from littlefold.body.child import unknown_measurement
from littlefold.body.register import REGISTER, register_in
from littlefold.booklet.recipes import measures_of, with_beginnings
from littlefold.cli.words import print_document, refused, to_person
from littlefold.pipeline import on_the_shelf
from littlefold.recipe.shelf import shipped_names

if TYPE_CHECKING:
    from littlefold.body.register import Measurement


def list_measurements(name: str | None, language: str, *, as_data: bool) -> int:
    """Tells of one measurement, or of all; returns the exit status."""
    if name is not None and name not in REGISTER:
        return refused((unknown_measurement(name),), as_data=as_data)
    asking = _asking()
    found = [one for key, one in register_in(language).items() if name in (None, key)]
    if as_data:
        print_document([_record(one, asking[one.name]) for one in found])
        return 0
    for one in found:
        _print(one, asking[one.name])
    return 0


def _asking() -> dict[str, tuple[str, ...]]:
    """The shipped recipes that ask for each measurement, themselves or by what they begin with."""
    asked: dict[str, list[str]] = {name: [] for name in REGISTER}
    for name in shipped_names():
        recipe = on_the_shelf(name)
        whole = () if recipe is None else with_beginnings(recipe, on_the_shelf)
        for measure in {measure for one in whole for measure in measures_of(one)} & set(asked):
            asked[measure].append(name)
    return {measure: tuple(names) for measure, names in asked.items()}


def _record(one: Measurement, recipes: tuple[str, ...]) -> dict[str, Any]:
    return {
        "name": one.name,
        "title": one.title,
        "kind": one.kind.value,
        "iso_8559_1": {"term": one.iso_term, "clause": one.clause, "known": one.clause_note},
        "standing": one.how_standing,
        "lying": one.how_lying,
        "recipes": list(recipes),
    }


def _print(one: Measurement, recipes: tuple[str, ...]) -> None:
    console = to_person()
    clause = f" {one.clause}" if one.clause else ""
    console.print(Text(f"{one.title}  ({one.name})", "bold"))
    console.print(Text(f"  ISO 8559-1{clause}: {one.iso_term}", "dim"))
    console.print(f"  standing: {one.how_standing}", markup=False)
    console.print(f"  lying:    {one.how_lying}", markup=False)
    console.print(f"  asked for by: {', '.join(recipes) or 'no shipped recipe'}", markup=False)
