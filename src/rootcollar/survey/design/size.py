"""Sizes of round plots: the radius for an area, what one stem counted stands for, and the longer radius on a slope."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, cos, log, pi, sqrt

from rootcollar.kernel.formula import formula, unwatched

__all__ = [
    "PARTS_OF_ACRE", "PlotSize", "expected_stems", "fit_size", "one_radius_m", "plot_radius_m", "stands_for_per_acre",
]  # fmt: skip

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


@formula("sqrt(area_m2 / pi)", gives="m", source="geometry", area_m2=(1, 5000))
def plot_radius_m(area_m2: float) -> float:
    """Return the radius of a round plot on level ground [m]. area_m2: level area, > 0 [m2]."""
    return sqrt(area_m2 / pi)


@formula("1 / plot_ac", gives="stems/ac", source="definition", plot_ac=(0.001, 1))
def stands_for_per_acre(plot_ac: float) -> float:
    """Return how many stems on an acre one stem counted on a plot stands for [stems/ac]. plot_ac: level area [ac]."""
    return 1 / plot_ac


@formula(
    "level_radius_m / sqrt(cos(arctan(slope_pct / 100)))",
    gives="m",
    source="USFS-CSE",
    level_radius_m=(1, 40),
    slope_pct=(0, 150),
)
def one_radius_m(level_radius_m: float, slope_pct: float) -> float:
    """Return the one radius for the tape along the ground, the same in every direction, on an even slope [m].

    It makes a circle on the slope that covers the right level area. The other published way measures each distance
    level, which is longest up and down the slope; the two differ by 12 % of area at 50 %, so never mix them.
    slope_pct: rise in a hundred, the steepest way through the plot's middle [%].
    """
    return level_radius_m / sqrt(cos(atan(slope_pct / 100)))


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
