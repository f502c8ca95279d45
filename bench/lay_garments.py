"""Folded against open lay of shipped garments: lengths, what binds, the better fold, the time to the first lay.

The goal: where the row on the fold does not bind, the folded lay is no more than 3 % longer than the open lay of the same
pieces; where a bound of the folded cloth binds, the table says which and names the better fold.  The first lay comes within
a second.  Each finished row is written to the log at once, and a row that stands in the log is not run again.

    python -m bench.lay_garments --seconds 10 --sizes 86,104,128 --widths 900,1120,1400 --log lay_garments.jsonl
"""

from __future__ import annotations

import argparse
import json
import time
from dataclasses import asdict, dataclass
from datetime import date
from pathlib import Path

from littlefold.cli.asked import Asked
from littlefold.cli.understood import understand
from littlefold.lay import Cloth, Effort, LayPiece, Prepared, Way, lay_pieces, lays, prepare
from littlefold.lay.compare import ALL_WAYS
from littlefold.pipeline import fulfil
from littlefold.recipe.shelf import shipped_names

DAY = date(2026, 1, 1)
NEAR = 1.03


@dataclass(frozen=True)
class Laid:
    """One way: its length [mm], share used, seconds to the first lay, what binds, the bound [mm]; or why it does not go."""

    length: float = 0.0
    share: float = 0.0
    first_after: float = 0.0
    binds: str = ""
    bound: float = 0.0
    refused: str = ""


@dataclass(frozen=True)
class Row:
    recipe: str
    size: str
    width: float
    seconds: float
    open: Laid
    folded: Laid
    best_other: str
    best_other_length: float

    @property
    def key(self) -> tuple[str, str, float, float]:
        return self.recipe, self.size, self.width, self.seconds

    @property
    def verdict(self) -> str:
        """What the goal says of this row."""
        if self.open.refused or self.folded.refused:
            return "refused: " + (self.open.refused or self.folded.refused)
        if self.folded.length <= NEAR * self.open.length:
            return "within 3 %"
        other = f"{self.best_other} {self.best_other_length:.0f}"
        over = f"{self.folded.length / self.open.length - 1:+.0%}"
        if self.folded.length <= NEAR * self.folded.bound or self.folded.bound > NEAR * self.open.length:
            return f"{over}, {self.folded.binds} binds ({self.folded.bound:.0f}); {other}"
        return f"{over}, nothing binds: MISSED; {other}"


def pieces_of(recipe: str, size: str) -> tuple[LayPiece, ...]:
    understood = understand(Asked(recipe, size=size), DAY)
    if isinstance(understood, tuple):
        raise TypeError(understood)
    pieces, _ = lay_pieces(fulfil(understood.wish).pattern)
    return pieces


def laid(pieces: tuple[LayPiece, ...], width: float, way: Way, seconds: float) -> Laid:
    """The best lay of a way by our planner alone, from the pieces on."""
    started = time.monotonic()
    prepared = prepare(pieces, Cloth(width), way)
    if not isinstance(prepared, Prepared):
        return Laid(refused=prepared[0].code)
    first_after, best = 0.0, None
    steps = 10**9 if seconds else 0
    for lay in lays(prepared, Effort(steps, 1, lambda: time.monotonic() - started < seconds)):
        first_after = first_after or time.monotonic() - started
        best = lay
    if best is None:
        return Laid(refused="no lay")
    bounds = prepared.bounds
    most = bounds.most * best.spread.sheets
    return Laid(best.cloth_length, best.share_used, first_after, bounds.binding, most)


def row(recipe: str, size: str, width: float, seconds: float) -> Row:
    pieces = pieces_of(recipe, size)
    first = {way: laid(pieces, width, way, 0.0) for way in ALL_WAYS if way is not Way.TUBE}
    going: dict[Way, float] = {
        way: one.length for way, one in first.items() if not one.refused and way is not Way.FOLDED
    }
    other = min(going, key=lambda way: going[way], default=Way.OPEN)
    return Row(
        recipe,
        size,
        width,
        seconds,
        laid(pieces, width, Way.OPEN, seconds),
        laid(pieces, width, Way.FOLDED, seconds),
        str(other),
        going.get(other, 0.0),
    )


def read(log: Path) -> list[Row]:
    rows = []
    for line in log.read_text().splitlines() if log.is_file() else ():
        try:
            found = json.loads(line)
        except ValueError:
            continue
        rows.append(Row(**{**found, "open": Laid(**found["open"]), "folded": Laid(**found["folded"])}))
    return rows


def told(one: Row) -> str:
    cells = (f"{way.length:6.0f} {way.share:4.0%} {way.first_after:5.2f}" for way in (one.open, one.folded))
    return f"| {one.recipe} {one.size} | {one.width / 10:.0f} | {' | '.join(cells)} | {one.verdict} |"


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--seconds", type=float, default=10.0)
    parser.add_argument("--sizes", default="86,104,128")
    parser.add_argument("--widths", default="900,1120,1400")
    parser.add_argument(
        "--log", type=Path, default=Path("lay_garments.jsonl"), help="a line for each finished row"
    )
    parser.add_argument("names", nargs="*", default=shipped_names())
    asked = parser.parse_args()
    rows = read(asked.log)
    done = {one.key: one for one in rows}
    print(f"{asked.seconds:g} s a lay, planner alone: length mm, share used, seconds to the first lay")
    print("| garment, size | cloth cm | open | folded | folded against open; the better way (first lay) |")
    print("| --- | --- | --- | --- | --- |")
    turns = [
        (name, size, float(width), asked.seconds)
        for name in asked.names
        for size in asked.sizes.split(",")
        for width in asked.widths.split(",")
    ]
    for turn in turns:
        one = done.get(turn)
        if one is None:
            one = row(*turn)
            with asked.log.open("a") as log:
                log.write(json.dumps(asdict(one)) + "\n")
        print(told(one), flush=True)


if __name__ == "__main__":
    main()
