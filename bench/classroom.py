"""(p) Thirty pupils at once, each with two redraws a second, asked from the same machine."""

from __future__ import annotations

import statistics
import time
from concurrent.futures import ThreadPoolExecutor
from http.client import HTTPConnection

from bench.served import Served, asked, part, served
from littlefold.recipe.shelf import shipped_names

PUPILS, A_SECOND, SECONDS = 30, 2, 60
GOAL_95 = 300.0
OK = 200

MOVING = ("/draw/{recipe}/moving.svg",)
"""What the page asks for while a slider moves: the redraw, which is timed."""
RESTING = (*MOVING, "/table/{recipe}/told.json")
"""And when it rests: what was found."""


def pupil(
    room: Served, number: int, recipe: str, seconds: float, links: tuple[str, ...]
) -> list[tuple[float, int]]:
    """The time [ms] of each redraw of one pupil, who never asks for the same twice, and the worst status."""
    line = HTTPConnection("127.0.0.1", room.port, timeout=60)
    begin = time.perf_counter() + number / (PUPILS * A_SECOND)
    found = []
    for k in range(int(seconds * A_SECOND)):
        time.sleep(max(0.0, begin + k / A_SECOND - time.perf_counter()))
        girth = 500 + number * 3 + k / 10
        words = f"chest={girth:g}&hip={girth + 40:g}&waist={girth - 30:g}"
        started, taken, statuses = time.perf_counter(), [], []
        for link in links:
            statuses.append(asked(line, f"{link.format(recipe=recipe)}?{words}")[0])
            taken.append((time.perf_counter() - started) * 1000)
        found.append((taken[0], max(statuses)))
    line.close()
    return found


def class_of(
    room: Served, recipes: tuple[str, ...], seconds: float, links: tuple[str, ...]
) -> list[tuple[float, int]]:
    """The redraws of all pupils together, each at one of the recipes."""
    with ThreadPoolExecutor(PUPILS) as pupils:
        doing = [
            pupils.submit(pupil, room, number, recipes[number % len(recipes)], seconds, links)
            for number in range(PUPILS)
        ]
        return [one for each in doing for one in each.result()]


def report(seconds: float = SECONDS) -> None:
    """Prints how long redraws took for a class at one garment, and for one at all garments."""
    print(
        f"\n(p) {PUPILS} pupils, {A_SECOND} redraws a second each, {seconds:g} s; goal 95 % within {GOAL_95:g} ms, no error"
    )
    with served() as room:
        for told, recipes, links in (
            ("one garment (casing-top)", ("casing-top",), MOVING),
            ("all garments", shipped_names(), MOVING),
            ("all, findings after each", shipped_names(), RESTING),
        ):
            found = class_of(room, tuple(recipes), seconds, links)
            times = [taken for taken, _ in found]
            errors = sum(status != OK for _, status in found)
            verdict = "" if part(times, 0.95) <= GOAL_95 and not errors else "  missed"
            print(
                f"{told:26} {len(found)} redraws, median {statistics.median(times):.0f} ms, "
                f"95 % {part(times, 0.95):.0f} ms, longest {max(times):.0f} ms, errors {errors}{verdict}"
            )


if __name__ == "__main__":
    report()
