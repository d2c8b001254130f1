"""Booked first: what is owed, and what new ground will owe, against what a crew can do in a year."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from rootcollar.choose.after import NOTHING, VISIT, bank_words, bank_years, judge_years, survivors, timeline, walk_of
from rootcollar.choose.option import Choice, Prescription
from rootcollar.choose.owed import Owed, owed, whole_years
from rootcollar.choose.own import Own
from rootcollar.choose.prices import wage_per_h
from rootcollar.choose.setting import Setting
from rootcollar.choose.sums import line_minutes, line_money, sum_worlds
from rootcollar.choose.visits import day_money, visits_of
from rootcollar.kernel.doubt import Worlds, best, sure
from rootcollar.kernel.formula import use

__all__ = [
    "Booked",
    "Start",
    "Year",
    "booked",
    "kinds_of",
    "new_ground",
    "new_lines",
    "new_year",
    "owed_year",
    "owed_years",
    "together",
]

_CENTS = 100  # money is compared in whole cents, time in whole minutes


@dataclass(frozen=True, slots=True, eq=False)
class Year:
    """Work of one year on one unit, or on all: on stems, and walked looking [min], [money]."""

    stems_min: Worlds
    stems_money: Worlds
    walk_min: Worlds
    walk_money: Worlds

    @property
    def minutes(self) -> Worlds:
        """All work [min]."""
        return self.stems_min + self.walk_min

    @property
    def money(self) -> Worlds:
        """What all of it costs [money]."""
        return self.stems_money + self.walk_money


@dataclass(frozen=True, slots=True)
class Start:
    """When something fits on a unit. years: from now until it does; None: in no year reckoned. takes: its own [min].

    money: its own [money], both in its first year.
    """

    unit: str
    years: int | None
    takes: float
    money: float


@dataclass(frozen=True, slots=True, eq=False)
class Booked:
    """What each year holds. owed: by year, the first from today. taken: the same with new ground where it fits.

    owed_starts: units with follow-up, the longest owed first. starts: units of new ground in their order; who comes
    first has the first claim. limit_min, limit_money: of a year; None: nobody said. not_known: in no sum, in words.
    """

    owed: tuple[Year, ...]
    taken: tuple[Year, ...]
    owed_starts: tuple[Start, ...]
    starts: tuple[Start, ...]
    limit_min: float | None = None
    limit_money: float | None = None
    not_known: tuple[str, ...] = ()

    def passes(self, year: Year) -> bool:
        """Whether the work of a year is more than it holds, in whole minutes and whole cents."""
        return _passes(year, self.limit_min, self.limit_money)


NO_WORK = Year(sure(0.0), sure(0.0), sure(0.0), sure(0.0))


def booked(plan: Prescription, setting: Setting) -> Booked:
    """Return what years hold: follow-up first, then new ground in its order, each in the first year in which it fits.

    New ground takes its first visit then, and its own visits, look-backs and years of seed later: all of those must fit
    too, in every year reckoned. Advice alone: nothing is struck or left out for a limit. A unit where nothing can be
    worked is in no list. Lines of a plant to which a visit is owed there are that visit, not new ground.
    """
    many = int(use(setting.reference.after["follow_up"]["horizon"])) + 1
    found, own = owed(setting), setting.own
    by_unit = owed_years(found, many, setting)
    whole = _sum_years(by_unit.values(), many)
    none = (NO_WORK,) * many
    first_due = {unit: min(one.due for one in found if one.unit == unit) for unit in by_unit}
    waits = sorted(by_unit, key=lambda unit: (first_due[unit], unit))
    late = _place_all(((unit, by_unit[unit]) for unit in waits), none, {}, own)[1]
    new = {key: new_lines(key, plan, found) for key, _ in plan.order}
    ground = ((key, new_ground(lines, many, setting)) for key, lines in new.items() if lines)
    taken, starts = _place_all(ground, whole, by_unit, own)
    unknown = (f"{_name(one.unit, setting)}: {words}" for one in found for words in one.not_known)
    told = (*unknown, *_not_known([(one.unit, new[one.unit]) for one in starts], setting))
    return Booked(whole, taken, late, starts, own.year_min, own.year_money, tuple(dict.fromkeys(told)))


def new_lines(unit: str, plan: Prescription, found: Sequence[Owed]) -> tuple[Choice, ...]:
    """Return the lines of a unit that are new ground: work, and of no plant to which a visit is owed there."""
    again = {one.species for one in found if one.unit == unit and one.kind == VISIT}
    mine = (one for one in plan.choices if one.stand.unit == unit and one.is_work)
    return tuple(one for one in mine if one.stand.species not in again)


def _place_all(
    wanted: Iterable[tuple[str, tuple[Year, ...]]], taken: tuple[Year, ...], beside: Mapping[str, tuple[Year, ...]],
    own: Own,
) -> tuple[tuple[Year, ...], tuple[Start, ...]]:  # fmt: skip
    """Return the years with all that fits, and when each begins. wanted: units in order, each with its years' work."""
    starts = []
    for key, years in wanted:
        first = next((one for one in years if best(one.minutes) > 0 or best(one.money) > 0), years[0])
        for at in range(len(years)):
            more = _beside(_later(years, at), beside.get(key, ()))
            tried = tuple(_add(one, other) for one, other in zip(taken, more, strict=True))
            if not any(_adds(one) and _passes(both, own.year_min, own.year_money)
                       for one, both in zip(more, tried, strict=True)):  # fmt: skip
                taken = tried
                starts.append(Start(key, at, best(first.minutes), best(first.money)))
                break
        else:
            starts.append(Start(key, None, best(first.minutes), best(first.money)))
    return taken, tuple(starts)


