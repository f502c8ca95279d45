"""How many slips `plausible` catches, and how many true children it accuses, over the children of the 1977 survey.

    .venv/bin/python tools/measure_plausibility.py ../shared/reference/data/snyder1977_garment_mm.csv [EVERY]

Every child is judged by a model of the other four fifths.  Into each reading of each child (of every EVERY-th one)
one slip after another is put; beside it stand two baselines fitted to the same four fifths (`straight_lines`), each with
the limit at which it accuses as many true children.  The tables go into docs/measurements.md.
"""

from __future__ import annotations

import sys
from collections import defaultdict
from dataclasses import dataclass, replace
from itertools import combinations
from pathlib import Path
from random import Random

import numpy as np
from held_out import NAMES, Child, children, replace_section
from straight_lines import furthest_from_median

from littlefold.body.measurements import Measurements, Reading
from littlefold.body.odds import Card, Suspicion, weigh
from littlefold.body.register import REGISTER
from littlefold.body.verdict import DOUBT, alarm

DOCUMENT = Path(__file__).parents[1] / "docs/measurements.md"
FACTORS = {"inches as cm": 1 / 2.54, "half": 0.5}
FACTORS |= {f"{percent:+d} %": 1 + percent / 100 for percent in (-20, -10, -5, 5, 10, 20)}
LEAST_APART = 0.10  # of two readings that are swapped
PAIRS = 12  # swapped a child, chosen by chance
SHORT = ("stature", "head", "chest", "waist", "hip", "upper_arm")
CARDS = {
    "whole cards": NAMES,
    "the nine readings that nearly every child has": (*SHORT, "thigh", "calf", "foot"),
    "height, head, chest, waist, hip and upper arm": SHORT,
    "height, chest, waist and hip": ("stature", "chest", "waist", "hip"),
    "height and chest": ("stature", "chest"),
    "height alone": ("stature",),
}
TABLES = tuple(CARDS)[:3]  # kinds of card whose catch is told in full


@dataclass(frozen=True)
class Limits:
    """From which number on a card is not believed, so that each rule accuses as many true cards of a kind."""

    share: float
    lines: float
    band: float


@dataclass(frozen=True)
class Judged:
    """What three rules say of one card: whether it is not believed, and whether ours names the right reading."""

    ours: bool
    named: bool
    lines: bool
    band: bool


def weighed(child: Child, card: Measurements) -> tuple[float, Suspicion]:
    """By how much the log odds of any slip lie over the alarm, and the likeliest one."""
    found = weigh(Card(card.lengths(), card.age_months, card.sex), child.model)
    return found.log_odds - alarm(len(card.readings)), found.suspicions[0]


def judge(child: Child, card: Measurements, limits: Limits, wrong: set[str]) -> Judged:
    """A card with slips in the `wrong` readings, judged by all three rules."""
    over, likeliest = weighed(child, card)
    return Judged(
        over > 0.0,
        over > 0.0 and set(likeliest.names) == wrong,
        child.lines.number(card) > limits.lines,
        furthest_from_median(card, child.model) > limits.band,
    )


def limits_of(everyone: list[Child], names: tuple[str, ...]) -> Limits:
    """The share of true children accused on cards of these readings, and the baselines' limits for the same share."""
    cards = [(child, only(child.card, names)) for child in everyone]
    cards = [(child, card) for child, card in cards if card.readings]
    share = float(np.mean([weighed(child, card)[0] > 0 for child, card in cards]))
    lines = [child.lines.number(card) for child, card in cards]
    band = [furthest_from_median(card, child.model) for child, card in cards]
    return Limits(share, float(np.quantile(lines, 1 - share)), float(np.quantile(band, 1 - share)))


def spoiled(card: Measurements, name: str, factor: float) -> Measurements:
    """The card with one reading multiplied."""
    return card.with_reading(name, Reading(card.mm(name) * factor))


def only(card: Measurements, names: tuple[str, ...]) -> Measurements:
    """The card with no other readings."""
    return card.without(*(name for name in card if name not in names))


