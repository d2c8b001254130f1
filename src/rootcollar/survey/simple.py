"""Stems from plots laid at random: mean, doubt of the mean, density and total, by Student's t."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf, log, sqrt
from statistics import mean, variance

from rootcollar.kernel.formula import formula, note
from rootcollar.survey.chances import t_point

__all__ = [
    "KIND",
    "Simple",
    "density_per_acre",
    "doubt_of_mean",
    "less_for_ground_counted",
    "most_of_none",
    "simple_random",
    "total_stems",
]

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


@formula("sqrt(variance / plots)", gives="stems/plot", source="freese1962", variance=(0.5, 200), plots=(2, 50))
def doubt_of_mean(variance: float, plots: float) -> float:
    """Return the standard error of a mean of plots on ground without end [stems/plot].

    variance: of the counts, with one degree of freedom less than plots.
    """
    return sqrt(variance / plots)


@formula(
    "error * sqrt(1 - plots / fit)",
    gives="stems/plot",
    source="freese1962",
    error=(0.1, 40),
    plots=(2, 50),
    fit=(60, 5000),
)
def less_for_ground_counted(error: float, plots: float, fit: float) -> float:
    """Return a standard error where only so many plots fit on the ground, and those counted are known [stems/plot]."""
    return error * sqrt(1 - plots / fit)


@formula("mean / plot_ac", gives="stems/ac", source="definition", mean=(0, 500), plot_ac=(0.001, 20))
def density_per_acre(mean: float, plot_ac: float) -> float:
    """Return stems on an acre [stems/ac] from stems on a plot. plot_ac: level area of a plot, > 0 [ac]."""
    return mean / plot_ac


@formula("per_acre * ground_ac", gives="stems", source="definition", per_acre=(0, 5000), ground_ac=(0.1, 500))
def total_stems(per_acre: float, ground_ac: float) -> float:
    """Return the stems on all the ground. per_acre: density [stems/ac]. ground_ac: level area of the ground [ac]."""
    return per_acre * ground_ac


@formula("-log(1 - sure_pct / 100) / plots", gives="stems/plot", source="arithmetic", sure_pct=(50, 99), plots=(1, 100))
def most_of_none(sure_pct: float, plots: float) -> float:
    """Return the most stems on a plot that go with none found on so many, where stems stand at random [stems/plot].

    One-sided: with 95 % it is about three over the number of plots. Clumped stems may be more.
    """
    return -log(1 - sure_pct / 100) / plots


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
        return Simple(0, 0, 0, 0, sure_pct, plots, None, most_of_none(sure_pct, plots))
    spread = note("variance", f"variance of {plots} plots about their mean", float(variance(map(float, counts))), "")
    error = doubt_of_mean(spread, plots)
    if fit < inf:
        error = less_for_ground_counted(error, plots, max(fit, plots))
    t = t_point(sure_pct, plots - 1)
    low = note("low", f"{middle:.6g} - {t:.6g} * {error:.6g}, at least 0", max(0.0, middle - t * error), "stems/plot")
    high = note("high", f"{middle:.6g} + {t:.6g} * {error:.6g}", middle + t * error, "stems/plot")
    return Simple(middle, error, low, high, sure_pct, plots, spread / middle)
