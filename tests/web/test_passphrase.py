from __future__ import annotations

import hashlib
from concurrent.futures import ThreadPoolExecutor

import pytest

from littlefold.web import passphrase
from littlefold.web.passphrase import (
    CLASS_LEAST,
    LONGEST,
    TEACHER_LEAST,
    USUAL_COST,
    Cost,
    Hashed,
    Recognising,
    hashed,
    matches,
    same,
    weakness,
)

CHEAP = Cost(2**4)
CLASS = "seven paper boats"


def test_the_digest_is_that_of_the_standard() -> None:
    # RFC 7914, section 12, second test vector, of which the first 32 bytes are asked for: scrypt's last step is
    # PBKDF2, whose output of another length begins alike.
    kept = hashed("password", b"NaCl", Cost(1024, 8, 16))
    assert kept.digest.hex() == "fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b373162"


def test_a_try_is_as_dear_as_the_cheat_sheet_asks() -> None:
    assert (USUAL_COST.n, USUAL_COST.r, USUAL_COST.p) == (131072, 8, 1)
    assert 128 * 2**20 <= USUAL_COST.memory < 160 * 2**20
    kept = hashed("blue kettle on a ladder", b"s" * 16)
    assert kept.digest == hashlib.scrypt(
        b"blue kettle on a ladder", salt=b"s" * 16, n=131072, r=8, p=1, maxmem=2**28, dklen=32
    )


def test_only_the_same_words_match() -> None:
    kept = hashed("blue kettle on a ladder", b"s" * 16, CHEAP)
    assert matches("blue kettle on a ladder", kept)
    assert matches("  blue kettle on a ladder ", kept)
    assert not matches("Blue kettle on a ladder", kept)
    assert not matches("blue kettle on a ladde", kept)
    assert not matches("", kept)
    assert not matches("b" * 10**6, kept)


def test_letters_put_together_in_another_way_are_the_same_letters() -> None:
    kept = hashed("gr\u00fcner Kessel am Zaun", b"s" * 16, CHEAP)
    assert matches("gru\u0308ner Kessel am Zaun", kept)


def test_what_was_right_once_is_known_at_once_and_what_is_wrong_never(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    kept, other = (hashed(CLASS, salt * 16, CHEAP) for salt in (b"s", b"t"))
    worked: list[str] = []

    def at_work(phrase: str, one: Hashed) -> bool:
        worked.append(phrase)
        return matches(phrase, one)

    monkeypatch.setattr(passphrase, "matches", at_work)
    known = Recognising()
    with ThreadPoolExecutor(8) as pupils:
        assert all(pupils.map(lambda _: known.matches(CLASS, kept), range(30)))
    assert worked == [CLASS]
    assert not any(known.matches("seven paper bats", kept) for _ in range(3))
    assert len(worked) == 4
    assert known.matches(CLASS, other)  # kept under another salt: worked out anew
    assert len(worked) == 5
    assert not known.matches("x" * (LONGEST + 1), kept)
    assert CLASS.encode() not in b"".join(known._right)


@pytest.mark.parametrize(
    ("phrase", "code"),
    [
        ("", "passphrase-short"),
        ("blue kettle", "passphrase-short"),
        ("   blue kettle      ", "passphrase-short"),
        ("aaaaaaaaaaaaaaaaaaaa", "passphrase-plain"),
        ("littlefold littlefold", "passphrase-plain"),
        ("passwordpassword123", "passphrase-plain"),
        ("Teacher12345678", "passphrase-plain"),
        ("ab" * LONGEST, "passphrase-long"),
    ],
)
def test_weak_ones_are_refused_in_words(phrase: str, code: str) -> None:
    refused = weakness(phrase, TEACHER_LEAST, "the teacher's")
    assert refused is not None
    assert refused.code == code
    assert refused.message.startswith("The teacher's passphrase")
    assert not phrase.strip() or phrase.strip() not in refused.message


def test_words_that_do_not_belong_together_are_taken() -> None:
    assert weakness("blue kettle on a ladder", TEACHER_LEAST, "the teacher's") is None
    assert weakness("paper boats", CLASS_LEAST, "the class's") is None
    assert weakness("paper boats", TEACHER_LEAST, "the teacher's") is not None


def test_the_class_has_its_own() -> None:
    assert same("blue kettle on a ladder", "Blue kettle on a ladder ") is not None
    assert same("blue kettle on a ladder", "seven paper boats") is None
