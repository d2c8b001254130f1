"""The months of a line in words: when it is best, then which are open, open on some days, or shut, and why."""

from __future__ import annotations

from collections.abc import Iterable

from rootcollar.choose import Choice, MonthSaid, Setting, best_months, reasons, year_of_line
from rootcollar.kernel.days import name_months

__all__ = ["best_words", "months_words", "state_words"]

_STATES = {"open": "open", "maybe": "open, with a doubt", "shut": "shut"}


def months_words(choice: Choice, setting: Setting) -> tuple[str, ...]:
    """Return sentences without their stops: the best months first, then each run of months with its reason.

    Raises ValueError for a line that is left.
    """
    year = year_of_line(choice, setting)
    each = (f"{name_months(which)} {_STATES[state]}: {because}" for which, state, because in reasons(year))
    return (f"{best_words(year)}: {best_months(year).because}", *each)


def best_words(year: tuple[MonthSaid, ...]) -> str:
    """Return when a way is best: "best October to November"."""
    best = best_months(year)
    return f"{'best' if best.sourced else 'as good in any of'} {name_months(best.months)}"


def state_words(year: Iterable[MonthSaid]) -> str:
    """Return which months are open, open with a doubt, and shut: "open August to October; shut ..."."""
    at = {state: [one.month for one in year if one.state == state] for state in _STATES}
    return "; ".join(f"{words} {name_months(at[state])}" for state, words in _STATES.items() if at[state])
