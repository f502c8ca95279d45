"""The page docs/checks.md is what the register says."""

from __future__ import annotations

from littlefold.check import registered
from littlefold.check.manual import checks_page
from tests.check.write_page import PAGE


def test_the_page_lists_every_rule_once():
    page = checks_page()
    for rule in registered():
        assert page.count(f"### `{rule.code}`\n") == 1


def test_the_page_in_docs_is_current():
    assert PAGE.read_text("utf-8").startswith(checks_page()), "run python tests/check/write_page.py"
