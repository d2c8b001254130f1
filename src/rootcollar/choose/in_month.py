"""What can be done in a month: each line of a plan that has a way, whether it is open then, and when it is best.

The plan takes the best way of the year. Where that is shut in a month, the best of those that are open then is named
beside it; it never takes its place by itself.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from rootcollar.choose.months import Best, MonthSaid, best_months, year_of
from rootcollar.choose.option import Choice, Way
from rootcollar.choose.setting import Setting
from rootcollar.choose.words import way_words
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.kernel.verdict import Level

__all__ = ["Instead", "MonthLine", "in_month", "instead_of", "shut_words", "year_of_line"]

_NONE = "no other way that has a label"

Whose = Callable[[Sequence[Choice]], str]


@dataclass(frozen=True, slots=True)
class Instead:
    """Another way of a line, open in a month. per_kill: expected cost of a stem killed. held: a question waits."""

    way: Way
    per_kill: float
    held: bool

    @property
    def words(self) -> str:
        """The way, what a stem killed costs by it, and whether a question holds it."""
        return self.with_cost().format(_span([self.per_kill]))

    def with_cost(self) -> str:
        """Return the words with a place {} for the cost."""
        waits = ", held until a question is answered" if self.held else ""
        return f"{way_words(self.way)}, {{}} per stem killed{waits}"


@dataclass(frozen=True, slots=True, eq=False)
class MonthLine:
    """A line in a month. said: of its way. best: when in the year. instead: the best open way where its own is shut."""

    choice: Choice
    said: MonthSaid
    best: Best
    instead: Instead | None = None

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
    year = year_of(choice.way, setting.reference.species[choice.stand.species], setting.reference)
    unit = setting.ground.units[choice.stand.unit]
    if choice.way.visit.method != "foliar" or not unit.wanted_beneath or unit.wanted_bare is None:
        return year
    in_leaf = "wanted plants beneath are in leaf (wanted_bare of the unit)"
    return tuple(
        one
        if one.month in unit.wanted_bare
        else MonthSaid(one.month, "shut", f"{one.because}; {in_leaf}" if one.state == "shut" else in_leaf)
        for one in year
    )


def _line(choice: Choice, month: int, setting: Setting) -> MonthLine:
    year = year_of_line(choice, setting)
    said = year[month - 1]
    instead = instead_of(choice, month) if said.state == "shut" else None
    return MonthLine(choice, said, best_months(year), instead)


def instead_of(choice: Choice, month: int) -> Instead | None:
    """Return the cheapest other way per stem killed that is open in a month, 1 to 12; None where none is.

    Those that no question holds go first. A way without a label on the shelf is none: nobody may mix it that day.
    """
    found = sorted(
        (one for one in _others(choice) if month in one.way.visit.months),
        key=lambda one: (one.held, round(100 * one.per_kill), one.way.key),
    )
    return found[0] if found else None


def shut_words(lines: Sequence[Choice], month: int, whose: Whose = str) -> str:
    """Say that lines done alike are shut in a month, when they are open, and what is open instead; "" where open.

    whose: words for some of the lines, needed where there are several. Raises ValueError for a line that is left.
    """
    named = lines[0].way.visit.months
    if month in named:
        return ""
    found: dict[str, list[tuple[Choice, float]]] = {}
    for line in lines:
        other = instead_of(line, month)
        found.setdefault(other.with_cost() if other else _NONE, []).append((line, other.per_kill if other else 0.0))
    then = "; ".join(_then(words, some, whose if len(found) > 1 else None) for words, some in found.items())
    name = MONTHS[month - 1]
    return f"Not in {name}, but in {name_months(named)}. Open in {name}: {then}"


def _then(words: str, some: Sequence[tuple[Choice, float]], whose: Whose | None) -> str:
    told = words.format(_span([per_kill for _, per_kill in some]))
    return f"{whose([line for line, _ in some])}: {told}" if whose else told


def _span(costs: Sequence[float]) -> str:
    low, high = (f"${one:,.2f}" for one in (min(costs), max(costs)))
    return low if low == high else f"{low} to {high}"


def _others(choice: Choice) -> Iterator[Instead]:
    """Yield every way that was weighed, may be chosen and has its label, but the chosen one."""
    if choice.fallback is not None:
        back = choice.fallback.option
        yield Instead(back.way, back.per_kill, back.level >= Level.ASK)
    for one in choice.set_aside:
        if one.open and one.per_kill is not None:
            yield Instead(one.way, one.per_kill, one.level >= Level.ASK)
