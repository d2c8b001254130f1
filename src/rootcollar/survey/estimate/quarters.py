"""Distances instead of plots: the nearest stem in each of four quarters at each point.

It takes stems as standing by chance. Clumped ones come out too few: it is not for thickets.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import chdtri, gammainc, ndtri

from rootcollar.kernel.errors import BadInput, Fault, Refusal
from rootcollar.kernel.formula import formula
from rootcollar.survey.estimate.estimate import Curve, Estimate
from rootcollar.survey.estimate.plots import scaled_pulls

__all__ = ["QuarterPoint", "cottam_per_ha", "pollard_per_ha", "quarters", "vacant_factor"]

_EXACT = "exact chi-squared limits of Pollard"
_NORMAL = "normal limits of Pollard"
_SHORT = "It holds only for stems that stand by chance: clumped ones come out too few, and the limits do not show it."
_VACANT = "chi-squared limits, thinned for vacant quarters"
_VACANT_SHORT = _SHORT + " How many quarters were vacant is taken as sure (ours)."
_LEAST_FOR_NORMAL = 8  # points: the normal limits are given for more than 7 (mitchell2015, section 5)
_GAMMA = 3 / 2  # shape of the curve of distances cut off by the reach of the search (mitchell2015, appendix D)


@dataclass(frozen=True, slots=True)
class QuarterPoint:
    """A point and the level distance [m] to the nearest stem in each quarter; None where none stood within reach."""

    key: str
    metres: tuple[float | None, float | None, float | None, float | None]
    row: str = ""


@formula(
    "10000 * 4 * (4 * points - 1) / (pi * sum_squares_m2)",
    gives="stems/ha",
    source="mitchell2015",
    points=(2, 60),
    sum_squares_m2=(1, 5000),
)
def pollard_per_ha(points: float, sum_squares_m2: float) -> float:
    """Return the stems/ha from points with four distances each, by Pollard: unbiased. sum_squares_m2: of all [m2]."""
    return 100 * 100 * 4 * (4 * points - 1) / (math.pi * sum_squares_m2)


@formula("10000 * factor / mean_m ** 2", gives="stems/ha", source="mitchell2015", mean_m=(0.2, 20), factor=(0.5, 1))
def cottam_per_ha(mean_m: float, factor: float = 1.0) -> float:
    """Return the stems/ha from the mean distance [m] of the filled quarters, by Cottam and Curtis.

    factor: for vacant quarters (`vacant_factor`). Older than Pollard's, biased a little upwards.
    """
    return 100 * 100 * factor / mean_m**2


def vacant_factor(share: float) -> float:
    """Return what the density from the filled quarters is multiplied by, when that share [0..1) of quarters is vacant.

    The distances are cut short by the reach of the search, so the share filled alone would leave too many stems.
    Source: Mitchell 2015, appendix D. Raises ValueError for another share.

    >>> round(vacant_factor(0.10), 4)
    0.784
    """
    if not 0 <= share < 1:
        raise ValueError(f"want a share from 0 to below 1, got {share}")
    return (float(gammainc(_GAMMA, -math.log(share))) / (1 - share)) ** 2 if share else 1.0


def quarters(points: Sequence[QuarterPoint], *, exact: bool = True) -> Estimate:
    """Return the stems/ha of points with four quarters each: Pollard's, or thinned where quarters are vacant.

    exact: limits from the chi-squared curve of the sum of squares; else the normal ones that some texts print for the
    same data. Raises BadInput for no points, a distance that is not above 0, fewer than two quarters filled; Refusal
    for normal limits with fewer than 8 points or with vacant quarters.
    """
    _checked(points)
    squares = np.array([[0.0 if one is None else one**2 for one in point.metres] for point in points])
    near = squares[squares > 0]
    number, filled = len(points), len(near)
    vacant = filled < squares.size
    if not exact and (vacant or number < _LEAST_FOR_NORMAL):
        limit = f"printed for {_LEAST_FOR_NORMAL} points or more, every quarter filled (Mitchell 2015)"
        raise Refusal("normal limits of distances", limit=limit, do="Take the exact limits")
    if vacant:
        figure = cottam_per_ha(float(np.sqrt(near).mean()), vacant_factor(1 - filled / squares.size))
    else:
        figure = pollard_per_ha(number, float(near.sum()))
    # Pollard's variance is the figure squared over the quarters less two
    pulls = scaled_pulls(-(squares.sum(axis=1) - squares.sum(axis=1).mean()), figure / math.sqrt(max(filled - 2, 1)))
    keys = tuple(point.key for point in points)
    if exact:
        kind, short = (_VACANT, _VACANT_SHORT) if vacant else (_EXACT, _SHORT)
        curve = Curve(kind, short, lambda shares: figure * chdtri(2 * filled, 1 - shares) / (2 * (filled - 1)))
    else:
        curve = Curve(_NORMAL, _SHORT, lambda shares: _normal(number, float(near.sum()), shares))
    way = "nearest stem in four quarters"
    return Estimate(way, "stems/ha", figure, keys, pulls, 4 * number - 1.0, curve)


def _normal(points: int, sum_squares_m2: float, shares: NDArray[np.float64]) -> NDArray[np.float64]:
    roots = np.asarray(ndtri(shares)) + math.sqrt(4 * 4 * points - 1)
    return np.asarray(100 * 100 * np.maximum(roots, 0) ** 2 / (math.pi * sum_squares_m2))


def _checked(points: Sequence[QuarterPoint]) -> None:
    faults, keys = [], set()
    for point in points:
        row = point.row or f"point {point.key}"
        if point.key in keys:
            faults.append(Fault(f"point {point.key} twice", "each point once", row=row, field="point"))
        keys.add(point.key)
        wrong = [one for one in point.metres if one is not None and not 0 < one < math.inf]
        faults += [Fault(f"a distance of {one:g} m", "above 0, or nothing where vacant", row=row) for one in wrong]
    if not faults and sum(one is not None for point in points for one in point.metres) < 2:
        faults.append(Fault("fewer than two stems at all points", "two or more, else count plots"))
    if faults:
        raise BadInput(*faults)
