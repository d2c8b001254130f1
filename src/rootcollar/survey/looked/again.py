"""Looking again: how often until a plant would have been found, and until ground may be called clear."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, inf, log

from rootcollar.kernel.formula import formula, note, unwatched

__all__ = ["Clear", "best_visits", "clear_when", "found_by_then", "looks_for", "still_there"]

_HAIR = 1e-9  # visits this close to a whole number are that number
_MOST = 10_000  # ours: more visits than anybody makes; the figures are not meant


@dataclass(frozen=True, slots=True)
class Clear:
    """When ground may be called clear. looks: clean ones that the chance of seeing asks for.

    left_pct: chance that something still stands after them [%]. look_years: the years they take. years: the larger of
    these and the life of the seed. visits: clean ones in those years. by: which of the two rules decides.
    """

    looks: int
    left_pct: float
    look_years: int
    seed_years: float
    years: int
    visits: int
    by: str


@formula("100 * (1 - (1 - chance_pct / 100) ** looks)", gives="%", source="COOPER", chance_pct=(1, 99), looks=(1, 20))
def found_by_then(chance_pct: float, looks: float) -> float:
    """Return the chance that one of several looks finds what is there [%], each look for itself.

    chance_pct: of one look [%]. The same eyes at the same season miss the same plants: change one of the two.
    """
    return 100 * (1 - float((1 - chance_pct / 100) ** looks))


@formula(
    "log(1 - sure_pct / 100) / log(1 - chance_pct / 100)",
    gives="looks",
    source="COOPER",
    sure_pct=(50, 99),
    chance_pct=(1, 90),
)
def looks_for(sure_pct: float, chance_pct: float) -> float:
    """Return the looks, not yet a whole number, after which what is there is found so surely.

    sure_pct: wanted, below 100 [%]. chance_pct: of one look, below 100 [%].
    """
    return log(1 - sure_pct / 100) / log(1 - chance_pct / 100)


@formula(
    "100 * (before_pct / 100) * (1 - chance_pct / 100) ** looks"
    " / ((before_pct / 100) * (1 - chance_pct / 100) ** looks + 1 - before_pct / 100)",
    gives="%",
    source="arithmetic",
    before_pct=(1, 99),
    chance_pct=(1, 99),
    looks=(0, 20),
)
def still_there(before_pct: float, chance_pct: float, looks: float) -> float:
    """Return the chance that something still stands after so many looks that found nothing [%].

    before_pct: the chance believed before the first look [%]. chance_pct: that one look finds it if it is there [%].
    """
    missed = before_pct / 100 * float((1 - chance_pct / 100) ** looks)
    return 100 * missed / (missed + 1 - before_pct / 100)


@formula(
    "log(-cost_look / (cost_miss * log(stays))) / log(stays)",
    gives="looks",
    source="REGAN06",
    cost_look=(1, 5),
    cost_miss=(100, 2000),
    stays=(0.1, 0.9),
)
def best_visits(cost_look: float, cost_miss: float, stays: float) -> float:
    """Return the clean looks at which the costs of looking and of missing together are least, not a whole number.

    cost_look: of one look; cost_miss: of giving up while something stands, same unit. stays: chance that it is there
    and missed in one look, 0 to 1. At or below 0 where looking never pays.
    """
    return log(-cost_look / (cost_miss * log(stays))) / log(stays)


def clear_when(
    chance_pct: float, before_pct: float, most_left_pct: float, seed_years: float, looks_a_year: float = 1.0
) -> Clear:
    """Return when ground may be called clear: by the rule of looks and the life of the seed, whichever is longer.

    chance_pct, before_pct: as `still_there`. most_left_pct: the chance of something left that is borne [%].
    seed_years: how long seed lives in the ground; one clean look cannot see a seed. looks_a_year: made in season.
    Raises ValueError for shares not between 0 and 100, years below 0, or more than 10,000 looks.
    """
    shares = (chance_pct, before_pct, most_left_pct)
    if not all(0 < one < 100 for one in shares) or not (0 <= seed_years < inf and 0 < looks_a_year < inf):
        raise ValueError(f"want shares between 0 and 100 %, got {shares}; years of 0 or more, looks above 0")
    looks = _looks(chance_pct, before_pct, most_left_pct)
    left = still_there(before_pct, chance_pct, looks)
    look_years = ceil(looks / looks_a_year - _HAIR)
    years = max(look_years, ceil(seed_years - _HAIR))
    by = "looks" if look_years >= seed_years else "seed"
    note(
        "years",
        f"the larger of {look_years} years of looks and {seed_years:g} years of seed, in whole years",
        years,
        "years",
    )
    return Clear(looks, left, look_years, seed_years, years, max(looks, ceil(years * looks_a_year - _HAIR)), by)


def _looks(chance_pct: float, before_pct: float, most_left_pct: float) -> int:
    looks = 1
    with unwatched():
        while still_there(before_pct, chance_pct, looks) > most_left_pct:
            looks += 1
            if looks > _MOST:
                raise ValueError(f"more than {_MOST} looks: {chance_pct:g} % a look is too little to wait for")
    return looks
