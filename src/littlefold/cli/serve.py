"""`littlefold serve`: the workroom in the browser, for this machine only."""

from __future__ import annotations

import os
from pathlib import Path

LOOPBACK = "127.0.0.1"


def own_folder() -> Path:
    """Where the maker's own things lie when no folder was said: with the cards, where the commands keep them."""
    from littlefold.store import data_folder

    return data_folder(os.environ, Path.home())


def serve(port: int, folder: Path | None) -> int:
    """Serves until it is stopped; returns the exit status."""
    import uvicorn

    from littlefold.cli.engine_process import ProcessEngine
    from littlefold.cli.words import aside
    from littlefold.web.app import make_app
    from littlefold.web.room import Room

    room = Room(folder if folder is not None else own_folder(), engine=ProcessEngine())
    told = aside()
    told.print(f"The workroom is open at http://{LOOPBACK}:{port}/")
    told.print("Leave this window open; Ctrl and C closes the workroom.")
    uvicorn.run(
        make_app(room), host=LOOPBACK, port=port, log_level="warning", access_log=False, server_header=False
    )
    return 0
