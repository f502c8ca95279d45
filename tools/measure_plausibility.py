"""How many slips `plausible` catches, and how many true children it accuses, over the children of the 1977 survey.

    .venv/bin/python tools/measure_plausibility.py ../shared/reference/data/snyder1977_garment_mm.csv [EVERY]

Every child is judged by a model of the other four fifths.  Into each reading of each child (of every EVERY-th one)
one slip after another is put; beside it stands the plain rule, a band of the same width in standard deviations at the
child's stature for every reading, wide enough that it accuses as many true children.  The tables go into
docs/measurements.md.
"""

from __future__ import annotations

import sys
from collections import defaultdict
from dataclasses import replace
from itertools import combinations
from pathlib import Path
from random import Random

import numpy as np
from held_out import NAMES, Child, children, replace_section

from littlefold.body.measurements import Measurements, Reading
from littlefold.body.odds import Card, Suspicion, weigh
from littlefold.body.register import REGISTER
from littlefold.body.verdict import DOUBT, alarm

DOCUMENT = Path(__file__).parents[1] / "docs/measurements.md"
FACTORS = {"inches as cm": 1 / 2.54, "half": 0.5}
FACTORS |= {f"{percent:+d} %": 1 + percent / 100 for percent in (-20, -10, -5, 5, 10, 20)}
LEAST_APART = 0.10  # of two readings that are swapped
PAIRS = 12  # swapped a child, chosen by chance
CARDS = {
    "whole cards": NAMES,
    "the nine readings that nearly every child has": (
        "stature", "head", "chest", "waist", "hip", "upper_arm", "thigh", "calf", "foot",
    ),
    "height, chest, waist and hip": ("stature", "chest", "waist", "hip"),
    "height and chest": ("stature", "chest"),
    "height alone": ("stature",),
}  # fmt: skip


def judge(child: Child, card: Measurements) -> tuple[float, Suspicion]:
    """By how much the log odds of any slip lie over the alarm, and the likeliest one."""
    weighed = weigh(Card(card.lengths(), card.age_months, card.sex), child.model)
    return weighed.log_odds - alarm(len(card.readings)), weighed.suspicions[0]


def spoiled(card: Measurements, name: str, factor: float) -> Measurements:
    """The card with one reading multiplied."""
    return card.with_reading(name, Reading(card.mm(name) * factor))


def widest_score(child: Child, card: Measurements) -> float:
    """The plain rule's number: the furthest reading from the median at the stature [standard deviations]."""
    stature = card.mm("stature")
    scores = [child.model.curves[name].score(stature, card.mm(name)) for name in card if name != "stature"]
    return max(map(abs, scores), default=0.0)


def only(card: Measurements, names: tuple[str, ...]) -> Measurements:
    """The card with no other readings."""
    return card.without(*(name for name in card if name not in names))


def _accused(everyone: list[Child], names: tuple[str, ...]) -> float:
    """The share of true children accused on cards of these readings."""
    cards = [(child, only(child.card, names)) for child in everyone]
    return float(np.mean([judge(child, card)[0] > 0 for child, card in cards if card.readings]))


def measure(path: Path, every: int) -> list[str]:
    """The section of the document, line by line."""
    everyone = list(children(path))
    shares = {title: _accused(everyone, names) for title, names in CARDS.items()}
    print(shares, flush=True)
    widest = [widest_score(child, child.card) for child in everyone]
    band = float(np.quantile(widest, 1 - shares["whole cards"]))
    told = "; ".join(f"{title} {100 * share:.2f} %" for title, share in shares.items())
    plain = (
        f"The plain rule accuses as many whole cards: any reading further than {band:.2f} standard deviations from "
        "the median of its stature."
    )
    doubted = np.mean([judge(child, child.card)[0] > -DOUBT for child in everyone])
    doubt = (
        f"Of whole cards of true children {100 * doubted:.1f} % are asked for a second reading or accused."
    )
    lines = [f"True children accused, of {len(everyone)}: {told}. {doubt}", "", plain, ""]
    chosen = everyone[::every]
    return lines + single_slips(chosen, band) + swaps(chosen, band)


