"""Where the cards are kept: a file in the user's own data folder, or a PostgreSQL by address.

Two settings of the environment: `LITTLEFOLD_DATABASE`, an address such as `postgresql://room@server/cards` or the
path of a file, and `LITTLEFOLD_DATA`, the folder for the file and the backups.  The folders are those that the
platforms set aside for it: the XDG Base Directory Specification 0.8 (freedesktop.org), Apple's Library folders and
Windows' local application data (from memory).
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import URL, make_url
from sqlalchemy.exc import ArgumentError

from littlefold.problem import Problem

if TYPE_CHECKING:
    from collections.abc import Mapping

DATABASE_SETTING = "LITTLEFOLD_DATABASE"
FOLDER_SETTING = "LITTLEFOLD_DATA"
FILE_NAME = "cards.sqlite"

_FOLDER_NAME = "littlefold"
_POSTGRES = ("postgresql", "postgres", "postgresql+psycopg")


@dataclass(frozen=True, slots=True)
class Address:
    """Where a card box is: the address of its database, and the folder for backups.

    Attributes:
        url: Of the database.
        file: The file where it is one; None for a server.
        backups: The folder for backups.
    """

    url: URL
    file: Path | None
    backups: Path

    def __str__(self) -> str:
        """As it may be shown: without a password."""
        return str(self.file) if self.file else self.url.render_as_string(hide_password=True)


def address_of(environ: Mapping[str, str], home: Path) -> Address | Problem:
    """The address that the settings name, or a problem where they cannot be understood."""
    folder, setting = data_folder(environ, home), environ.get(DATABASE_SETTING, "").strip()
    if "://" not in setting:
        return _in_file(Path(setting).expanduser() if setting else folder / FILE_NAME, folder)
    try:
        url = make_url(setting)
    except (ArgumentError, ValueError):
        return _not_understood()
    if url.drivername == "sqlite" and url.database:
        return _in_file(Path(url.database), folder)
    if url.drivername not in _POSTGRES:
        return _not_understood()
    return Address(url.set(drivername="postgresql+psycopg"), None, folder / "backups")


def data_folder(environ: Mapping[str, str], home: Path, platform: str = sys.platform) -> Path:
    """The folder where this user's programs keep their data."""
    if environ.get(FOLDER_SETTING):
        return Path(environ[FOLDER_SETTING]).expanduser()
    if platform == "darwin":
        return home / "Library" / "Application Support" / _FOLDER_NAME
    if platform == "win32":
        return Path(environ.get("LOCALAPPDATA") or home / "AppData" / "Local") / _FOLDER_NAME
    given = Path(environ.get("XDG_DATA_HOME") or "")
    return (given if given.is_absolute() else home / ".local" / "share") / _FOLDER_NAME


def _in_file(file: Path, folder: Path) -> Address:
    return Address(URL.create("sqlite", database=str(file)), file, folder / "backups")


def _not_understood() -> Problem:
    return Problem(
        "database-address",
        f"{DATABASE_SETTING} is not understood. Write the path of a file, or an address such as "
        "postgresql://name@server/database.",
    )