def _later(years: tuple[Year, ...], by: int) -> tuple[Year, ...]:
    return (*([NO_WORK] * by), *years[: len(years) - by])


def _adds(one: Year) -> bool:
    return round(best(one.minutes)) > 0 or round(_CENTS * best(one.money)) > 0


def _passes(one: Year, limit_min: float | None, limit_money: float | None) -> bool:
    """Return whether a year is more than its limit: whole minutes and whole cents, so that no last bit decides."""
    if limit_min is not None and round(best(one.minutes)) > round(limit_min):
        return True
    return limit_money is not None and round(_CENTS * best(one.money)) > round(_CENTS * limit_money)


def _name(unit: str, setting: Setting) -> str:
    known = setting.ground.units.get(unit)
    return known.name if known else unit


def owed_years(found: Sequence[Owed], many: int, setting: Setting) -> Mapping[str, tuple[Year, ...]]:
    """Return what is owed on each unit, year by year from today. many: years to reckon.

    Plants of one unit are looked at on one walk: the widest of their grounds counts.
    """
    out: dict[str, tuple[Year, ...]] = {}
    for unit in sorted({one.unit for one in found}):
        mine = [one for one in found if one.unit == unit]
        out[unit] = tuple(_one_walk([owed_year(one, year, setting) for one in mine]) for year in range(many))
    return out


def new_ground(lines: Sequence[Choice], many: int, setting: Setting) -> tuple[Year, ...]:
    """Return what work begun now takes on one unit, year by year: its first visit, then all it brings after it."""
    after = [(one, kinds_of(one, setting)) for one in lines]
    return tuple(new_year(after, year, setting) for year in range(many))


def new_year(after: Sequence[tuple[Choice, tuple[str, ...]]], year: int, setting: Setting) -> Year:
    """Return what work on one unit takes some years after it was begun. after: lines, each with its `kinds_of`."""
    if year == 0:
        return _stems((one.stand.stems, one) for one, _ in after)
    kinds = [(one, kinds[year - 1]) for one, kinds in after if year <= len(kinds)]
    if all(kind == NOTHING for _, kind in kinds):
        return NO_WORK
    again = _stems((survivors(one.stand.stems, one.per_stem.kill, year), one) for one, kind in kinds if kind == VISIT)
    unit = setting.ground.units[after[0][0].stand.unit]
    area_m2 = unit.area_m2 if unit.worked_m2 is None else unit.worked_m2
    return _add(again, _walk(walk_of(area_m2, unit, setting), setting)) if area_m2 else again


