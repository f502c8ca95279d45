"""Public irregular packing sets through Littlefold's lay code, beside the bare engine in the same time.

Sets: data/packing of the shared reference (ESICUP datasets, CC0); published figures: sparrow paper (Gardeyn, Vanden
Berghe, Wauters 2025, arXiv 2509.13329), mean of 100 runs of 20 minutes on 3 threads.

Both run in turn on the same set and seed, now the one first and now the other, so that what else the machine does falls on
both alike.  The bare engine has all cores.  Both have the same time by the clock, start of the engine's process and all: the
engine overruns its seconds by a little, on a busy machine by much, and ours is given so much more as the bare engine took
in the pair before (in the first pair the bare engine runs first).  What ours finds later does not count.  Every layout,
the bare engine's too, is checked by polygon operations.  Each finished pair is written to the log at once, and a pair
that stands in the log is not run again, so that a run may be stopped and taken up.

    python -m bench.lay_sets --seconds 60 --seeds 5 --log lay_sets.jsonl albano shirts ...
    python -m bench.lay_sets --seconds 60 --log lay_sets.jsonl --only-print
"""

from __future__ import annotations

import argparse
import json
import os
import statistics
import time
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from littlefold.cli.engine_process import ProcessEngine
from littlefold.geometry import Point
from littlefold.lay.cloth import Cloth
from littlefold.lay.conversation import put
from littlefold.lay.lay import Lay
from littlefold.lay.piece import LayPiece
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.planner import Planner
from littlefold.lay.verify import apart, verify
from littlefold.lay.ways import Way

SETS = Path(os.environ.get("LITTLEFOLD_SETS", "../shared/reference/data/packing"))

# The height that every strip is scaled to [mm], so that one tolerance serves all sets.
HEIGHT = 1000.0

# Mean of 100 runs of 20 minutes, and the best ever, in percent (source above).
PUBLISHED = {
    "shirts": (89.66, 90.92),
    "trousers": (91.73, 92.62),
    "albano": (89.47, 89.82),
    "dagli": (89.26, 90.17),
    "mao": (86.14, 86.87),
    "fu": (92.24, 92.41),
    "jakobs1": (89.09, 89.26),
    "shapes0": (68.60, 69.98),
    "shapes1": (75.69, 76.73),
    "blaz1": (84.68, 86.23),
}


@dataclass(frozen=True)
class Score:
    density: float
    seconds: float
    sound: bool


@dataclass(frozen=True)
class Pair:
    """One row of the log: both on one set with one seed, the time that ours had [s], and the load."""

    name: str
    seconds: int
    seed: int
    ours: Score
    bare: Score
    allowed: float
    load: float
    bare_first: bool


def load(name: str) -> Prepared:
    found = json.loads((SETS / f"{name}.json").read_text())
    scale = HEIGHT / found["strip_height"]
    pieces = tuple(_piece(item, scale) for item in found["items"])
    turnable = any(180.0 in (item.get("allowed_orientations") or ()) for item in found["items"])
    cloth = Cloth(HEIGHT, selvedge=0.0, nap=not turnable)
    prepared = prepare(pieces, cloth, Way.OPEN, gap=0.0)
    if not isinstance(prepared, Prepared):
        raise TypeError(prepared)
    return prepared


def _piece(item: dict[str, Any], scale: float) -> LayPiece:
    corners = [(x * scale, y * scale) for x, y in item["shape"]["data"]]
    corners = corners[:-1] if corners[0] == corners[-1] else corners
    square = 90.0 in (item.get("allowed_orientations") or ())
    ring = tuple(Point(x, y) for x, y in corners)
    return LayPiece(str(item["id"]), ring, item["demand"], crossgrain=square)


def ours(name: str, seconds: float, seed: int) -> Score:
    """Our lay code from the pieces on; only what has been shown when the time is up counts."""
    started = time.monotonic()
    deadline = started + seconds
    prepared = load(name)
    effort = Effort(10**9, seed, lambda: time.monotonic() < deadline, ProcessEngine(), seconds)
    best, shown = None, 0.0
    for lay in lays(prepared, effort):
        if time.monotonic() <= deadline or best is None:
            best, shown = lay, time.monotonic() - started
    if best is None:
        raise ValueError("our lay code found nothing")
    return Score(100 * best.share_used, shown, sound=not verify(best))


