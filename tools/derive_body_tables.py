"""Derive the body tables of littlefold from the 1977 survey and from quoted figures for babies.

    .venv/bin/python tools/derive_body_tables.py ../shared/reference/data/snyder1977_garment_mm.csv

writes src/littlefold/body/tables/: `by_stature.csv` (L, M, S of every measurement at statures 500 to 1940 mm) and
`correlation.csv` (how the measurements of one child go together).

Survey: R. G. Snyder et al., Anthropometry of Infants, Children, and Youths to Age 18 for Product Safety Design,
UM-HSRI-77-17, 1977, made for the US Consumer Product Safety Commission; 3,900 children of 2 to 20 years.  Each child
got one of three sets of measurements, so the correlations are found by expectation and maximisation over what is
missing, with the weights of a t distribution, so that a slip of the tape in 1977 does not bend them.

A measurement at a given stature has the median M and, with z a standard normal number, the value
M (1 + L S z)^(1/L).  Babies and the lengths that nobody surveyed: see `tools/body_sources.py`.
"""

from __future__ import annotations

import csv
import sys
from pathlib import Path

import numpy as np
from body_sources import BABY_NODES, DERIVED, SURVEYED, body_rise_line
from scipy.optimize import lsq_linear

OUT = Path(__file__).parents[1] / "src/littlefold/body/tables"
STATURES = np.arange(500.0, 1941.0, 60.0)
FREEDOM = 8.0  # of the t weights: a child four sigma off counts a third
AUXILIARY = ("biacromial", "suprasternale", "axilla", "waist_height", "sitting_height")


def read_survey(path: Path) -> dict[str, np.ndarray]:
    """The survey's columns under our names [mm, months]; what was not measured is nan."""
    with path.open() as lines:
        rows = [row for row in csv.DictReader(lines) if row["stature"] and row["age_y"]]
    column = lambda key: np.array([float(row[key]) if row[key] else np.nan for row in rows])  # noqa: E731
    found = {name: sum(column(part) for part in parts.split("+")) for name, parts in SURVEYED.items()}
    found["age"] = column("age_y") * 12.0
    found["sex"] = np.array([1.0 if row["sex"] == "F" else -1.0 for row in rows])
    return found


def smooth_curve(
    x: np.ndarray, y: np.ndarray, weight: np.ndarray, stiffness: float, least: float
) -> np.ndarray:
    """The smoothest curve over STATURES near the points whose slope is nowhere below `least`."""
    count = len(STATURES)
    place = np.clip((x - STATURES[0]) / 60.0, 0, count - 1 - 1e-9)
    low, share = place.astype(int), place % 1.0
    rows = np.zeros((len(x), count))
    rows[np.arange(len(x)), low] = 1 - share
    rows[np.arange(len(x)), low + 1] = share
    bend = stiffness * np.diff(np.eye(count), 2, axis=0)
    to_steps = np.tril(np.ones((count, count)))  # value = sum of steps
    design = np.vstack([rows * weight[:, None], bend]) @ to_steps
    goal = np.concatenate([y * weight, np.zeros(count - 2)])
    bounds = np.full(count, least * 60.0)
    bounds[0] = -np.inf
    found = lsq_linear(design, goal, (bounds, np.full(count, np.inf)), tol=1e-12)
    return to_steps @ found.x


def medians(stature: np.ndarray, value: np.ndarray, step: float = 30.0) -> tuple[np.ndarray, ...]:
    """Median stature, median value and root of the count in every band of stature."""
    points = []
    for low in np.arange(840.0, 1950.0, step):
        band = (stature >= low) & (stature < low + step) & np.isfinite(value)
        if band.sum() >= 8:  # noqa: PLR2004
            points.append((np.median(stature[band]), np.median(value[band]), np.sqrt(band.sum())))
    return tuple(np.array(points).T)


def fit_median(name: str, survey: dict[str, np.ndarray]) -> np.ndarray:
    """The median at STATURES, from babies' figures below and the survey above."""
    x, y, weight = medians(survey["stature"], survey[name])
    baby = BABY_NODES.get(name, ())
    if name == "thigh":  # the babies' thigh was taken at its middle; carried to the upper thigh at the joint
        baby = tuple((s, v * 1.09) for s, v in baby)
    x = np.concatenate([[s for s, _ in baby], x])
    y = np.concatenate([[v for _, v in baby], y])
    weight = np.concatenate([np.full(len(baby), 4.0), weight])
    scale = np.median(y)
    return scale * smooth_curve(x, y / scale, weight, stiffness=12.0, least=2e-5)