def measure(path: Path, every: int) -> list[str]:
    """The section of the document, line by line."""
    everyone = list(children(path))
    limits = {title: limits_of(everyone, names) for title, names in CARDS.items()}
    told = "; ".join(f"{title} {100 * one.share:.2f} %" for title, one in limits.items())
    doubted = np.mean([weighed(child, child.card)[0] > -DOUBT for child in everyone])
    doubt = (
        f"Of whole cards of true children {100 * doubted:.1f} % are asked for a second reading or accused."
    )
    print(told, doubt, flush=True)
    lines = [f"True children accused, of {len(everyone)}: {told}. {doubt}", "", *_explained(), ""]
    chosen = everyone[::every]
    for title in TABLES:
        lines += single_slips(chosen, title, limits[title])
    return lines + swaps(chosen, limits[TABLES[0]])


def _explained() -> tuple[str, ...]:
    return (
        "In brackets stand two plain rules, fitted to the same four fifths and set to accuse as many cards of the same kind:",
        "*straight lines* (each reading regressed on the others, the age and the sex, all as logarithms; the furthest",
        "residual decides), then *band* (the furthest reading from the median of the stature, in standard deviations of its",
        "curve, decides).",
    )


def single_slips(chosen: list[Child], title: str, limits: Limits) -> list[str]:
    """The table of slips in one reading, on one kind of card."""
    caught: dict[tuple[str, str], list[Judged]] = defaultdict(list)
    names = CARDS[title]
    for child in chosen:
        card = only(child.card, names)
        if names != NAMES and len(card.readings) < len(names):
            continue
        for name in card:
            for slip, factor in FACTORS.items():
                if slip != "half" or REGISTER[name].is_girth:
                    caught[name, slip].append(judge(child, spoiled(card, name, factor), limits, {name}))
    print(title, flush=True)
    head = "| reading | n | " + " | ".join(FACTORS) + " |"
    lines = [f"Caught of 100 slips, {title}:", "", head, "|---|" + "---|" * (len(FACTORS) + 1)]
    for name in names:
        cells = [_cell(caught.get((name, slip))) for slip in FACTORS]
        lines.append(f"| {name} | {len(caught[name, '-5 %'])} | " + " | ".join(cells) + " |")
    every = {slip: [row for (_, s), rows in caught.items() if s == slip for row in rows] for slip in FACTORS}
    lines.append("| all | | " + " | ".join(_cell(rows) for rows in every.values()) + " |")
    named = {slip: 100 * np.mean([row.named for row in rows if row.ours]) for slip, rows in every.items()}
    told = ", ".join(f"{slip} {share:.1f} %" for slip, share in named.items())
    return [*lines, "", f"Of the caught ones the right reading is named first: {told}.", ""]


def _cell(rows: list[Judged] | None) -> str:
    if not rows:
        return ""
    ours, lines, band = (
        100 * np.mean([getattr(row, rule) for row in rows]) for rule in ("ours", "lines", "band")
    )
    return f"{_share(ours)} ({_share(lines)}; {_share(band)})"


def _share(percent: float) -> str:
    return "100" if percent >= 99.95 else f"{percent:.1f}"


def swaps(chosen: list[Child], limits: Limits) -> list[str]:
    """The table of swapped readings."""
    dice = Random(7)  # noqa: S311  # the same pairs every time
    caught: dict[str, list[Judged]] = defaultdict(list)
    for child in chosen:
        pairs = [pair for pair in combinations(child.card, 2) if _apart(child.card, *pair) >= LEAST_APART]
        for one, other in dice.sample(pairs, min(PAIRS, len(pairs))):
            found = judge(child, swapped(child.card, one, other), limits, {one, other})
            caught[_band_of(_apart(child.card, one, other))].append(found)
    lines = [
        "Two readings swapped, whole cards:",
        "",
        "| differ by | n | caught (straight lines; band) | both named |",
        "|---|---|---|---|",
    ]
    order = ("10 to 15 %", "15 to 25 %", "25 % and more")
    everything = [row for each in order for row in caught[each]]
    for title, rows in (*((each, caught[each]) for each in order), ("10 % and more", everything)):
        lines.append(
            f"| {title} | {len(rows)} | {_cell(rows)} | {100 * np.mean([row.named for row in rows]):.1f} |"
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
