"""What a workroom remembers of an erased child beside its card: drafts on the table, lays, and copies of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.web.belongings import forget_in_copies
from littlefold.web.recent import forget_child

if TYPE_CHECKING:
    from pathlib import Path


def forget_everywhere(folder: Path, name: str) -> None:
    """Lets go of all that a maker's folder and its backups remember of a child, the card box apart."""
    forget_child(folder, name)
    forget_in_copies(folder, name)
