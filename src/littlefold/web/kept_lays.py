"""The best lay of each search, kept in the maker's folder as it is found, so that a restart loses none of them.

A file is named by the child it is for and by the question that the lay answers; both as digests, so that nothing typed
becomes a path.  What is read is verified like any lay; what no longer holds is thrown away.
"""

from __future__ import annotations

import re
from contextlib import suppress
from dataclasses import dataclass
from functools import lru_cache
from hashlib import sha256
from threading import Lock
from typing import TYPE_CHECKING, Final

from littlefold.lay.lay import Lay
from littlefold.lay.stored import read_stored, stored
from littlefold.store import key_of
from littlefold.web.files import write_whole

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    Work = Callable[[Callable[[], bool]], Iterator[Lay]]

MOST: Final = 40
"""So many lays are kept; the oldest goes first."""
LARGEST: Final = 2_000_000
"""Bytes of one lay; a frock's has some 60,000."""
FOLDERS: Final = ("lays", "lays-of-the-class")
"""Those of the maker, and those that a class has searched for: neither crowds out the other."""
ENDING: Final = 10.0
"""So long is waited for a search to end before the lays of a child are let go of [s]."""
NAME: Final = re.compile(r"[0-9a-f]{16}-[0-9a-f]{64}\.json")
_WRITING = Lock()


@dataclass(frozen=True, slots=True)
class KeptLays:
    """The lays in a folder."""

    folder: Path

    def keep(self, who: str, question: str, lay: Lay) -> None:
        """Keeps a lay in the place of an earlier one of the same question; a disk that is full loses it, no more.

        Args:
            who: For whom it is; may be empty.
            question: A digest of what was asked.
            lay: The lay.
        """
        text = stored(lay)
        if len(text) > LARGEST:
            return
        with _WRITING, suppress(OSError):
            self.folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            write_whole(self._file(who, question), text)
            self._tidy()

    def find(self, who: str, question: str) -> Lay | None:
        """The lay that was kept for a question, verified anew; None where there is none that holds."""
        file = self._file(who, question)
        try:
            text = file.read_bytes() if file.stat().st_size <= LARGEST else b""
        except OSError:
            return None
        lay = _read(text)
        if lay is None:
            with suppress(OSError):
                file.unlink()
        return lay

    def keeping(self, who: str, question: str, work: Work) -> Work:
        """The same work; each lay that it finds is kept if it is shorter than the one that is kept."""

        def and_keep(keep_going: Callable[[], bool]) -> Iterator[Lay]:
            known = self.find(who, question)
            for lay in work(keep_going):
                if known is None or lay.length < known.length:
                    known = lay
                    self.keep(who, question, lay)
                yield lay

        return and_keep

    def _file(self, who: str, question: str) -> Path:
        return self.folder / f"{_digest(who)}-{question}.json"

    def _tidy(self) -> None:
        """Removes what is too many, and what a broken off writing has left."""
        files = sorted(self.folder.iterdir(), key=lambda file: file.stat().st_mtime, reverse=True)
        ours = [file for file in files if NAME.fullmatch(file.name)]
        strays = [file for file in files if file.name.startswith("tmp")]
        for file in (*ours[MOST:], *strays):
            file.unlink()


def forget_lays(folder: Path, who: str) -> None:
    """Lets go of all lays for a child: they have her measures in them.

    Args:
        folder: Of the maker.
        who: The child's name.
    """
    for name in FOLDERS:
        for file in (folder / name).glob(f"{_digest(who)}-*.json"):
            with suppress(OSError):
                file.unlink()


@lru_cache(maxsize=8)
def _read(text: bytes) -> Lay | None:
    found = read_stored(text)
    return found if isinstance(found, Lay) else None


def _digest(who: str) -> str:
    return sha256(key_of(who).encode()).hexdigest()[:16]
