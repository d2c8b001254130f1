"""What a way costs, so that ways can be ranked: money to kill one stem, in worlds."""

from __future__ import annotations

import numpy as np

from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.formula import formula

_MIN_PER_H = 60  # definition

__all__ = ["cost_per_kill", "cost_per_stem", "expected", "share_needed"]


@formula(
    "minutes / 60 * wage_per_h + mix_l * "
    "(strength_pct / 100 * product_per_l + (1 - strength_pct / 100) * carrier_per_l)",
    gives="money",
    source="arithmetic",
    minutes=(0.1, 60),
    wage_per_h=(1, 100),
    mix_l=(0, 5),
    strength_pct=(0, 100),
    product_per_l=(1, 100),
    carrier_per_l=(0, 10),
)
def cost_per_stem(
    minutes: Worlds, wage_per_h: float, mix_l: Worlds, strength_pct: float, product_per_l: float, carrier_per_l: float
) -> Worlds:
    """Return the cost of one visit to one stem: labour and mix [money of the prices given].

    minutes: work on the stem [min]. wage_per_h: what an hour costs. mix_l: finished mix [L]. strength_pct: product in
    it [%]. product_per_l, carrier_per_l: prices [per L].
    """
    mix_price = strength_pct / 100 * product_per_l + (1 - strength_pct / 100) * carrier_per_l
    return minutes / _MIN_PER_H * wage_per_h + mix_l * mix_price


@formula("cost / kill", gives="money", source="arithmetic", cost=(0.05, 100), kill=(0.02, 1))
def cost_per_kill(cost: Worlds, kill: Worlds) -> Worlds:
    """Return the expected cost to kill one stem when survivors are visited again and die at the same rate.

    With a share k dying of each visit, 1/k visits are expected. cost: of one visit to one stem. kill: share dying
    of one visit, above 0.
    """
    return cost / kill


@formula("cost / per_kill", gives="share", source="arithmetic", cost=(0.05, 100), per_kill=(0.05, 1000))
def share_needed(cost: float, per_kill: float) -> float:
    """Return the share that must die of a visit for a stem killed to cost per_kill [money]; over 1: it cannot.

    cost: of one visit to one stem [money].
    """
    return cost / per_kill


def expected(worlds: Worlds) -> float:
    """Return the mean over the doubt (worlds 1..n), or the sure value."""
    if worlds.size == 1:
        return float(worlds[0])
    return float(np.add.reduce(worlds[1:]) / (worlds.size - 1))  # as mean() reckons it, at half the time
