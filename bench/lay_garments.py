"""Folded against open lay of shipped garments: length, share used, time to the first lay, which bound binds.

python -m bench.lay_garments --seconds 3 --sizes 86,104,128 --widths 900,1120,1400 yoke-frock trousers ...
"""

from __future__ import annotations

import argparse
import time
from dataclasses import dataclass
from datetime import date

from littlefold.cli.asked import Asked, understand
from littlefold.cli.files import shipped_names
from littlefold.lay import Cloth, Effort, LayPiece, Prepared, Way, lay_pieces, lays, prepare
from littlefold.pipeline import fulfil

DAY = date(2026, 1, 1)


@dataclass(frozen=True)
class Laid:
    length: float
    share: float
    first_after: float
    binds: str


def pieces_of(recipe: str, size: str) -> tuple[LayPiece, ...]:
    understood = understand(Asked(recipe, size=size), DAY)
    if isinstance(understood, tuple):
        raise TypeError(understood)
    pieces, _ = lay_pieces(fulfil(understood.wish).pattern)
    return pieces


def laid(pieces: tuple[LayPiece, ...], width: float, way: Way, seconds: float) -> Laid | str:
    started = time.monotonic()
    prepared = prepare(pieces, Cloth(width), way)
    if not isinstance(prepared, Prepared):
        return prepared[0].code
    first_after, best = 0.0, None
    for lay in lays(prepared, Effort(10**9, 1, lambda: time.monotonic() - started < seconds)):
        first_after = first_after or time.monotonic() - started
        best = lay
    if best is None:
        return "no lay"
    return Laid(best.cloth_length, best.share_used, first_after, prepared.bounds.binding)


def row(recipe: str, size: str, width: float, seconds: float) -> str:
    pieces = pieces_of(recipe, size)
    cells = []
    for way in (Way.OPEN, Way.FOLDED, Way.TWO_FOLDS, Way.PARTLY):
        found = laid(pieces, width, way, seconds)
        if isinstance(found, str):
            cells.append(f"{found:>26s}")
        else:
            cells.append(
                f"{found.length:5.0f} {found.share:4.0%} {found.first_after:4.2f} {found.binds:>10.10s}"
            )
    return f"{recipe:14s} {size:>4s} {width / 10:4.0f}  " + " | ".join(cells)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seconds", type=float, default=3.0)
    parser.add_argument("--sizes", default="104")
    parser.add_argument("--widths", default="1120")
    parser.add_argument("names", nargs="*", default=shipped_names())
    asked = parser.parse_args()
    print(f"{asked.seconds} s a lay: length mm, share used, first lay after s, what binds")
    print("garment        size   cm  open | folded | two folds | partly folded")
    for name in asked.names:
        for size in asked.sizes.split(","):
            for width in asked.widths.split(","):
                print(row(name, size, float(width), asked.seconds), flush=True)


if __name__ == "__main__":
    main()
