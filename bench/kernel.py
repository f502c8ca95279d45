"""(b) One outline and its offset, here and in a general parametric CAD kernel.

Corners are rounded: mitred ones the kernel refuses for this outline.

Run in the environment of the kernel (`python -m bench.kernel` prints the kernel's median in ms); `python -m bench`
makes that environment from requirements/bench.txt, with hashes, and runs both one after the other.
"""

from __future__ import annotations

import json
import statistics
import time
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

# The outline of a front: straight sides and four cubics, start, two controls, end [mm].  Invented.
OUTLINE = (
    ((0.0, 0.0), (0.0, -420.0)),
    ((0.0, -420.0), (60.0, -420.0), (140.0, -415.0), (210.0, -400.0)),
    ((210.0, -400.0), (180.0, -150.0)),
    ((180.0, -150.0), (150.0, -150.0), (140.0, -90.0), (150.0, 10.0)),
    ((150.0, 10.0), (60.0, 40.0)),
    ((60.0, 40.0), (58.0, 20.0), (30.0, 0.0), (0.0, 0.0)),
)
ALLOWANCE = 10.0
ROUNDS = 101


def median_ms(build: Callable[[], object]) -> float:
    """The median time of the processor for building once [ms]; the first warms up."""
    build()
    found = []
    for _ in range(ROUNDS):
        started = time.process_time()
        build()
        found.append(1000 * (time.process_time() - started))
    return statistics.median(found)


def in_the_kernel() -> None:
    """Median of the outline and its offset in the kernel [ms], and its area as a witness."""
    # Each environment has only one of the two.
    from build123d import Bezier, Face, Kind, Line, Wire, offset  # noqa: PLC0415

    def build() -> Any:
        edges = [(Line(*side) if len(side) == 2 else Bezier(*side)).edge() for side in OUTLINE]
        return offset(Face(Wire(edges)), amount=ALLOWANCE, kind=Kind.ARC)

    print(json.dumps({"ms": median_ms(build), "area": build().area}))


def here() -> dict[str, float]:
    """The same here: the outline built and offset from the same numbers."""
    from littlefold.geometry import Cubic, Line, Path, Point, offset  # noqa: PLC0415

    def build() -> Any:
        sides = [[Point(*place) for place in side] for side in OUTLINE]
        path = Path(tuple(Line(*side) if len(side) == 2 else Cubic(*side) for side in sides))
        return offset(path, -ALLOWANCE, "round")

    return {"ms": median_ms(build), "area": build().signed_area()}


if __name__ == "__main__":
    in_the_kernel()