def together(years: Sequence[Year]) -> Year:
    """Return the work of some units in one year."""
    whole = NO_WORK
    for one in years:
        whole = _add(whole, one)
    return whole


def kinds_of(line: Choice, setting: Setting) -> tuple[str, ...]:
    """Return what comes one, two, ... years after the first visit to a line. Raises ValueError for a line left."""
    species = setting.reference.species[line.stand.species]
    method = line.way.visit.method
    visits = int(best(visits_of(line, setting))) - 1
    return timeline(visits, judge_years(species, method, setting), bank_years(species, setting) or 0)


def owed_year(one: Owed, year: int, setting: Setting) -> Year:
    """Return what is owed to a plant on a unit in a year, 0 the one from today."""
    kinds = (*([NOTHING] * whole_years(setting.on, one.due)), one.kind, *one.ahead)
    if year >= len(kinds) or kinds[year] == NOTHING:
        return NO_WORK
    walk = _walk(walk_of(one.area_m2, setting.ground.units[one.unit], setting), setting)
    return _add(_again(one, kinds[: year + 1].count(VISIT)), walk) if kinds[year] == VISIT else walk


def _again(one: Owed, visits: int) -> Year:
    """Return the work on what lives after so many visits."""
    known = [(part.alive(visits), part.figures) for part in one.parts]
    both = [(alive, figures) for alive, figures in known if alive is not None and figures is not None]
    return Year(
        sum_worlds([line_minutes(alive, figures.minutes) for alive, figures in both]),
        sum_worlds([line_money(alive, figures.cost) for alive, figures in both]),
        sure(0.0), sure(0.0),
    )  # fmt: skip


def _stems(lines: Iterator[tuple[Worlds, Choice]]) -> Year:
    both = tuple(lines)
    return Year(
        sum_worlds([line_minutes(stems, one.per_stem.minutes) for stems, one in both]),
        sum_worlds([line_money(stems, one.per_stem.cost) for stems, one in both]),
        sure(0.0), sure(0.0),
    )  # fmt: skip


def _walk(minutes: Worlds, setting: Setting) -> Year:
    return Year(sure(0.0), sure(0.0), minutes, day_money(minutes, wage_per_h(setting)))


def _add(one: Year, other: Year) -> Year:
    return Year(
        one.stems_min + other.stems_min, one.stems_money + other.stems_money, one.walk_min + other.walk_min,
        one.walk_money + other.walk_money,
    )  # fmt: skip


def _one_walk(years: Sequence[Year]) -> Year:
    """Return the work of several plants on one unit in one year: all stems, and the longest of the walks."""
    longest = max(years, key=lambda one: best(one.walk_min))
    stems = together([Year(one.stems_min, one.stems_money, sure(0.0), sure(0.0)) for one in years])
    return _add(stems, Year(sure(0.0), sure(0.0), longest.walk_min, longest.walk_money))


def _beside(new: Sequence[Year], known: Sequence[Year]) -> tuple[Year, ...]:
    """Return what new work adds to what is owed on the same unit: one walk a year does for both."""
    if not known:
        return tuple(new)
    out = []
    for one, before in zip(new, known, strict=True):
        both = _one_walk([one, before])
        walk = both.walk_min - before.walk_min, both.walk_money - before.walk_money
        out.append(Year(one.stems_min, one.stems_money, *walk))
    return tuple(out)


def _sum_years(units: Iterable[tuple[Year, ...]], many: int) -> tuple[Year, ...]:
    found = tuple(units)
    return tuple(together([each[year] for each in found]) for year in range(many))


def _not_known(new: Sequence[tuple[str, Sequence[Choice]]], setting: Setting) -> Iterator[str]:
    """Yield what of new ground is in no sum: walks on ground of unknown area, seed nobody gives years for."""
    for key, lines in new:
        unit = setting.ground.units[key]
        if unit.area_m2 is None and unit.worked_m2 is None:
            yield f"{unit.name}: its area is not known, so no walk is counted"
        for species in sorted({one.stand.species for one in lines}):
            if bank_years(setting.reference.species[species], setting) is None:
                yield f"{bank_words(setting.reference.species[species], setting)}, so no year of looking is counted"
