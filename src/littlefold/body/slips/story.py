"""What may have happened to a card: a story about one or two readings, and the register of such slips.

A story says what the readings would really be.  Each kind of slip stands in a file of its own and is put into
the register by `slip`; `odds` then weighs all stories against the plain one, that every reading is true.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping

    Tell = Callable[[Mapping[str, float]], Iterable["Story"]]


@dataclass(frozen=True, slots=True)
class Story:
    """One way in which readings may have gone wrong.

    Attributes:
        truth: What the readings concerned would really be, by short name [mm].
        prior: How often this happens to a reading, against 1 for a plain misreading.
    """

    truth: tuple[tuple[str, float], ...]
    prior: float

    @property
    def names(self) -> tuple[str, ...]:
        """The readings concerned."""
        return tuple(name for name, _ in self.truth)


@dataclass(frozen=True, slots=True)
class Slip:
    """A kind of slip.

    Attributes:
        code: Its stable name, in kebab case; the code of the problem.
        tell: From the readings [mm] to all stories of this kind.
        words: The likely mistake in words, as a template of `plausible`.
    """

    code: str
    tell: Tell
    words: str


SLIPS: Final[dict[str, Slip]] = {}


def slip(code: str, words: str) -> Callable[[Tell], Tell]:
    """Put a kind of slip into the register; a second one of the same name is refused."""

    def put(tell: Tell) -> Tell:
        if code in SLIPS:
            raise ValueError(f"the slip {code} stands in the register already")
        SLIPS[code] = Slip(code, tell, words)
        return tell

    return put


def multiplied(readings: Mapping[str, float], factor: float, prior: float) -> Iterable[Story]:
    """A story for every reading, that it is really `factor` times what was written."""
    return (Story(((name, mm * factor),), prior) for name, mm in readings.items())
