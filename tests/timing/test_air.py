"""Wet bulb and Delta T against an open library of moist air, and against tables worked from it."""

from __future__ import annotations

import pytest
from CoolProp.HumidAirProp import HAPropsSI
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.errors import Refusal
from rootcollar.timing import SEA_LEVEL_PA, delta_t_c, dew_point_c, wet_bulb_c
from rootcollar.timing.air import saturation_pa

KELVIN = 273.15
WET_C = 0.05  # inside the tenth of a degree that a reader needs; the library takes air as a real gas


@given(st.floats(-19, 50), st.floats(3, 100), st.floats(70000, 104000))
def test_the_wet_bulb_is_the_librarys(air: float, humidity: float, pressure: float) -> None:
    theirs = HAPropsSI("B", "T", air + KELVIN, "R", humidity / 100, "P", pressure) - KELVIN
    assert wet_bulb_c(air, humidity, pressure) == pytest.approx(theirs, abs=WET_C)


@given(st.floats(-40, 60))
def test_saturated_vapour_is_the_librarys(air: float) -> None:
    """Of vapour in air the library has some thousandths more than of vapour alone."""
    assert saturation_pa(air) == pytest.approx(HAPropsSI("P_w", "T", air + KELVIN, "R", 1.0, "P", 101325), rel=0.007)


@given(st.floats(0, 45), st.floats(5, 100))
def test_dew_point_is_near_the_librarys_and_below_the_wet_bulb(air: float, humidity: float) -> None:
    found = dew_point_c(air, humidity)
    if found > 0:  # the library turns to frost points below
        theirs = HAPropsSI("D", "T", air + KELVIN, "R", humidity / 100, "P", 101325) - KELVIN
        assert found == pytest.approx(theirs, abs=0.1)
    assert found <= wet_bulb_c(air, humidity) + WET_C <= air + 2 * WET_C


@pytest.mark.parametrize(
    ("air_f", "humidity", "apart"),
    [(60, 50, 5.4), (70, 50, 6.4), (75, 40, 8.5), (80, 40, 9.2), (80, 60, 5.8), (85, 50, 7.9), (90, 40, 10.4)],
)
def test_delta_t_of_a_table(air_f: float, humidity: float, apart: float) -> None:
    """A table reckoned from full psychrometry at sea level."""
    air = (air_f - 32) / 1.8
    assert delta_t_c(air, wet_bulb_c(air, humidity)) == pytest.approx(apart, abs=0.06)


def test_dry_air_dries_faster() -> None:
    apart = [delta_t_c(25, wet_bulb_c(25, humidity)) for humidity in (90, 60, 30, 10)]
    assert apart == sorted(apart) and apart[0] > 0


def test_saturated_air_has_no_delta_t() -> None:
    assert delta_t_c(18, wet_bulb_c(18, 100)) == pytest.approx(0, abs=WET_C)
    assert SEA_LEVEL_PA == 101325


@pytest.mark.parametrize(("air", "humidity"), [(75, 50), (-50, 50), (20, 0), (20, 101)])
def test_air_that_nobody_works_in_is_refused(air: float, humidity: float) -> None:
    with pytest.raises(Refusal, match="again"):
        wet_bulb_c(air, humidity)
