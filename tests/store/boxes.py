"""Boxes to test with: SQLite in a file of the test's own, and a PostgreSQL thrown away at the end."""

from __future__ import annotations

import os
import pwd
import shutil
import subprocess
from datetime import UTC, datetime
from pathlib import Path
from tempfile import mkdtemp
from typing import TYPE_CHECKING

import pytest
from sqlalchemy import create_engine, text

from littlefold.problem import Problem
from littlefold.store import CardBox, address_of, open_box

if TYPE_CHECKING:
    from collections.abc import Iterator

NOW = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)


def binaries() -> Path | None:
    """Where PostgreSQL's programs lie, if they do."""
    found = sorted(Path("/usr/lib/postgresql").glob("*/bin/initdb"))
    on_path = shutil.which("initdb")
    if found:
        return found[-1].parent
    return Path(on_path).resolve().parent if on_path else None


def _other_user() -> str | None:
    """PostgreSQL refuses to run as root; another user then."""
    if os.geteuid() != 0:
        return None
    names = {entry.pw_name for entry in pwd.getpwall()}
    return "postgres" if "postgres" in names else "nobody"


@pytest.fixture(scope="session")
def server() -> Iterator[Path]:
    """A PostgreSQL that listens on a socket in a folder of its own."""
    programs = binaries()
    if programs is None:
        pytest.skip("no PostgreSQL server can be started: none is installed")
    folder, user = Path(mkdtemp(prefix="littlefold-pg-")), _other_user()
    if user:
        shutil.chown(folder, user)
        folder.chmod(0o755)

    def run(*words: str) -> None:
        subprocess.run(
            [str(programs / words[0]), *words[1:]],
            user=user,
            check=True,
            cwd=folder,
            stdout=subprocess.DEVNULL,
        )

    cluster = str(folder / "cluster")
    run("initdb", "-D", cluster, "-A", "trust", "-U", "room", "-E", "UTF8", "--no-sync")
    settings = f"-c listen_addresses='' -c fsync=off -k {folder}"
    run("pg_ctl", "-D", cluster, "-w", "-l", str(folder / "log"), "-o", settings, "start")
    try:
        yield folder
    finally:
        run("pg_ctl", "-D", cluster, "-m", "immediate", "stop")
        shutil.rmtree(folder, ignore_errors=True)


@pytest.fixture(params=["sqlite", pytest.param("postgres", marks=pytest.mark.postgres)])
def environ(request: pytest.FixtureRequest, tmp_path: Path) -> dict[str, str]:
    """The settings that name a fresh place for a box."""
    settings = {"LITTLEFOLD_DATA": str(tmp_path)}
    if request.param == "postgres":
        server = request.getfixturevalue("server")
        address = f"postgresql://room@/postgres?host={server}"
        admin = create_engine(
            address.replace("postgresql:", "postgresql+psycopg:"), isolation_level="AUTOCOMMIT"
        )
        with admin.connect() as connection:
            connection.execute(text("DROP SCHEMA public CASCADE"))
            connection.execute(text("CREATE SCHEMA public"))
        admin.dispose()
        settings["LITTLEFOLD_DATABASE"] = address
    return settings


def opened(environ: dict[str, str]) -> CardBox:
    address = address_of(environ, Path("/nowhere"))
    assert not isinstance(address, Problem)
    box = open_box(address, NOW)
    assert isinstance(box, CardBox), box
    return box


@pytest.fixture
def box(environ: dict[str, str]) -> Iterator[CardBox]:
    one = opened(environ)
    yield one
    one.close()
