"""Files written whole: a reader sees the old file or the new one, never half."""

from __future__ import annotations

import os
from pathlib import Path
from tempfile import NamedTemporaryFile


def write_whole(path: Path, content: bytes) -> None:
    """Writes a file whole; nobody but its owner can read it.

    Raises:
        OSError: It cannot be written.
    """
    with NamedTemporaryFile(dir=path.parent, delete=False) as beside:  # made for its owner alone, mode 600
        beside.write(content)
        beside.flush()
        os.fsync(beside.fileno())
    Path(beside.name).replace(path)
