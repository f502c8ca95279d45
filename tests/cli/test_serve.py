"""The workroom opened from the command line: for this machine alone, or shared with two passphrases."""

from __future__ import annotations

import os
import signal
import socket
import subprocess
import sys
import time
from contextlib import contextmanager
from http.client import HTTPConnection
from typing import TYPE_CHECKING

import pytest

from littlefold.cli import serve as serving
from littlefold.cli import sharing
from littlefold.cli.addresses import addresses, names
from littlefold.problem import Problem
from littlefold.web.keys import FILE, keep_keys, make_keys, read_keys
from littlefold.web.passphrase import Cost, matches

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

TEACHER, CLASS = "blue kettle on a ladder", "seven paper boats"
HERE, HERE_TOO, ELSEWHERE = "127.0.0.1", "127.0.0.2", "127.0.0.3"
"""All of 127.0.0.0/8 is this machine, so a second address of it stands for one on the network of the room."""
PATIENCE = 60
"""How long the workroom may take to come or to go, also on a busy machine [s]."""


@pytest.fixture
def phrases(tmp_path: Path) -> Path:
    return written(tmp_path, f"{TEACHER}\n{CLASS}\n")


@pytest.fixture
def cheap(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sharing, "make_keys", lambda one, other: make_keys(one, other, Cost(2**4)))


def written(folder: Path, text: str, mode: int = 0o600) -> Path:
    file = folder / "passphrases"
    file.write_text(text)
    file.chmod(mode)
    return file


@contextmanager
def open_workroom(port: int, *words: str) -> Iterator[list[str]]:
    """Runs the command until it answers; what it says."""
    run = "from littlefold.cli.main import run; run()"
    command = (sys.executable, "-c", run, "serve", "--port", str(port), *words)
    with subprocess.Popen(command, stderr=subprocess.PIPE, stdin=subprocess.DEVNULL, text=True) as process:
        told: list[str] = []
        try:
            for line in process.stderr:
                told.append(line.rstrip())
                if "Ctrl and C" in line:
                    break
            until_it_answers(port, process)
            yield told
            process.send_signal(signal.SIGINT)
            assert process.wait(PATIENCE) == 0, process.stderr.read()
        finally:
            process.kill()


def until_it_answers(port: int, process: subprocess.Popen[str]) -> None:
    for _ in range(20 * PATIENCE):
        assert process.poll() is None, process.stderr.read()
        try:
            socket.create_connection((HERE, port), 1).close()
        except OSError:
            time.sleep(0.05)
        else:
            return
    raise AssertionError("the workroom does not answer")


def status(port: int, *, at: str = HERE, called: str = HERE, path: str = "/door") -> int:
    asking = HTTPConnection(at, port, timeout=PATIENCE)
    asking.putrequest("GET", path, skip_host=True)
    asking.putheader("host", f"{called}:{port}")
    asking.endheaders()
    found = asking.getresponse().status
    asking.close()
    return found


def test_a_workroom_that_is_not_shared_is_not_on_the_network_at_all(tmp_path: Path, kept_port: int) -> None:
    with open_workroom(kept_port, "--folder", str(tmp_path)) as told:
        assert told[0] == f"The workroom is open at http://127.0.0.1:{kept_port}/"
        assert status(kept_port, path="/settings") == 200
        assert status(kept_port, called=ELSEWHERE, path="/settings") == 421
        with pytest.raises(ConnectionRefusedError):
            status(kept_port, at=HERE_TOO, called=HERE_TOO)


def test_a_shared_one_answers_at_the_addresses_it_has_and_no_others(
    tmp_path: Path, phrases: Path, kept_port: int
) -> None:
    port = kept_port
    with open_workroom(
        port, "--folder", str(tmp_path / "own"), "--share", "--passphrases", str(phrases)
    ) as told:
        assert any("plain http" in line for line in told)
        assert any(f":{port}/" in line for line in told[1:])
        assert status(port) == 200
        assert status(port, at=HERE_TOO, called=HERE_TOO) == 200
        assert status(port, at=HERE_TOO, called=names()[0]) == 200
        assert status(port, at=HERE_TOO, called=ELSEWHERE) == 421
        assert status(port, at=HERE_TOO, called="example.org") == 421
        assert status(port, at=HERE_TOO, called=HERE_TOO, path="/settings") == 401
    keys = read_keys(tmp_path / "own")
    assert keys is not None
    assert matches(TEACHER, keys.teacher)


def test_a_port_that_is_taken_is_told_with_what_to_do(say, tmp_path: Path) -> None:
    with socket.socket() as other:
        other.bind((HERE, 0))
        other.listen()
        port = other.getsockname()[1]
        said = say("serve", "--port", port, "--folder", tmp_path)
    assert said.status == 1
    assert f"port {port}" in said.err
    assert f"--port {port + 1}" in said.err


