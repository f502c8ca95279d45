"""Where this machine can be found on the network of the room, and what it is called there."""

from __future__ import annotations

import socket
from ipaddress import ip_address

# Addresses set aside for documentation (RFC 5737): nothing is sent there, the way to them only tells which of our
# own addresses would be used.
SOMEWHERE = ("192.0.2.1", 9)


def addresses() -> tuple[str, ...]:
    """The IPv4 addresses by which others in the room reach this machine, the likeliest first."""
    found = (*_towards_the_network(), *_by_its_name())
    return tuple(dict.fromkeys(one for one in found if not ip_address(one).is_loopback))


def names() -> tuple[str, ...]:
    """What this machine is called, in small letters; `.local` is its name by multicast DNS (RFC 6762)."""
    name = socket.gethostname().lower().rstrip(".")
    first = name.partition(".")[0]
    return tuple(dict.fromkeys(one for one in (name, first, f"{first}.local" if first else "") if one))


def _towards_the_network() -> tuple[str, ...]:
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(SOMEWHERE)
        except OSError:  # there is no network, or none that leads further
            return ()
        return (probe.getsockname()[0],)


def _by_its_name() -> tuple[str, ...]:
    try:
        found = socket.getaddrinfo(socket.gethostname(), None, socket.AF_INET)
    except OSError:  # the name of the machine is known nowhere
        return ()
    return tuple(str(one[4][0]) for one in found)
