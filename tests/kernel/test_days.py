"""Dates are strict, and a window of the year may run over New Year."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.days import MONTHS, Window, holds, months, name_months, read_date, read_window, season_turned
from rootcollar.kernel.errors import BadInput

LEAP_YEAR = [date(2024, 1, 1) + timedelta(days=n) for n in range(366)]
DAYS = st.sampled_from([(day.month, day.day) for day in LEAP_YEAR])
WINDOWS = st.builds(Window, DAYS, DAYS)


def test_a_window_holds_both_its_ends_and_nothing_outside() -> None:
    summer = read_window("06-15", "10-01")
    held = [holds(summer, day) for day in (date(2026, 6, 14), date(2026, 6, 15), date(2026, 10, 1), date(2026, 10, 2))]
    assert held == [False, True, True, False]
    assert months(summer) == {6, 7, 8, 9, 10}


def test_a_winter_window_runs_over_new_year() -> None:
    winter = read_window("11-15", "02-29")
    held = [holds(winter, day) for day in (date(2026, 11, 14), date(2026, 12, 31), date(2027, 1, 1), date(2027, 3, 1))]
    assert held == [False, True, True, False]
    assert months(winter) == {11, 12, 1, 2}
    assert str(winter) == "11-15 to 02-29"


@given(WINDOWS)
def test_the_months_of_a_window_are_those_with_a_day_in_it(window: Window) -> None:
    assert months(window) == {day.month for day in LEAP_YEAR if holds(window, day)}


@given(WINDOWS)
def test_a_window_and_what_is_left_of_the_year_share_no_day(window: Window) -> None:
    inside = sum(holds(window, day) for day in LEAP_YEAR)
    start, end = (LEAP_YEAR.index(date(2024, *at)) for at in (window.start, window.end))
    assert inside == (end - start) % len(LEAP_YEAR) + 1


@given(st.dates())
def test_a_date_reads_back(day: date) -> None:
    assert read_date(day.isoformat()) == day


@pytest.mark.parametrize("text", ["2026-02-30", "2026-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "0000-01-01"])
def test_a_day_that_does_not_exist_is_told_so(text: str) -> None:
    with pytest.raises(BadInput, match="that day does not exist"):
        read_date(text)


@pytest.mark.parametrize(
    "text", ["", "10/09/2026", "2026-1-9", "20261009", "2026-10-09T00:00", "2026-W41-5", "٢٠٢٦-10-09", "9 Oct 2026"]
)
def test_a_date_in_another_form_is_refused_with_an_example(text: str) -> None:
    with pytest.raises(BadInput, match="2026-10-09"):
        read_date(text)


@pytest.mark.parametrize(
    ("start", "end"), [("02-30", "03-01"), ("03-01", "04-31"), ("13-01", "01-01"), ("6-15", "07-01")]
)
def test_a_window_needs_days_of_the_year(start: str, end: str) -> None:
    with pytest.raises(BadInput):
        read_window(start, end)


def test_a_window_cannot_be_made_of_days_that_do_not_exist() -> None:
    with pytest.raises(BadInput):
        Window((2, 30), (3, 1))


@pytest.mark.parametrize(
    ("which", "said"),
    [
        ({5}, "May"), ({11, 12, 1, 2}, "November to February"), ({11, 12, 1, 6}, "November to January and June"),
        ({1, 2, 12, 4, 7, 8}, "December to February, April and July to August"), (range(1, 13), "all year"), ((), ""),
    ],
)  # fmt: skip
def test_months_are_named_as_people_say_them(which: set[int], said: str) -> None:
    assert name_months(which) == said


@given(st.sets(st.integers(1, 12), max_size=11))
def test_every_run_of_months_is_named_by_its_ends(which: set[int]) -> None:
    got = set[int]()
    for run in name_months(which).replace(" and ", ", ").split(", "):
        if run:
            first, last = (MONTHS.index(name) for name in (run.split(" to ") * 2)[:2])
            got |= {(first + n) % 12 + 1 for n in range((last - first) % 12 + 1)}
    assert got == which


def test_a_number_that_is_no_month_is_refused() -> None:
    with pytest.raises(ValueError, match="months 1 to 12"):
        name_months({0})


@given(st.dates(date(2020, 1, 1), date(2028, 12, 31)), st.integers(0, 800))
def test_a_season_turns_when_leaves_come_or_go(since: date, days: int) -> None:
    on = since + timedelta(days=days)
    leaves = [4 <= (since + timedelta(days=one)).month <= 10 for one in range(days + 1)]
    assert season_turned(since, on) is any(one != leaves[0] for one in leaves)


def test_a_season_does_not_turn_backwards() -> None:
    assert not season_turned(date(2026, 11, 1), date(2026, 3, 1))
