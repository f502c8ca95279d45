"""Tries at the door, slowed: for each address the longer the more often it was wrong, and for all together."""

from __future__ import annotations

from collections import OrderedDict, deque
from dataclasses import dataclass
from ipaddress import IPv6Address, ip_address
from threading import Lock
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Callable

FREE: Final = 5
"""So often an address may be wrong before it has to wait: a phone's keyboard slips."""
FIRST_WAIT: Final = 5.0
"""The wait after that, doubled with every further wrong try [s]."""
LONGEST_WAIT: Final = 600.0
FORGIVEN: Final = 3600.0
"""An address that was not wrong for so long begins anew [s]."""
ALL_FREE: Final = 40
"""So many wrong tries all addresses together have within `ALL_WITHIN`: a class of thirty that mistypes once, and more."""
ALL_WITHIN: Final = 600.0
ALL_APART: Final = 15.0
"""When those are used up: the time between two tries, whoever makes them [s]."""
MOST_ADDRESSES: Final = 2000


@dataclass(slots=True)
class _Record:
    wrong: int = 0
    last: float = 0.0


class Tries:
    """The tries at one door, by a clock that only goes forward [s].

    At this rate a thief who never stops and comes from everywhere has 40 + 4 a minute: in a month 175 000 guesses,
    against more than 10**9 for three words out of a list of a thousand.
    """

    def __init__(self, clock: Callable[[], float]) -> None:
        self.clock = clock
        self._records: OrderedDict[str, _Record] = OrderedDict()
        self._wrong: deque[float] = deque()
        self._turn = Lock()

    def enter(self, address: str) -> float:
        """Whether an address may try now: 0 where it may, else how long it has to wait [s].

        A try that is let through counts as wrong until it is taken back, so that many at once are counted too.
        """
        now, place = self.clock(), network(address)
        with self._turn:
            wait = max(self._wait_of(place, now), self._wait_of_all(now))
            if wait > 0:
                return wait
            record = self._records.setdefault(place, _Record())
            record.wrong, record.last = record.wrong + 1, now
            self._records.move_to_end(place)
            self._wrong.append(now)
            while len(self._records) > MOST_ADDRESSES:
                self._records.popitem(last=False)
            return 0.0

    def take_back(self, address: str) -> None:
        """The last try of an address was right, so it does not count; wrong ones before it do.

        Else a pupil, who knows the class's passphrase, could say it between any number of guesses at the teacher's.
        """
        with self._turn:
            record = self._records.get(network(address))
            if record is not None:
                record.wrong -= 1
            if self._wrong:
                self._wrong.pop()

    def forgive(self, address: str) -> None:
        """An address begins anew: the teacher herself came in from it."""
        with self._turn:
            self._records.pop(network(address), None)

    def _wait_of(self, place: str, now: float) -> float:
        record = self._records.get(place)
        if record is None:
            return 0.0
        if now - record.last >= FORGIVEN:
            del self._records[place]
            return 0.0
        if record.wrong < FREE:
            return 0.0
        doubled = min(record.wrong - FREE, 10)  # 2**10 times the first wait is beyond the longest
        return max(record.last + min(FIRST_WAIT * 2.0**doubled, LONGEST_WAIT) - now, 0.0)

    def _wait_of_all(self, now: float) -> float:
        while self._wrong and now - self._wrong[0] >= ALL_WITHIN:
            self._wrong.popleft()
        if len(self._wrong) < ALL_FREE:
            return 0.0
        return max(self._wrong[-1] + ALL_APART - now, 0.0)


def network(address: str) -> str:
    """What counts as one address: for IPv6 the network of 64 bits, of which one machine has all."""
    try:
        found = ip_address(address.partition("%")[0])
    except ValueError:
        return address
    return str(int(found) >> 64) if isinstance(found, IPv6Address) else str(found)
