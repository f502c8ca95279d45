"""Public irregular packing sets through Littlefold's lay code, beside the bare engine in the same time.

Sets: data/packing of the shared reference (ESICUP datasets, CC0); published figures: sparrow paper (Gardeyn, Vanden
Berghe, Wauters 2025, arXiv 2509.13329), mean of 100 runs of 20 minutes on 3 threads.  The bare
engine runs first, with the seconds asked for; ours has then the whole time that it took, its start included (on a busy machine
that is more than was asked for).  Every layout, the bare engine's too, is checked by the same polygon operations.

    python -m bench.lay_sets --seconds 10 --seeds 2 albano shirts ...
"""

from __future__ import annotations

import argparse
import json
import os
import statistics
import time
from dataclasses import dataclass
from pathlib import Path

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


def _piece(item: dict, scale: float) -> LayPiece:
    corners = [(x * scale, y * scale) for x, y in item["shape"]["data"]]
    corners = corners[:-1] if corners[0] == corners[-1] else corners
    square = 90.0 in (item.get("allowed_orientations") or ())
    ring = tuple(Point(x, y) for x, y in corners)
    return LayPiece(str(item["id"]), ring, item["demand"], crossgrain=square)


def ours(prepared: Prepared, seconds: int, seed: int, engine: ProcessEngine | None, within: float) -> Score:
    started = time.monotonic()
    deadline = started + within
    effort = Effort(10**9, seed, lambda: time.monotonic() < deadline, engine, seconds)
    best = list(lays(prepared, effort))[-1]
    return Score(100 * best.share_used, time.monotonic() - started, sound=not verify(best))


def bare(prepared: Prepared, seconds: int, seed: int, workers: int) -> Score:
    """The engine alone, on the same outlines; its best layout, not settled."""
    started = time.monotonic()
    strip = prepared.question.strip
    first = Planner(strip, seed).first()
    asked = None if first is None else put(strip, first, 0.0, seconds, seed)
    if asked is None:
        raise ValueError("the engine cannot be asked this")
    answers = [a for a in ProcessEngine(workers).answers(asked.task, 0.1, lambda: True) if a is not None]
    best = min(answers, key=lambda answer: answer.length)
    density = 100 * strip.area() / (HEIGHT * best.length)
    placements = prepared.question.placements(asked.layout(best))
    lay = Lay(prepared.cloth, prepared.spread, prepared.pieces, placements, best.length, 0.0, "bare engine")
    return Score(density, time.monotonic() - started, sound=not list(apart(lay)))


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seconds", type=int, default=10)
    parser.add_argument("--seeds", type=int, default=2)
    parser.add_argument("--planner-only", action="store_true", help="our own planner without the engine")
    parser.add_argument("--bare-workers", type=int, default=2, help="threads of the bare engine; 0: not run")
    parser.add_argument("names", nargs="*", default=list(PUBLISHED))
    asked = parser.parse_args()
    if not SETS.is_dir():
        raise SystemExit(f"The sets are not here: {SETS}")
    engine = None if asked.planner_only else ProcessEngine()
    print(f"{asked.seconds} s, {asked.seeds} seeds, median density in percent")
    print("set        ours    bare   published mean / best   all sound   seconds")
    for name in asked.names:
        prepared = load(name)
        seeds = range(1, asked.seeds + 1)
        theirs = [bare(prepared, asked.seconds, s, asked.bare_workers) for s in seeds if asked.bare_workers]
        allowed = [score.seconds for score in theirs] or [asked.seconds] * asked.seeds
        mine = [
            ours(prepared, asked.seconds, seed, engine, within)
            for seed, within in zip(seeds, allowed, strict=True)
        ]
        other = f"{statistics.median(s.density for s in theirs):6.2f}" if theirs else "     -"
        mean, best = PUBLISHED.get(name, (float("nan"), float("nan")))
        sound = all(score.sound for score in (*mine, *theirs))
        longest = " / ".join(
            f"{max((s.seconds for s in scores), default=0.0):.1f}" for scores in (mine, theirs)
        )
        middle = statistics.median(s.density for s in mine)
        print(
            f"{name:9s} {middle:6.2f}  {other}   {mean:6.2f} / {best:6.2f}        {sound}      {longest}",
            flush=True,
        )


if __name__ == "__main__":
    main()
