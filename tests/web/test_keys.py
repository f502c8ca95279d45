from __future__ import annotations

import json
import os
from typing import TYPE_CHECKING

import pytest

from littlefold.web.keys import FILE, keep_keys, make_keys, read_keys, refusals
from littlefold.web.passphrase import Cost, matches

if TYPE_CHECKING:
    from pathlib import Path

TEACHER, CLASS = "blue kettle on a ladder", "seven paper boats"
CHEAP = Cost(2**4)


def test_kept_and_read_again(tmp_path: Path) -> None:
    keys = make_keys(TEACHER, CLASS, CHEAP)
    keep_keys(tmp_path / "own", keys)
    read = read_keys(tmp_path / "own")
    assert read == keys
    assert matches(TEACHER, read.teacher)
    assert matches(CLASS, read.pupils)
    assert not matches(CLASS, read.teacher)


def test_nothing_that_was_typed_stands_in_the_file(tmp_path: Path) -> None:
    keep_keys(tmp_path, make_keys(TEACHER, CLASS, CHEAP))
    text = (tmp_path / FILE).read_text()
    assert TEACHER not in text
    assert CLASS not in text


def test_every_salt_and_secret_is_new() -> None:
    made = [make_keys(TEACHER, CLASS, CHEAP) for _ in range(2)]
    assert len({key.secret for key in made}) == 2
    assert len({kept.salt for key in made for kept in (key.teacher, key.pupils)}) == 4


@pytest.mark.skipif(os.name != "posix", reason="only POSIX has such modes")
def test_only_the_owner_can_read_them_whatever_others_files_are(tmp_path: Path) -> None:
    before = os.umask(0)
    try:
        keep_keys(tmp_path / "own", make_keys(TEACHER, CLASS, CHEAP))
        keep_keys(tmp_path / "own", make_keys(TEACHER, CLASS, CHEAP))
    finally:
        os.umask(before)
    assert (tmp_path / "own" / FILE).stat().st_mode & 0o777 == 0o600
    assert (tmp_path / "own").stat().st_mode & 0o777 == 0o700


@pytest.mark.parametrize("name", ["secret", "teacher", "pupils"])
@pytest.mark.parametrize("value", [None, "", 3, "zz" * 32, {"salt": "00"}])
def test_a_spoilt_file_opens_for_nobody(tmp_path: Path, name: str, value: object) -> None:
    keep_keys(tmp_path, make_keys(TEACHER, CLASS, CHEAP))
    record = json.loads((tmp_path / FILE).read_text())
    (tmp_path / FILE).write_text(json.dumps(record | {name: value}))
    assert read_keys(tmp_path) is None


def test_a_try_cannot_be_made_endlessly_dear_by_the_file(tmp_path: Path) -> None:
    keep_keys(tmp_path, make_keys(TEACHER, CLASS, CHEAP))
    record = json.loads((tmp_path / FILE).read_text())
    record["teacher"]["n"] = 2**40
    (tmp_path / FILE).write_text(json.dumps(record))
    assert read_keys(tmp_path) is None


def test_all_that_is_wrong_is_said_together() -> None:
    assert refusals(TEACHER, CLASS) == ()
    assert [one.code for one in refusals("short", "boat")] == ["passphrase-short", "passphrase-short"]
    assert [one.code for one in refusals(TEACHER, TEACHER)] == ["passphrase-same"]