def bare(name: str, seconds: int, seed: int) -> Score:
    """The engine alone with all cores, on the same outlines; its best layout, not settled."""
    prepared = load(name)
    strip = prepared.question.strip
    first = Planner(strip, seed).first()
    asked = None if first is None else put(strip, first, 0.0, seconds, seed)
    if asked is None:
        raise ValueError("the engine cannot be asked this")
    started = time.monotonic()
    engine = ProcessEngine(os.cpu_count())
    answers = [a for a in engine.answers(asked.task, 0.1, lambda: True) if a is not None]
    taken = time.monotonic() - started
    best = min(answers, key=lambda answer: answer.length)
    density = 100 * strip.area() / (HEIGHT * best.length)
    placements = prepared.question.placements(asked.layout(best))
    lay = Lay(prepared.cloth, prepared.spread, prepared.pieces, placements, best.length, 0.0, "bare engine")
    return Score(density, taken, sound=not list(apart(lay)))


def pair(name: str, seconds: int, seed: int, before: Pair | None) -> Pair:
    """Both on one set; who began in the pair before comes second in this one."""
    if before is None or before.seconds != seconds or not before.bare_first:
        theirs = bare(name, seconds, seed)
        allowed = max(float(seconds), theirs.seconds)
        mine = ours(name, allowed, seed)
        return Pair(name, seconds, seed, mine, theirs, allowed, os.getloadavg()[0], bare_first=True)
    allowed = max(float(seconds), before.bare.seconds)
    mine = ours(name, allowed, seed)
    theirs = bare(name, seconds, seed)
    return Pair(name, seconds, seed, mine, theirs, allowed, os.getloadavg()[0], bare_first=False)


def read(log: Path) -> list[Pair]:
    """The pairs of a log; a last line that was cut off is passed over."""
    pairs = []
    for line in log.read_text().splitlines() if log.is_file() else ():
        try:
            row = json.loads(line)
        except ValueError:
            continue
        pairs.append(Pair(**{**row, "ours": Score(**row["ours"]), "bare": Score(**row["bare"])}))
    return pairs


def print_medians(pairs: list[Pair]) -> None:
    print("median density in percent; seeds: pairs in which ours is not below the bare engine, of all")
    print("set        s   ours   bare   by    seeds   published mean / best   ours to mean   sound   load")
    for name, seconds in dict.fromkeys((one.name, one.seconds) for one in pairs):
        rows = [one for one in pairs if (one.name, one.seconds) == (name, seconds)]
        mine = statistics.median(row.ours.density for row in rows)
        theirs = statistics.median(row.bare.density for row in rows)
        mean, best = PUBLISHED.get(name, (float("nan"), float("nan")))
        not_below = sum(row.ours.density >= row.bare.density for row in rows)
        sound = all(row.ours.sound and row.bare.sound for row in rows)
        busy = statistics.mean(row.load for row in rows)
        print(
            f"{name:9s}{seconds:3d}  {mine:5.2f}  {theirs:5.2f}  {mine - theirs:+5.2f}  {not_below} / {len(rows)}"
            f"   {mean:13.2f} / {best:5.2f}  {mine - mean:+13.2f}   {sound!s:5s}   {busy:4.1f}"
        )


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--seconds", type=int, default=10)
    parser.add_argument("--seeds", type=int, default=2)
    parser.add_argument(
        "--log", type=Path, default=Path("lay_sets.jsonl"), help="a row for each finished pair"
    )
    parser.add_argument("--only-print", action="store_true", help="print the medians of the log, run nothing")
    parser.add_argument("names", nargs="*", default=list(PUBLISHED))
    asked = parser.parse_args()
    if not SETS.is_dir():
        raise SystemExit(f"The sets are not here: {SETS}")
    found = read(asked.log)
    done = {(one.name, one.seconds, one.seed) for one in found}
    turns = [(seed, name) for seed in range(1, asked.seeds + 1) for name in asked.names]
    before: Pair | None = None
    for seed, name in turns:
        if asked.only_print or (name, asked.seconds, seed) in done:
            continue
        before = one = pair(name, asked.seconds, seed, before)
        with asked.log.open("a") as log:
            log.write(json.dumps(asdict(one)) + "\n")
        found.append(one)
        print(
            f"{name:9s} seed {seed}: ours {one.ours.density:.2f} in {one.ours.seconds:.1f} s, "
            f"bare {one.bare.density:.2f} in {one.bare.seconds:.1f} s, load {one.load:.1f}",
            flush=True,
        )
    print_medians(found)


if __name__ == "__main__":
    main()
