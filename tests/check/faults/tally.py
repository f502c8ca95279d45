"""How many of the sown faults are found, by kind."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.recipe.shelf import shipped_names, shipped_text
from tests.check.faults.seed import KINDS, faults, whole_lines
from tests.check.faults.sift import Sieve

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from tests.check.faults.seed import Fault

# Faults of one kind that are tried on one recipe, spread evenly over its text.
TRIED = 25


@dataclass(frozen=True, slots=True)
class Tally:
    """Faults that matter and faults found, by kind; the reports that found most; and what slipped through."""

    sown: Counter[str]
    found: Counter[str]
    codes: Counter[str]
    missed: tuple[str, ...]

    @property
    def share(self) -> float:
        """The part of all faults that is found."""
        return self.found.total() / self.sown.total()


def tally(names: Iterable[str] = ()) -> Tally:
    """Sows faults into the shipped recipes and counts those that are found."""
    sown, found, codes, missed = Counter(), Counter(), Counter(), []
    for name in names or shipped_names():
        text = shipped_text(name) or ""
        sieve = Sieve(text)
        for fault in _chosen(tuple(faults(text))):
            sifted = sieve.sift(fault.text)
            if not sifted.matters:
                continue
            sown[fault.kind] += 1
            found[fault.kind] += bool(sifted.codes)
            codes.update(sifted.codes)
            if not sifted.codes:
                missed.append(f"{name}, {fault.kind}: {_changed(text, fault.text)}")
    return Tally(sown, found, codes, tuple(missed))


def _chosen(sown: Sequence[Fault]) -> Iterable[Fault]:
    """At most `TRIED` faults of each kind, evenly spread."""
    for kind in KINDS:
        alike = [fault for fault in sown if fault.kind == kind]
        step = max(1.0, len(alike) / TRIED)
        yield from (alike[int(k * step)] for k in range(min(TRIED, len(alike))))


def _changed(text: str, spoilt: str) -> str:
    pairs = zip(whole_lines(text), spoilt.split("\n"), strict=True)
    return next(f"`{line}`" for old, line in pairs if old != line)


def faults_section(counted: Tally) -> str:
    """The section of docs/checks.md about sown faults."""
    rows = [
        f"| {kind} | {counted.sown[kind]} | {counted.found[kind]} | {_share(counted, kind)} |"
        for kind in KINDS
    ]
    total = f"| all | {counted.sown.total()} | {counted.found.total()} | {counted.share:.1%} |"
    found_by = ", ".join(f"`{code}` ({count})" for code, count in counted.codes.most_common(12))
    missed = "\n".join(f"- {words}" for words in counted.missed)
    return "\n".join(
        (
            "## Sown faults\n",
            "Faults were sown into the shipped recipes, one at a time: points that change places, a wrong partner in a",
            "seam, an allowance of nothing, a half for a quarter or another measurement in a formula. Each spoilt recipe",
            "was drafted for the middle, the examples, the smallest and the tallest child it suits. A fault counts when it",
            "moves a corner by 1 cm or changes pieces, allowances or seams; it is found when an error or a warning comes",
            "that the sound recipe does not give.\n",
            "| fault | sown | found | share |",
            "|---|---|---|---|",
            *rows,
            total,
            f"\nFound most often by {found_by}.\n",
            f"Not found:\n\n{missed}\n" if missed else "None slipped through.\n",
        )
    )


def _share(counted: Tally, kind: str) -> str:
    return f"{counted.found[kind] / counted.sown[kind]:.1%}" if counted.sown[kind] else "-"
