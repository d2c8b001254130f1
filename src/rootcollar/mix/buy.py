"""What to buy: the cheapest set of container sizes that covers a need, exactly."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import reduce
from math import ceil, floor, remainder

from rootcollar.kernel.errors import Refusal

__all__ = ["Container", "Purchase", "cheapest"]

_HAIR = 1e-6  # of a unit; floating point is not a measurement
_FINEST_ML = 1.0  # ours: sizes without a common measure are counted in whole mL, rounded down

_Row = tuple[float, int, int, int]  # cost, units bought, containers, last size taken


@dataclass(frozen=True, slots=True)
class Container:
    """A size on sale. volume_ml: what it holds [mL]. price: of one; None: not known."""

    name: str
    volume_ml: float
    price: float | None = None


@dataclass(frozen=True, slots=True)
class Purchase:
    """How many of each. leftover_ml: bought beyond the need [mL]. cost: None where a price is not known."""

    counts: tuple[tuple[str, int], ...]
    bought_ml: float
    leftover_ml: float
    cost: float | None


def cheapest(need_ml: float, sizes: Sequence[Container]) -> Purchase:
    """Return the set of containers that covers the need at the least cost; then least left over; then fewest.

    Where any price is unknown, cost is left out of it. Sizes without a common measure, such as litres beside gallons,
    count in whole mL, rounded down, so that the need is covered all the same. Raises Refusal for no sizes, for a size
    that holds nothing or costs less than nothing, and for a need that is not an amount.
    """
    if not sizes or any(not one.volume_ml >= _FINEST_ML or (one.price or 0) < 0 for one in sizes):
        raise Refusal("shopping", limit="no container sizes to choose from", do="Give the sizes that are sold")
    if not 0 <= need_ml < float("inf"):
        raise Refusal("shopping", limit="the need is not an amount", do="Give an amount of 0 or more")
    prices = [one.price for one in sizes if one.price is not None]
    priced = len(prices) == len(sizes)
    unit = _measure_ml(sizes)
    width = [floor(one.volume_ml / unit + _HAIR) for one in sizes]
    table = _table(ceil(need_ml / unit - _HAIR), prices if priced else [0.0] * len(sizes), width)
    counts = _counts(table, width)
    bought = sum(count * sizes[place].volume_ml for place, count in counts.items())
    return Purchase(
        tuple((sizes[place].name, counts[place]) for place in sorted(counts)),
        bought,
        max(bought - need_ml, 0.0),
        table[-1][0] if priced else None,
    )


def _measure_ml(sizes: Sequence[Container]) -> float:
    """The largest volume that all sizes are multiples of [mL], so that quarts and gallons count exactly."""
    unit = reduce(_common, (one.volume_ml for one in sizes))
    counts = [one.volume_ml / unit for one in sizes]
    return unit if all(abs(one - round(one)) < _HAIR for one in counts) else _FINEST_ML


def _common(one: float, other: float) -> float:
    """Euclid's greatest common measure, of floats."""
    while other > _FINEST_ML / 2:
        one, other = other, abs(remainder(one, other))
    return one


def _table(least: int, prices: Sequence[float], width: Sequence[int]) -> list[_Row]:
    """The best purchase of at least so many units, for each number of units up to `least`."""
    table: list[_Row] = [(0.0, 0, 0, -1)]
    for amount in range(1, least + 1):
        table.append(
            min(
                (prices[place] + before[0], before[1] + width[place], before[2] + 1, place)
                for place in range(len(width))
                for before in [table[max(amount - width[place], 0)]]
            )
        )
    return table


def _counts(table: Sequence[_Row], width: Sequence[int]) -> dict[int, int]:
    counts: dict[int, int] = {}
    amount = len(table) - 1
    while amount > 0:
        place = table[amount][3]
        counts[place] = counts.get(place, 0) + 1
        amount -= width[place]
    return counts
