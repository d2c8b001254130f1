"""The months of a line, each with its reason; and a month with what can be done in it, unit by unit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from rootcollar.choose import Choice, MonthLine, Setting, best_months, in_month, instruction, reasons, year_of_line
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.kernel.errors import NotFound
from rootcollar.web.desk import Open, of_what_lies_open
from rootcollar.web.views.working import Drawer, Run, Step, line_of
from rootcollar.work import text
from rootcollar.work.months_words import best_words, state_words

__all__ = ["Cell", "MonthRow", "MonthUnit", "MonthView", "month_view", "months_drawer", "strip_of"]

Cell = tuple[str, str, str]  # letter, state, month
_STATES = {"open": "open", "maybe": "open, with a doubt", "shut": "shut"}

_CELLS = {"open": "open", "maybe": "maybe", "shut": "closed"}


@dataclass(frozen=True, slots=True)
class MonthRow:
    """A line in a month. level: "", ask or stop, the worst said of it. when: when else, where it is not best."""

    size: str
    plant: str
    verb: str
    because: str
    level: str
    when: str
    instead: str


@dataclass(frozen=True, slots=True)
class MonthUnit:
    """A unit in a month: (title, lines) best first, then open, then shut."""

    key: str
    name: str
    groups: tuple[tuple[str, tuple[MonthRow, ...]], ...]


@dataclass(frozen=True, slots=True)
class MonthView:
    """A month: its name, and what can be done on each unit, in the order to work them."""

    month: int
    name: str
    units: tuple[MonthUnit, ...]


def strip_of(line: Choice, setting: Setting) -> tuple[tuple[Cell, ...], str, Run]:
    """Return the twelve cells of a line's way, what they say in words, and when it is best, which opens."""
    year = year_of_line(line, setting)
    best = best_months(year)
    cells = tuple(
        (
            name[:1],
            f"best {_CELLS[said.state]}" if best.sourced and said.month in best.months else _CELLS[said.state],
            name,
        )
        for said, name in zip(year, MONTHS, strict=True)
    )
    words = best_words(year)
    run = Run(f"{words[:1].upper()}{words[1:]}", f"/choose/months/{line.stand.key}", "why each month is open or shut")
    return cells, f"Months: {state_words(year)}; {words}", run


def months_drawer(here: Open, key: str) -> Drawer:
    """Return why each month of a line is open or shut, with its sources. Raises NotFound for no such line."""
    line = line_of(here, key, "months")
    year = year_of_line(line, here.setting)
    steps = tuple(Step(name_months(which), f"{_STATES[state]}: {why}") for which, state, why in reasons(year))
    told = f"{best_words(year)}: {best_months(year).because}"
    cites = here.setting.reference.sources
    words = " ".join([told, *(one.because for one in year)])
    named = tuple(
        (one, cites[one].cite)
        for one in cites
        if f"({one}, " in words or f", {one}, " in words or f"; {one}, " in words
    )
    return Drawer(f"{told[:1].upper()}{told[1:]}", "", steps, named)


@of_what_lies_open
def month_view(here: Open, month: int) -> MonthView:
    """Return what can be done in a month, 1 to 12. Raises NotFound for another."""
    if not 1 <= month <= len(MONTHS):
        raise NotFound("month", str(month), ["1", str(len(MONTHS))])
    order = here.plan.order if here.plan else ()
    return MonthView(month, MONTHS[month - 1], tuple(_unit(here, key, month) for key, _ in order))


def _unit(here: Open, key: str, month: int) -> MonthUnit:
    choices = here.plan.choices if here.plan else ()
    lines = in_month([one for one in choices if one.stand.unit == key], month, here.setting)
    told = {
        "Best now": [one for one in lines if one.is_open and one.is_best],
        "Open now": [one for one in lines if one.is_open and not one.is_best],
        "Not now": [one for one in lines if not one.is_open],
    }
    groups = tuple((title, tuple(_rows(mine, here))) for title, mine in told.items() if mine)
    return MonthUnit(key, here.project.ground.units[key].name, groups)


def _rows(lines: list[MonthLine], here: Open) -> Iterator[MonthRow]:
    for one in lines:
        stand = one.choice.stand
        plant = here.setting.reference.species[stand.species].common_name
        best = f"{'Best' if one.best.sourced else 'As good in any of'} {name_months(one.best.months)}"
        level = one.choice.level.word if one.choice.level.word in ("ask", "stop") else ""
        yield MonthRow(
            text.size(stand.band_cm), plant, instruction(one.choice.way)[0], one.said.because, level,
            "" if one.is_best else f"{best}: {one.best.because}", one.instead.words if one.instead else "",
        )  # fmt: skip
