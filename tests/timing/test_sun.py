"""Sunrise and sunset against printed almanac values, and against a library, over the whole year and the earth."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta, timezone

import pytest
from astral import Observer, sun
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.timing import CIVIL, Never, event, sun_day
from rootcollar.timing.sun import Side

GOLDEN = (39.742476, -105.1786)
LONDON = (51.5, -0.13333)
ALMANAC = 10  # seconds that a printed value may differ by
MINUTE = 60  # seconds, where only minutes are printed


def at(on: date, clock: str, hours: int = 0) -> datetime:
    hour, minute, second = (int(part) for part in (clock + ":00").split(":")[:3])
    return datetime(on.year, on.month, on.day, hour, minute, second, tzinfo=timezone(timedelta(hours=hours)))


@pytest.mark.parametrize(
    ("on", "place", "side", "clock", "hours", "within"),
    [
        # NREL's pages on its solar position algorithm, as an open library's tests print them
        (date(2015, 1, 2), GOLDEN, "rise", "07:21:55", -7, ALMANAC),
        (date(2015, 1, 2), GOLDEN, "set", "16:47:43", -7, ALMANAC),
        (date(2015, 8, 2), GOLDEN, "rise", "05:00:27", -7, ALMANAC),
        (date(1996, 7, 5), (-35.0, 0.0), "rise", "07:08:15", 0, ALMANAC),
        (date(1996, 7, 5), (-35.0, 0.0), "set", "17:01:04", 0, ALMANAC),
        (date(2004, 12, 4), (-35.0, 0.0), "rise", "04:38:57", 0, ALMANAC),
        (date(2004, 12, 4), (-35.0, 0.0), "set", "19:02:03", 0, ALMANAC),
        # an open library's tests, in minutes
        (date(2015, 12, 25), LONDON, "rise", "08:05", 0, MINUTE),
        (date(2015, 12, 25), LONDON, "set", "15:55", 0, MINUTE),
        (date(2015, 12, 1), LONDON, "rise", "07:43", 0, MINUTE),
        # the United States Naval Observatory prints 19:13 for the evening of 2 August
        (date(2015, 8, 2), GOLDEN, "set", "19:13", -7, MINUTE),
    ],
)
def test_printed_almanacs(
    on: date, place: tuple[float, float], side: Side, clock: str, hours: int, within: int
) -> None:
    found = event(on, *place, side)
    assert isinstance(found, datetime)
    assert abs((found - at(on, clock, hours)).total_seconds()) <= within


def test_civil_dawn_is_printed_too() -> None:
    found = event(date(2015, 12, 1), *LONDON, "rise", CIVIL)
    assert isinstance(found, datetime) and abs((found - at(date(2015, 12, 1), "07:04")).total_seconds()) <= MINUTE


def test_the_noons_of_the_almanac() -> None:
    """Transit of the sun, from the same pages."""
    for on, place, clock, hours in (
        (date(2015, 1, 2), GOLDEN, "12:04:45", -7),
        (date(1996, 7, 5), (-35.0, 0.0), "12:04:36", 0),
        (date(2004, 12, 4), (-35.0, 0.0), "11:50:22", 0),
    ):
        assert abs((sun_day(on, *place).noon - at(on, clock, hours)).total_seconds()) <= ALMANAC


def test_an_evening_of_the_americas_is_the_next_day_in_universal_time() -> None:
    found = sun_day(date(2015, 8, 2), *GOLDEN).sunset
    assert isinstance(found, datetime) and found.astimezone(UTC).date() == date(2015, 8, 3)


def test_polar_day_and_polar_night_are_answers() -> None:
    midsummer, midwinter = sun_day(date(2025, 6, 21), 70, 25), sun_day(date(2025, 12, 21), 75, 25)
    assert (midsummer.sunrise, midsummer.sunset) == (Never.ABOVE, Never.ABOVE)
    assert (midwinter.sunrise, midwinter.dusk) == (Never.BELOW, Never.BELOW)
    assert isinstance(midwinter.noon, datetime)


@given(st.dates(date(1970, 1, 1), date(2060, 12, 31)), st.floats(-50, 50), st.floats(-175, 175))
def test_a_library_says_the_same(on: date, lat: float, lon: float) -> None:
    """It looks at the moving sun once less often, so that it may be off by some seconds more."""
    day, seen = sun_day(on, lat, lon), Observer(lat, lon)
    assert isinstance(day.sunrise, datetime) and isinstance(day.sunset, datetime)
    zone = timezone(timedelta(minutes=4 * lon))  # of the place's own sun: its noon is on that day
    for ours, theirs in ((day.sunrise, sun.sunrise), (day.sunset, sun.sunset)):
        assert abs((ours - theirs(seen, on, zone)).total_seconds()) <= ALMANAC * 2
    assert day.sunrise < day.noon < day.sunset