def fit_power(stature: np.ndarray, ratio: np.ndarray) -> np.ndarray:
    """The Box-Cox power at STATURES that makes the outer quantiles lie even about the median, from wide bands."""
    points = []
    for low in np.arange(840.0, 1900.0, 120.0):
        band = (stature >= low) & (stature < low + 240.0) & np.isfinite(ratio)
        if band.sum() >= 60:  # noqa: PLR2004
            points.append((np.median(stature[band]), power_of(ratio[band]), np.sqrt(band.sum())))
    x, y, weight = np.array(points).T
    curve = smooth_curve(x, y, weight / weight.mean(), stiffness=8.0, least=-1.0)
    return np.interp(np.clip(STATURES, x.min(), x.max()), STATURES, curve).round(2)


def power_of(ratio: np.ndarray) -> float:
    """The Box-Cox power for one band."""
    powers = np.arange(-6.0, 3.01, 0.1)

    def lean(power: float) -> float:
        low2, low, mid, high, high2 = np.quantile(transform(ratio, power), (0.02, 0.10, 0.5, 0.90, 0.98))
        return abs(low + high - 2 * mid) + abs(low2 + high2 - 2 * mid)

    return float(min(powers, key=lean))


def transform(ratio: np.ndarray, power: np.ndarray | float) -> np.ndarray:
    power = np.where(np.abs(power) < 1e-3, 1e-3, power)  # noqa: PLR2004  # the logarithm, near enough
    return (ratio**power - 1) / power


def fit_spread(stature: np.ndarray, shift: np.ndarray) -> np.ndarray:
    """The standard deviation of the transformed ratio at STATURES, from its P10 and P90 in bands."""
    points = []
    for low in np.arange(840.0, 1950.0, 60.0):
        band = (stature >= low) & (stature < low + 60.0) & np.isfinite(shift)
        if band.sum() >= 20:  # noqa: PLR2004
            p10, p90 = np.quantile(shift[band], (0.1, 0.9))
            points.append((np.median(stature[band]), (p90 - p10) / 2.5631, np.sqrt(band.sum())))
    x, y, weight = np.array(points).T
    curve = smooth_curve(x, y / y.mean(), weight, stiffness=60.0, least=-1.0) * y.mean()
    return np.where(
        x.min() - 30 > STATURES, np.interp(x.min(), STATURES, curve), np.maximum(curve, y.min() * 0.8)
    )


def fit_lms(survey: dict[str, np.ndarray]) -> dict[str, tuple[np.ndarray, ...]]:
    """L, and M and S at STATURES, of every surveyed measurement."""
    found = {}
    for name in SURVEYED:
        if name == "stature":
            continue
        median = fit_median(name, survey)
        ratio = survey[name] / np.interp(survey["stature"], STATURES, median)
        power = fit_power(survey["stature"], ratio)
        shift = transform(ratio, np.interp(survey["stature"], STATURES, power))
        found[name] = (power, median, fit_spread(survey["stature"], shift))
    found["age"] = age_of_babies(fit_age(survey), survey)
    return found


def fit_age(survey: dict[str, np.ndarray]) -> np.ndarray:
    """The median age at STATURES [months]: WHO for babies, the survey above."""
    x, y, weight = medians(survey["stature"], survey["age"])
    above = smooth_curve(x, y / 60, weight, stiffness=12.0, least=2e-5) * 60
    lengths, ages = zip(*BABY_NODES["age"], strict=True)
    return np.where(STATURES < 860.0, np.interp(STATURES, lengths, ages), above)  # noqa: PLR2004


def age_of_babies(median: np.ndarray, survey: dict[str, np.ndarray]) -> tuple[np.ndarray, ...]:
    """Age as its logarithm: a baby's spread is the spread of length (3.4 %, WHO) over its growth in a month."""
    ratio = survey["age"] / np.interp(survey["stature"], STATURES, median)
    spread = fit_spread(survey["stature"], np.log(ratio))
    growth = np.gradient(np.log(median), STATURES)
    return np.zeros(len(STATURES)), median, np.where(STATURES < 860.0, 0.034 * STATURES * growth, spread)  # noqa: PLR2004


def scores(survey: dict[str, np.ndarray], lms: dict) -> tuple[list[str], np.ndarray]:
    """One row a child, one column a measurement: its z at the child's stature; sex stands last, scaled."""
    names = [*lms, "sex"]
    columns = []
    for name, (power, median, spread) in lms.items():
        at = lambda curve: np.interp(survey["stature"], STATURES, curve)  # noqa: B023, E731
        columns.append(transform(survey[name] / at(median), at(power)) / at(spread))
    columns.append((survey["sex"] - survey["sex"].mean()) / survey["sex"].std())
    return names, np.array(columns).T


