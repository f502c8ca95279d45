"""At least 95 of 100 faults sown into the shipped recipes are found, and the table in docs says how many."""

from __future__ import annotations

import re

import pytest

from tests.check.faults.seed import KINDS, faults
from tests.check.faults.tally import tally
from tests.check.write_page import PAGE

RECIPE = """recipe test
measure chest
amount width = (chest + 8 cm) / 4
drawing body
point A at the fold
point B below A by 40 cm
point C right of A by width
line side from C to B
piece front cut 1 on fold
edges A-B fold, side seam 1 cm
sew front.side to front.fold
"""


@pytest.fixture(scope="module")
def counted():
    return tally()


@pytest.mark.slow
def test_at_least_two_hundred_faults_are_sown_of_every_kind(counted):
    assert counted.sown.total() >= 200
    assert min(counted.sown[kind] for kind in KINDS) >= 20


@pytest.mark.slow
def test_at_least_95_of_100_are_found(counted):
    assert counted.share >= 0.95, "\n".join(counted.missed)


@pytest.mark.slow
def test_the_table_in_docs_says_so(counted):
    """The recipes grow, so the counts may differ a little; the shares may not by more than five points."""
    rows = dict(re.findall(r"^\| ([a-z ]+) \|.*\| ([\d.]+)% \|$", PAGE.read_text("utf-8"), re.MULTILINE))
    for kind in KINDS:
        assert abs(float(rows[kind]) - 100 * counted.found[kind] / counted.sown[kind]) <= 5.0
    assert float(rows["all"]) >= 95.0


def test_each_fault_changes_one_thing_and_says_where():
    for fault in faults(RECIPE):
        changed = [
            k
            for k, (a, b) in enumerate(zip(RECIPE.split("\n"), fault.text.split("\n"), strict=True), 1)
            if a != b
        ]
        assert changed
        assert fault.kind in KINDS
        if fault.kind != "points swapped":
            assert changed == [fault.line]


def test_the_kinds_of_fault_are_what_they_say():
    texts = {kind: [f.text for f in faults(RECIPE) if f.kind == kind] for kind in KINDS}
    assert any("side seam 0 cm" in text for text in texts["lost allowance"])
    assert any("(chest + 8 cm) / 2" in text for text in texts["wrong formula basis"])
    assert any("to front.A-B" in text for text in texts["wrong seam partner"])
    assert any("line side from C to A" in text for text in texts["points swapped"])
