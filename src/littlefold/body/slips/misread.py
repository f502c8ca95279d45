"""The tape was read or held wrongly, by anything from a finger's breadth to a third."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from littlefold.body.slips.story import Story, multiplied, slip

if TYPE_CHECKING:
    from collections.abc import Iterable

# How much too small or too large the reading is; each as likely as the next.
_ERRORS: Final = (-0.33, -0.26, -0.20, -0.15, -0.11, -0.08, 0.08, 0.12, 0.17, 0.23, 0.30, 0.40)


@slip("reading-unlikely", "the tape may have been read or held wrongly")
def misread(names: tuple[str, ...]) -> Iterable[Story]:
    """Every reading, too small or too large by each of the errors."""
    share = 1.0 / len(_ERRORS)
    return (multiplied((name,), 1.0 / (1.0 + error), share) for name in names for error in _ERRORS)
