"""What lines add up to: mix, minutes and stems, as worlds."""

from __future__ import annotations

from collections.abc import Sequence

from rootcollar.choose.option import Choice
from rootcollar.kernel.doubt import Worlds, sure
from rootcollar.kernel.formula import formula
from rootcollar.survey import total

__all__ = ["line_minutes", "line_mix_ml", "line_money", "minutes", "poured_ml", "stems", "sum_worlds"]


@formula("stems * mix_ml", gives="mL", source="arithmetic", stems=(0, 10000), mix_ml=(0, 500))
def line_mix_ml(stems: Worlds, mix_ml: Worlds) -> Worlds:
    """Return the finished mix for a stand [mL]. stems: its count. mix_ml: on one stem [mL]."""
    return stems * mix_ml


@formula("stems * minutes", gives="min", source="arithmetic", stems=(0, 10000), minutes=(0, 60))
def line_minutes(stems: Worlds, minutes: Worlds) -> Worlds:
    """Return the work on a stand, one visit [min]. stems: its count. minutes: on one stem [min]."""
    return stems * minutes


@formula("stems * cost", gives="money", source="arithmetic", stems=(0, 10000), cost=(0, 100))
def line_money(stems: Worlds, cost: Worlds) -> Worlds:
    """Return what one visit to a stand costs [money]. stems: its count. cost: of one stem [money]."""
    return stems * cost


def poured_ml(lines: Sequence[Choice]) -> Worlds:
    """Return the finished mix for all lines that have a way [mL]."""
    return sum_worlds([line_mix_ml(one.stand.stems, one.per_stem.mix_ml) for one in lines if one.option])


def minutes(lines: Sequence[Choice]) -> Worlds:
    """Return the work of one visit to all lines that have a way [min]."""
    return sum_worlds([line_minutes(one.stand.stems, one.per_stem.minutes) for one in lines if one.option])


def stems(lines: Sequence[Choice]) -> Worlds:
    """Return the stems of all lines."""
    return total([one.stand for one in lines])


def sum_worlds(parts: Sequence[Worlds]) -> Worlds:
    """Return the sum of worlds of possibly different length (a sure number counts in every world); of none, 0."""
    total = sure(0.0)
    for part in parts:
        total = total + part
    return total
