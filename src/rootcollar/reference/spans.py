"""The plain shapes all facts are made of: a span, a cited value, a row with its source."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from rootcollar.kernel.days import Window
from rootcollar.kernel.sources import Cited, Mark

__all__ = ["Figure", "Row", "Span", "Value", "Window"]


@dataclass(frozen=True, slots=True)
class Span:
    """A figure given as a range, open where an end is None; `best` where the source or we name a middle."""

    low: float | None = None
    high: float | None = None
    best: float | None = None

    def holds(self, value: float) -> bool:
        """Return whether the value lies inside, ends included; an open end holds everything beyond it."""
        return (self.low is None or value >= self.low) and (self.high is None or value <= self.high)


Value: TypeAlias = bool | float | str | Span | tuple[str, ...]
Figure: TypeAlias = Cited[Value]


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A fact told by several columns: all of them rest on the one source, seen as the mark says."""

    source: str
    mark: Mark