def covariance_with_gaps(
    z: np.ndarray, rounds: int = 60, ridge: float = 0.5
) -> tuple[np.ndarray, np.ndarray]:
    """Mean and covariance of rows with gaps: expectation and maximisation with t weights."""
    mean, cov = np.nanmean(z, 0), np.diag(np.nanvar(z, 0))
    seen = np.isfinite(z)
    patterns, which = np.unique(seen, axis=0, return_inverse=True)
    for _ in range(rounds):
        total, cross, weights = np.zeros(len(mean)), np.zeros_like(cov), 0.0
        for number, known in enumerate(patterns):
            rows = z[which == number]
            if not known.any():
                continue
            gain = cov[:, known] @ np.linalg.inv(cov[np.ix_(known, known)])
            apart = rows[:, known] - mean[known]
            distance = np.einsum("ij,jk,ik->i", apart, np.linalg.inv(cov[np.ix_(known, known)]), apart)
            weight = (FREEDOM + known.sum()) / (FREEDOM + distance)
            filled = mean + apart @ gain.T
            total += weight @ filled
            shifted = filled - mean
            cross += (shifted * weight[:, None]).T @ shifted + len(rows) * (cov - gain @ cov[known])
            weights += weight.sum()
        mean = total / weights
        cov = (cross + ridge * np.eye(len(mean))) / (len(z) + ridge)
    return mean, cov


def scaled_to_bulk(z: np.ndarray, mean: np.ndarray, cov: np.ndarray) -> np.ndarray:
    """The correlation; the spreads of single measurements are already in S."""
    del z, mean
    sigma = np.sqrt(np.diag(cov))
    return cov / np.outer(sigma, sigma)


def add_derived(lms: dict, names: list[str], corr: np.ndarray) -> tuple[dict, list[str], np.ndarray]:
    """Measurements that nobody surveyed, each a sum of surveyed ones scaled to a published median."""
    at = 1160.0  # where the shares of the parts are taken: the middle of the range
    size = {n: np.interp(at, STATURES, lms[n][1] * lms[n][2]) for n in lms}
    rows, table = [np.eye(len(names))[names.index(n)] for n in names], dict(lms)
    labels = list(names)
    for name, (parts, median_of, extra) in DERIVED.items():
        row = np.zeros(len(names))
        for part, share in parts.items():
            row[names.index(part)] += share * size[part]
        own = np.sqrt(row @ corr @ row)
        median = median_of(STATURES, {n: table[n][1] for n in table})
        source = np.array(
            [np.sqrt((np.array(s) @ corr @ np.array(s))) for s in _rows_along(parts, names, lms)]
        )
        scale = extra.get("scale", 1.0)
        table[name] = (table[extra["skew_of"]][0] if "skew_of" in extra else np.ones(len(STATURES)), median, scale * source / median / np.sqrt(1 - extra["own_share"]))
        rows.append(row / own * np.sqrt(1 - extra["own_share"]))
        labels.append(name)
    change = np.array(rows)
    full = change @ corr @ change.T
    np.fill_diagonal(full, 1.0)
    return table, labels, full


def _rows_along(parts: dict[str, float], names: list[str], lms: dict) -> list[list[float]]:
    out = []
    for i in range(len(STATURES)):
        row = [0.0] * len(names)
        for part, share in parts.items():
            row[names.index(part)] += share * lms[part][1][i] * lms[part][2][i]
        out.append(row)
    return out


def write_tables(table: dict, names: list[str], corr: np.ndarray) -> None:
    """The two files of the product."""
    OUT.mkdir(parents=True, exist_ok=True)
    keep = [n for n in names if n not in AUXILIARY]
    head = "# Derived by tools/derive_body_tables.py from Snyder et al. 1977 (UM-HSRI-77-17) and the figures quoted in\n"
    head += "# tools/body_sources.py. Columns: stature [mm]. M in mm (age in months); L and S without unit.\n"
    with (OUT / "by_stature.csv").open("w") as out:
        out.write(head + "measurement,quantity," + ",".join(f"{s:.0f}" for s in STATURES) + "\n")
        for name in keep:
            if name == "sex":
                continue
            power, median, spread = table[name]
            out.write(f"{name},L," + ",".join(f"{p:.2f}" for p in power) + "\n")
            out.write(f"{name},M," + ",".join(f"{m:.1f}" for m in median) + "\n")
            out.write(f"{name},S," + ",".join(f"{s:.4f}" for s in spread) + "\n")
    index = [names.index(n) for n in keep]
    small = corr[np.ix_(index, index)]
    with (OUT / "correlation.csv").open("w") as out:
        out.write(
            "# Correlation of z at given stature; derived by tools/derive_body_tables.py (Snyder et al. 1977).\n"
        )
        out.write("measurement," + ",".join(keep) + "\n")
        for i, name in enumerate(keep):
            out.write(f"{name}," + ",".join(f"{v:.3f}" for v in small[i, : i + 1]) + "\n")


def derive(survey: dict[str, np.ndarray]) -> tuple[dict, list[str], np.ndarray]:
    """Table and correlation from these children."""
    lms = fit_lms(survey)
    names, z = scores(survey, lms)
    mean, cov = covariance_with_gaps(z)
    return add_derived(lms, names, scaled_to_bulk(z, mean, cov))


if __name__ == "__main__":
    assert body_rise_line  # the line is used by DERIVED
    write_tables(*derive(read_survey(Path(sys.argv[1]))))
