"""`littlefold serve`: the workroom in the browser, for this machine only or shared on the network of the room."""

from __future__ import annotations

import errno
import os
import socket
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from littlefold.problem import Problem

if TYPE_CHECKING:
    from rich.console import Console
    from starlette.types import ASGIApp

    from littlefold.web.room import Room

LOOPBACK = "127.0.0.1"
EVERYWHERE = "0.0.0.0"  # noqa: S104 - only where the maker shares the workroom, behind its door
USUAL_PORT = 8765
NEXT_PORTS = 20
"""So many ports are tried after the usual one."""
NOT_OPENED = 1


@dataclass(frozen=True, slots=True)
class Sharing:
    """How the workroom is shared.

    Attributes:
        passphrases: A file with the two passphrases; None to ask in the terminal.
        anew: Whether to set new ones though there are some.
    """

    passphrases: Path | None = None
    anew: bool = False


def own_folder() -> Path:
    """Where the maker's own things lie when no folder was said: with the cards, where the commands keep them."""
    from littlefold.store import data_folder

    return data_folder(os.environ, Path.home())


def serve(port: int | None, folder: Path | None, sharing: Sharing | None) -> int:
    """Serves until it is stopped; returns the exit status.

    Args:
        port: The port that was asked for; None for the usual one, or the next that is free.
        folder: Of the maker; None for the usual one.
        sharing: How it is shared; None for this machine only.
    """
    from littlefold.cli.engine_process import ProcessEngine
    from littlefold.cli.sharing import keys_for
    from littlefold.cli.words import aside
    from littlefold.web.hands import Hands, worth_calling
    from littlefold.web.room import Room

    told, own = aside(), folder if folder is not None else own_folder()
    faults = () if sharing is None else keys_for(own, sharing.passphrases, anew=sharing.anew)
    found = None if faults else open_port(LOOPBACK if sharing is None else EVERYWHERE, port)
    if isinstance(found, socket.socket):
        if port is None and found.getsockname()[1] != USUAL_PORT:
            told.print(f"Port {USUAL_PORT} is taken, perhaps by a workroom that is open already.")
        hands = Hands(own, worth_calling())
        room = Room(own, engine=ProcessEngine(), with_sample=True, hands=hands)
        try:
            return _open(told, room, found, is_shared=sharing is not None)
        finally:
            hands.close()
    for problem in (*faults, *((found,) if found else ())):
        told.print(problem.message, markup=False)
    return NOT_OPENED


def open_port(host: str, wanted: int | None) -> socket.socket | Problem:
    """A door of this machine, bound; a problem where there is none.

    Args:
        host: At which of its addresses.
        wanted: The port; None for the usual one or, where that is taken, one of the next.
    """
    ports = range(USUAL_PORT, USUAL_PORT + NEXT_PORTS) if wanted is None else range(wanted, wanted + 1)
    fault = OSError()
    for port in ports:
        door = socket.socket(
            socket.AF_INET, socket.SOCK_STREAM, socket.IPPROTO_TCP
        )  # said, or answers wait 40 ms
        try:
            if os.name == "posix":  # elsewhere this would let two programs have one port
                door.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            door.bind((host, port))
            door.listen()
        except OSError as refused:
            door.close()
            fault = refused
        else:
            return door
    return _no_port(ports[0], fault)


def _no_port(port: int, fault: OSError) -> Problem:
    if fault.errno == errno.EADDRINUSE:
        message = (
            f"Another program has port {port}, perhaps a workroom that is open already: see http://{LOOPBACK}:{port}/. "
            f"Close it, or choose another port: littlefold serve --port {port + 1}"
        )
        return Problem("port-taken", message)
    message = f"Port {port} cannot be opened: {fault.strerror}. Choose another: littlefold serve --port {USUAL_PORT}"
    return Problem("port-refused", message)


def _open(told: Console, room: Room, door: socket.socket, *, is_shared: bool) -> int:
    import uvicorn

    port = door.getsockname()[1]
    server = uvicorn.Server(
        uvicorn.Config(
            _application(room, is_shared=is_shared),
            log_level="warning",
            access_log=False,
            server_header=False,
            proxy_headers=False,  # who sends a request is who the network says, for the tries at the door
        )
    )
    told.print(f"The workroom is open at http://{LOOPBACK}:{port}/")
    for line in _shared_words(port) if is_shared else ():
        told.print(line, markup=False, soft_wrap=True)
    told.print("Leave this window open; Ctrl and C closes the workroom.")
    with suppress(KeyboardInterrupt):  # she was told to press it
        server.run(sockets=[door])
    return 0 if server.started else NOT_OPENED


def _application(room: Room, *, is_shared: bool) -> ASGIApp:
    from littlefold.cli.addresses import names
    from littlefold.web.app import make_app, make_shared

    return make_shared(room, frozenset(names())) if is_shared else make_app(room)


def _shared_words(port: int) -> tuple[str, ...]:
    from littlefold.cli.addresses import addresses, names

    found = (*addresses(), *names()[-1:])
    return (
        "Others in the room open one of these; the last works where the network knows names:",
        *(f"  http://{one}:{port}/" for one in found),
        "It is shared over plain http: who is on the same network and knows how can read what goes to and fro,",
        "the passphrases too. Share it only on a network you trust.",
    )
