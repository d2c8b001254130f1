"""The Beta curve of a share: so many plants seen dead, so many alive, and what may be believed of the share behind."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from rootcollar.kernel.doubt import Worlds

__all__ = ["beta"]

_POINTS = 4001  # ours: with so many the 1 % and 99 % points are right to five figures
_FAR = 30  # ours: e**-30 of the height at the top of the curve is as good as nothing


def beta(dead: float, alive: float) -> Callable[[Worlds], Worlds]:
    """Return the quantile function of Beta(dead, alive): the shares below which ranks of the belief lie.

    dead, alive: plants, not whole ones, either may be 0: the share is then sure. The density is summed over the log
    odds, where it has no poles however few the plants are. Raises ValueError unless both are finite, at least 0, and
    one is above it.
    """
    if not (0 <= dead < np.inf and 0 <= alive < np.inf and dead + alive > 0):
        raise ValueError(f"want plants dead and alive, finite, at least 0, not both 0, got {dead} and {alive}")
    if not dead or not alive:
        return lambda ranks: np.full_like(ranks, dead / (dead + alive))
    reach = _FAR + dead + alive
    odds = np.linspace(-reach / dead, reach / alive, _POINTS)
    height = -dead * np.logaddexp(0, -odds) - alive * np.logaddexp(0, odds)
    density = np.exp(height - height.max())
    summed = np.concatenate(([0.0], np.cumsum(density[1:] + density[:-1])))
    return lambda ranks: _share(np.interp(ranks, summed / summed[-1], odds))


def _share(odds: Worlds) -> Worlds:
    return np.asarray(np.exp(-np.logaddexp(0, -odds)))
