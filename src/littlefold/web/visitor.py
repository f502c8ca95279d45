"""Who is in the workroom: the maker at her own table, or with whose passphrase one came in."""

from __future__ import annotations

from enum import StrEnum


class Visitor(StrEnum):
    """Who sees a page."""

    MAKER = "maker"
    """The maker at her own machine, where nothing is shared."""
    TEACHER = "teacher"
    PUPIL = "class"
    NOBODY = "nobody"
    """Somebody who stands at the door and has said no passphrase yet."""
