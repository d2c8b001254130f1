"""Plots of unlike size, plots in bunches, and bunches in which only some plots are visited."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.formula import formula
from rootcollar.survey.estimate.estimate import Estimate, by_t
from rootcollar.survey.estimate.plots import enough, found_any, scaled_pulls, standard_error

__all__ = ["Bunch", "bunches", "ratio", "ratio_of", "two_stage"]

Figures = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Bunch:
    """A bunch of plots of which some were visited. plots: how many it holds. found: stems on each one visited."""

    key: str
    plots: int
    found: tuple[float, ...]


@formula("sum_y / sum_x", gives="y per x", source="arithmetic", sum_y=(0, 5000), sum_x=(1, 5000))
def ratio_of(sum_y: float, sum_x: float) -> float:
    """Return the ratio of two sums over the same plots."""
    return sum_y / sum_x


def ratio(y: Figures, x: Figures, keys: Sequence[str], sampled: float = 0.0, unit: str = "stems/ha") -> Estimate:
    """Return the ratio of sums of y and x over plots: with x the plots' areas [ha], the stems/ha of unlike plots.

    Slightly biased with few plots, and steady where y grows with x. sampled: the share of the ground that the plots
    cover. Raises BadInput for fewer than two plots, or an x that is not above 0.
    """
    above, below = np.asarray(y, dtype=np.float64), np.asarray(x, dtype=np.float64)
    enough(len(above), "the ground")
    wrong = [key for key, one in zip(keys, below.tolist(), strict=True) if not 0 < one < math.inf]
    if wrong:
        raise BadInput(
            *(Fault("a size that is not above 0", "the size of each plot", row=f"plot {one}") for one in wrong)
        )
    figure = ratio_of(float(above.sum()), float(below.sum()))
    found_any(figure)
    away = above - figure * below
    error = standard_error(float(away.var(ddof=1)), len(above), sampled) / float(below.mean())
    df = len(above) - 1.0
    pulls = scaled_pulls(away, error)
    return Estimate("ratio of sums", unit, figure, tuple(keys), pulls, df, by_t(figure, error, df))


def bunches(values: Figures, bunch: Sequence[str], sampled: float = 0.0, unit: str = "stems/ha") -> Estimate:
    """Return the mean of plots that stand in bunches, all plots of a bunch visited: the bunch is what was drawn.

    values: one a plot. bunch: its bunch. sampled: the share of all bunches that were visited.
    Raises BadInput for fewer than two bunches.
    """
    names = sorted(set(bunch))
    at = np.searchsorted(np.array(names), np.asarray(bunch))
    sums = np.bincount(at, weights=np.asarray(values, dtype=np.float64), minlength=len(names))
    sizes = np.bincount(at, minlength=len(names)).astype(np.float64)
    found = ratio(np.asarray(sums, dtype=np.float64), sizes, names, sampled, unit)
    return replace(found, way="plots in bunches")


def two_stage(found: Sequence[Bunch], bunches_in_all: int) -> Estimate:
    """Return the stems in all bunches when some bunches were drawn, and some plots in each.

    The variance is the one reckoned from a sample: between bunches, and within them a share of it only; not the one
    for known bunches (Cochran 1977, chapter 10, from memory). Degrees of freedom: bunches less one.
    Raises BadInput for fewer than two bunches, more than there are, or fewer than two plots in one.
    """
    number = len(found)
    enough(number, "bunches")
    faults = [
        Fault(f"{len(one.found)} plots visited of {one.plots}", "two or more, at most all", row=f"bunch {one.key}")
        for one in found
        if not 2 <= len(one.found) <= one.plots
    ]
    if number > bunches_in_all:
        faults.append(Fault(f"{number} bunches of {bunches_in_all}", "at most all there are"))
    if faults:
        raise BadInput(*faults)
    totals = np.array([one.plots * float(np.mean(one.found)) for one in found])
    figure = bunches_in_all * float(totals.mean())
    found_any(figure)
    between = bunches_in_all * standard_error(float(totals.var(ddof=1)), number, number / bunches_in_all)
    pulls = [scaled_pulls(totals - totals.mean(), between)]
    keys = [one.key for one in found]
    for one in found:
        inside = np.asarray(one.found, dtype=np.float64)
        part = one.plots * standard_error(float(inside.var(ddof=1)), len(inside), len(inside) / one.plots)
        pulls.append(scaled_pulls(inside - inside.mean(), part * math.sqrt(bunches_in_all / number)))
        keys += [f"{one.key}/{i}" for i in range(1, len(inside) + 1)]
    every = np.concatenate(pulls)
    df, error = number - 1.0, math.sqrt(float((every**2).sum()))
    return Estimate("bunches in two stages", "stems", figure, tuple(keys), every, df, by_t(figure, error, df))
