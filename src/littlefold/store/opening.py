"""Opening a card box: made where there is none, brought up to date with a backup first, refused where it is newer."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Final

from alembic import command
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy.exc import DBAPIError

from littlefold.problem import Problem, Severity
from littlefold.store.backup import back_up
from littlefold.store.box import CardBox
from littlefold.store.engine import BoxUnavailable, connect, reading, writing

if TYPE_CHECKING:
    from datetime import datetime

    from sqlalchemy import Connection, Engine

    from littlefold.store.address import Address

MIGRATIONS: Final = Path(__file__).parent / "migrations"


def open_box(address: Address, now: datetime, migrations: Path = MIGRATIONS) -> CardBox | Problem:
    """The card box at an address, as this program needs it.

    Args:
        address: From `address_of`.
        now: Names the backup, where one has to be made.
        migrations: The folder of the steps from each version to the next.
    """
    engine = connect(address.url)
    try:
        _make_room(address)
        outcome = _brought_up_to_date(engine, address, now, steps_in(migrations))
    except (BoxUnavailable, DBAPIError, OSError) as fault:
        engine.dispose()
        return _not_opened(address, fault)
    if isinstance(outcome, Problem) and outcome.severity is Severity.ERROR:
        engine.dispose()
        return outcome
    return CardBox(engine, address, () if outcome is None else (outcome,))


def steps_in(migrations: Path) -> Config:
    """How Alembic is told where the steps are."""
    steps = Config()
    steps.set_main_option("script_location", str(migrations).replace("%", "%%"))
    steps.set_main_option("path_separator", "os")
    return steps


def _make_room(address: Address) -> None:
    """The folder and the file, for this user's eyes only."""
    if address.file is not None:
        address.file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        address.file.touch(mode=0o600, exist_ok=True)


def _brought_up_to_date(engine: Engine, address: Address, now: datetime, steps: Config) -> Problem | None:
    script = ScriptDirectory.from_config(steps)
    newest = script.get_current_head()
    with reading(engine) as connection:
        found = _version(connection)
    if found == newest:
        return None
    if found is not None and found not in {step.revision for step in script.walk_revisions()}:
        return _newer(address)
    made = None if found is None else back_up(engine, address, f"{found}-{now:%Y%m%d-%H%M%S}")
    with writing(engine) as connection:
        if _version(connection) == found:  # else another program did it meanwhile
            steps.attributes["connection"] = connection
            command.upgrade(steps, "head")
    return None if made is None else _backed_up(made)


def _version(connection: Connection) -> str | None:
    return MigrationContext.configure(connection).get_current_revision()


def _newer(address: Address) -> Problem:
    return Problem(
        "card-box-newer",
        f"The cards in {address} were kept by a newer Littlefold, and this one does not know how. Nothing was "
        "touched. Use the newer program, or name another box in LITTLEFOLD_DATABASE.",
    )


def _backed_up(made: Path) -> Problem:
    return Problem(
        "card-box-backed-up",
        f"The card box was brought up to date. As it was before, it lies in {made}.",
        Severity.NOTE,
    )


def _not_opened(address: Address, fault: BoxUnavailable | DBAPIError | OSError) -> Problem:
    cause = fault.orig if isinstance(fault, DBAPIError) else fault
    said = cause.strerror if isinstance(cause, OSError) else str(cause).strip().split("\n", 1)[0]
    return Problem("card-box-not-opened", f"The card box {address} cannot be opened: {said}.")
