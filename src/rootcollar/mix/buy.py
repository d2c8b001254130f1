"""What to buy: what stands in the shed first, then the cheapest set of container sizes for the rest, exactly."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import reduce
from math import ceil, floor, remainder

from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import formula
from rootcollar.shelf import Lot

__all__ = ["Container", "Purchase", "Supply", "cheapest", "left_over_ml", "still_needed_ml", "supply"]

_HAIR = 1e-6  # of a unit; floating point is not a measurement
_FINEST_ML = 1.0  # ours: sizes without a common measure are counted in whole mL, rounded down
_FINEST_PRICE = 10_000  # ours: prices count in whole ten-thousandths, so that equal sums are equal
_MOST_UNITS = 400_000  # ours: more are not weighed in the time a person waits

_Row = tuple[int, int, int, int]  # cost, units bought, containers, last size taken


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


@dataclass(frozen=True, slots=True)
class Supply:
    """How a need is met. taken: (lot, how much of it [mL]) in the order used. left: what those lots still hold.

    purchase: for what the lots do not cover.
    """

    taken: tuple[tuple[Lot, float], ...]
    left: tuple[Lot, ...]
    purchase: Purchase


def supply(need_ml: float, lots: Sequence[Lot], sizes: Sequence[Container]) -> Supply:
    """Return what to take from the lots, in the order given, and the cheapest containers for the rest.

    lots: that may be used, oldest last day first. Raises Refusal as `cheapest`.
    """
    taken: list[tuple[Lot, float]] = []
    left: list[Lot] = []
    rest_ml = need_ml
    for lot in lots:
        part_ml = min(lot.left_ml, rest_ml)
        rest_ml = still_needed_ml(rest_ml, part_ml)
        taken += [(lot, part_ml)] if part_ml > 0 else []
        left += [replace(lot, left_ml=lot.left_ml - part_ml)] if part_ml < lot.left_ml else []
    return Supply(tuple(taken), tuple(left), cheapest(rest_ml, sizes))


@formula("maximum(need_ml - at_hand_ml, 0)", gives="mL", source="arithmetic", need_ml=(0, 1e5), at_hand_ml=(0, 1e5))
def still_needed_ml(need_ml: float, at_hand_ml: float) -> float:
    """Return what is not at hand yet [mL]. need_ml: wanted [mL]. at_hand_ml: in the shed, in date [mL]."""
    return max(need_ml - at_hand_ml, 0.0)


@formula("maximum(bought_ml - need_ml, 0)", gives="mL", source="arithmetic", bought_ml=(0, 1e5), need_ml=(0, 1e5))
def left_over_ml(bought_ml: float, need_ml: float) -> float:
    """Return what is left in the containers when the need is met [mL]. bought_ml: all they hold [mL]."""
    return max(bought_ml - need_ml, 0.0)


def cheapest(need_ml: float, sizes: Sequence[Container]) -> Purchase:
    """Return the set of containers that covers the need at the least cost; then least left over; then fewest.

    Where any price is unknown, cost is left out of it. Sizes without a common measure, such as litres beside gallons,
    count in whole mL, rounded down, so that the need is covered all the same. Raises Refusal for no sizes, for a size
    that holds nothing or costs less than nothing, for a need that is not an amount, and for one of so many small units
    that they cannot be weighed one by one.
    """
    if not sizes or any(not one.volume_ml >= _FINEST_ML or (one.price or 0) < 0 for one in sizes):
        raise Refusal("shopping", limit="no container sizes to choose from", do="Give the sizes that are sold")
    if not 0 <= need_ml < float("inf"):
        raise Refusal("shopping", limit="the need is not an amount", do="Give an amount of 0 or more")
    prices = [one.price for one in sizes if one.price is not None]
    priced = len(prices) == len(sizes)
    unit = _measure_ml(sizes)
    width = [floor(one.volume_ml / unit + _HAIR) for one in sizes]
    least = ceil(need_ml / unit - _HAIR)
    if least > _MOST_UNITS:
        raise Refusal(
            "shopping", limit="more than can be weighed size by size", do="Ask for less, or give sizes in one unit"
        )
    table = _table(least, [round(one * _FINEST_PRICE) for one in prices] if priced else [0] * len(sizes), width)
    counts = _counts(table, width)
    bought = sum(count * sizes[place].volume_ml for place, count in counts.items())
    return Purchase(
        tuple((sizes[place].name, counts[place]) for place in sorted(counts)),
        bought,
        left_over_ml(bought, need_ml),
        table[-1][0] / _FINEST_PRICE if priced else None,
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


def _table(least: int, prices: Sequence[int], width: Sequence[int]) -> list[_Row]:
    """The best purchase of at least so many units, for each number of units up to `least`."""
    table: list[_Row] = [(0, 0, 0, -1)]
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
