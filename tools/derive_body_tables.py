"""Derive the body tables of littlefold from the 1977 survey and from quoted figures for babies.

    .venv/bin/python tools/derive_body_tables.py ../shared/reference/data/snyder1977_garment_mm.csv

writes src/littlefold/body/tables/: `by_stature.csv` (L, M and S of every measurement at statures 500 to 1940 mm)
and `relations.csv` (how the measurements of one child go together, at four statures).

Survey: R. G. Snyder et al., Anthropometry of Infants, Children, and Youths to Age 18 for Product Safety Design,
UM-HSRI-77-17, 1977, made for the US Consumer Product Safety Commission; 3,900 children of 2 to 20 years.  Each
child got one of three sets of measurements.  Babies and the lengths that nobody surveyed: `body_sources.py`.

A measurement at a given stature has the value M (1 + L S z)^(1/L), z being a standard normal number.  How they go
together is told of the deviations log(value / M) / S.
"""

from __future__ import annotations

import csv
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from body_covariance import NODES, local_covariances
from body_curves import STATURES, age_curves, median_curve, on_curve, power_curve, spread_curve, transform
from body_sources import AUXILIARY, DERIVED, SURVEYED, Derived

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

OUT = Path(__file__).parents[1] / "src/littlefold/body/tables"


@dataclass(frozen=True)
class Tables:
    """What is written: curves L, M, S by name over STATURES; `names` orders the covariances at NODES."""

    curves: dict[str, tuple[Floats, Floats, Floats]]
    names: tuple[str, ...]
    covariances: tuple[Floats, ...]

    def without(self, names: tuple[str, ...]) -> Tables:
        """The same without these names."""
        kept = tuple(name for name in self.names if name not in names)
        rows = [self.names.index(name) for name in kept]
        curves = {name: curve for name, curve in self.curves.items() if name not in names}
        return Tables(curves, kept, tuple(cov[np.ix_(rows, rows)] for cov in self.covariances))


def read_survey(path: Path) -> dict[str, Floats]:
    """The survey's columns under our names [mm, months]; what was not measured is nan; sex is +1 for girls."""
    with path.open() as lines:
        rows = [row for row in csv.DictReader(lines) if row["stature"] and row["age_y"]]

    def column(key: str) -> Floats:
        return np.array([float(row[key]) if row[key] else np.nan for row in rows])

    found = {
        name: np.sum([column(part) for part in parts.split("+")], axis=0) for name, parts in SURVEYED.items()
    }
    found["age"] = column("age_y") * 12.0
    found["sex"] = np.array([1.0 if row["sex"] == "F" else -1.0 for row in rows])
    return found


def derive(survey: dict[str, Floats]) -> Tables:
    """The tables of these children."""
    stature = survey["stature"]
    curves = {name: _curves(name, survey) for name in SURVEYED if name != "stature"}
    curves["age"] = age_curves(stature, survey["age"])
    deviations = [
        np.log(survey[name] / on_curve(median, stature)) / on_curve(spread, stature)
        for name, (_, median, spread) in curves.items()
    ]
    covariances = local_covariances(stature, np.column_stack([*deviations, survey["sex"]]))
    return _with_derived(Tables(curves, (*curves, "sex"), tuple(covariances))).without(AUXILIARY)


def _curves(name: str, survey: dict[str, Floats]) -> tuple[Floats, Floats, Floats]:
    stature = survey["stature"]
    median = median_curve(name, stature, survey[name])
    ratio = survey[name] / on_curve(median, stature)
    power = power_curve(stature, ratio)
    return power, median, spread_curve(stature, transform(ratio, on_curve(power, stature)))


def _with_derived(tables: Tables) -> Tables:
    """The tables with the measurements that nobody surveyed, each following a sum of surveyed ones."""
    curves, covariances = dict(tables.curves), list(tables.covariances)
    for name, rule in DERIVED.items():
        shares = _shares(rule, tables)
        median = rule.median(STATURES, {known: curve[1] for known, curve in curves.items()})
        spread = [
            np.sqrt(row @ _between(tables.covariances, s) @ row)
            for row, s in zip(shares, STATURES, strict=True)
        ]
        power = curves[rule.skew_of][0] if rule.skew_of else np.ones(len(STATURES))
        curves[name] = (power, median, rule.factor * np.array(spread) / median / np.sqrt(1 - rule.own_share))
        covariances = [
            _grown(cov, _padded(_at_node(shares, node), len(cov)), rule.own_share)
            for cov, node in zip(covariances, NODES, strict=True)
        ]
    return Tables(curves, (*tables.names, *DERIVED), tuple(covariances))


def _shares(rule: Derived, tables: Tables) -> Floats:
    """What one unit of each deviation adds [mm], one row a stature."""
    shares = np.zeros((len(STATURES), len(tables.names)))
    for part, share in rule.parts.items():
        _, median, spread = tables.curves[part]
        shares[:, tables.names.index(part)] = share * median * spread
    return shares


def _between(covariances: tuple[Floats, ...], stature: float) -> Floats:
    place = float(np.interp(stature, NODES, range(len(NODES))))
    low = min(int(place), len(NODES) - 2)
    return covariances[low] * (1 - place + low) + covariances[low + 1] * (place - low)


def _at_node(shares: Floats, node: float) -> Floats:
    return shares[int(np.argmin(np.abs(STATURES - node)))]


def _padded(row: Floats, length: int) -> Floats:
    return np.concatenate([row, np.zeros(length - len(row))])


def _grown(cov: Floats, row: Floats, own_share: float) -> Floats:
    """The covariance with one more row: the sum of the others by `row`, and a part of its own; variance 1."""
    across = cov @ row / np.sqrt(row @ cov @ row) * np.sqrt(1 - own_share)
    return np.block([[cov, across[:, None]], [across[None, :], np.ones((1, 1))]])


def write(tables: Tables) -> None:
    """The two files of the product."""
    OUT.mkdir(parents=True, exist_ok=True)
    lines = [
        "# Derived by tools/derive_body_tables.py from Snyder et al. 1977 (UM-HSRI-77-17) and the figures quoted,",
        "# each with its source, in tools/body_sources.py.  Columns: stature [mm]; M in mm (age in months).",
        "measurement,quantity," + ",".join(f"{stature:.0f}" for stature in STATURES),
    ]
    for name, (power, median, spread) in tables.curves.items():
        lines.append(f"{name},L," + ",".join(f"{value:.2f}" for value in power))
        lines.append(f"{name},M," + ",".join(f"{value:.1f}" for value in median))
        lines.append(f"{name},S," + ",".join(f"{value:.4f}" for value in spread))
    (OUT / "by_stature.csv").write_text("\n".join(lines) + "\n")
    lines = [
        "# Covariance of log(value / M) / S within one child, lower half, at four statures [mm]; sex is +1 for girls.",
        "# Derived by tools/derive_body_tables.py from Snyder et al. 1977 (UM-HSRI-77-17).",
        "stature,measurement," + ",".join(tables.names),
    ]
    for node, cov in zip(NODES, tables.covariances, strict=True):
        for row, name in enumerate(tables.names):
            lines.append(f"{node:.0f},{name}," + ",".join(f"{value:.3f}" for value in cov[row, : row + 1]))
    (OUT / "relations.csv").write_text("\n".join(lines) + "\n")


if __name__ == "__main__":
    write(derive(read_survey(Path(sys.argv[1]))))
