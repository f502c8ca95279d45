"""Kills writers in the middle of saving, again and again, and looks what is left.

Run as a program: `killing.py FOLDER ROUNDS`, with LITTLEFOLD_DATABASE where the box is on a server.  Every round forks a
writer that puts numbered notes on a card and says each number once it is kept, kills it after a moment, and then reads
the box: every number that was said must be there.
Prints one JSON object.
"""

from __future__ import annotations

import json
import os
import random
import signal
import sqlite3
import sys
import time
from dataclasses import replace
from datetime import date
from pathlib import Path

from sqlalchemy import text

from littlefold.store import Card, CardBox, Note
from littlefold.store.engine import reading
from tests.store.boxes import opened
from tests.store.children import MINA

DAY = date(2026, 3, 1)
CARD = replace(MINA, notes=())
BULK = "x" * 9_000  # a note takes several pages of the file, so that a kill can fall between them


def main(folder: str, rounds: int) -> None:
    environ = {"LITTLEFOLD_DATA": folder} | {
        name: os.environ[name] for name in ("LITTLEFOLD_DATABASE",) if name in os.environ
    }
    box = opened(environ)
    box.add(CARD)
    box.close()
    chance = random.Random(3)  # noqa: S311 - the moments of the kills
    kept, tally = 0, {"kills": 0, "said": 0, "unsaid": 0}
    for _ in range(rounds):
        said = _kill_one(environ, kept, chance.uniform(0.0, 0.03))
        found = _look(environ)
        assert found >= said, f"{said} was said to be kept, {found} is there"
        tally = {"kills": tally["kills"] + 1, "said": said, "unsaid": tally["unsaid"] + found - said}
        kept = _emptied(environ, found)
    print(json.dumps(tally | {"kept": kept}))  # noqa: T201


def _kill_one(environ: dict[str, str], kept: int, moment: float) -> int:
    """Starts a writer and kills it; returns the last number it said."""
    ear, mouth = os.pipe()
    writer = os.fork()
    if writer == 0:
        _write(opened(environ), kept, mouth)
    os.close(mouth)
    first = b""
    while not first.endswith(b"\n"):  # one save is over before the moment begins, however slow the disk
        letter = os.read(ear, 1)
        assert letter, "the writer ended before it was killed"
        first += letter
    time.sleep(moment)
    os.kill(writer, signal.SIGKILL)
    os.waitpid(writer, 0)
    with os.fdopen(ear) as heard:
        lines = [first.decode().strip(), *heard.read().split("\n")[:-1]]
    return int(lines[-1])


def _write(box: CardBox, kept: int, mouth: int) -> None:
    while True:
        kept += 1
        note = Note(DAY, f"{kept} {BULK}")
        kept_card = box.change("Mina", lambda card, note=note: card.with_note(note))
        assert isinstance(kept_card, Card), kept_card
        os.write(mouth, b"%d\n" % kept)


def _look(environ: dict[str, str]) -> int:
    """The last number kept; everything before it must be there, and the box be sound."""
    if "LITTLEFOLD_DATABASE" in environ:
        _no_part_is_alone(environ)
    else:
        _file_is_sound(Path(environ["LITTLEFOLD_DATA"]) / "cards.sqlite")
    box = opened(environ)
    card = box.card("Mina")
    box.close()
    assert isinstance(card, Card)
    assert card.drafts == MINA.drafts
    assert card.measured == MINA.measured
    numbers = [int(note.text.split()[0]) for note in card.notes]
    assert numbers == list(range(numbers[0] if numbers else 0, (numbers or [-1])[-1] + 1))
    assert all(note.text.endswith(BULK) for note in card.notes)
    return numbers[-1] if numbers else 0


def _file_is_sound(file: Path) -> None:
    with sqlite3.connect(file) as raw:
        assert raw.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert raw.execute("PRAGMA foreign_key_check").fetchall() == []
    raw.close()


def _no_part_is_alone(environ: dict[str, str]) -> None:
    """Rows of a server belong to rows that are there, whatever its own rules have let in."""
    box = opened(environ)
    with reading(box.engine) as connection:
        for part, whole in (("note", "child"), ("reading", "measured"), ("draft_recipe", "draft")):
            key, of = ("child", "id") if whole == "child" else ("child, place", "child, place")
            alone = f"SELECT count(*) FROM {part} WHERE ({key}) NOT IN (SELECT {of} FROM {whole})"  # noqa: S608 - our own
            assert connection.execute(text(alone)).scalar_one() == 0, part
    box.close()


def _emptied(environ: dict[str, str], found: int) -> int:
    """Takes old notes off again, all but the last, so that the card stays small."""
    box = opened(environ)
    box.change("Mina", lambda card: replace(card, notes=card.notes[-1:]))
    box.close()
    return found


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]))
