"""The card box as the commands use it: opened at the edge, closed after the work."""

from __future__ import annotations

import os
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

import typer

from littlefold.cli.words import aside, print_findings
from littlefold.problem import Number, Problem, Severity

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import date

    from littlefold.body.measurements import Measurements
    from littlefold.pipeline import Outcome, Wish
    from littlefold.recipe.recipe import Recipe
    from littlefold.store import Card, CardBox
    from littlefold.store.card import Units

# Readings older than this are told to be old [months]: of small children, and of those from three years on.
OLD = (3.0, 6.0)
SMALL_UNTIL = 36.0


@contextmanager
def the_box() -> Iterator[CardBox | Problem]:
    """The card box that the settings name, or why it cannot be opened."""
    from littlefold.store import BoxUnavailable, address_of, open_box

    address = address_of(os.environ, Path.home())
    if isinstance(address, Problem):
        yield address
        return
    box = open_box(address, datetime.now(tz=UTC))
    if isinstance(box, Problem):
        yield box
        return
    if box.remarks:
        print_findings(box.remarks, aside())
    try:
        yield box
    except BoxUnavailable as fault:
        told = Problem(
            "card-box-unavailable", f"The card box {address} cannot be used now: {fault}. Nothing is lost."
        )
        print_findings((told,), aside())
        raise typer.Exit(2) from fault
    finally:
        box.close()


def body_on_card(
    name: str, today: date, recipe: Recipe
) -> tuple[Measurements, tuple[Problem, ...]] | Problem:
    """The newest readings on a card that are meant for a recipe, or the age where there are none; and a remark on old ones."""
    from littlefold.store import meant_for

    with the_box() as box:
        card = box if isinstance(box, Problem) else box.card(name)
    if isinstance(card, Problem):
        return card
    newest = card.latest()
    body = card.body(None if newest is None else meant_for(recipe, newest))
    if newest is None:
        body = replace(body, age_months=card.age(today))
    return body, _old(card, today)


def keep_on_card(
    name: str, wish: Wish, outcome: Outcome, today: date, *, units: Units = "cm", follows: int | None = None
) -> None:
    """Keeps a draft on the card of the child it was made for, and says so."""
    from littlefold.store.reprint import past_draft

    draft = past_draft(wish, outcome, today, follows, units)
    with the_box() as box:
        kept = (box,) if isinstance(box, Problem) else box.change(name, lambda card: card.with_draft(draft))
    if isinstance(kept, tuple):
        print_findings(kept, aside())
    else:
        aside().print(f"Kept on the card of {kept.name} as draft {len(kept.drafts)}.")


def _old(card: Card, today: date) -> tuple[Problem, ...]:
    newest = card.latest()
    if newest is None:
        return (
            Problem("never-measured", f"{card.name} was never measured; all is estimated.", Severity.WARNING),
        )
    months = (today - newest.day).days / 30.4375
    age = card.age(today)
    limit = OLD[0] if age is not None and age < SMALL_UNTIL else OLD[1]
    if months <= limit:
        return ()
    message = (
        f"{card.name} was measured on {newest.day}, {months:.0f} months ago, and has grown since. "
        "Measure again before you cut cloth."
    )
    return (
        Problem("readings-old", message, Severity.WARNING, numbers=(Number("readings", months, "months"),)),
    )
