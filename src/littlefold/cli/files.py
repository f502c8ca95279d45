"""Reading recipes and writing sheets: whole files, never half of one."""

from __future__ import annotations

import os
import re
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import TYPE_CHECKING

from littlefold.problem import Problem
from littlefold.recipe.faults.fault import did_you_mean
from littlefold.recipe.lines import MOST_CHARACTERS
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names, shipped_text

if TYPE_CHECKING:
    from littlefold.recipe.recipe import Recipe

# A file may hold this many bytes for a character of text.
_MOST_BYTES = 4 * MOST_CHARACTERS


def read_recipe(name: str) -> Recipe | Problem:
    """A shipped recipe by name, or one from a file."""
    shipped = shipped_text(name)
    if shipped is not None:
        return parse(shipped, name)
    path = Path(name)
    if path.suffix != ".recipe" and not path.is_file():
        known, meant = ", ".join(shipped_names()), did_you_mean(name, shipped_names())
        return Problem(
            "recipe-not-known",
            f'There is no recipe "{name}".{meant} Shipped recipes: {known}. Or name a file.',
        )
    text = read_text(path)
    return text if isinstance(text, Problem) else parse(text, path.stem)


def read_text(path: Path) -> str | Problem:
    """The text of a file, or why it cannot be read."""
    try:
        size = path.stat().st_size
        if size > _MOST_BYTES:
            return Problem("file-too-large", f"{path} has {size} bytes; at most {_MOST_BYTES} are read.")
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        return Problem("file-not-text", f"{path} is no text file in UTF-8. Save it as plain text.")
    except OSError as fault:
        return Problem("file-not-read", f"{path} cannot be read: {fault.strerror}. Look at the name.")


def write_whole(path: Path, content: bytes) -> Problem | None:
    """Writes a file whole: a reader sees the old file or the new one, never half.

    Returns:
        Why it could not be written, or None.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with NamedTemporaryFile(dir=path.parent, delete=False) as beside:
            beside.write(content)
            beside.flush()
            os.fsync(beside.fileno())
        Path(beside.name).chmod(0o644)
        Path(beside.name).replace(path)
    except OSError as fault:
        return Problem(
            "file-not-written",
            f"{path} cannot be written: {fault.strerror}. Name a place where you may write.",
        )
    return None


def plain_name(text: str) -> str:
    """A name for a file made of letters, digits and hyphens only, whatever a recipe calls itself."""
    return re.sub(r"[^\w]+", "-", text).strip("-._")[:60] or "garment"
