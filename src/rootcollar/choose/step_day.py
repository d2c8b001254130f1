"""Which of two steps is due on a day, by what applied.csv says was begun; and second steps that are still owed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from rootcollar.choose.option import Choice, Way
from rootcollar.choose.setting import Setting
from rootcollar.choose.steps import first_alone, second_spans, spans_of
from rootcollar.kernel.doubt import sure
from rootcollar.label import Applied, History
from rootcollar.reference import StepRow

__all__ = ["OwedStep", "begun", "on_day", "owed_steps"]

_YEAR = frozenset(range(1, 13))  # the months


@dataclass(frozen=True, slots=True)
class OwedStep:
    """A second step that is owed: the first was done on a unit to a plant, and nothing is dead until the second is.

    first: the day. spans: earliest and latest day of the second, in the year of the first and in the next where it may
    wait so long; none: no day is left for it by the source. missed: all of them have passed.
    """

    unit: str
    species: str
    plant: str
    row: StepRow
    first: date
    spans: tuple[tuple[date, date], ...]
    missed: bool

    @property
    def words(self) -> str:
        """What is owed, since when, and when it can be."""
        done = f"{self.plant}: {self.row.first} {self.first.isoformat()}, and {self.row.second} is owed"
        when = ", or ".join(f"{a.isoformat()} to {b.isoformat()}" for a, b in self.spans)
        source = f"({self.row.source}, {self.row.mark})"
        if not self.spans:
            return f"{done}; no day is left for it by the source: prepare again {source}"
        if self.missed:
            return f"{done}; its days, {when}, have passed: prepare again {source}"
        return f"{done}, {when} {source}"


def begun(unit: str, species: str, row: StepRow, history: History, on: date) -> date | None:
    """Return the day on which the first step was last done on a unit to a plant; None: not, or the second was since.

    Rows of applied.csv that name no plant or no method say nothing of either.
    """
    mine = [one for one in history.rows if (one.unit, one.species) == (unit, species) and one.on <= on]
    firsts = [one.on for one in mine if one.method == row.first and _by_hand(one)]
    if not firsts:
        return None
    last = max(firsts)
    return None if any(one.on > last and one.method == row.second for one in mine) else last


def on_day(choice: Choice, day: date | None, setting: Setting) -> Choice | None:
    """Return a line as it is work on a day: of two steps, the one that is due; None where none of it is.

    The first alone is done where no row of applied.csv says that it was, in its months, and only while the second can
    follow it; the second once its wait is over. Without a day a line stays as it is.
    """
    option = choice.option
    if day is None or option is None:
        return choice
    way = option.way
    if way.step is None or len(way.treatment) == 1:
        return choice if day.month in way.visit.months else None
    since = begun(choice.stand.unit, choice.stand.species, way.step, setting.history, day)
    if since is not None:
        if not any(start <= day <= end for start, end in second_spans(way, since)):
            return None
        return replace(choice, option=replace(option, way=replace(way, treatment=way.treatment[1:])))
    first = first_alone(way)
    if first is None or day.month not in first.visit.months or not second_spans(way, day):
        return None
    figures = replace(option.per_stem, mix_ml=sure(0.0), side_m2=sure(0.0), dose_ml=None, dose_per="")
    return replace(choice, option=replace(option, way=first, figures=lambda: figures))


def owed_steps(choices: Sequence[Choice], setting: Setting) -> tuple[OwedStep, ...]:
    """Return the second steps owed by the day of the setting, by unit and plant: whatever the plan would do now.

    choices: whose open months narrow the days, where they take the same two steps.
    """
    found: dict[tuple[str, str, str], OwedStep] = {}
    for one in setting.history.rows:
        for row in setting.reference.steps:
            if one.species not in row.species or one.method != row.first or not _by_hand(one):
                continue
            since = begun(one.unit, one.species, row, setting.history, setting.on)
            if since is not None:
                spans = spans_of(row, _open(choices, one, row), since)
                plant = setting.reference.species[one.species].common_name
                missed = bool(spans) and max(end for _, end in spans) < setting.on
                found[one.unit, one.species, row.key] = OwedStep(
                    one.unit, one.species, plant, row, since, spans, missed
                )
    return tuple(found[key] for key in sorted(found))


def _open(choices: Sequence[Choice], one: Applied, row: StepRow) -> frozenset[int]:
    ways: list[Way] = [
        line.way
        for line in choices
        if line.option and (line.stand.unit, line.stand.species) == (one.unit, one.species) and line.way.step == row
    ]
    return frozenset[int]().union(*(way.visit.months for way in ways)) or _YEAR


def _by_hand(one: Applied) -> bool:
    return not one.ingredient
