"""Several visits to many places: on how many of them it stands, met or not, and the chance to meet it in one visit."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from scipy.optimize import brentq

from rootcollar.kernel.formula import formula, note
from rootcollar.survey.looked.again import found_by_then

__all__ = ["Occupied", "more_than_seen_pct", "occupied", "there_share"]

_HAIR = 1e-9  # no chance looked for is nearer to 0 or 1 than this


@dataclass(frozen=True, slots=True)
class Occupied:
    """What visits told. seen: share of places where it was met. there: share where it is, 0 to 1.

    chance_pct: to meet it in one visit to a place where it is [%].
    """

    seen: float
    there: float
    chance_pct: float


@formula("seen / (met_pct / 100)", gives="", source="MACK02", seen=(0.05, 0.5), met_pct=(50, 99))
def there_share(seen: float, met_pct: float) -> float:
    """Return the share of places where it is. seen: where it was met. met_pct: chance to meet it in all visits [%]."""
    return seen / (met_pct / 100)


@formula("100 * (there / seen - 1)", gives="%", source="MACK02", there=(0.5, 1), seen=(0.05, 0.5))
def more_than_seen_pct(there: float, seen: float) -> float:
    """Return how many more places it is on than it was met on [%]. there, seen: as `Occupied`."""
    return 100 * (there / seen - 1)


def occupied(met: Sequence[int], visits: int) -> Occupied:
    """Return on what share of places it is: the likeliest, one chance to meet it everywhere and every time.

    met: for each place, on how many visits it was met. visits: to each place alike, at least 2. It may not come or go
    between visits, and places must be chosen without regard to it. Raises ValueError for visits below 2, a place met
    more often than visited, and where it was met nowhere: then no share is to be told.
    """
    if visits < 2 or not all(0 <= one <= visits for one in met) or not any(met):
        raise ValueError("want 2 visits or more, no place met oftener than visited, and one place met")
    places = sum(one > 0 for one in met)
    seen, mean_met = places / len(met), sum(met) / places
    if mean_met <= 1:  # never met twice: any small chance fits as well, and it may be everywhere
        chance = sum(met) / (len(met) * visits)
        return Occupied(seen, 1.0, 100 * chance)
    chance = _chance(mean_met, visits)
    there = there_share(seen, found_by_then(100 * chance, visits))
    if there > 1:
        chance = note("chance", "met over visited, it being everywhere", sum(met) / (len(met) * visits), "")
        return Occupied(seen, 1.0, 100 * chance)
    return Occupied(seen, there, 100 * chance)


def _chance(mean_met: float, visits: int) -> float:
    """Return the chance under which places met at all are met so often on average."""
    if mean_met >= visits:
        return 1.0
    found = brentq(lambda p: visits * p / (1 - (1 - p) ** visits) - mean_met, _HAIR, 1 - _HAIR, xtol=_HAIR)
    return note("chance", f"places met at all were met on {mean_met:.6g} of {visits} visits", float(found), "")
