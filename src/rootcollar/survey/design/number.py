"""How many plots: enough that the mean comes out within a wanted share of the truth, as sure as wanted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor, inf
from statistics import mean, stdev

from rootcollar.kernel.formula import formula, unwatched
from rootcollar.survey.chances import normal_point, t_point

__all__ = [
    "USUALLY_SURE_PCT",
    "PlotsNeeded",
    "plots_for_endless",
    "plots_needed",
    "plots_of_so_many",
    "plots_that_fit",
    "spread_pct",
]

USUALLY_SURE_PCT = 95.0  # practice: what most surveys ask for
_HAIR = 1e-9  # a number of plots this close to a whole one is that whole one: floating point is not a plot
_LEAST = 2  # plots; of one alone no spread can be told (definition)


@dataclass(frozen=True, slots=True)
class PlotsNeeded:
    """How many plots, and by what.

    plots: to lay. exact: before rounding up. t: the point of Student's t with one degree of freedom less than plots.
    whole: every plot that fits is needed, so it is a full count.
    """

    plots: int
    exact: float
    t: float
    whole: bool = False


@formula(
    "(t * spread_pct / within_pct) ** 2",
    gives="plots",
    source="MU-NR3110",
    t=(1, 4),
    spread_pct=(10, 300),
    within_pct=(5, 50),
)
def plots_for_endless(t: float, spread_pct: float, within_pct: float) -> float:
    """Return the plots needed on ground so large that they cover next to none of it.

    t: point of Student's t. spread_pct: standard deviation of plots over their mean [%]. within_pct: of the mean [%].
    """
    return (t * spread_pct / within_pct) ** 2


@formula("endless / (1 + endless / fit)", gives="plots", source="MU-NR3110", endless=(1, 5000), fit=(2, 100000))
def plots_of_so_many(endless: float, fit: float) -> float:
    """Return the plots needed where only so many fit on the ground (finite population).

    endless: plots needed on endless ground. fit: ground over plot area.
    """
    return endless / (1 + endless / fit)


@formula("ground_m2 / plot_m2", gives="plots", source="definition", ground_m2=(2000, 1e6), plot_m2=(1, 2000))
def plots_that_fit(ground_m2: float, plot_m2: float) -> float:
    """Return how many plots the ground has room for, not a whole number. Level areas [m2]."""
    return ground_m2 / plot_m2


def plots_needed(
    spread_pct: float, within_pct: float, sure_pct: float = USUALLY_SURE_PCT, fit: float = inf
) -> PlotsNeeded:
    """Return the smallest number of plots that is enough by its own t.

    t falls as plots are added, so the usual back and forth between t and plots ends at this number, or swings between
    it and the one below; the larger is taken. spread_pct, within_pct: as `plots_for_endless`, > 0. fit: how many plots
    fit on the ground; infinite where its area is not known. Raises ValueError for figures at or below 0.
    """
    if not (0 < spread_pct < inf and 0 < within_pct < inf and fit > 0):
        raise ValueError(f"want figures above 0, got {spread_pct}, {within_pct} and {fit}")
    with unwatched():
        plots = max(_LEAST, _up(_needed(normal_point(sure_pct), spread_pct, within_pct, fit)))
        while plots < fit and _up(_needed(t_point(sure_pct, plots - 1), spread_pct, within_pct, fit)) > plots:
            plots += 1
    t = t_point(sure_pct, plots - 1)
    exact = _needed(t, spread_pct, within_pct, fit)
    return PlotsNeeded(max(1, floor(fit)), exact, t, True) if plots >= fit else PlotsNeeded(plots, exact, t)


def spread_pct(counts: Sequence[float]) -> float:
    """Return the standard deviation of plots over their mean [%], from counts on plots of one size.

    Raises ValueError for fewer than two counts, or when nothing was counted at all: the spread is then not known.
    """
    if len(counts) < _LEAST or not sum(counts) > 0:
        raise ValueError("want two counts or more, and something counted")
    return 100 * stdev(counts) / mean(counts)


def _needed(t: float, spread: float, within: float, fit: float) -> float:
    endless = plots_for_endless(t, spread, within)
    return endless if fit == inf else plots_of_so_many(endless, fit)


def _up(plots: float) -> int:
    return ceil(plots - _HAIR)
