"""What to buy: the cheapest set of container sizes that covers a need, exactly."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, gcd

from rootcollar.kernel.errors import Refusal

__all__ = ["Container", "Purchase", "cheapest"]


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

    Where any price is unknown, cost is left out of it. Sizes count in whole mL. Raises Refusal for no sizes, for a
    size that holds nothing, and for a need that is not finite.
    """
    if not sizes or any(not one.volume_ml >= 1 for one in sizes):
        raise Refusal("shopping", limit="no container sizes to choose from", do="Give the sizes that are sold")
    if not 0 <= need_ml < float("inf"):
        raise Refusal("shopping", limit="the need is not an amount", do="Give an amount of 0 or more")
    priced = all(one.price is not None for one in sizes)
    whole = [round(one.volume_ml) for one in sizes]
    unit = gcd(*whole)
    width = [one // unit for one in whole]
    least = ceil(need_ml / unit - 1e-9)
    table: list[tuple[float, int, int, int]] = [(0.0, 0, 0, -1)]  # cost, units bought, containers, last size taken
    for amount in range(1, least + 1):
        table.append(
            min(
                (_price(size, priced) + before[0], before[1] + width[place], before[2] + 1, place)
                for place, size in enumerate(sizes)
                for before in [table[max(amount - width[place], 0)]]
            )
        )
    counts = _counts(table, width, least)
    bought = sum(count * sizes[place].volume_ml for place, count in counts.items())
    return Purchase(
        tuple((sizes[place].name, counts[place]) for place in sorted(counts)),
        bought,
        max(bought - need_ml, 0.0),
        table[least][0] if priced else None,
    )


def _price(size: Container, priced: bool) -> float:
    return size.price if priced and size.price is not None else 0.0


def _counts(table: Sequence[tuple[float, int, int, int]], width: Sequence[int], amount: int) -> dict[int, int]:
    counts: dict[int, int] = {}
    while amount > 0:
        place = table[amount][3]
        counts[place] = counts.get(place, 0) + 1
        amount -= width[place]
    return counts
