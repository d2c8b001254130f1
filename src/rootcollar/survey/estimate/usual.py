"""The usual way from a table of plots to stems: for each class and their sum the interval that holds best.

Which one that is was tried on maps of real stems: see docs/coverage.md.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from rootcollar.kernel.errors import Refusal
from rootcollar.survey.estimate.bunches import ratio
from rootcollar.survey.estimate.clumped import clumped
from rootcollar.survey.estimate.estimate import Estimate, by_t_of_log, with_curve
from rootcollar.survey.estimate.none_found import counted_by_chance
from rootcollar.survey.estimate.plots import simple
from rootcollar.survey.plots.plot import Group, Table

__all__ = ["of_classes", "usual"]

Figures = NDArray[np.float64]
Typed = Figures | Sequence[float]
_M2_IN_HA = 10_000  # a hectare [m2] (definition)


def of_classes(table: Table) -> tuple[dict[Group, Estimate], Estimate]:
    """Return the stems/ha of each group of a table, and of all together, from plots at random or on a grid.

    The sum is read from the plots' own sums: variances of classes are never added. Where all classes are counted on
    one ring, they are summed as counts, else as stems/ha, and then all are read from one kind of curve, so that classes
    and sum do not contradict each other. Raises as `usual`.
    """
    keys = tuple(plot.key for plot in table.plots)
    nested = bool(np.ptp(table.areas_m2, axis=1).any())
    found = {
        group: usual(table.counts[:, j], table.areas_m2[:, j], keys, counted=not nested)
        for j, group in enumerate(table.groups)
    }
    if nested:
        whole = np.full(len(keys), float(_M2_IN_HA))  # stems/ha are counts on a hectare each
        return found, usual(table.total_per_ha, whole, keys, counted=False)
    return found, usual(table.counts.sum(axis=1), table.areas_m2[:, 0], keys)


def usual(
    counts: Figures | Sequence[float],
    areas_m2: Figures | Sequence[float],
    keys: tuple[str, ...],
    *,
    counted: bool = True,
) -> Estimate:
    """Return the stems/ha from counts on plots of those level areas [m2].

    None found at all: exact limits. Whole counts on plots of one size, of which three or more hold a stem: the profile
    of the negative binomial. Else Student's curve on the log scale, around the mean or, for plots of unlike size, the
    ratio of sums. counted: False where the clumped curve is not to be used, as for figures turned to another area.
    Raises BadInput for fewer than two plots.
    """
    counts, areas_m2 = np.asarray(counts, dtype=np.float64), np.asarray(areas_m2, dtype=np.float64)
    if not counts.any():
        return counted_by_chance(0, keys, float(areas_m2.sum()))
    if np.ptp(areas_m2):
        return with_curve(ratio(counts, areas_m2 / _M2_IN_HA, keys), by_t_of_log)
    area_m2 = float(areas_m2[0])
    if counted and (counts == np.floor(counts)).all():
        try:
            return clumped(counts.tolist(), keys, area_m2)
        except Refusal:  # too few plots with a stem: the likelihood sets no limit
            pass
    return with_curve(simple(counts * (_M2_IN_HA / area_m2), keys), by_t_of_log)
