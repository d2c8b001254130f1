"""The commands of sky and air: what they say, and what they refuse to take for an answer."""

from __future__ import annotations

import pytest
from click.testing import Result

from tests.cli.test_figure import asked as body_of
from tests.cli.test_figure import figure, held_together


def asked(*words: str) -> Result:
    return figure(list(words))


def body(*words: str) -> dict[str, object]:
    return body_of(" ".join(f"'{word}'" for word in words))


GOLDEN = ("--lat", "39.742476", "--lon", "-105.1786", "--zone", "America/Denver")


def test_sunrise_by_the_clock_of_the_place_summer_time_too() -> None:
    """NREL prints 07:21:55 and 16:47:43 standard time for 2 January, and 05:00:27 for 2 August, by standard time."""
    said = asked("sun", "--on", "2015-01-02", *GOLDEN).output
    assert "Sunrise 07:22, sunset 16:48" in said
    assert "Sunrise 06:00" in asked("sun", "--on", "2015-08-02", *GOLDEN).output


def test_still_evenings_are_told_with_their_source() -> None:
    said = asked("sun", "--on", "2015-01-02", *GOLDEN).output
    assert "from 14:48 to 15:48 on" in " ".join(said.split()) and "GRDC-INV" in said


def test_a_day_without_a_sunset_is_an_answer() -> None:
    told = body("sun", "--on", "2027-06-21", "--lat", "70", "--lon", "25")
    assert told["value"] == 24 and "stays above" in str(told["says"])
    assert body("sun", "--on", "2027-12-21", "--lat", "75", "--lon", "25")["value"] == 0


@pytest.mark.parametrize(
    ("humidity", "words"), [("90%", "below 2"), ("60", "between 2 and 8"), ("35 %", "above 8"), ("15%", "above 10")]
)
def test_delta_t_has_four_classes(humidity: str, words: str) -> None:
    assert words in asked("delta-t", "--air", "75 F", "--humidity", humidity).output


def test_delta_t_as_a_table_has_it() -> None:
    """85 F and 50 %: 7.9 degrees apart at sea level."""
    assert body("delta-t", "--air", "85 F", "--humidity", "50%")["value"] == pytest.approx(7.9, abs=0.06)


def test_a_wet_bulb_shows_the_balance_once() -> None:
    said = asked("delta-t", "--air", "24 C", "--humidity", "50%").output
    assert said.count("ratio at wet bulb = ") == 1


def test_degree_days_by_every_way() -> None:
    """A day from 45 to 75 F over 50: 10.9 as a sine, 10 by its middle, 11.25 by the short way; 12.5 cut to 86."""
    said = asked("degree-days", "--low", "45 F", "--high", "75 F", "--base", "50 F").output
    assert "10.9 degree-days of \u00b0F" in said and "10.0 degree" in said and "11.2 degree" in said
    cut = asked("degree-days", "--low", "45 F", "--high", "75 F", "--base", "50 F", "--cap", "86 F").output
    assert "12.5 degree" in cut


def test_frost_is_a_temperature_too() -> None:
    told = body("degree-days", "--low=-5 C", "--high", "12 C", "--base", "4 C")
    assert told["value"] == pytest.approx(2.46, abs=0.01)


def test_a_falling_drop_is_a_picture_not_a_distance_to_keep() -> None:
    said = " ".join(asked("drift-fall", "--drop", "100 um", "--height", "10 ft", "--wind", "3 mph").output.split())
    assert "falls for 12 s" in said and "not a distance to keep" in said
    assert "safe" not in said.casefold()


@pytest.mark.parametrize(
    "words",
    [
        ("sun", "--on", "2027-13-01", "--lat", "43", "--lon", "-89"),
        ("sun", "--on", "2027-03-01", "--lat", "91", "--lon", "-89"),
        ("sun", "--on", "2027-03-01", "--lat", "43", "--lon", "west"),
        ("sun", "--on", "2027-03-01", "--lat", "43", "--lon", "-89", "--zone", "Nowhere/Town"),
        ("delta-t", "--air", "75", "--humidity", "40%"),
        ("delta-t", "--air", "75 F", "--humidity", "140%"),
        ("delta-t", "--air", "175 F", "--humidity", "40%"),
        ("degree-days", "--low", "75 F", "--high", "45 F", "--base", "50 F"),
        ("drift-fall", "--drop", "1 um", "--height", "3 ft", "--wind", "3 mph"),
        ("drift-fall", "--drop", "100 um", "--height", "3 ft", "--wind", "3 kg"),
    ],
)
def test_what_cannot_be_is_said(words: tuple[str, ...]) -> None:
    result = asked(*words)
    assert result.exit_code == 2
    assert "Traceback" not in result.output and any(sign in result.output for sign in ("allowed", "again", "Swap"))


@pytest.mark.parametrize(
    "words",
    [
        "sun --on 2027-10-15 --lat 43.3 --lon -89.9",
        "delta-t --air '75 F' --humidity 40%",
        "degree-days --low '45 F' --high '75 F' --base '50 F'",
        "drift-fall --drop '100 um' --height '3 ft' --wind '3 mph'",
    ],
)
def test_every_number_opens_into_its_working(words: str) -> None:
    assert held_together(words) >= 2
