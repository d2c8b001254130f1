"""Sizes of round plots: what one stem counted stands for, and the usual plot for a density."""

from __future__ import annotations

from dataclasses import dataclass
from math import log

from rootcollar.kernel.formula import formula, unwatched

__all__ = ["PARTS_OF_ACRE", "PlotSize", "expected_stems", "fit_size", "stands_for_per_acre"]

PARTS_OF_ACRE = (1000, 300, 100, 50, 20, 10, 5)
"""Usual plots, so many to the acre, smallest plot first (radii of the last six: USFS-CSE, read; 1/1000: memory)."""

_FEWEST_STEMS = 5  # on a plot: a rule of thumb of forest mensuration (memory)
_MOST_STEMS = 15  # as above
_WANTED_STEMS = 10  # ours: about in the middle of the two
_FIGURES = 9  # decimals compared, so that floating point decides no tie


@dataclass(frozen=True, slots=True)
class PlotSize:
    """A usual plot. parts: so many to the acre. stems: expected on it. fits: within the rule of thumb of 5 to 15."""

    parts: int
    stems: float
    fits: bool


@formula("1 / plot_ac", gives="stems/ac", source="definition", plot_ac=(0.001, 1))
def stands_for_per_acre(plot_ac: float) -> float:
    """Return how many stems on an acre one stem counted on a plot stands for [stems/ac]. plot_ac: level area [ac]."""
    return 1 / plot_ac


@formula("per_acre * plot_ac", gives="stems", source="definition", per_acre=(0, 20000), plot_ac=(0.001, 1))
def expected_stems(per_acre: float, plot_ac: float) -> float:
    """Return the stems expected on a plot. per_acre: density [stems/ac]. plot_ac: level area [ac]."""
    return per_acre * plot_ac


def fit_size(per_acre: float) -> PlotSize:
    """Return the usual plot that is expected to hold nearest to ten stems; of two as near, the smaller plot.

    per_acre: density, as guessed from a first walk, > 0 [stems/ac]. Raises ValueError for 0 or less.
    """
    if not per_acre > 0:
        raise ValueError(f"want a density above 0, got {per_acre}")
    with unwatched():
        found = {parts: expected_stems(per_acre, 1 / parts) for parts in PARTS_OF_ACRE}
    parts = min(found, key=lambda one: (round(abs(log(found[one] / _WANTED_STEMS)), _FIGURES), -one))
    return PlotSize(parts, found[parts], _FEWEST_STEMS <= found[parts] <= _MOST_STEMS)
