"""Stems from plots laid at random: mean, doubt of the mean, density and total, by Student's t."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf
from statistics import mean, variance

from rootcollar.kernel.formula import formula, note
from rootcollar.survey.chances import t_point
from rootcollar.survey.estimate import most_with_none, standard_error

__all__ = ["KIND", "Simple", "density_per_acre", "simple_random", "total_stems"]

KIND = "simple random, interval by Student's t"
_HAIR = 1e-9  # plots that fit to within this fit: floating point is not ground
_LEAST = 2  # plots; of one alone no spread can be told (definition)


@dataclass(frozen=True, slots=True)
class Simple:
    """Stems on a plot, from plots laid at random. kind: how interval and mean were come by.

    mean: [stems/plot]. error: standard error of the mean [stems/plot]. low, high: interval of the mean, never below 0
    [stems/plot]. sure_pct: of the interval [%]. plots: how many were counted. clumping: variance over mean, 1 where
    stems stand at random, more where they clump; None where nothing was counted. most_of_none: where nothing was
    counted, the most on a plot that goes with that [stems/plot]; low, high and error then tell nothing and are 0.
    """

    mean: float
    error: float
    low: float
    high: float
    sure_pct: float
    plots: int
    clumping: float | None
    most_of_none: float | None = None
    kind: str = KIND


@formula("mean / plot_ac", gives="stems/ac", source="definition", mean=(0, 500), plot_ac=(0.001, 20))
def density_per_acre(mean: float, plot_ac: float) -> float:
    """Return stems on an acre [stems/ac] from stems on a plot. plot_ac: level area of a plot, > 0 [ac]."""
    return mean / plot_ac


@formula("per_acre * ground_ac", gives="stems", source="definition", per_acre=(0, 5000), ground_ac=(0.1, 500))
def total_stems(per_acre: float, ground_ac: float) -> float:
    """Return the stems on all the ground. per_acre: density [stems/ac]. ground_ac: level area of the ground [ac]."""
    return per_acre * ground_ac


def simple_random(counts: Sequence[float], sure_pct: float, fit: float = inf) -> Simple:
    """Return the mean of plots of one size laid at random, with its interval.

    counts: stems on each plot, those without any too. fit: plots that fit on the ground,
    infinite where its area is not known. Where every plot that fits was counted
    there is no doubt left. Raises ValueError for fewer than two plots, a count below 0, or more plots than fit.
    """
    if len(counts) < _LEAST or not all(0 <= one < inf for one in counts):
        raise ValueError("want two plots or more, each count 0 or more")
    if len(counts) > fit * (1 + _HAIR):
        raise ValueError(f"{len(counts)} plots do not fit: there is room for {fit:g}")
    plots, middle = len(counts), note("mean", f"mean of {len(counts)} plots", mean(map(float, counts)), "stems/plot")
    if middle == 0:
        return Simple(0, 0, 0, 0, sure_pct, plots, None, most_with_none(1 - sure_pct / 100, plots))
    spread = note("variance", f"variance of {plots} plots about their mean", float(variance(map(float, counts))), "")
    error = standard_error(spread, plots, min(plots / fit, 1.0))
    t = t_point(sure_pct, plots - 1)
    low = note("low", f"{middle:.6g} - {t:.6g} * {error:.6g}, at least 0", max(0.0, middle - t * error), "stems/plot")
    high = note("high", f"{middle:.6g} + {t:.6g} * {error:.6g}", middle + t * error, "stems/plot")
    return Simple(middle, error, low, high, sure_pct, plots, spread / middle)
