"""Which sets of measurements belong to a real child, and what known ones say of the others.

The deviations of one child's measurements (`relations`) are taken to follow a t distribution, so that one
odd reading or one unusual child does not weigh too much.  Given some of them, the others have a conditional
median and spread; a set as a whole has a density, by which two stories about the same card can be compared.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import sinh
from typing import TYPE_CHECKING, Final

import numpy as np

from littlefold.body.proportions import Proportion, proportions
from littlefold.body.relations import SEX_DEVIATION, Relations, relations

if TYPE_CHECKING:
    from collections.abc import Mapping

    from numpy.typing import NDArray

    from littlefold.body.measurements import Measurements, Sex

    Floats = NDArray[np.float64]

# Of the t distribution: of a whole card (at 8 and at 100 fewer slips are caught), and of one measurement that is expected
# from the others (at 8 the ranges hold what they promise; docs/measurements.md).
FREEDOM: Final = 30.0
_FREEDOM_OF_ONE: Final = 8.0
_SAME_COVARIANCE: Final = 10.0  # the covariance is taken at whole steps of this stature [mm]
_FURTHEST: Final = 5.0  # a deviation beyond this tells no more about the others than this one does


@dataclass(frozen=True, slots=True)
class Expected:
    """The conditional median of a measurement, and one standard deviation of what is not known [mm]."""

    mm: float
    spread_mm: float


@dataclass(frozen=True, slots=True, eq=False)
class BodyModel:
    """Curves over stature, and how the deviations from them go together."""

    curves: Mapping[str, Proportion]
    related: Relations

    def knows(self, name: str) -> bool:
        """Whether this is a measurement that it can judge; stature is given beside the others."""
        return name in self.curves and name in self.related.names

    def deviations(
        self, measurements: Measurements, stature: float, *, with_age: bool = True
    ) -> dict[str, float]:
        """The deviations of all that is known of this child at this stature [mm], its sex with them."""
        found = {
            name: self.curves[name].deviation(stature, reading.mm)
            for name, reading in measurements.readings
            if self.knows(name) and reading.mm > 0
        }
        if with_age and measurements.age_months:
            found["age"] = self.curves["age"].deviation(stature, measurements.age_months)
        if measurements.sex:
            found["sex"] = SEX_DEVIATION[measurements.sex]
        return {name: min(max(value, -_FURTHEST), _FURTHEST) for name, value in found.items()}

    def expect(
        self, known: Mapping[str, float], unknown: tuple[str, ...], stature: float
    ) -> dict[str, Expected]:
        """What the known deviations say of the unknown measurements at this stature [mm].

        The spread is wider for a child that is odd among the known ones.
        """
        covariance = self.related.at(stature)
        given, sought = self._rows(tuple(known)), self._rows(unknown)
        inverse = np.linalg.inv(covariance[np.ix_(given, given)])
        gain = covariance[np.ix_(sought, given)] @ inverse
        values = np.array(list(known.values()))
        left = covariance[sought, sought] - np.einsum("ij,ij->i", gain, covariance[np.ix_(sought, given)])
        oddness = (_FREEDOM_OF_ONE + float(values @ inverse @ values)) / (_FREEDOM_OF_ONE + len(known))
        spreads = np.sqrt(np.maximum(left, 0.0) * oddness)
        return {
            name: self._expected(name, stature, float(middle), float(spread))
            for name, middle, spread in zip(unknown, gain @ values, spreads, strict=True)
        }

    def _expected(self, name: str, stature: float, middle: float, spread: float) -> Expected:
        curve = self.curves[name]
        mm = curve.deviated(stature, middle)
        return Expected(mm, mm * sinh(spread * curve.spread(stature)))  # half of what lies between both ends

    def log_density(
        self, known: tuple[str, ...], lengths: Floats, statures: Floats, sex: Sex | None
    ) -> Floats:
        """The log density of sets of readings, over the logarithms of the readings, up to a constant.

        Args:
            known: The names of the columns of `lengths`; 'age' may be one of them.
            lengths: One row a set [mm; months for 'age'].
            statures: The stature of each row [mm].
            sex: Of the child, where known.
        """
        medians, spreads = self._scales(known, statures)
        deviations = (np.log(lengths) - medians) / spreads
        if sex is not None:
            known = (*known, "sex")
            deviations = np.column_stack([deviations, np.full(len(lengths), SEX_DEVIATION[sex])])
        about: Floats = np.round(statures / _SAME_COVARIANCE) * _SAME_COVARIANCE
        densities: Floats = -np.log(spreads).sum(axis=1)
        for stature in np.unique(about):
            rows = about == stature
            densities[rows] -= self._oddness(known, deviations[rows], float(stature))
        return densities

    def _oddness(self, known: tuple[str, ...], deviations: Floats, stature: float) -> Floats:
        """Minus the log density of rows of deviations, up to a constant."""
        inverse, size = self._inverse(known, stature)
        distances = np.einsum("ij,ij->i", deviations @ inverse, deviations)
        return np.asarray(size + (FREEDOM + len(known)) / 2 * np.log1p(distances / FREEDOM), dtype=np.float64)

    def _scales(self, names: tuple[str, ...], statures: Floats) -> tuple[Floats, Floats]:
        """The logarithms of the medians and the spreads, one row a stature, one column a name."""
        medians, spreads = np.empty((2, len(statures), len(names)))
        for column, name in enumerate(names):
            curve = self.curves[name]
            inside = np.clip(statures, curve.statures[0], curve.statures[-1])
            medians[:, column] = np.interp(inside, curve.statures, curve.medians) * statures / inside
            spreads[:, column] = np.interp(inside, curve.statures, curve.spreads)
        return np.log(medians), spreads

    @lru_cache(maxsize=4096)  # noqa: B019  # models are few, and live as long as the program
    def _inverse(self, names: tuple[str, ...], stature: float) -> tuple[Floats, float]:
        """The inverse covariance of these names, and half the logarithm of the determinant of the covariance."""
        rows = self._rows(names)
        covariance = self.related.at(stature)[np.ix_(rows, rows)]
        inverse: Floats = np.asarray(np.linalg.inv(covariance), dtype=np.float64)
        return inverse, float(np.linalg.slogdet(covariance)[1]) / 2

    def _rows(self, names: tuple[str, ...]) -> list[int]:
        return [self.related.names.index(name) for name in names]


@lru_cache(maxsize=1)
def body_model() -> BodyModel:
    """The model that is shipped."""
    return BodyModel(proportions(), relations())
