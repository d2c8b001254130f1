"""What each year holds: follow-up owed first, new ground in what is left, and how the hours of a year were come by."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from rootcollar.choose import (
    Booked,
    Prescription,
    Year,
    booked,
    kinds_of,
    lost_words,
    new_lines,
    new_year,
    owed,
    owed_year,
    rounds_of,
)
from rootcollar.kernel.doubt import best
from rootcollar.kernel.errors import NotFound
from rootcollar.kernel.formula import watch
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.web.views.working import Drawer, Run, Step, drawer_of
from rootcollar.work import text
from rootcollar.work.years_words import bank_lines, limit_words, owed_words, start_words, year_from, year_rows

__all__ = ["YearView", "YearsView", "unit_years", "year_drawer", "years_told", "years_view"]

_WHAT = ("owed", "taken")


@dataclass(frozen=True, slots=True)
class YearView:
    """One year: its first day, what is owed in it and what is taken with new ground, each opening; too much or not."""

    year: str
    owed: Run
    taken: Run
    too_much: bool


@dataclass(frozen=True, slots=True)
class YearsView:
    """What years hold: the limit, each year, what does not fit now, what is owed, what one missed visit
    loses, seed, rounds, what is not known."""

    limit: str
    years: tuple[YearView, ...]
    begin: tuple[str, ...]
    late: tuple[str, ...]
    owed: tuple[tuple[str, ...], ...]
    lost: str
    seed: tuple[str, ...]
    rounds: str
    not_known: tuple[str, ...]


@of_what_lies_open
def years_view(here: Open) -> YearsView | None:
    """Return what years hold; None while nothing is counted."""
    if here.plan is None:
        return None
    found, setting = _booked(here), here.setting
    rows = tuple(
        YearView(one.year, _run(one.owed, "owed", one.at), _run(one.taken, "taken", one.at), one.too_much)
        for one in year_rows(found, here.on)
    )
    late = [start_words(one, setting, "follow-up") for one in found.owed_starts if one.years != 0]
    late += [start_words(one, setting, "new ground") for one in found.starts if one.years != 0]
    return YearsView(
        limit_words(found), rows,
        tuple(start_words(one, setting, "new ground") for one in found.starts if one.years == 0),
        tuple(late), tuple(tuple(owed_words(one, setting)) for one in owed(setting)),
        lost_words(setting), bank_lines(here.plan, setting, treated=True),
        rounds_of(here.plan, setting).words, found.not_known,
    )  # fmt: skip


def years_told(here: Open) -> str:
    """Return in a sentence how much is owed and how much new ground begins; "" while nothing is counted."""
    if here.plan is None:
        return ""
    found = _booked(here)
    now = sum(one.years == 0 for one in found.starts)
    owing = len({one.unit for one in owed(here.setting)})
    units = "1 unit" if owing == 1 else f"{owing} units"
    return f"Follow-up is owed on {units}; of {len(found.starts)} units of new ground {now} fit this year"


def unit_years(here: Open, key: str) -> tuple[str, ...]:
    """Return what is owed on a unit, and for how long the seed of what grows there must be looked after."""
    if here.plan is None:
        return ()
    told = [words for one in owed(here.setting) if one.unit == key for words in owed_words(one, here.setting)]
    told += [lost_words(here.setting)] if told else []
    mine = tuple(one for one in here.plan.choices if one.stand.unit == key)
    return (*told, *bank_lines(Prescription(mine, ()), here.setting, treated=False))


def year_drawer(here: Open, what: str, at: int) -> Drawer:
    """Return how the hours of a year were come by. what: owed or taken; at: years from now.

    Raises NotFound for another number or a year that is not reckoned.
    """
    if what not in _WHAT:
        raise NotFound("number of a year", what, list(_WHAT))
    if here.plan is None or not 0 <= at < len(_booked(here).owed):
        raise NotFound("year that was reckoned", str(at), ["0", "1", "2"])
    whole = getattr(_booked(here), what)[at]
    with watch() as steps:
        parts = tuple(_parts(here, here.plan, what, at))
    says = f"{text.hours(whole.minutes)}, ${best(whole.money):,.0f}"
    drawer = drawer_of(says, "", steps, here.setting.reference.sources)
    told = tuple(Step(name, f"{_told(year)}") for name, year in parts)
    note = "plants of one unit are looked at on one walk, the longest; so the sum may be less than its parts"
    end = Step("all together", f"{_told(whole)}; {note}")
    return Drawer(drawer.says, drawer.band, (*drawer.steps, *told, end), drawer.sources)


def _parts(here: Open, plan: Prescription, what: str, at: int) -> Iterator[tuple[str, Year]]:
    """Yield what each unit takes in a year, by name."""
    found, units = owed(here.setting), here.setting.ground.units
    for one in found:
        name = units[one.unit].name if one.unit in units else one.unit
        yield f"follow-up, {name}, {one.plant}", owed_year(one, at, here.setting)
    for start in _booked(here).starts if what == "taken" else ():
        if start.years is not None and start.years <= at:
            after = [(one, kinds_of(one, here.setting)) for one in new_lines(start.unit, plan, found)]
            begun = year_from(here.on, start.years).isoformat()
            yield f"{units[start.unit].name}, begun from {begun}", new_year(after, at - start.years, here.setting)


@of_what_lies_open
def _booked(here: Open) -> Booked:
    assert here.plan is not None
    return booked(here.plan, here.setting)


def _run(words: str, what: str, at: int) -> Run:
    return Run(words, f"/choose/years/{what}/{at}", f"{what}, year {at + 1}")


def _told(year: Year) -> str:
    minutes, money = (
        f"{best(year.stems_min):.6g} + {best(year.walk_min):.6g} = {best(year.minutes):.6g} min",
        f"{best(year.stems_money):.6g} + {best(year.walk_money):.6g} = {best(year.money):.6g} money",
    )
    return f"stems + walk: {minutes}; {money}"
