"""The keys of a shared workroom, kept in the maker's folder for her eyes only: two passphrases, hashed, and a secret.

The secret signs the cookies.  It never leaves the file, and is made anew when all are to come in again.
"""

from __future__ import annotations

import json
import secrets
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from littlefold.web.files import write_whole
from littlefold.web.passphrase import (
    CLASS_LEAST,
    SALT_BYTES,
    TEACHER_LEAST,
    USUAL_COST,
    Cost,
    Hashed,
    hashed,
    same,
    weakness,
)

if TYPE_CHECKING:
    from pathlib import Path

    from littlefold.problem import Problem

FILE: Final = "sharing.json"
SECRET_BYTES: Final = 32


@dataclass(frozen=True, slots=True)
class Keys:
    """What opens a shared workroom."""

    secret: bytes
    teacher: Hashed
    pupils: Hashed

    def all_out(self) -> Keys:
        """The same passphrases under a new secret: everybody has to come in again."""
        return replace(self, secret=secrets.token_bytes(SECRET_BYTES))


def refusals(teacher: str, pupils: str) -> tuple[Problem, ...]:
    """Why two passphrases cannot be the keys of a workroom; nothing where they can."""
    found = (
        weakness(teacher, TEACHER_LEAST, "the teacher's"),
        weakness(pupils, CLASS_LEAST, "the class's"),
        same(teacher, pupils),
    )
    return tuple(one for one in found if one is not None)


def make_keys(teacher: str, pupils: str, cost: Cost = USUAL_COST) -> Keys:
    """New keys from two passphrases that `refusals` has nothing against; who came in with older ones is out."""
    one, other = (hashed(phrase, secrets.token_bytes(SALT_BYTES), cost) for phrase in (teacher, pupils))
    return Keys(secrets.token_bytes(SECRET_BYTES), one, other)


class _KeptHash(BaseModel):
    model_config = ConfigDict(extra="ignore", strict=True)

    salt: str = Field(pattern=r"^(?:[0-9a-f]{2}){16,64}$")
    digest: str = Field(pattern=r"^[0-9a-f]{64}$")
    n: int = Field(ge=2, le=2**20)
    r: int = Field(ge=1, le=32)
    p: int = Field(ge=1, le=16)

    def hashed(self) -> Hashed:
        return Hashed(bytes.fromhex(self.salt), bytes.fromhex(self.digest), Cost(self.n, self.r, self.p))


class _Kept(BaseModel):
    model_config = ConfigDict(extra="ignore", strict=True)

    secret: str = Field(pattern=r"^[0-9a-f]{64}$")
    teacher: _KeptHash
    pupils: _KeptHash


def read_keys(folder: Path) -> Keys | None:
    """The keys of a folder; None where there are none or the file cannot be read: then nobody comes in."""
    try:
        kept = _Kept.model_validate_json((folder / FILE).read_bytes())
    except (OSError, ValidationError):
        return None
    return Keys(bytes.fromhex(kept.secret), kept.teacher.hashed(), kept.pupils.hashed())


def keep_keys(folder: Path, keys: Keys) -> None:
    """Keeps the keys in a file that only its owner can read.

    Raises:
        OSError: It cannot be written.
    """
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    record = {
        "secret": keys.secret.hex(),
        "teacher": _record(keys.teacher),
        "pupils": _record(keys.pupils),
    }
    write_whole(folder / FILE, json.dumps(record, indent=1).encode())


def _record(kept: Hashed) -> dict[str, str | int]:
    cost = kept.cost
    return {"salt": kept.salt.hex(), "digest": kept.digest.hex(), "n": cost.n, "r": cost.r, "p": cost.p}
