"""Second opinions on surveys: how many plots, how well it was looked, what stands on plots."""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pint
from scipy import stats
from scipy.optimize import brentq, minimize_scalar
from shapely import box

__all__ = [
    "bell_by_density",
    "canopy_in_fractions",
    "chapman_in_fractions",
    "chapman_variance_in_fractions",
    "found_by_binomial",
    "found_by_poisson",
    "left_by_counting",
    "looks_by_search",
    "none_by_poisson",
    "part_by_least_variance",
    "pint_plots",
    "plots_by_least_variance",
    "plots_of_so_many_in_fractions",
    "share_of_ground_in_fractions",
    "spacing_by_squares",
    "stems_in_fractions",
    "swept_in_fractions",
    "there_in_fractions",
    "track_by_search",
    "two_lists_by_likelihood",
    "visits_by_least_cost",
]

UNITS: pint.UnitRegistry = pint.UnitRegistry()


def plots_of_so_many_in_fractions(endless: float, fit: float) -> float:
    """One over the plots is the sum of one over each bound."""
    return float(1 / (1 / Fraction(endless) + 1 / Fraction(fit)))


def spacing_by_squares(area_m2: float, plots: float) -> float:
    """The side of a square of which so many cover the ground, found by search."""
    return float(brentq(lambda side: box(0, 0, side, side).area * plots - area_m2, 0.01, area_m2))


def plots_by_least_variance(plots: float, part: float, whole: float) -> float:
    """The share at which the variance of two strata together is least, found by search."""
    least = minimize_scalar(
        lambda one: part**2 / one + (whole - part) ** 2 / (plots - one), bounds=(0, plots), method="bounded"
    )
    return float(least.x)


def part_by_least_variance(size: float, spread: float, cost: float) -> float:
    """Plots here for each one on ground of size, spread and cost 1, at which variance times cost is least."""
    least = minimize_scalar(
        lambda many: ((size * spread) ** 2 / many + 1) * (cost * many + 1),
        bounds=(0, 2 * size * spread),
        method="bounded",
    )
    return float(least.x)


def stems_in_fractions(per_acre: float, plot_ac: float) -> float:
    return float(Fraction(per_acre) * Fraction(str(plot_ac)))


def found_by_poisson(times_swept: float) -> float:
    """All but the chance that a place is swept not once, where sweeps fall at random."""
    return float(100 * stats.poisson.sf(0, times_swept))


def swept_in_fractions(track_m: float, width_m: float, area_m2: float) -> float:
    return float(Fraction(track_m) * Fraction(width_m) / Fraction(area_m2))


def track_by_search(wanted_pct: float, area_m2: float, width_m: float) -> float:
    """The track at which the chance of no sweep is what is left."""
    return float(
        brentq(lambda track: found_by_poisson(track * width_m / area_m2) - wanted_pct, 0, 100 * area_m2 / width_m)
    )


def bell_by_density(distance_m: float, on_line: float, sigma_m: float) -> float:
    """The bell curve's height there over its height in the middle."""
    return float(on_line * stats.norm.pdf(distance_m, scale=sigma_m) / stats.norm.pdf(0, scale=sigma_m))


def found_by_binomial(chance_pct: float, looks: float) -> float:
    return float(100 * stats.binom.sf(0, int(looks), chance_pct / 100))


def looks_by_search(sure_pct: float, chance_pct: float) -> float:
    """The power of the chance to miss that leaves what may be left."""
    return float(brentq(lambda looks: (1 - chance_pct / 100) ** looks - (1 - sure_pct / 100), 0, 1000))


def left_by_counting(before_pct: float, chance_pct: float, looks: float) -> float:
    """A thousand grounds, those with plants missed each time among those found clean."""
    missed = Fraction(1 - Fraction(str(chance_pct)) / 100) ** int(looks) * Fraction(str(before_pct)) * 10
    return float(100 * missed / (missed + 1000 - Fraction(str(before_pct)) * 10))


def visits_by_least_cost(cost_look: float, cost_miss: float, stays: float) -> float:
    least = minimize_scalar(lambda n: cost_look * n + cost_miss * stays**n, bounds=(0, 200), method="bounded")
    return float(least.x)


def two_lists_by_likelihood(one: float, other: float, both: float) -> float:
    """The whole number of stems under which so many on both lists are likeliest; the formula lies within one above."""
    many = np.arange(int(one + other - both), 2000)
    return float(many[stats.hypergeom.pmf(both, many, int(one), int(other)).argmax()])


def chapman_in_fractions(one: float, other: float, both: float) -> float:
    return float(Fraction(int(one + 1)) * int(other + 1) / int(both + 1) - 1)


def chapman_variance_in_fractions(one: float, other: float, both: float) -> float:
    a, b, m = (int(part) for part in (one, other, both))
    return float(Fraction((a + 1) * (b + 1), (m + 1) ** 2) * Fraction((a - m) * (b - m), m + 2))


def share_of_ground_in_fractions(gross_m2: float, infested_pct: float) -> float:
    return float(Fraction(gross_m2) * Fraction(str(infested_pct)) / 100)


def canopy_in_fractions(infested_m2: float, cover_pct: float) -> float:
    return share_of_ground_in_fractions(infested_m2, cover_pct)


def none_by_poisson(sure_pct: float, plots: float) -> float:
    """The mean under which none on all plots is just as unlikely as may be."""
    return float(brentq(lambda m: stats.poisson.pmf(0, m * plots) - (1 - sure_pct / 100), 0, 1000))


def pint_plots(ground_m2: float, plot_m2: float) -> float:
    """Both in acres, one over the other."""
    ground, plot = ((one * UNITS("meter ** 2")).to("acre") for one in (ground_m2, plot_m2))
    return float((ground / plot).magnitude)


def there_in_fractions(seen: float, met_pct: float) -> float:
    return float(Fraction(str(seen)) / (Fraction(str(met_pct)) / 100))