def single_slips(chosen: list[Child], band: float) -> list[str]:
    """The table of slips in one reading."""
    caught: dict[tuple[str, str], list[tuple[bool, bool, bool]]] = defaultdict(list)
    for number, child in enumerate(chosen):
        if number % 200 == 0:
            print(number, "of", len(chosen), flush=True)
        for name in child.card:
            for slip, factor in FACTORS.items():
                if slip == "half" and not REGISTER[name].is_girth:
                    continue
                card = spoiled(child.card, name, factor)
                odds, likeliest = judge(child, card)
                plain = widest_score(child, card) > band
                caught[name, slip].append((odds > 0.0, odds > 0.0 and likeliest.names == (name,), plain))
    head = "| reading | n | " + " | ".join(FACTORS) + " |"
    lines = [
        "Caught of 100 slips (the plain rule in brackets):",
        "",
        head,
        "|---|" + "---|" * (len(FACTORS) + 1),
    ]
    for name in NAMES:
        cells = [_cell(caught.get((name, slip))) for slip in FACTORS]
        lines.append(f"| {name} | {len(caught[name, '-5 %'])} | " + " | ".join(cells) + " |")
    every = {slip: [row for (_, s), rows in caught.items() if s == slip for row in rows] for slip in FACTORS}
    lines.append("| all | | " + " | ".join(_cell(rows) for rows in every.values()) + " |")
    named = {slip: 100 * np.mean([row[1] for row in rows if row[0]]) for slip, rows in every.items()}
    told = ", ".join(f"{slip} {share:.1f} %" for slip, share in named.items())
    return [*lines, "", f"Of the caught ones the right reading is named first: {told}.", ""]


def _cell(rows: list[tuple[bool, bool, bool]] | None) -> str:
    if not rows:
        return ""
    found, _, plain = (100 * np.mean(column) for column in zip(*rows, strict=True))
    return f"{found:.1f} ({plain:.0f})" if found < 99.95 else f"100 ({plain:.0f})"


def swaps(chosen: list[Child], band: float) -> list[str]:
    """The table of swapped readings."""
    dice = Random(7)  # noqa: S311  # the same pairs every time
    caught: dict[str, list[tuple[bool, bool, bool]]] = defaultdict(list)
    for child in chosen:
        pairs = [pair for pair in combinations(child.card, 2) if _apart(child.card, *pair) >= LEAST_APART]
        for one, other in dice.sample(pairs, min(PAIRS, len(pairs))):
            card = swapped(child.card, one, other)
            odds, likeliest = judge(child, card)
            right = odds > 0.0 and set(likeliest.names) == {one, other}
            caught[_band_of(_apart(child.card, one, other))].append(
                (odds > 0.0, right, widest_score(child, card) > band)
            )
    lines = [
        "Two readings swapped:",
        "",
        "| differ by | n | caught (plain rule) | both named |",
        "|---|---|---|---|",
    ]
    order = ("10 to 15 %", "15 to 25 %", "25 % and more")
    everything = [row for each in order for row in caught[each]]
    for title, rows in (*((each, caught[each]) for each in order), ("10 % and more", everything)):
        lines.append(
            f"| {title} | {len(rows)} | {_cell(rows)} | {100 * np.mean([row[1] for row in rows]):.1f} |"
        )
    return lines


def swapped(card: Measurements, one: str, other: str) -> Measurements:
    """The card with two readings in each other's place."""
    exchanged = {one: card.mm(other), other: card.mm(one)}
    pairs = tuple(
        (name, replace(reading, mm=exchanged.get(name, reading.mm))) for name, reading in card.readings
    )
    return replace(card, readings=pairs)


def _apart(card: Measurements, one: str, other: str) -> float:
    low, high = sorted((card.mm(one), card.mm(other)))
    return high / low - 1


def _band_of(apart: float) -> str:
    if apart < 0.15:
        return "10 to 15 %"
    return "15 to 25 %" if apart < 0.25 else "25 % and more"


if __name__ == "__main__":
    section = measure(Path(sys.argv[1]), int(sys.argv[2]) if len(sys.argv) > 2 else 1)
    replace_section(DOCUMENT, "Slips caught and children accused", section)
