"""`make run` drafts the sample, says where the sheets are, and opens the workroom, with or without a terminal."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


def made(bin_folder: Path, *words: str) -> list[str]:
    """What `make run` says, with a command in the place of ours that only tells what it was asked."""
    if shutil.which("make") is None:
        pytest.fail("make is not here, and everything is begun with it")
    stand_in = bin_folder / "littlefold"
    stand_in.write_text('#!/bin/sh\necho "asked: $*"\n')
    stand_in.chmod(0o755)
    command = (
        "make",
        "--no-print-directory",
        "-s",
        "-o",
        ".venv/product",
        "run",
        f"BIN={bin_folder}",
        *words,
    )
    done = subprocess.run(
        command, cwd=ROOT, check=True, capture_output=True, text=True, stdin=subprocess.DEVNULL, timeout=60
    )
    return done.stdout.splitlines()


def test_the_sample_is_drafted_and_the_workroom_opened(tmp_path: Path) -> None:
    drafted, where, opened = made(tmp_path)
    assert drafted == "asked: draft casing-top --child sample --out sheets"
    assert "sheets" in where
    assert opened == "asked: serve"


def test_once_is_once(tmp_path: Path) -> None:
    *_, last = made(tmp_path, "ONCE=1")
    assert "littlefold serve" in last
    assert not last.startswith("asked")
