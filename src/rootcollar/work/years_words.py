"""Follow-up owed, and what each year holds, in words: the same in the terminal and in the app."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from rootcollar.choose import (
    LOOK,
    NOTHING,
    SEED,
    VISIT,
    Booked,
    Owed,
    Prescription,
    Setting,
    Start,
    Year,
    bank_words,
    bank_years,
    owed,
)
from rootcollar.kernel.doubt import best, sure
from rootcollar.kernel.formula import unwatched
from rootcollar.work import text

__all__ = ["YearRow", "bank_lines", "limit_words", "owed_words", "start_words", "year_from", "year_rows"]

_MIN_PER_H = 60  # definition
_SAID = {VISIT: "visit", LOOK: "look-back", SEED: "look for seedlings"}


@dataclass(frozen=True, slots=True)
class YearRow:
    """One year: from which day, what is owed in it, what is taken with new ground, and whether it is too much."""

    at: int
    year: str
    owed: str
    taken: str
    too_much: bool


def year_from(on: date, years: int) -> date:
    """Return the first day of a year of the plan: the plan's own day, some years on; of 29 February, the 28th."""
    try:
        return on.replace(year=on.year + years)
    except ValueError:
        return on.replace(year=on.year + years, day=on.day - 1)


def year_rows(found: Booked, on: date) -> tuple[YearRow, ...]:
    """Return the years that hold any work. on: the day of the plan."""
    return tuple(
        YearRow(at, year_from(on, at).isoformat(), _takes(owed_), _takes(taken), found.passes(taken))
        for at, (owed_, taken) in enumerate(zip(found.owed, found.taken, strict=True))
        if best(taken.minutes) > 0
    )


def limit_words(found: Booked) -> str:
    """Return what a year holds, in words."""
    hours = None if found.limit_min is None else f"{found.limit_min / _MIN_PER_H:g} h"
    money = None if found.limit_money is None else f"${found.limit_money:,.2f}"
    told = " and ".join(one for one in (hours, money) if one)
    if not told:
        return "Nobody has said what a year holds ([year] in own.toml), so all new ground is begun now"
    return f"A year holds {told} ([year] in own.toml): what is owed is booked first, new ground in what is left"


def start_words(one: Start, setting: Setting, what: str) -> str:
    """Return when a unit fits. what: "new ground" or "follow-up"."""
    known = setting.ground.units.get(one.unit)
    name = known.name if known else one.unit
    takes = f"{text.hours(sure(one.takes))}, ${one.money:,.0f} in its first year"
    if one.years == 0:
        return f"{name}: {what} fits this year ({takes})"
    if one.years is None:
        return f"{name}: {what} fits in no year reckoned ({takes}); split the unit, or raise the limit"
    return f"{name}: {what} would fit in the year from {year_from(setting.on, one.years).isoformat()} ({takes})"


def owed_words(one: Owed, setting: Setting) -> Iterator[str]:
    """Yield what is owed to a plant on a unit: what and when, what comes after it, what is lost, what is not known."""
    known = setting.ground.units.get(one.unit)
    yield f"{known.name if known else one.unit}: {one.words}"
    then = max(one.due, setting.on)  # what is overdue is done now at the earliest, and the rest a year after it
    coming = [(then, one.kind), *((year_from(then, at), kind) for at, kind in enumerate(one.ahead, start=1))]
    yield "by year: " + ", ".join(f"{day.year} {_SAID[kind]}" for day, kind in coming if kind != NOTHING)
    spent = one.spent
    if spent is None:
        yield "what was spent on its stems, which is not known, is lost if nobody comes"
    else:
        yield f"the ${best(spent):,.0f} spent on its stems is lost if nobody comes"
    yield from one.not_known


def bank_lines(plan: Prescription, setting: Setting, *, treated: bool) -> tuple[str, ...]:
    """Return for how long the seed of each plant that is work must be looked after.

    treated: also of plants that were treated, and without those of which it is not known, which are told elsewhere.
    """
    keys = {one.stand.species for one in plan.choices if one.is_work}
    if treated:
        with unwatched():
            keys |= {one.species for one in owed(setting) if one.species}
            keys = {key for key in keys if bank_years(setting.reference.species[key], setting) is not None}
    return tuple(bank_words(setting.reference.species[key], setting) for key in sorted(keys))


def _takes(year: Year) -> str:
    return f"{text.hours(year.minutes)}, ${best(year.money):,.0f}" if best(year.minutes) > 0 else "nothing"
