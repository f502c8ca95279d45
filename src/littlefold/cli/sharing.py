"""The passphrases of a shared workroom: asked for in the terminal, or read from a file that only its owner can read.

They are no option and no setting of the environment: those stand in the list of programs, in the memory of the shell
and in the surroundings of every program that is begun from it.
"""

from __future__ import annotations

import os
import stat
import sys
from getpass import getpass
from typing import TYPE_CHECKING

from littlefold.problem import Problem
from littlefold.web.keys import Keys, keep_keys, make_keys, read_keys, refusals
from littlefold.web.passphrase import CLASS_LEAST, TEACHER_LEAST, matches

if TYPE_CHECKING:
    from pathlib import Path

LARGEST_FILE = 4096
READABLE_BY_OTHERS = stat.S_IRWXG | stat.S_IRWXO


def keys_for(folder: Path, file: Path | None, *, anew: bool) -> tuple[Problem, ...]:
    """Sees to it that the keys of a workroom are kept in its folder.

    Args:
        folder: Of the maker.
        file: Where the two passphrases stand, the teacher's on the first line and the class's on the second.
        anew: Whether to ask even where there are keys.

    Returns:
        Why there are none; nothing where there are.
    """
    kept = read_keys(folder)
    if file is not None:
        return _from_file(folder, file, kept)
    if kept is not None and not anew:
        return ()
    if not sys.stdin.isatty():
        return (_nobody_to_ask(),)
    return _keep(folder, *_asked())


def _keep(folder: Path, teacher: str, pupils: str) -> tuple[Problem, ...]:
    refused = refusals(teacher, pupils)
    if refused:
        return refused
    try:
        keep_keys(folder, make_keys(teacher, pupils))
    except OSError as fault:
        return (Problem("passphrases-not-kept", f"The passphrases cannot be kept: {fault.strerror}."),)
    return ()


def _from_file(folder: Path, file: Path, kept: Keys | None) -> tuple[Problem, ...]:
    read = _lines(file)
    if isinstance(read, Problem):
        return (read,)
    teacher, pupils = read
    if kept is not None and matches(teacher, kept.teacher) and matches(pupils, kept.pupils):
        return ()  # nobody who is in has to come in again
    return _keep(folder, teacher, pupils)


def _lines(file: Path) -> tuple[str, str] | Problem:
    try:
        with file.open("rb") as opened:
            if os.name == "posix" and os.fstat(opened.fileno()).st_mode & READABLE_BY_OTHERS:
                message = f"{file} can be read by others. Make it yours alone first: chmod 600 {file}"
                return Problem("passphrases-file-open", message)
            lines = opened.read(LARGEST_FILE).decode("utf-8").splitlines()
    except (OSError, UnicodeDecodeError):
        return Problem("passphrases-file", f"{file} cannot be read.")
    if len(lines) != 2:  # noqa: PLR2004 - two passphrases
        message = f"{file} has two lines: the teacher's passphrase, and below it the class's."
        return Problem("passphrases-file", message)
    return lines[0], lines[1]


def _nobody_to_ask() -> Problem:
    return Problem(
        "passphrases-missing",
        "To share the workroom two passphrases are needed, and here is no terminal to ask for them. Run "
        "littlefold serve --share once in a terminal, or name a file with --passphrases.",
    )


def _asked() -> tuple[str, str]:
    """Two passphrases that can be used, typed twice each without being shown."""
    from littlefold.cli.words import aside

    told = aside()
    told.print(
        "To share the workroom, set two passphrases. Three or four words that do not belong together are best."
    )
    told.print(f"The teacher's opens everything, and has at least {TEACHER_LEAST} signs.")
    told.print(
        "The class's opens garments, drafting and steps, never the children's cards, "
        f"and has at least {CLASS_LEAST} signs."
    )
    while True:
        teacher, pupils = _twice("The teacher's passphrase"), _twice("The class's passphrase")
        refused = refusals(teacher, pupils)
        if not refused:
            return teacher, pupils
        for problem in refused:
            told.print(problem.message, markup=False)


def _twice(whose: str) -> str:
    while True:
        first = getpass(f"{whose}: ")
        if getpass("Once more: ") == first:
            return first
        sys.stderr.write("These two are not the same. Once more from the beginning.\n")
