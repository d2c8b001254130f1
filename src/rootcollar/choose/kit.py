"""The kit: which mixes to carry. Every line takes its cheapest way with one of them, and each mix more has its price.

Exact: every kit is weighed, after mixes are left out that could not be in the best one. Where more mixes are left than
are weighed in every kit, they are picked one by one, and it is said.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

__all__ = ["MOST_MIXES", "Kit", "best_kit"]

MOST_MIXES = 12  # ours: 4,096 kits; more would be slow, and nobody carries as many

_Cents = NDArray[np.int64]
_Rank = tuple[int, int, tuple[str, ...]]  # cents with a penalty for lines without a way, number of mixes, their keys


@dataclass(frozen=True, slots=True)
class Kit:
    """A kit of mixes by key. cents: what all lines and the mixes after the first cost. uncovered: lines without a way.

    exact: whether every kit of all mixes was weighed. said: in words, how it was found.
    """

    mixes: tuple[str, ...]
    cents: int
    uncovered: int
    exact: bool
    said: str


def best_kit(lines: Sequence[Mapping[str, int]], per_mix_cents: int, most: int = MOST_MIXES) -> Kit:
    """Return the kit that leaves the fewest lines without a way, then costs least, then has fewest mixes, then by key.

    lines: of each, what it costs with each mix, by key; "" is by hand. per_mix_cents: of each mix after the first.
    most: mixes of which every kit is weighed.
    """
    keys = tuple(sorted({mix for line in lines for mix in line if mix}))
    dearest = sum(max(line.values(), default=0) for line in lines)
    penalty = dearest + per_mix_cents * len(keys) + 1  # dearer than anything that could be saved
    by_hand = np.array([line.get("", penalty) for line in lines], dtype=np.int64)
    columns = {key: np.array([line.get(key, penalty) for line in lines], dtype=np.int64) for key in keys}
    needed = _needed(columns, by_hand)
    exact = len(needed) <= most
    weighed = needed if exact else _one_by_one(columns, needed, by_hand, per_mix_cents, most)
    cost, _, chosen = _best_of_all(columns, weighed, by_hand, per_mix_cents)
    uncovered = int((_with(columns, chosen, by_hand) >= penalty).sum())
    return Kit(chosen, cost - uncovered * penalty, uncovered, exact, _said(keys, needed, most, exact))


def _needed(columns: Mapping[str, _Cents], by_hand: _Cents) -> tuple[str, ...]:
    """Return the mixes that may be in the best kit: not those that one of an earlier key, or hands, can replace.

    Who is replaced costs no less on any line, so the best kit is found without it, ties and all.
    """
    kept: list[str] = []
    for key in sorted(columns):
        others = (by_hand, *(columns[one] for one in kept))
        if not any(bool((one <= columns[key]).all()) for one in others):
            kept.append(key)
    return tuple(kept)


def _one_by_one(
    columns: Mapping[str, _Cents], keys: Sequence[str], by_hand: _Cents, per_mix_cents: int, most: int
) -> tuple[str, ...]:
    """Return so many mixes, each the one that saves most beside those picked before it."""
    picked: tuple[str, ...] = ()
    while len(picked) < most:
        ranks = [
            _rank(_with(columns, (*picked, key), by_hand), (*picked, key), per_mix_cents)
            for key in keys
            if key not in picked
        ]
        picked = min(ranks)[2]
    return picked


def _best_of_all(columns: Mapping[str, _Cents], keys: tuple[str, ...], by_hand: _Cents, per_mix_cents: int) -> _Rank:
    """Return the best of every kit of some mixes."""
    found = _rank(by_hand, (), per_mix_cents)
    open_: list[tuple[int, _Cents, tuple[str, ...]]] = [(0, by_hand, ())]
    while open_:
        start, cents, kit = open_.pop()
        for at in range(start, len(keys)):
            more = np.minimum(cents, columns[keys[at]])
            larger = (*kit, keys[at])
            found = min(found, _rank(more, larger, per_mix_cents))
            open_.append((at + 1, more, larger))
    return found


def _with(columns: Mapping[str, _Cents], kit: Sequence[str], by_hand: _Cents) -> _Cents:
    found: _Cents = np.minimum.reduce([by_hand, *(columns[key] for key in kit)])
    return found


def _rank(cents: _Cents, kit: tuple[str, ...], per_mix_cents: int) -> _Rank:
    return int(cents.sum()) + per_mix_cents * max(len(kit) - 1, 0), len(kit), tuple(sorted(kit))


def _said(keys: Sequence[str], needed: Sequence[str], most: int, exact: bool) -> str:
    kits = f"{len(keys)} {'mix' if len(keys) == 1 else 'mixes'} could be carried"
    if exact:
        return f"{kits}, and every kit of them was weighed"
    return (
        f"{kits}, {len(needed)} of them better than others somewhere: too many to weigh every kit. {most} were picked "
        "one by one, each the one that saves most beside those before it, and every kit of these was weighed; "
        "a better kit may be missed"
    )
