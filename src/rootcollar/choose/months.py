"""The months of a way: in each it is open, open on some days, or shut, and why; and when in the year is best.

A month that a read source names for the plant goes before what holds for the method in general, which then only casts
a doubt on it. What a source says fails shuts its month whoever names it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from rootcollar.choose.gates import months_of, speaks
from rootcollar.choose.option import Way
from rootcollar.choose.steps import fitted
from rootcollar.choose.ways import shuts
from rootcollar.kernel.days import MONTHS, Window, months, name_months
from rootcollar.kernel.sources import Mark
from rootcollar.reference import FailRow, MethodRow, Reference, Row, SeasonRow, Species, StepRow

__all__ = ["Best", "MonthSaid", "best_months", "in_season", "reasons", "year_of"]

_YEAR = range(1, len(MONTHS) + 1)


@dataclass(frozen=True, slots=True)
class MonthSaid:
    """What is said of a way in a month, 1 to 12. maybe: on some days, or with a doubt. because: with its sources.

    best: why the month is best, nothing where it is not. named: whether a source names it for the plant. some_days:
    whether it is shut on some of its days.
    """

    month: int
    state: Literal["open", "maybe", "shut"]
    because: str
    best: str = ""
    named: bool = False
    some_days: bool = False


@dataclass(frozen=True, slots=True)
class Best:
    """The months in which a way is done best, and why those; none where no month is open.

    sourced: whether a source finds or names them; else they are merely those that are open.
    """

    months: frozenset[int]
    because: str
    sourced: bool = True


@dataclass(frozen=True, slots=True)
class _Told:
    """The rows that speak of a way's year. named: windows of the best mark there is. strict: whether seasons shut.

    despite: a person does it against a source's advice, whose failures then only cast a doubt.
    """

    named: tuple[MethodRow, ...]
    fails: tuple[FailRow, ...]
    seasons: tuple[SeasonRow, ...]
    strict: bool = True
    despite: bool = False


def year_of(way: Way, species: Species, reference: Reference) -> tuple[MonthSaid, ...]:
    """Return what is said of each month of the year, January first, of a way for a plant.

    Where seasons of the method in general would leave no month, they only cast a doubt. Of a way of two visits a month
    is open in which either may be done.
    """
    year = _of_killing(way, species, reference)
    return year if way.step is None else tuple(_of_steps(one, way, way.step) for one in year)


def _of_steps(said: MonthSaid, way: Way, row: StepRow) -> MonthSaid:
    """Return what is said of a month, with both visits of a way in mind."""
    first = f"its first step, {row.first} ({row.source}, {row.mark})"
    if said.state != "shut" and said.month in way.visit.months:
        both = len(way.treatment) > 1 and said.month in way.treatment[0].months
        return replace(said, because=f"{said.because}; also {first}") if both else said
    if said.month in way.treatment[0].months:
        return MonthSaid(said.month, "open", first)
    told = f"neither step is for it ({row.source}, {row.mark})"
    return MonthSaid(said.month, "shut", _together([told, said.because if said.state == "shut" else ""]))


def _of_killing(way: Way, species: Species, reference: Reference) -> tuple[MonthSaid, ...]:
    """Return what is said of each month of the visit that kills, whatever went before it."""
    marks = (mark for mark in Mark if any(row.mark is mark and row.windows for row in way.rows))
    mark = next(marks, None)
    named = tuple(row for row in way.rows if row.mark is mark and row.windows)
    fails = tuple(row for row in species.fails if row.windows and speaks(row, way))
    seasons = tuple(row for row in reference.seasons if _holds(row, way, species))
    told = _Told(named, fails, seasons, despite=bool(way.despite))
    year = tuple(_said(month, told, species) for month in _YEAR)
    if all(one.state == "shut" for one in year):
        return tuple(_said(month, replace(told, strict=False), species) for month in _YEAR)
    return year


def in_season(way: Way, species: Species, reference: Reference) -> Way:
    """Return the way with the months that are not shut; as it was where none would be left."""
    left = frozenset(one.month for one in _of_killing(way, species, reference) if one.state != "shut")
    if way.step is not None:
        return fitted(way, left)
    if not left or left == way.visit.months:
        return way
    return replace(way, treatment=(*way.treatment[:-1], replace(way.visit, months=left)))


def best_months(year: Sequence[MonthSaid]) -> Best:
    """Return when a way is best done: what a source finds best, else what it names without a doubt, else all open."""
    workable = [one for one in year if one.state != "shut"]
    whole = [one for one in workable if not one.some_days]
    named = "named for this plant, no better month by any source"
    for found, why, sourced in (
        ([one for one in whole if one.best], "", True),
        ([one for one in workable if one.best], "", True),
        ([one for one in whole if one.named], named, True),
        (whole, "no source names a better month", False),
        (workable, "open on some days only", False),
    ):
        if found:
            because = why or _together([one.best for one in found])
            return Best(frozenset(one.month for one in found), because, sourced)
    return Best(frozenset(), "no month is open", sourced=False)


def reasons(year: Sequence[MonthSaid]) -> tuple[tuple[frozenset[int], str, str], ...]:
    """Return (months, state, why) with the months of the same state and reason together, in the year's order."""
    found: dict[tuple[str, str], list[int]] = {}
    for one in year:
        found.setdefault((one.state, one.because), []).append(one.month)
    return tuple((frozenset(which), state, because) for (state, because), which in found.items())


