"""Means over plots: laid at random or on a grid, in strata, and sorted into strata afterwards.

The rule for plots at random is used for a grid too, where it is as a rule on the safe side (Lund & Thomas 1989, read
in outline).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from rootcollar.kernel.errors import BadInput, Fault, Refusal
from rootcollar.kernel.formula import formula
from rootcollar.survey.estimate.estimate import Estimate, by_t

__all__ = ["after_strata", "enough", "found_any", "satterthwaite", "scaled_pulls", "simple", "standard_error", "strata"]

Figures = NDArray[np.float64]
Part = Callable[[str, int, float], float]  # of a stratum: name, plots, share of the ground -> times its variance


@formula(
    "sqrt(variance / plots * (1 - sampled))",
    gives="of the figure",
    source="freese1962",
    variance=(0, 400),
    plots=(2, 200),
    sampled=(0, 0.9),
)
def standard_error(variance: float, plots: float, sampled: float) -> float:
    """Return the standard error of a mean from the variance between plots. sampled: the share of all there are [0..1].

    The unit is that of the plots' figures.
    """
    return math.sqrt(variance / plots * (1 - sampled))


def simple(values: Figures, keys: Sequence[str], sampled: float = 0.0, unit: str = "stems/ha") -> Estimate:
    """Return the mean of plots at random or on a grid, each a figure on the same footing (as stems/ha).

    sampled: the share of the ground that the plots cover [0..1]; it matters above one part in twenty.
    Raises BadInput for fewer than two plots.
    """
    y = np.asarray(values, dtype=np.float64)
    enough(len(y), "the ground")
    figure = float(y.mean())
    found_any(figure)
    error = standard_error(float(y.var(ddof=1)), len(y), sampled)
    pulls = scaled_pulls(y - figure, error)
    df = len(y) - 1.0
    return Estimate("mean of plots", unit, figure, tuple(keys), pulls, df, by_t(figure, error, df))


def strata(
    values: Figures,
    keys: Sequence[str],
    stratum: Sequence[str],
    areas: Mapping[str, float],
    sampled: Mapping[str, float] | None = None,
) -> Estimate:
    """Return the mean [stems/ha] of a ground laid out in strata: each stratum's mean, weighed by its area.

    areas: of every stratum, any one unit. sampled: the share of each that its plots cover, 0 where left out.
    Degrees of freedom by Satterthwaite. Raises BadInput for a stratum with one plot, none, or without an area.
    """

    def part(name: str, count: int, _share: float) -> float:
        return (1 - (sampled or {}).get(name, 0.0)) / count

    return _weighed("strata", values, keys, stratum, areas, part)


def after_strata(
    values: Figures, keys: Sequence[str], stratum: Sequence[str], areas: Mapping[str, float], sampled: float = 0.0
) -> Estimate:
    """Return the mean [stems/ha] of plots sorted into strata after the walk, weighed by the strata's areas.

    The plots of each stratum came by chance, which adds to the doubt (Cochran 1977, section 5A.9, from memory).
    Arguments and errors as `strata`; sampled: the share of the whole ground.
    """
    count = len(np.asarray(values))

    def part(_name: str, _n: int, share: float) -> float:
        chance = (1 - share) / (share * count) ** 2
        return (1 - sampled) / (share * count) + chance

    return _weighed("strata drawn after the walk", values, keys, stratum, areas, part)


def _weighed(
    way: str, values: Figures, keys: Sequence[str], stratum: Sequence[str], areas: Mapping[str, float], part: Part
) -> Estimate:
    y, names = np.asarray(values, dtype=np.float64), np.asarray(stratum)
    _areas_known(names, areas)
    whole = sum(areas.values())
    figure, pulls, parts = 0.0, np.zeros(len(y)), []
    for name in sorted(areas):
        here = names == name
        count, share = int(here.sum()), areas[name] / whole
        enough(count, f"stratum {name!r}")
        mean = float(y[here].mean())
        variance = share**2 * float(y[here].var(ddof=1)) * part(name, count, share)
        figure += share * mean
        pulls[here] = scaled_pulls(y[here] - mean, math.sqrt(variance))
        parts.append((variance, count - 1.0))
    found_any(figure)
    df = satterthwaite(parts)
    error = math.sqrt(sum(variance for variance, _ in parts))
    return Estimate(way, "stems/ha", figure, tuple(keys), pulls, df, by_t(figure, error, df))


def satterthwaite(parts: Sequence[tuple[float, float]]) -> float:
    """Return the degrees of freedom of a sum of variances, each with its own; of all of them where none varies."""
    below = sum(variance**2 / df for variance, df in parts)
    total = sum(variance for variance, _ in parts)
    return total**2 / below if below > 0 else sum(df for _, df in parts)


def scaled_pulls(away: Figures, error: float) -> Figures:
    """Return pulls along the deviations whose squares add up to the squared error."""
    length = math.sqrt(float((away**2).sum()))
    return away * (error / length) if length > 0 else np.zeros(len(away))


def found_any(figure: float) -> None:
    """Raise Refusal for a figure of 0: plots that are all empty have no spread, yet leave room for stems elsewhere."""
    if figure == 0:
        limit = "none on every plot looks like no doubt at all, and is not"
        raise Refusal("an interval from plots that are all empty", limit=limit, do="Ask for the limit with none found")


def enough(count: int, where: str) -> None:
    """Raise BadInput for fewer than two plots. where: of what, in words."""
    if count < 2:
        raise BadInput(Fault(f"{count} plots in {where}", "two or more: one plot tells nothing of the spread"))


def _areas_known(names: Figures, areas: Mapping[str, float]) -> None:
    unknown = sorted(set(names.tolist()) - set(areas))
    wrong = [name for name, area in areas.items() if not 0 < area < math.inf]
    faults = [Fault(f"stratum {name!r} without an area", "the area of every stratum") for name in unknown]
    faults += [Fault(f"an area of {areas[name]:g} for stratum {name!r}", "an area above 0") for name in wrong]
    if faults:
        raise BadInput(*faults)
