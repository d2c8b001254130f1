"""Two observers who walk the same ground without telling each other: what both found tells how much both missed."""

from __future__ import annotations

from dataclasses import dataclass
from math import log, sqrt

import numpy as np
from scipy.special import ndtri

from rootcollar.kernel.doubt import Doubt, Worlds
from rootcollar.kernel.formula import formula

__all__ = ["ALIKE", "TwoWalks", "chapman", "chapman_variance", "lincoln_petersen", "standing"]

ALIKE = (
    "Stems that one observer misses are missed by the other too, so this is the least that stood there. In one trial "
    "with 150 stakes two observers came to 92 (Burnham, Anderson & Laake 1980)."
)


@dataclass(frozen=True, slots=True)
class TwoWalks:
    """Stems found by one observer, by the other, and by both; told apart by tags or by a map, never by number."""

    one: int
    other: int
    both: int

    @property
    def seen(self) -> int:
        """Stems that somebody found."""
        return self.one + self.other - self.both


@formula("one * other / both", gives="stems", source="CHAPMAN51", one=(10, 200), other=(10, 200), both=(1, 10))
def lincoln_petersen(one: float, other: float, both: float) -> float:
    """Return the stems standing, by plain proportion; too high for few found by both. Arguments as `TwoWalks`."""
    return one * other / both


@formula(
    "(one + 1) * (other + 1) / (both + 1) - 1",
    gives="stems",
    source="CHAPMAN51",
    one=(10, 200),
    other=(10, 200),
    both=(0, 10),
)
def chapman(one: float, other: float, both: float) -> float:
    """Return the stems standing, with Chapman's mending for few found by both. Arguments as `TwoWalks`."""
    return (one + 1) * (other + 1) / (both + 1) - 1


@formula(
    "(one + 1) * (other + 1) * (one - both) * (other - both) / ((both + 1) ** 2 * (both + 2))",
    gives="",
    source="CHAPMAN51",
    one=(10, 200),
    other=(10, 200),
    both=(0, 10),
)
def chapman_variance(one: float, other: float, both: float) -> float:
    """Return the variance of `chapman` (Seber's). Arguments as `TwoWalks`."""
    return (one + 1) * (other + 1) * (one - both) * (other - both) / ((both + 1) ** 2 * (both + 2))


def standing(walks: TwoWalks, doubt: Doubt, name: str) -> Worlds:
    """Return the stems standing as worlds: Chapman's figure, then its doubt, never fewer than were seen.

    The stems that nobody saw are taken to be log-normal around the best figure with Chapman's variance (memory: as
    counts of marked animals are given). Where each stem was found by both, nobody knows of another and no doubt is
    left. `ALIKE` belongs beside the figure. name: of the ground walked.
    Raises ValueError for figures below 0, or more found by both than by one.
    """
    if not 0 <= walks.both <= min(walks.one, walks.other):
        raise ValueError(f"want both from 0 to the fewer of the two, got {walks}")
    best = chapman(walks.one, walks.other, walks.both)
    unseen = best - walks.seen
    if unseen <= 0:
        return np.array([float(walks.seen)])
    wide = sqrt(log(1 + chapman_variance(walks.one, walks.other, walks.both) / unseen**2))
    return doubt.worlds(name, best, lambda ranks: np.asarray(walks.seen + unseen * np.exp(wide * ndtri(ranks))))
