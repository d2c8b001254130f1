"""Days and seasons: strict dates as text, and windows of the year that may run over New Year."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from rootcollar.kernel.errors import BadInput, Fault

__all__ = [
    "MONTHS", "Window", "holds", "month_runs", "months", "name_months", "read_date", "read_window", "season_turned",
]  # fmt: skip

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip

# Ours: with leaves and without. What was seen of plants and ground in the one is to be looked at again in the other.
_SEASON_STARTS = ((4, 1), (11, 1))

_DATE = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")
_DAY = re.compile(r"([0-9]{2})-([0-9]{2})")
_LEAP = 2000  # any leap year: 02-29 is a day of the year


@dataclass(frozen=True, slots=True)
class Window:
    """A part of every year, both (month, day) ends within it; start after end runs over New Year."""

    start: tuple[int, int]
    end: tuple[int, int]

    def __post_init__(self) -> None:
        for month, day in (self.start, self.end):
            _day(f"{month:02d}-{day:02d}", _LEAP, month, day)

    def __str__(self) -> str:
        (m, d), (n, e) = self.start, self.end
        return f"{m:02d}-{d:02d} to {n:02d}-{e:02d}"


def read_window(start: str, end: str) -> Window:
    """Return the window between two days written `MM-DD`; BadInput when one is no day of the year."""
    return Window(_month_day(start), _month_day(end))


def months(window: Window) -> frozenset[int]:
    """Return the months, 1 to 12, that hold any day of the window."""
    first, last = window.start[0], window.end[0]
    if window.start <= window.end:
        return frozenset(range(first, last + 1))
    return frozenset(range(first, len(MONTHS) + 1)) | frozenset(range(1, last + 1))


def season_turned(since: date, on: date) -> bool:
    """Return whether a season, with leaves from April or without from November, began after one day, by another."""
    years = range(since.year, on.year + 1)
    return any(since < date(year, month, day) <= on for year in years for month, day in _SEASON_STARTS)


def holds(window: Window, day: date) -> bool:
    """Return whether the day lies in the window, its ends included."""
    at = (day.month, day.day)
    if window.start <= window.end:
        return window.start <= at <= window.end
    return at >= window.start or at <= window.end


def read_date(text: str) -> date:
    """Return a date written `YYYY-MM-DD`; BadInput for another form or a day that does not exist."""
    found = _DATE.fullmatch(text.strip())
    if found is None:
        raise BadInput(Fault(found=repr(text), allowed="a date as YYYY-MM-DD, such as 2026-10-09"))
    return _day(text, *(int(part) for part in found.groups()))


def name_months(which: Iterable[int]) -> str:
    """Return months as people say them, runs joined, also over New Year: `November to February and June`.

    Raises ValueError for a number that is no month.
    """
    runs = month_runs(which)
    if runs == ((1, len(MONTHS)),):
        return "all year"
    said = [MONTHS[first - 1] + (f" to {MONTHS[last - 1]}" if last != first else "") for first, last in runs]
    return " and ".join([", ".join(said[:-1]), said[-1]] if len(said) > 1 else said)


def month_runs(which: Iterable[int]) -> tuple[tuple[int, int], ...]:
    """Return months as runs of (first, last), joined also over New Year; (1, 12) for all of them.

    Raises ValueError for a number that is no month.
    """
    asked = sorted(set(which))
    if any(not 1 <= month <= len(MONTHS) for month in asked):
        raise ValueError(f"want months 1 to {len(MONTHS)}, got {asked}")
    runs: list[tuple[int, int]] = []
    for month in asked:
        if runs and runs[-1][1] == month - 1:
            runs[-1] = (runs[-1][0], month)
        else:
            runs.append((month, month))
    if len(runs) > 1 and runs[0][0] == 1 and runs[-1][1] == len(MONTHS):
        runs[0] = (runs.pop()[0], runs[0][1])
    return tuple(runs)


def _month_day(text: str) -> tuple[int, int]:
    found = _DAY.fullmatch(text.strip())
    if found is None:
        raise BadInput(Fault(found=repr(text), allowed="a day of the year as MM-DD, such as 06-15"))
    return int(found[1]), int(found[2])


def _day(text: str, year: int, month: int, day: int) -> date:
    try:
        return date(year, month, day)
    except ValueError:
        raise BadInput(Fault(found=repr(text), allowed="a day in the calendar; that day does not exist")) from None
