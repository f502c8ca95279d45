"""The card box of one workroom: opened when the first page asks for it, closed when the workroom closes."""

from __future__ import annotations

import os
from datetime import UTC, datetime
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING

from littlefold.problem import Problem
from littlefold.store import CardBox, address_of, open_box
from littlefold.store.address import FOLDER_SETTING

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.store import Address


class BoxKeeper:
    """Keeps one box open for all pages; one that cannot be opened is tried again with the next request."""

    def __init__(self) -> None:
        self._box: CardBox | None = None
        self._turn = Lock()

    def box(self, folder: Path, once_open: Callable[[CardBox], None]) -> CardBox | Problem:
        """The open box, or why it cannot be opened.

        Args:
            folder: Where it lies, unless a setting of the environment names another place.
            once_open: What is done first with a box that has just been opened.
        """
        with self._turn:
            if self._box is None:
                opened = _opened(folder)
                if isinstance(opened, Problem):
                    return opened
                once_open(opened)
                self._box = opened
            return self._box

    def close(self) -> None:
        """Closes the box; it is opened again when a card is asked for."""
        with self._turn:
            if self._box is not None:
                self._box.close()
            self._box = None


def address_in(folder: Path) -> Address | Problem:
    """Where the cards of a workroom are kept: in its folder, unless a setting of the environment names another place."""
    return address_of({**os.environ, FOLDER_SETTING: str(folder)}, Path.home())


def _opened(folder: Path) -> CardBox | Problem:
    address = address_in(folder)
    return address if isinstance(address, Problem) else open_box(address, datetime.now(tz=UTC))
