"""Counts that lie as by chance, and none found: exact limits. None on the plots is not none on the ground."""

from __future__ import annotations

import math

import numpy as np
from scipy.special import chdtri

from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.formula import formula
from rootcollar.survey.estimate.estimate import Curve, Estimate
from rootcollar.survey.plots.geometry import per_ha_each

__all__ = ["counted_by_chance", "most_if_clumped", "most_with_none", "none_found"]

_KIND = "exact limits of a Poisson count"
_SHORT = "It holds for stems that stand by chance; clumped ones may be more than its upper limit."
_CLUMPED = "exact limits with none found, clumping given"
_CLUMPED_SHORT = "It is no better than the clumping it was given, which nobody can see on empty plots."


@formula("-log(missed) / plots", gives="stems a plot", source="arithmetic", missed=(0.01, 0.5), plots=(1, 200))
def most_with_none(missed: float, plots: float) -> float:
    """Return the stems a plot that so many plots would all miss by chance with the share missed [0..1]."""
    return -math.log(missed) / plots


@formula(
    "clumping * (missed ** (-1 / (plots * clumping)) - 1)",
    gives="stems a plot",
    source="arithmetic",
    missed=(0.01, 0.5),
    plots=(1, 200),
    clumping=(0.1, 5),
)
def most_if_clumped(missed: float, plots: float, clumping: float) -> float:
    """Return the same for clumped stems. clumping: k of the negative binomial, > 0, smaller for tighter clumps."""
    return clumping * math.expm1(-math.log(missed) / (plots * clumping))


def none_found(keys: tuple[str, ...], plot_m2: float, clumping: float | None = None) -> Estimate:
    """Return the stems/ha when every plot, each of that level area [m2], was empty: 0, with an upper limit.

    clumping: k of the negative binomial, from an earlier survey of the species; None takes stems as standing by chance.
    Raises ValueError for no plots, or a clumping that is not above 0.
    """
    number = len(keys)
    if not number or (clumping is not None and not clumping > 0):
        raise ValueError(f"want one plot or more and a clumping above 0, got {number} and {clumping}")
    each = per_ha_each(plot_m2)

    def upper(missed: float) -> float:
        return each * (
            most_with_none(missed, number) if clumping is None else most_if_clumped(missed, number, clumping)
        )

    def quantile(shares: Worlds) -> Worlds:
        return np.array([upper(1 - share) if share >= 1 / 2 else 0.0 for share in shares.tolist()])

    curve = Curve(*((_KIND, _SHORT) if clumping is None else (_CLUMPED, _CLUMPED_SHORT)), quantile)
    return Estimate("none found", "stems/ha", 0.0, keys, np.zeros(number), number - 1.0, curve)


def counted_by_chance(count: float, keys: tuple[str, ...], all_plots_m2: float) -> Estimate:
    """Return the stems/ha from one count over all plots, for stems that stand by chance; exact limits, none included.

    all_plots_m2: level area of the plots together [m2]. Below the middle the curve is that of the lower limit, above
    it that of the upper, so that each interval is the exact one. Raises ValueError for a count below 0.
    """
    if not 0 <= count < math.inf:
        raise ValueError(f"want a count, got {count}")
    each = per_ha_each(all_plots_m2)

    def quantile(shares: Worlds) -> Worlds:
        # The limits of a Poisson mean are points of the chi-squared curve with twice the count, and 2 more above.
        low = chdtri(2 * count, 1 - shares) / 2 if count else np.zeros_like(shares)
        high = chdtri(2 * count + 2, 1 - shares) / 2
        return np.asarray(each * np.where(shares < 1 / 2, low, high))

    pull = each * math.sqrt(count / len(keys))
    pulls = np.full(len(keys), pull)
    curve = Curve(_KIND, _SHORT, quantile)
    return Estimate("one count by chance", "stems/ha", each * count, keys, pulls, len(keys) - 1.0, curve)
