from __future__ import annotations

import json
import math

import pytest
from typer.testing import CliRunner

from littlefold.cli.main import app


def _no_such_number(word):
    raise AssertionError(f"{word} is no JSON")


class Said:
    """What a command said, where, and with which exit status."""

    def __init__(self, result):
        self.status, self.out, self.err = result.exit_code, result.stdout, result.stderr
        if result.exception is not None and not isinstance(result.exception, SystemExit):
            raise result.exception

    @property
    def data(self):
        """The one JSON document on standard output."""
        return json.loads(self.out, parse_constant=_no_such_number)


@pytest.fixture
def say(tmp_path, monkeypatch):
    """Runs `littlefold` with some words in an empty folder."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "200")
    return lambda *words: Said(CliRunner().invoke(app, [str(word) for word in words]))


@pytest.fixture
def finite():
    """Whether every number in a document is one."""

    def every(value):
        if isinstance(value, dict):
            return all(every(part) for part in value.values())
        if isinstance(value, list):
            return all(every(part) for part in value)
        return not isinstance(value, float) or math.isfinite(value)

    return every
