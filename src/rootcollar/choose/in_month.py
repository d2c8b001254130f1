"""What can be done in a month: each line of a plan that has a way, whether it is open then, and when it is best."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from rootcollar.choose.months import Best, MonthSaid, best_months, year_of
from rootcollar.choose.option import Choice, Way
from rootcollar.choose.setting import Setting

__all__ = ["MonthLine", "in_month", "year_of_line"]


@dataclass(frozen=True, slots=True, eq=False)
class MonthLine:
    """A line in a month. said: of its way. best: when in the year. instead: its second way, open where it is shut."""

    choice: Choice
    said: MonthSaid
    best: Best
    instead: Way | None = None

    @property
    def is_open(self) -> bool:
        """Whether the first way may be done in the month."""
        return self.said.state != "shut"

    @property
    def is_best(self) -> bool:
        """Whether the month is one of those that a source finds best for the way, or names for the plant."""
        return self.best.sourced and self.said.month in self.best.months


def in_month(choices: Sequence[Choice], month: int, setting: Setting) -> tuple[MonthLine, ...]:
    """Return what is said of every line that has a way in a month, 1 to 12, in the order given."""
    return tuple(_line(one, month, setting) for one in choices if one.option is not None)


def year_of_line(choice: Choice, setting: Setting) -> tuple[MonthSaid, ...]:
    """Return what is said of each month of the chosen way. Raises ValueError for a line that is left."""
    return year_of(choice.way, setting.reference.species[choice.stand.species], setting.reference)


def _line(choice: Choice, month: int, setting: Setting) -> MonthLine:
    year = year_of_line(choice, setting)
    said = year[month - 1]
    back = choice.fallback.option.way if choice.fallback else None
    instead = back if said.state == "shut" and back is not None and month in back.visit.months else None
    return MonthLine(choice, said, best_months(year), instead)
