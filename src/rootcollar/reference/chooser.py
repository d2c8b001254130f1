"""Choosing one figure where several stand: openly, and always the same way."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Literal, TypeVar, cast

from rootcollar.kernel.sources import Cited, Mark, Source
from rootcollar.reference.load import load
from rootcollar.reference.spans import Figure, Span
from rootcollar.reference.ways import NamedFigure

__all__ = ["best", "middle", "named", "numbers", "spans", "why"]

T = TypeVar("T")

_KEPT = 2048  # ours: spans whose middle is kept; the reference has some hundreds, and every stem asks for the same

_MARKED = {
    Mark.READ: "read in a source",
    Mark.PRACTICE: "from practice",
    Mark.RECKONED: "reckoned",
    Mark.OURS: "of our own",
    Mark.MEMORY: "from memory",
}
_RANK = (Mark.READ, Mark.PRACTICE, Mark.RECKONED, Mark.OURS, Mark.MEMORY)


def best(
    rows: Sequence[Cited[T]], *, cautious: Literal["low", "high"] = "low", sources: Mapping[str, Source] | None = None
) -> Cited[T]:
    """Return the figure to start from: best mark, then newest source, then the cautious end.

    Marks rank read, practice, reckoned, ours, memory. A source without a year counts as oldest. cautious: which end is
    the careful one, "low" for a dose or a limit from above, "high" for a distance to keep or a wait; words count as
    neither and come last. sources: where the years are looked up, the package's own unless given. The caller narrows
    rows to what holds for the case first (`holds_for`, unit, ingredient). Raises ValueError when there is none.
    """
    if not rows:
        raise ValueError("no figure to choose from")
    years = load().sources if sources is None else sources
    return min(rows, key=lambda row: (_RANK.index(row.mark), -_year(row, years), _careful(row.value, cautious)))


def why(
    rows: Sequence[Cited[T]], *, cautious: Literal["low", "high"] = "low", sources: Mapping[str, Source] | None = None
) -> str:
    """Return in words why `best` takes the one it takes: the step of its order that decided."""
    years = load().sources if sources is None else sources
    chosen = best(rows, cautious=cautious, sources=years)
    alike = [row for row in rows if row.mark is chosen.mark]
    year = _year(chosen, years)
    newest = [row for row in alike if _year(row, years) == year]
    if len(alike) == 1:
        return f"the only one {_MARKED[chosen.mark]}"
    if len(newest) == 1:
        return f"the newest of those {_MARKED[chosen.mark]} ({year})"
    return f"the careful end of those {_MARKED[chosen.mark]}" + (f" in {year}" if year and newest != alike else "")


def _year(row: Cited[T], years: Mapping[str, Source]) -> int:
    known = years.get(row.source)
    return known.year or 0 if known else 0


def _careful(value: object, cautious: Literal["low", "high"]) -> float:
    sign = 1.0 if cautious == "low" else -1.0
    if isinstance(value, Span):
        ends = (value.low, value.best, value.high) if cautious == "low" else (value.high, value.best, value.low)
        return next(sign * end for end in ends if end is not None)
    return sign * float(value) if isinstance(value, int | float) else float("inf")


def named(rows: Sequence[NamedFigure], name: str) -> tuple[Figure, ...]:
    """Return the figures of that name in a topic, as they stand there. Raises ValueError when there is none."""
    found = tuple(row.figure for row in rows if row.name == name)
    if not found:
        raise ValueError(f"no figure is called {name}")
    return found


def numbers(rows: Sequence[Figure]) -> tuple[Cited[float], ...]:
    """Return only the rows whose value is a plain number."""
    kept = [row for row in rows if isinstance(row.value, int | float) and not isinstance(row.value, bool)]
    return cast("tuple[Cited[float], ...]", tuple(kept))


def spans(rows: Sequence[Figure]) -> tuple[Cited[Span], ...]:
    """Return only the rows whose value is a span."""
    return cast("tuple[Cited[Span], ...]", tuple(row for row in rows if isinstance(row.value, Span)))


@lru_cache(maxsize=_KEPT)
def middle(row: Cited[Span]) -> Cited[float]:
    """Return the one figure to use of a span: its named best, else its lower end, else its upper one."""
    ends = (row.value.best, row.value.low, row.value.high)
    value = next((end for end in ends if end is not None), None)
    if value is None:
        raise ValueError(f"a span without a figure, from {row.source}")
    return replace(cast("Cited[float]", row), value=value)