def test_without_a_wish_the_next_free_port_is_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    with socket.socket() as other:
        other.bind((HERE, 0))
        other.listen()
        monkeypatch.setattr(serving, "USUAL_PORT", other.getsockname()[1])
        found = serving.open_port(HERE, None)
    assert isinstance(found, socket.socket)
    with found:
        assert serving.USUAL_PORT < found.getsockname()[1] < serving.USUAL_PORT + serving.NEXT_PORTS


def test_an_address_that_is_not_ours_is_refused_in_words() -> None:
    refused = serving.open_port("192.0.2.1", 9)
    assert isinstance(refused, Problem)
    assert refused.code == "port-refused"


@pytest.mark.usefixtures("cheap")
def test_passphrases_from_a_file_are_set_once_and_stay_set(tmp_path: Path, phrases: Path) -> None:
    assert sharing.keys_for(tmp_path, phrases, anew=False) == ()
    first = (tmp_path / FILE).read_bytes()
    assert sharing.keys_for(tmp_path, phrases, anew=False) == ()
    assert (tmp_path / FILE).read_bytes() == first  # who is in stays in
    written(tmp_path, f"{TEACHER}\neight paper boats\n")
    assert sharing.keys_for(tmp_path, phrases, anew=False) == ()
    keys = read_keys(tmp_path)
    assert keys is not None
    assert matches("eight paper boats", keys.pupils)


@pytest.mark.skipif(os.name != "posix", reason="only POSIX has such modes")
@pytest.mark.parametrize("mode", [0o640, 0o604, 0o620])
def test_a_file_that_others_can_open_is_refused(tmp_path: Path, mode: int) -> None:
    file = written(tmp_path, f"{TEACHER}\n{CLASS}\n", mode)
    (refused,) = sharing.keys_for(tmp_path, file, anew=False)
    assert refused.code == "passphrases-file-open"
    assert "chmod 600" in refused.message
    assert not (tmp_path / FILE).exists()


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "passphrases-file"),
        (TEACHER, "passphrases-file"),
        (f"{TEACHER}\n{CLASS}\nmore", "passphrases-file"),
        (f"short\n{CLASS}", "passphrase-short"),
        (f"{TEACHER}\n{TEACHER}", "passphrase-same"),
        ("x" * 10_000, "passphrases-file"),
    ],
)
def test_a_file_that_cannot_be_used_is_refused(tmp_path: Path, text: str, code: str) -> None:
    refused = sharing.keys_for(tmp_path, written(tmp_path, text), anew=False)
    assert [one.code for one in refused] == [code]
    assert not any(TEACHER in one.message or CLASS in one.message for one in refused)
    assert not (tmp_path / FILE).exists()


def test_where_nobody_can_be_asked_the_way_out_is_told(say, tmp_path: Path) -> None:
    said = say("serve", "--share", "--folder", tmp_path)
    assert said.status == 1
    assert "--passphrases" in said.err


@pytest.mark.usefixtures("cheap")
def test_asked_in_the_terminal_until_they_are_good_enough(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    typed = iter(
        [
            *("short", "short", CLASS, CLASS),  # too short: both anew
            *(TEACHER, TEACHER + "x", TEACHER, TEACHER),  # mistyped: the same one anew
            *(CLASS, CLASS),
        ]
    )
    monkeypatch.setattr(sharing, "getpass", lambda _: next(typed))
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    assert sharing.keys_for(tmp_path, None, anew=False) == ()
    assert next(typed, "nothing") == "nothing"
    keys = read_keys(tmp_path)
    assert keys is not None
    assert matches(TEACHER, keys.teacher)
    assert matches(CLASS, keys.pupils)
    told = capsys.readouterr().err
    assert "at least 15 signs" in told
    assert TEACHER not in told


@pytest.mark.usefixtures("cheap")
def test_they_are_asked_for_once_and_again_only_when_wished(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    keep_keys(tmp_path, make_keys(TEACHER, CLASS, Cost(2**4)))
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    monkeypatch.setattr(sharing, "getpass", lambda _: pytest.fail("asked for"))
    assert sharing.keys_for(tmp_path, None, anew=False) == ()
    typed = iter(["green ladder in the rain"] * 2 + ["eight paper boats"] * 2)
    monkeypatch.setattr(sharing, "getpass", lambda _: next(typed))
    assert sharing.keys_for(tmp_path, None, anew=True) == ()
    keys = read_keys(tmp_path)
    assert keys is not None
    assert matches("green ladder in the rain", keys.teacher)


def test_the_machine_knows_where_it_is() -> None:
    assert all(one.count(".") == 3 and not one.startswith("127.") for one in addresses())
    assert names()[-1].endswith(".local")
    assert all(name == name.lower() for name in names())
