"""Writing the sheets of a draft into a folder."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.cli.files import write_whole
from littlefold.cli.words import aside

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from littlefold.booklet.bundle import Sheet
    from littlefold.problem import Problem


def write_sheets(sheets: Iterable[Sheet], folder: Path, front: str) -> Problem | None:
    """Writes sheets into a folder, each as `front-name`, and says which; the first fault ends it."""
    told = aside()
    for sheet in sheets:
        path = folder / f"{front}-{sheet.name}"
        told.print(f"{sheet.title}: {path}", markup=False)
        fault = write_whole(path, sheet.make())
        if fault is not None:
            return fault
    return None
