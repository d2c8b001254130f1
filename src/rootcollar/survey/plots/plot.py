"""What a survey holds: the plots visited, empty ones too, and what was counted on each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from rootcollar.survey.plots.geometry import SlopeWay, per_ha_each
from rootcollar.survey.stand import MeasuredAt

__all__ = ["Counted", "Group", "Plot", "Ring", "Table", "Values", "expanded"]

Values = NDArray[np.float64]
"""Figures of plots: one row a plot, one column a group."""


@dataclass(frozen=True, slots=True)
class Ring:
    """A plot of a nest: the level area [m2] on which one diameter class [cm] is counted."""

    band_cm: tuple[float, float]
    area_m2: float


@dataclass(frozen=True, slots=True)
class Plot:
    """A plot that was visited, whether or not anything was found. rings: one for each class looked for there.

    stratum, cluster: the part of the ground and the bunch of plots it belongs to, "" for none. east_m, north_m: its
    centre on a level map [m]. slope_pct, slope_way: the slope [%] and how the circle was kept level. row: where it
    was typed.
    """

    key: str
    unit: str
    rings: tuple[Ring, ...]
    stratum: str = ""
    cluster: str = ""
    east_m: float | None = None
    north_m: float | None = None
    slope_pct: float = 0.0
    slope_way: SlopeWay | None = None
    row: str = ""


@dataclass(frozen=True, slots=True)
class Counted:
    """Stems of one species in one class on one plot; those that count twice at an edge are in it twice already."""

    plot: str
    species: str
    band_cm: tuple[float, float]
    count: float
    measured_at: MeasuredAt | None = None
    row: str = ""


@dataclass(frozen=True, slots=True, order=True)
class Group:
    """What one column of a table counts: a species in a diameter class [cm]."""

    species: str
    band_cm: tuple[float, float]


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """Plots by groups. counts: stems as counted; per_ha: the same on a hectare, each by the ring of its class.

    Classes are added within each plot before anything is averaged: they share their plots, so the doubt of a sum is
    that of the summed plots, never the sum of the classes' variances.
    """

    plots: tuple[Plot, ...]
    groups: tuple[Group, ...]
    counts: Values
    areas_m2: Values

    @property
    def per_ha(self) -> Values:
        """Stems on a hectare, one row a plot, one column a group."""
        return np.asarray(self.counts * np.vectorize(per_ha_each, otypes=[float])(self.areas_m2))

    @property
    def total_per_ha(self) -> Values:
        """Stems of all groups on a hectare, one a plot."""
        return np.asarray(self.per_ha.sum(axis=1))

    def of(self, species: str) -> Table:
        """Return the columns of one species."""
        kept = [i for i, group in enumerate(self.groups) if group.species == species]
        groups = tuple(self.groups[i] for i in kept)
        return Table(self.plots, groups, self.counts[:, kept], self.areas_m2[:, kept])


def expanded(plots: Sequence[Plot], counted: Sequence[Counted]) -> Table:
    """Return plots by groups, both in key order: 0 where nothing was counted on a plot that was visited.

    The plots must have been checked (`check_survey`). Raises KeyError for a count on an unlisted plot or a class
    without a ring there.
    """
    rows = tuple(sorted(plots, key=lambda one: one.key))
    groups = tuple(sorted({Group(one.species, one.band_cm) for one in counted}))
    at = {plot.key: i for i, plot in enumerate(rows)}
    column = {group: j for j, group in enumerate(groups)}
    counts = np.zeros((len(rows), len(groups)))
    for one in counted:
        counts[at[one.plot], column[Group(one.species, one.band_cm)]] += one.count
    areas = [[{ring.band_cm: ring.area_m2 for ring in plot.rings}[group.band_cm] for group in groups] for plot in rows]
    return Table(rows, groups, counts, np.array(areas, dtype=np.float64).reshape(counts.shape))
