"""Sharing plots out among strata: by size, by size and spread, or by cost too."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor, inf, sqrt
from typing import Literal

from rootcollar.kernel.formula import formula

__all__ = ["SHARED_BY", "SharedBy", "Stratum", "share_out", "stratum_part", "stratum_plots"]

SharedBy = Literal["size", "size and spread", "size, spread and cost"]
SHARED_BY: tuple[SharedBy, ...] = ("size", "size and spread", "size, spread and cost")
"""Proportional, Neyman's and the cheapest allocation of the textbooks (Cochran 1977, memory)."""

_LEAST = 2  # plots in a stratum; with fewer its spread cannot be told (practice)


@dataclass(frozen=True, slots=True)
class Stratum:
    """Ground of one kind. size: its area, or the plots that fit, one unit throughout.

    spread: standard deviation of its plots, as guessed or tried; cost: of one plot there, in any one unit.
    most: plots that fit, infinite where nobody counted.
    """

    key: str
    size: float
    spread: float | None = None
    cost: float | None = None
    most: float = inf


@formula("size * spread / sqrt(cost)", gives="", source="cochran1977", size=(1, 5000), spread=(0.1, 100), cost=(1, 500))
def stratum_part(size: float, spread: float, cost: float) -> float:
    """Return the weight of a stratum in sharing out. Arguments as `Stratum`; 1 for what does not count."""
    return size * spread / sqrt(cost)


@formula("plots * part / whole", gives="plots", source="cochran1977", plots=(4, 500), part=(1, 100), whole=(100, 1000))
def stratum_plots(plots: float, part: float, whole: float) -> float:
    """Return the plots of a stratum before rounding. plots: in all. part: its weight. whole: the weights together."""
    return plots * part / whole


def share_out(plots: int, strata: Sequence[Stratum], by: SharedBy) -> dict[str, int]:
    """Return whole plots by stratum, in key order: two or more in each, none beyond what fits, together as asked.

    Each plot beyond the least goes where it takes most off the doubt of the total: to the largest part over
    sqrt(n * (n + 1)), n being the plots there already, ties by key (Wright's exact sharing, memory). Where no bound
    binds, this rounds `stratum_plots`. Raises ValueError for strata of one key, a size that is not above 0, a spread
    or cost that the way needs and that is not known or not above 0, or plots that the strata cannot take.
    """
    parts = {one.key: _part(one, by) for one in sorted(strata, key=lambda one: one.key)}
    most = {one.key: plots if one.most == inf else floor(one.most) for one in strata}
    shared = {key: min(_LEAST, most[key]) for key in parts}
    if len(parts) < len(strata) or not sum(shared.values()) <= plots <= sum(most.values()):
        raise ValueError(f"cannot share {plots} plots among {len(strata)} strata: {', '.join(parts) or 'none'}")
    while sum(shared.values()) < plots:
        room = [key for key in shared if shared[key] < most[key]]
        shared[min(room, key=lambda key: (-_next(parts[key], shared[key]), key))] += 1
    return shared


def _next(part: float, held: int) -> float:
    """What one more plot is worth; without any yet, more than all else."""
    return inf if held == 0 else float(f"{part / sqrt(held * (held + 1)):.9g}")  # so that a hair decides no tie


def _part(one: Stratum, by: SharedBy) -> float:
    spread = 1.0 if by == "size" else one.spread
    cost = 1.0 if by != "size, spread and cost" else one.cost
    if spread is None or cost is None or not (0 < one.size < inf and 0 < spread < inf and 0 < cost < inf):
        raise ValueError(f"stratum {one.key}: want size, and what {by!r} needs, known and above 0")
    return stratum_part(one.size, spread, cost)
