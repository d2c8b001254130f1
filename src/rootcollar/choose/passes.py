"""In how many passes through a thicket its bands can be worked, and in which months each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

from rootcollar.choose.option import Way

__all__ = ["Pass", "passes_of"]

_YEAR = frozenset(range(1, 13))  # the months


@dataclass(frozen=True, slots=True)
class Pass:
    """One walk through the thicket. months: open to all that is done on it. bands: which are worked, from 0."""

    months: frozenset[int]
    bands: tuple[int, ...]


def passes_of(bands: Sequence[Sequence[Way]], most: int) -> tuple[Pass, ...] | None:
    """Return the fewest passes in which all bands can be worked; None where it takes more than the most.

    bands: the ways of each, of the same methods. Ways of two steps take the first pass and the next, in that order.
    Of as many passes, the one with the most months for its hardest one; then the thinner band goes first.
    """
    found = []
    for count in range(1, most + 1):
        room = [range(count - len(ways[0].treatment) + 1) for ways in bands]
        for starts in product(*room):
            made = _made(bands, starts, count)
            if made is not None:
                found.append((-min(len(one.months) for one in made), starts, made))
        if found:
            return min(found)[2]
    return None


def _made(bands: Sequence[Sequence[Way]], starts: Sequence[int], count: int) -> tuple[Pass, ...] | None:
    """Return the passes with each band begun on one of them; None where no month does, or a pass is idle."""
    passes = []
    for at in range(count):
        months, worked = _YEAR, []
        for which, (ways, start) in enumerate(zip(bands, starts, strict=True)):
            if start <= at < start + len(ways[0].treatment):
                worked.append(which)
                for way in ways:
                    months &= way.treatment[at - start].months
        if not worked or not months:
            return None
        passes.append(Pass(months, tuple(worked)))
    return tuple(passes)
