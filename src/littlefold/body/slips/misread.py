"""The tape was read or held wrongly, by anything from a finger's breadth to a third."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from littlefold.body.slips.story import Story, multiplied, slip

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

# How much too small or too large the reading is; each as likely as the next.
_ERRORS: Final = (-0.33, -0.26, -0.20, -0.15, -0.11, -0.08, 0.08, 0.12, 0.17, 0.23, 0.30, 0.40)

# Where true children stray further from what their other readings say than a normal distribution has it, a misreading
# must be plainer to be believed, and the other way round.  Chosen, in coarse steps, so that of slips of 10 % no reading
# loses against a band round the median of the stature that accuses as many true children; it comes out so but for an
# inside leg 10 % too long (tools/measure_plausibility.py).  A reading that is not here counts 1.
_PLAINNESS: Final[Mapping[str, float]] = MappingProxyType(
    {
        "head": 3.3, "foot": 2.0, "inside_leg": 2.7, "arm": 1.8, "waist": 1.6, "fist": 2.2, "hip": 0.3, "thigh": 0.18,
        "chest": 0.4, "stature": 0.5, "wrist": 0.75, "calf": 0.75,
    }
)  # fmt: skip


@slip("reading-unlikely", "the tape may have been read or held wrongly")
def misread(names: tuple[str, ...]) -> Iterable[Story]:
    """Every reading, too small or too large by each of the errors."""
    share = 1.0 / len(_ERRORS)
    return (
        multiplied((name,), 1.0 / (1.0 + error), share * _PLAINNESS.get(name, 1.0))
        for name in names
        for error in _ERRORS
    )
