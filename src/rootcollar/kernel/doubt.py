"""Worlds of doubt: an uncertain number is an array, its first entry the best figure, the rest the doubt."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from hashlib import blake2b
from statistics import NormalDist

import numpy as np
from numpy.typing import NDArray

__all__ = ["Band", "Doubt", "Worlds", "band", "best", "between", "drawn", "sure"]

Worlds = NDArray[np.float64]  # last axis: world 0 the best figure, 1..n the doubt; a sure value has length 1

_normal = NormalDist().inv_cdf
_TENTH = _normal(0.9)  # a user's "from .. to" is read as the middle 80 %


@dataclass(frozen=True, slots=True)
class Band:
    """Best figure and the 10-90 % band of the doubt around it, in the worlds' own unit."""

    best: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Doubt:
    """One seed a property, one stream a named unknown, whatever the order or the machine."""

    seed: int
    n: int = 1000

    def ranks(self, unknown: str) -> Worlds:
        """Return n stratified ranks in (0, 1), shuffled, the same for the same seed and name."""
        key = blake2b(f"{self.seed}/{unknown}".encode(), digest_size=16).digest()
        pick = np.random.Generator(np.random.Philox(key=int.from_bytes(key, "little"))).random
        return np.asarray((pick(self.n).argsort() + pick(self.n)) / self.n)

    def worlds(self, unknown: str, best: float, quantile: Callable[[Worlds], Worlds]) -> Worlds:
        """Return worlds for a named unknown: the best figure, then the quantile function at the ranks."""
        out = np.concatenate(([best], quantile(self.ranks(unknown))))
        out.flags.writeable = False
        return out


def sure(value: float) -> Worlds:
    """Return a number without doubt: length 1, read-only."""
    out = np.array([value], dtype=np.float64)
    out.flags.writeable = False
    return out


@lru_cache(maxsize=4096)
def drawn(doubt: Doubt, unknown: str, low: float, middle: float, high: float) -> Worlds:
    """Return the worlds of a named unknown whose 10, 50 and 90 % points are low, middle and high.

    Kept, because every stand of a size asks for the same ones; the array is shared, so it is read-only.
    """
    return doubt.worlds(unknown, middle, between(low, middle, high))


def best(worlds: Worlds) -> float:
    """Return the best figure (world 0) of one uncertain number (one axis)."""
    return float(worlds[0])


def band(worlds: Worlds) -> Band:
    """Return best figure and the 10-90 % band of worlds 1..n (one axis); a sure number is its own band."""
    doubt = worlds[1:] if worlds.size > 1 else worlds
    low, high = np.quantile(doubt, [0.1, 0.9])
    return Band(float(worlds[0]), float(low), float(high))


def between(low: float, middle: float, high: float) -> Callable[[Worlds], Worlds]:
    """Return a quantile function whose 10 %, 50 % and 90 % points are low, middle and high, never below 0.

    Two half-normals joined at the middle: the plainest curve through three points a person can name.
    Raises ValueError unless 0 <= low <= middle <= high and all are finite.
    """
    if not 0 <= low <= middle <= high < math.inf:
        raise ValueError(f"want finite 0 <= low <= middle <= high, got {low}, {middle}, {high}")

    def quantile(ranks: Worlds) -> Worlds:
        z = np.array([_normal(rank) for rank in np.clip(ranks, 1e-9, 1 - 1e-9).tolist()]) / _TENTH
        return np.maximum(middle + np.where(z < 0, (middle - low) * z, (high - middle) * z), 0)

    return quantile
