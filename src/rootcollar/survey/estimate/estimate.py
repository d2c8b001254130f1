"""An estimate from plots: its figure, the pull of each plot on it, and the curve its intervals are read from."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from scipy.special import stdtrit

from rootcollar.kernel.doubt import Worlds

__all__ = [
    "USUAL",
    "Curve",
    "Estimate",
    "Limits",
    "by_t",
    "by_t_of_log",
    "limits",
    "on_area",
    "per_area",
    "scaled",
    "with_curve",
]

Pulls = NDArray[np.float64]

USUAL = 0.8  # the share an interval is meant to hold where nobody says: the house shows 10 to 90 %
_T = "t"
_T_SHORT = (
    "On clumped counts it holds the truth less often than it says, the fewer the plots the less, "
    "and more often from below than from above."
)
_LOG_T = "t on the log scale"
_LOG_T_SHORT = (
    "On clumped counts it is still a little short, more so from below than from above; and it cannot reach 0, so it "
    "says nothing of a plant that may not be there at all."
)
_M2_IN_HA = 10_000  # a hectare [m2] (definition)


@dataclass(frozen=True, slots=True, eq=False)
class Curve:
    """Where intervals come from. kind: its name. falls_short: what is known against it, in a sentence.

    quantile: for shares of belief in (0, 1) the figures below which they lie, never below 0, never falling.
    """

    kind: str
    falls_short: str
    quantile: Callable[[Worlds], Worlds]


@dataclass(frozen=True, slots=True, eq=False)
class Estimate:
    """A figure with its doubt. way: the estimator in words. unit: of figure and doubt, as "stems/ha", "%" or "stems".

    keys, pulls: for each sampling unit how far it pulls the figure; their squares add up to the variance, and the
    products of two estimates' pulls to their covariance, because both come from the same plots. df: degrees of freedom.
    """

    way: str
    unit: str
    figure: float
    keys: tuple[str, ...]
    pulls: Pulls
    df: float
    curve: Curve

    @property
    def standard_error(self) -> float:
        """The standard error, in the figure's own unit."""
        return math.sqrt(float((self.pulls**2).sum()))


@dataclass(frozen=True, slots=True)
class Limits:
    """An interval: low, high, in the figure's unit; level: the share [0..1] it is meant to hold; kind, falls_short."""

    low: float
    high: float
    level: float
    kind: str
    falls_short: str


def limits(estimate: Estimate, level: float = USUAL) -> Limits:
    """Return the equal-tailed interval of that level, between 0 and 1. Raises ValueError for another level."""
    if not 0 < level < 1:
        raise ValueError(f"want a level between 0 and 1, got {level}")
    low, high = estimate.curve.quantile(np.array([(1 - level) / 2, (1 + level) / 2]))
    return Limits(float(low), float(high), level, estimate.curve.kind, estimate.curve.falls_short)


def by_t(figure: float, standard_error: float, df: float) -> Curve:
    """Return Student's curve around a figure, cut off at 0. df: degrees of freedom, > 0."""
    return Curve(_T, _T_SHORT, lambda shares: np.maximum(figure + standard_error * stdtrit(df, shares), 0))


def by_t_of_log(figure: float, standard_error: float, df: float) -> Curve:
    """Return Student's curve around the logarithm of a figure > 0, its error by the share it is of the figure."""
    share = standard_error / figure
    return Curve(_LOG_T, _LOG_T_SHORT, lambda shares: np.asarray(figure * np.exp(share * stdtrit(df, shares))))


def with_curve(estimate: Estimate, make: Callable[[float, float, float], Curve]) -> Estimate:
    """Return the same estimate read from another curve of figure, standard error and degrees of freedom."""
    return replace(estimate, curve=make(estimate.figure, estimate.standard_error, estimate.df))


def scaled(estimate: Estimate, times: float, unit: str) -> Estimate:
    """Return the estimate times a number > 0 that is known without error, in its new unit; same kind of interval."""
    if not 0 < times < math.inf:
        raise ValueError(f"want a finite number above 0, got {times}")
    curve = estimate.curve
    there = replace(curve, quantile=lambda shares: np.asarray(curve.quantile(shares) * times))
    return replace(estimate, unit=unit, figure=estimate.figure * times, pulls=estimate.pulls * times, curve=there)


def on_area(estimate: Estimate, area_m2: float) -> Estimate:
    """Return the stems on an area [m2], > 0, known without error, from an estimate in stems/ha.

    Raises ValueError for an estimate in another unit.
    """
    if estimate.unit != "stems/ha":
        raise ValueError(f"want stems/ha, got {estimate.unit}")
    return scaled(estimate, area_m2 / _M2_IN_HA, "stems")


def per_area(estimate: Estimate, area_m2: float) -> Estimate:
    """Return the stems/ha from the stems on an area [m2], > 0, known without error.

    Raises ValueError for an estimate in another unit.
    """
    if estimate.unit != "stems":
        raise ValueError(f"want stems, got {estimate.unit}")
    return scaled(estimate, _M2_IN_HA / area_m2, "stems/ha")
