"""The tape was read or held wrongly, by anything from a finger's breadth to a third."""

from __future__ import annotations

from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from littlefold.body.slips.story import Story, multiplied, slip

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

# How much too small or too large the reading is; each as likely as the next.
_ERRORS: Final = (-0.33, -0.26, -0.20, -0.15, -0.11, -0.08, 0.08, 0.12, 0.17, 0.23, 0.30, 0.40)

# How readily a misreading is believed, too small and too large apart, since true children stray further to one side
# than to the other, and further in one reading than a normal distribution has it in another.  Found in coarse steps by a
# search on the survey's children, so that of slips of 10 % each reading is caught at least as often as by a band round
# the median of the stature, and as by straight-line regression on all other readings, with as many true children accused.
# docs/measurements.md tells where that is so, and how far a search on the same children flatters.
_USUAL: Final = (2.2, 2.2)
_BELIEVED: Final[Mapping[str, tuple[float, float]]] = MappingProxyType(
    {
        "stature": (3.0, 2.5), "head": (5.5, 3.3), "neck": (4.0, 3.0), "chest": (2.2, 1.8), "waist": (3.3, 2.2),
        "hip": (1.2, 1.5), "upper_arm": (2.5, 2.2), "arm": (6.0, 7.4), "wrist": (2.7, 3.3), "fist": (3.7, 11.0),
        "thigh": (1.35, 2.5), "calf": (2.2, 3.3), "ankle": (2.7, 5.5), "foot": (5.0, 3.0), "inside_leg": (2.0, 13.0),
    }
)  # fmt: skip


@slip("reading-unlikely", "the tape may have been read or held wrongly")
def misread(names: tuple[str, ...]) -> Iterable[Story]:
    """Every reading, too small or too large by each of the errors."""
    return (
        multiplied((name,), 1.0 / (1.0 + error), _believed(name, error) / len(_ERRORS))
        for name in names
        for error in _ERRORS
    )


def _believed(name: str, error: float) -> float:
    too_small, too_large = _BELIEVED.get(name, _USUAL)
    return too_small if error < 0 else too_large
