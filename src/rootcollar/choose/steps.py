"""Ways of two visits: what is done first only prepares, and what is done after a wait kills. Never the one alone.

The days of both lie in the months open to each and in the source's windows; a wait that no day can keep shuts the way.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import lru_cache

from rootcollar.choose.option import Way
from rootcollar.kernel.days import MONTHS, Window, holds, months, name_months
from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.formula import formula
from rootcollar.mix.recipe import Visit
from rootcollar.reference import FailRow, HoldRow, Reference, Species, StepRow
from rootcollar.survey.stand import Stand

__all__ = [
    "StepDays", "alone", "both_visits", "first_alone", "fitted", "harm_of_first", "holds_of", "never_met",
    "only_prepares", "regrown", "second_spans", "spans_of", "step_days", "stepped",
]  # fmt: skip

_YEAR = frozenset(range(1, len(MONTHS) + 1))
_PLAIN = 2001  # a year without a leap day and with one without after it, to tell months by
_DAY = timedelta(days=1)
_TWO_YEARS = timedelta(days=731)  # whatever day it is, all days of a whole year and the next come within it
_HURTS = frozenset({"spreads", "unsafe"})  # what a first step may do though a second one kills

Span = tuple[date, date]


@dataclass(frozen=True, slots=True)
class StepDays:
    """When both visits can be. first: the next days for the first one. second: for the other, were the first done on
    the first of them; two spans where it may also wait for the next year.
    """

    first: Span
    second: tuple[Span, ...]


@formula("first + second", gives="min", source="arithmetic", first=(0, 100), second=(0, 100))
def both_visits(first: Worlds, second: Worlds) -> Worlds:
    """Return the work of both visits to one stem [min]. first: of preparing [min]. second: of killing [min]."""
    return first + second


def stepped(species: Species, ways: Iterable[Way], reference: Reference) -> Iterator[Way]:
    """Yield the ways of two visits: each of the ways that may be a second step, with the first before it."""
    known = tuple(ways)
    for row in (one for one in reference.steps if species.key in one.species):
        for way in known:
            if way.step is None and way.visit.method == row.second and way.visit.recipe is not None:
                first = Visit(row.first, None, _named(row.first_windows))
                second = replace(
                    way.visit,
                    months=way.visit.months & _named((*row.windows, *row.next_windows)),
                    wait_days=row.least_days,
                )
                yield replace(way, treatment=(first, second), step=row)


def fitted(way: Way, left: frozenset[int]) -> Way:
    """Return a way of two visits with the months of both that fit together; none where none do.

    left: months in which the killing visit is not shut.
    """
    if way.step is None:
        return way
    first, second = way.treatment
    second = replace(second, months=second.months & left)
    met = _met(way.step, first.months, second.months)
    return replace(way, treatment=(replace(first, months=met), second))


@lru_cache(maxsize=1024)
def _met(row: StepRow, firsts: frozenset[int], seconds: frozenset[int]) -> frozenset[int]:
    """Return the months of a first step on some day of which a second can follow."""
    days = (date(_PLAIN, 1, 1) + _DAY * one for one in range((date(_PLAIN + 1, 1, 1) - date(_PLAIN, 1, 1)).days))
    return frozenset(day.month for day in days if _may(row, firsts, seconds, day))


def never_met(way: Way) -> str:
    """Return why the second step can never follow the first; nothing where it can."""
    if way.step is None or (way.treatment[0].months and way.visit.months):
        return ""
    row = way.step
    first = name_months(_named(row.first_windows))
    wait = f"at least {row.least_days} days" if row.least_days else "a while"
    open_ = name_months(way.visit.months) if way.visit.months else "no month"
    year = "the same year" if not row.next_windows else "that year or the next"
    return (
        f"the second step cannot follow in {year}: the first is for {first}, then it waits {wait}, and the second is "
        f"open in {open_} ({row.source}, {row.mark})"
    )


def only_prepares(way: Way, species: Species, reference: Reference) -> StepRow | None:
    """Return the row that says that a way by hand is but the first of two steps; None for a way that may kill."""
    if way.step is not None or way.visit.recipe is not None:
        return None
    rows = [one for one in reference.steps if species.key in one.species and one.first == way.visit.method]
    told = {one.source for one in rows}
    return rows[0] if rows and all(row.source in told for row in way.rows) else None


def first_alone(way: Way) -> Way | None:
    """Return the first of two steps as a way by itself, for the rules to weigh and for its own day; None: has none."""
    return None if len(way.treatment) == 1 else replace(way, treatment=way.treatment[:1], rows=())


def alone(way: Way) -> tuple[Way, ...]:
    """Return each visit of a way as a way of its own, in order, so that its work can be reckoned."""
    return tuple(replace(way, treatment=(one,)) for one in way.treatment)


def harm_of_first(species: Species, way: Way) -> Iterator[FailRow]:
    """Yield what sources say may go wrong with the first step though the second kills: spreading, harm."""
    if len(way.treatment) > 1:
        first = way.treatment[0].method
        yield from (row for row in species.fails if row.method == first and row.effect in _HURTS)


def regrown(stand: Stand, way: Way) -> Stand:
    """Return a stand as the second step meets it: as high as the source lets it grow, as wide as it was."""
    if way.step is None:
        return stand
    high = way.step.regrowth_m.value.high
    return stand if high is None else replace(stand, height_m=high)


def second_spans(way: Way, first: date) -> tuple[Span, ...]:
    """Return the earliest and latest day of the second step after the first was done on a day; none: it cannot be."""
    return spans_of(way.step, way.visit.months, first) if way.step and len(way.treatment) > 1 else ()


def step_days(way: Way, on: date) -> StepDays | None:
    """Return when both visits of a way can be, from a day on; None for a way of one visit, or where they never can."""
    if way.step is None or len(way.treatment) == 1:
        return None
    return _days(way.step, way.treatment[0].months, way.visit.months, on)


def holds_of(way: Way, species: Species, reference: Reference) -> tuple[HoldRow, ...]:
    """Return how long the sources leave what this way treats uncut; nothing for a way that cuts, or uses no mix."""
    if way.visit.recipe is None or way.visit.method in {"cut_stump", "vine_cut"}:
        return ()
    return tuple(row for row in reference.holds if row.speaks_of(species, way.visit.method))


@lru_cache(maxsize=1024)
def _days(row: StepRow, firsts: frozenset[int], seconds: frozenset[int], on: date) -> StepDays | None:
    day, end = on, on + _TWO_YEARS
    while day <= end and not _may(row, firsts, seconds, day):
        day += _DAY
    if day > end:
        return None
    last = day
    while (last + _DAY).year == day.year and _may(row, firsts, seconds, last + _DAY):
        last += _DAY
    return StepDays((day, last), spans_of(row, seconds, day))


def _may(row: StepRow, firsts: frozenset[int], seconds: frozenset[int], day: date) -> bool:
    return day.month in firsts and _in(day, row.first_windows) and bool(spans_of(row, seconds, day))


def spans_of(row: StepRow, open_: frozenset[int], first: date) -> tuple[Span, ...]:
    """Return earliest and latest day of a second step in the year of the first, and in the next where it may wait.

    open_: the months open to the second. first: the day of the first.
    """
    least = first + _DAY * max(row.least_days, 1)
    most = date.max if row.most_days is None else first + _DAY * row.most_days
    years = [(first.year, row.windows)] + ([(first.year + 1, row.next_windows)] if row.next_windows else [])
    found = []
    for year, windows in years:
        fit = [day for day in _fit(windows, open_, year) if least <= day <= most]
        found += [(fit[0], fit[-1])] if fit else []
    return tuple(found)


@lru_cache(maxsize=1024)
def _fit(windows: tuple[Window, ...], open_: frozenset[int], year: int) -> tuple[date, ...]:
    """Return the days of a year that lie in the windows and the months."""
    start = date(year, 1, 1)
    days = (start + _DAY * one for one in range((date(year + 1, 1, 1) - start).days))
    return tuple(day for day in days if day.month in open_ and _in(day, windows))


def _in(day: date, windows: Sequence[Window]) -> bool:
    return not windows or any(holds(one, day) for one in windows)


def _named(windows: Sequence[Window]) -> frozenset[int]:
    return frozenset[int]().union(*(months(one) for one in windows)) if windows else _YEAR
