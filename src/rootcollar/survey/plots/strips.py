"""Strips and lines: level area of a belt, and the length of a line that crowns cover."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.formula import formula
from rootcollar.site.shapes import rectangle_m2

__all__ = ["Belt", "Line", "cover_pct", "covered_m", "level_m"]


@dataclass(frozen=True, slots=True)
class Belt:
    """One belt, counted as a whole: the belt, not a piece of it, is the plot.

    width_m: full width, level [m]. along_m: length on the ground [m]. slope_pct: slope along the belt [%].
    """

    key: str
    width_m: float
    along_m: float
    slope_pct: float = 0.0

    @property
    def area_m2(self) -> float:
        """The level area [m2]."""
        return rectangle_m2(level_m(self.along_m, self.slope_pct), self.width_m)


@dataclass(frozen=True, slots=True)
class Line:
    """One line and the pieces of it under crowns of one species: from, to [m from its start]. length_m: of the line."""

    key: str
    length_m: float
    pieces: tuple[tuple[float, float], ...] = ()
    row: str = ""


@formula("along_m * cos(arctan(slope_pct / 100))", gives="m", source="geometry", along_m=(1, 500), slope_pct=(0, 150))
def level_m(along_m: float, slope_pct: float) -> float:
    """Return the level length [m] of a length on the ground [m] along a slope [%], >= 0."""
    return along_m * math.cos(math.atan(slope_pct / 100))


@formula("100 * covered_m / length_m", gives="%", source="RMRS-164", covered_m=(0, 20), length_m=(20, 100))
def cover_pct(covered_m: float, length_m: float) -> float:
    """Return the cover [%] on a line: length under crowns over length of the line [m]."""
    return 100 * covered_m / length_m


def covered_m(lines: Sequence[Line]) -> tuple[float, ...]:
    """Return the length under crowns on each line [m]; where pieces overlap, the ground counts once.

    Raises BadInput with each piece that runs backwards or past an end of its line, and each line without a length.
    """
    faults = [fault for line in lines for fault in _faults(line)]
    if faults:
        raise BadInput(*faults)
    return tuple(_joined(line.pieces) for line in lines)


def _faults(line: Line) -> list[Fault]:
    row = line.row or line.key
    if not 0 < line.length_m < math.inf:
        return [Fault(f"a line of {line.length_m:g} m", "a length above 0", row=row, field="length")]
    allowed = f"from before to, both from 0 to {line.length_m:g} m"
    wrong = [(low, high) for low, high in line.pieces if not 0 <= low <= high <= line.length_m]
    return [Fault(f"a piece from {low:g} to {high:g} m", allowed, row=row, field="pieces") for low, high in wrong]


def _joined(pieces: Sequence[tuple[float, float]]) -> float:
    total, reached = 0.0, 0.0
    for low, high in sorted(pieces):
        total += max(high - max(low, reached), 0)
        reached = max(reached, high)
    return total
