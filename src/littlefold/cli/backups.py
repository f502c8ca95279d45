"""Backups of the card box made, listed and put back."""

from __future__ import annotations

import os
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from littlefold.cli.box import the_box
from littlefold.cli.child import refuse
from littlefold.cli.words import aside, count_words, to_person
from littlefold.problem import Problem
from littlefold.store import Restored, address_of, back_up_now, backups_of
from littlefold.store import restore as put_back

if TYPE_CHECKING:
    from littlefold.store import Holding

NOT_IN_IT = (
    "Own recipes, settings and what lies on the table are not in it: for all of it in one file, "
    "littlefold serve, Settings, Back up now."
)


def back_up_box() -> int:
    """Copies the whole box; returns the exit status."""
    with the_box() as box:
        made = box if isinstance(box, Problem) else back_up_now(box, datetime.now(tz=UTC))
    if isinstance(made, Problem):
        return refuse(made)
    told = aside()
    told.print(f"{_said(made.holds)}, and the classes: {made.file}", markup=False, soft_wrap=True)
    told.print(NOT_IN_IT, markup=False, soft_wrap=True)
    return 0


def list_backups() -> int:
    """Lists the files in the folder of backups, the newest first; returns the exit status."""
    address = address_of(os.environ, Path.home())
    if isinstance(address, Problem):
        return refuse(address)
    found = backups_of(address)
    for file in found:
        to_person().print(str(file), markup=False, soft_wrap=True)
    if not found:
        to_person().print(f"There are no backups in {address.backups}.", markup=False, soft_wrap=True)
    return 0


def restore_box(file: Path) -> int:
    """Puts a backup in place of all that is in the box; returns the exit status."""
    address = address_of(os.environ, Path.home())
    if isinstance(address, Problem):
        return refuse(address)
    outcome = put_back(address, file, datetime.now(tz=UTC))
    if not isinstance(outcome, Restored):
        return refuse(*outcome)
    told = aside()
    told.print(f"The box holds {_said(outcome.holds)} now.", markup=False)
    if outcome.replaced is not None:
        told.print(f"What it held before lies in {outcome.replaced.file}.", markup=False, soft_wrap=True)
    if outcome.damaged is not None:
        told.print(f"The damaged file lies in {outcome.damaged}.", markup=False, soft_wrap=True)
    return 0


def _said(holds: Holding) -> str:
    cards, sets, drafts = len(holds.children), holds.sets, holds.drafts
    return f"{count_words(cards, 'card')}, {count_words(sets, 'set')} of readings, {count_words(drafts, 'draft')}"
