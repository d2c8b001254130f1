"""The choice knows the day's month: what is shut says so, when it opens, and what is open instead; all pages agree."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

import pytest

from rootcollar.choose import (
    Choice,
    Prescription,
    SetAside,
    best_months,
    in_month,
    instead_of,
    prescribe,
    shut_words,
    year_of_line,
)
from rootcollar.kernel.days import MONTHS, name_months
from rootcollar.kernel.verdict import Level
from tests.choose.hobbin import chosen, hobbin, only, plain_setting, plan, setting_of, stand
from tests.work.packets import made

YEAR = range(1, len(MONTHS) + 1)
HONEYSUCKLE = stand("Amur honeysuckle", 0.5, 1), stand("Amur honeysuckle", 1, 2)


def planned(month: int) -> Prescription:
    """Return the plan of two units of the demo, weighed for a day in a month."""
    project = only(hobbin(), "trail-loop", "hollow")
    return prescribe(project.stands, setting_of(project, date(2026, month, 15)))


def _least(found: set[tuple[bool, float]]) -> tuple[bool, str]:
    held, cost = min(found)
    return held, f"{cost:.2f}"


def sizes(lines: Sequence[Choice]) -> str:
    return ", ".join(f"{one.stand.band_cm[1]:g}" for one in lines)


@pytest.mark.parametrize("month", YEAR)
def test_day_month_page_and_best_months_agree(month: int) -> None:
    choices = planned(month).choices
    setting = setting_of(only(hobbin(), "trail-loop", "hollow"), date(2026, month, 15))
    for said in in_month(choices, month, setting):
        line, words = said.choice, shut_words([said.choice], month)
        assert (words == "") == said.is_open == (month in line.way.visit.months)
        best = best_months(year_of_line(line, setting)).months
        assert best <= line.way.visit.months
        assert not said.is_best or said.is_open
        if words:
            assert words.startswith(f"Not in {MONTHS[month - 1]}, but in {name_months(line.way.visit.months)}. ")
            assert said.instead == instead_of(line, month)
            assert (said.instead.words if said.instead else "no other way that has a label") in words


@pytest.mark.parametrize("month", YEAR)
def test_a_way_set_aside_that_is_shut_in_the_days_month_says_so_and_when_it_opens(month: int) -> None:
    for line in planned(month).choices:
        for one in line.set_aside:
            if one.open:
                told = f"not in {MONTHS[month - 1]}, but in {name_months(one.way.visit.months)}"
                assert (told in one.because) == (month not in one.way.visit.months)


def test_the_month_alone_never_changes_which_way_is_best_of_the_year() -> None:
    ways = {month: [one.option and one.way.key for one in planned(month).choices] for month in (1, 4, 9)}
    assert ways[1] == ways[4] == ways[9]


@pytest.mark.parametrize("month", YEAR)
def test_what_is_open_instead_is_the_cheapest_that_may_be_done_then(month: int) -> None:

    def then(one: SetAside) -> bool:
        return one.open and month in one.way.visit.months

    for line in plan().choices:
        if line.option is None:
            continue
        found = {(one.level >= Level.ASK, one.per_kill) for one in line.set_aside if then(one) and one.per_kill}
        back = line.fallback.option if line.fallback else None
        if back and month in back.way.visit.months:
            found.add((back.level >= Level.ASK, back.per_stem.mean_cost_per_kill))
        other = instead_of(line, month)
        assert (other is None) == (not found)
        assert other is None or (other.held, f"{other.per_kill:.2f}") == _least(found)


def test_lines_done_alike_that_differ_in_what_is_open_are_told_apart_by_size() -> None:
    """Honeysuckle in April: what is thin enough is pulled, and nothing is open for what is not."""
    setting = replace(plain_setting(hobbin().shelf.values(), wanted_beneath=True), on=date(2026, 4, 15))
    thin, thick = (chosen(one, setting) for one in HONEYSUCKLE)
    assert thin.way.key == thick.way.key
    words = shut_words([thin, thick], 4, sizes)
    assert "2.54: pull, $" in words
    assert "5.08: no other way that has a label" in words
    assert shut_words([thin], 4) and "2.54" not in shut_words([thin], 4)


def test_the_day_sheet_strikes_what_the_month_page_calls_shut() -> None:
    project, day = only(hobbin(), "trail-loop"), date(2026, 4, 15)
    setting = setting_of(project, day)
    whole = prescribe(project.stands, setting)
    shut = [one for one in in_month(whole.choices, 4, setting) if not one.is_open and one.choice.is_work]
    assert shut
    packet = made(project, ["trail-loop"], day, whole)
    struck = " ".join(one.what for one in packet.day.struck if "not in April" in one.because)
    for one in shut:
        name = setting.reference.species[one.choice.stand.species].common_name
        assert name in struck
        lines = [line for line in packet.units[0].lines if line.plant == name and line.months]
        assert any(line.months[0] == shut_words([one.choice], 4) for line in lines)