def _said(month: int, told: _Told, species: Species) -> MonthSaid:
    fails = [row for row in told.fails if month in months_of(row)]
    seasons = [row for row in told.seasons if month in _within(row.windows)]
    named = [row for row in told.named if month in _within(row.windows)]
    read = bool(named) and named[0].mark is not Mark.MEMORY
    stops = [] if told.despite else [_failed(row) for row in fails if shuts(row)]
    general = [_season(row, species) for row in seasons if row.effect == "shut"]
    if told.named and not named:
        which = frozenset[int]().union(*(_within(row.windows) for row in told.named))
        stops.append(f"the sources name {name_months(which)} ({_cites(told.named)})")
    if not read and told.strict:
        stops += general
    if stops:
        return MonthSaid(month, "shut", _together(stops))
    doubts = [_failed(row) for row in fails] + general
    doubts += [_season(row, species) for row in seasons if row.effect == "some_days"]
    from_memory = bool(named) and not read
    words = "named for it" if named else "no source names a month for it"
    because = [f"{words} ({_cites(named)})" if named else words, *doubts]
    best = _together([_season(row, species) for row in seasons if row.effect == "best"])
    state: Literal["open", "maybe"] = "maybe" if doubts or from_memory else "open"
    return MonthSaid(month, state, _together([*because, best]), best, bool(named), bool(doubts))


def _holds(row: SeasonRow, way: Way, species: Species) -> bool:
    """Whether a season speaks of the way: its method, and its carrier, ingredient and leaf where it is bound to any."""
    recipe = way.visit.recipe
    return (
        way.visit.method in row.methods
        and (not row.carriers or (recipe is not None and recipe.carrier in row.carriers))
        and (not row.ingredients or (recipe is not None and recipe.ingredient in row.ingredients))
        and (not row.leaf or species.leaf.value in row.leaf)
    )


def _within(windows: Sequence[Window]) -> frozenset[int]:
    return frozenset[int]().union(*(months(window) for window in windows))


def _season(row: SeasonRow, species: Species) -> str:
    taken = f"; taken as {row.taken}" if row.taken else ""
    leaf = f"; its leaves, {species.leaf.source}, {species.leaf.mark}" if row.leaf else ""
    return f"{row.why} ({_cites([row])}{taken}{leaf})"


def _failed(row: FailRow) -> str:
    return f"{row.why} ({_cites([row])})"


def _cites(rows: Sequence[Row]) -> str:
    return ", ".join(dict.fromkeys([*(row.source for row in rows), str(rows[0].mark)]))


def _together(words: Sequence[str]) -> str:
    return "; ".join(dict.fromkeys(one for one in words if one))
