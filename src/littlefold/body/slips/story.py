"""What may have happened to a card: a story about some of its readings, and the register of such slips.

A story says what the readings would really be.  Each kind of slip stands in a file of its own and is put into the
register by `slip`; `odds` then weighs all stories against the plain one, that every reading is true.  Stories depend
only on which readings a card holds, not on their numbers, so they are told once for every kind of card.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    Tell = Callable[[tuple[str, ...]], Iterable["Story"]]


@dataclass(frozen=True, slots=True)
class Story:
    """One way in which readings may have gone wrong.

    Attributes:
        names: The readings concerned.
        takes: For each of them, whose number it would really have: its own, or that of the other of a pair.
        factors: What that number is to be multiplied with.
        prior: How often this happens, beside 1 for a plain misreading of each reading.
    """

    names: tuple[str, ...]
    takes: tuple[str, ...]
    factors: tuple[float, ...]
    prior: float


@dataclass(frozen=True, slots=True)
class Slip:
    """A kind of slip.

    Attributes:
        code: Its stable name, in kebab case; the code of the problem.
        tell: From the names on a card to all stories of this kind.
        words: The likely mistake in words, as a template of `plausible`.
    """

    code: str
    tell: Tell
    words: str


SLIPS: Final[dict[str, Slip]] = {}

_TWO_TOGETHER: Final = 0.03  # how often a pair slips together, beside 1 for a plain misreading
_FEWEST_FOR_ALL: Final = 3  # readings


def slip(code: str, words: str) -> Callable[[Tell], Tell]:
    """Put a kind of slip into the register; a second one of the same name is refused."""

    def put(tell: Tell) -> Tell:
        if code in SLIPS:
            raise ValueError(f"the slip {code} stands in the register already")
        SLIPS[code] = Slip(code, tell, words)
        return tell

    return put


def multiplied(names: tuple[str, ...], factor: float, prior: float) -> Story:
    """These readings are really `factor` times what was written."""
    return Story(names, names, (factor,) * len(names), prior)


def one_two_or_all(names: tuple[str, ...], factor: float, prior: float) -> Iterator[Story]:
    """One reading, any two, or all of them are really `factor` times what was written."""
    for name in names:
        yield multiplied((name,), factor, prior)
    for pair in combinations(names, 2):
        yield multiplied(pair, factor, _TWO_TOGETHER)
    if len(names) >= _FEWEST_FOR_ALL:
        yield multiplied(names, factor, prior * len(names))
