"""From the rows of a tally to stands, their totals and their density."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np

from rootcollar.kernel.doubt import Doubt, Worlds, between, sure
from rootcollar.kernel.formula import formula
from rootcollar.kernel.rounding import to_step
from rootcollar.survey.stand import Stand, TallyRow

__all__ = ["stand_key", "stands", "stems_per_acre", "total"]

_MM_IN_CM = 0.1  # a millimetre [cm] (definition)


def stand_key(unit: str, species: str, band_cm: tuple[float, float]) -> str:
    """Return the name of a stand, its band to the millimetre.

    >>> stand_key("bench", "rhca3", (2.54, 5.08))
    'bench/rhca3/2.5-5.1cm'
    """
    low, high = (to_step(one, _MM_IN_CM) for one in band_cm)
    return f"{unit}/{species}/{low:.4g}-{high:.4g}cm"


def stands(rows: Iterable[TallyRow], doubt: Doubt) -> tuple[Stand, ...]:
    """Return one stand a row, in key order: sure where no range was given, else worlds around the count.

    The doubt of a stand is named by its key, so that it stays the same whatever else is counted. A row that says
    there are none, for sure, makes no stand. Raises ValueError for two rows of one key, or a range that does not
    hold its count.
    """
    found: dict[str, Stand] = {}
    for row in rows:
        key = stand_key(row.unit, row.species, row.band_cm)
        if key in found:
            raise ValueError(f"two rows for {key}")
        found[key] = Stand(
            key, row.unit, row.species, row.band_cm, _stems(key, row, doubt), row.measured_at, row.crown_m,
            row.height_m, row.fruiting, row.thicket, row.keep_inside,
        )  # fmt: skip
    return tuple(found[key] for key in sorted(found) if found[key].stems.any())


def _stems(key: str, row: TallyRow, doubt: Doubt) -> Worlds:
    if row.low is None and row.high is None:
        return sure(row.count)
    low = row.count if row.low is None else row.low
    high = row.count if row.high is None else row.high
    return doubt.worlds(key, row.count, between(low, row.count, high))


def total(some: Sequence[Stand]) -> Worlds:
    """Return the stems of several stands together, world by world; 0 for none."""
    return np.asarray(sum((one.stems for one in some), start=sure(0)))


@formula("stems / area_acre", gives="stems/ac", source="definition", stems=(0, 100000), area_acre=(0.01, 1000))
def stems_per_acre(stems: Worlds, area_acre: float) -> Worlds:
    """Return the density [stems/ac] of a count [stems] on an area [ac], > 0; worlds in, worlds out."""
    return stems / area_acre
