"""What the air does to a drop: vapour pressure, wet bulb, dew point and Delta T, by the equations engineers use."""

from __future__ import annotations

from math import exp, log

from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.formula import formula, note, unwatched

__all__ = [
    "SEA_LEVEL_PA", "delta_t_c", "dew_point_c", "moist_ratio", "pressure_pa", "ratio_at_wet_bulb", "saturation_pa",
    "wet_bulb_c",
]  # fmt: skip

SEA_LEVEL_PA = 101325.0  # the standard atmosphere, by definition
_THINNER = 2.25577e-5  # ASHRAE, eq. 3
_THINNER_POWER = 5.2559  # ASHRAE, eq. 3
_KELVIN = 273.15  # of 0 degC, by definition
# Hyland and Wexler's fit of the pressure of saturated vapour, over ice and over water [ASHRAE, eqs 5 and 6]
_ICE = (-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019)
_WATER = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0.0, 6.5459673)  # ASHRAE
_TRIPLE_C = 0.01  # of water, by definition
_VAPOUR_TO_AIR = 0.621945  # mass of a mole of water over one of dry air
_COLDEST = -40.0  # ours: no one works in colder air
_HOTTEST = 60.0  # ours: nor in hotter
_HALVINGS = 40  # 100 degrees halved so often is far below what any thermometer shows


@formula("101325 * (1 - 2.25577e-5 * height_m) ** 5.2559", gives="Pa", source="ASHRAE", height_m=(-100, 5000))
def pressure_pa(height_m: float) -> float:
    """Return the usual pressure of the air at a height above the sea [Pa]. height_m: [m]."""
    return float(SEA_LEVEL_PA * (1 - _THINNER * height_m) ** _THINNER_POWER)


def saturation_pa(air_c: float) -> float:
    """Return the pressure of saturated vapour, over ice below freezing [Pa]. air_c: [degC]. Source: ASHRAE."""
    kelvin = air_c + _KELVIN
    first, *powers, last = _ICE if air_c <= _TRIPLE_C else _WATER
    fitted = first / kelvin + sum(part * kelvin**power for power, part in enumerate(powers)) + last * log(kelvin)
    return note("saturation", "Hyland and Wexler's fit of vapour over water, or ice", exp(fitted), "Pa", "ASHRAE")


@formula(
    "0.621945 * vapour_pa / (pressure_pa - vapour_pa)",
    gives="kg/kg",
    source="ASHRAE",
    vapour_pa=(10, 7000),
    pressure_pa=(60000, 105000),
)
def moist_ratio(vapour_pa: float, pressure_pa: float) -> float:
    """Return the water in a kilogram of dry air [kg/kg]. vapour_pa: its pressure [Pa]. pressure_pa: of the air [Pa]."""
    return _VAPOUR_TO_AIR * vapour_pa / (pressure_pa - vapour_pa)


@formula(
    "where(wet_c >= 0, ((2501 - 2.326 * wet_c) * saturated - 1.006 * (air_c - wet_c)) / (2501 + 1.86 * air_c - 4.186"
    " * wet_c), ((2830 - 0.24 * wet_c) * saturated - 1.006 * (air_c - wet_c)) / (2830 + 1.86 * air_c - 2.1 * wet_c))",
    gives="kg/kg",
    source="ASHRAE",
    wet_c=(-20, 40),
    air_c=(-20, 50),
    saturated=(0.001, 0.05),
)
def ratio_at_wet_bulb(wet_c: float, air_c: float, saturated: float) -> float:
    """Return the water in the air that a wet bulb tells of [kg/kg].

    wet_c, air_c: wet and dry bulb [degC]. saturated: water in air saturated at the wet bulb [kg/kg].
    """
    heat, less, cools, warms = _OVER_WATER if wet_c >= 0 else _OVER_ICE
    return ((heat - less * wet_c) * saturated - _OF_AIR * (air_c - wet_c)) / (heat + warms * air_c - cools * wet_c)


# Heat of evaporation at 0 degC, how it falls, heat of water or ice, and of vapour [kJ/kg, kJ/(kg K); ASHRAE, 35, 37]
_OVER_WATER = (2501.0, 2.326, 4.186, 1.86)
_OVER_ICE = (2830.0, 0.24, 2.1, 1.86)  # ASHRAE, eq. 37
_OF_AIR = 1.006  # kJ/(kg K)


def wet_bulb_c(air_c: float, humidity_pct: float, pressure_pa: float = SEA_LEVEL_PA) -> float:
    """Return the wet bulb temperature [degC], the one at which the psychrometer's balance holds.

    air_c: dry bulb, -40 to 60 [degC]. humidity_pct: relative humidity over 0 to 100 [%]. pressure_pa: of the air [Pa].
    Raises Refusal for air that nobody works in. Source: ASHRAE.
    """
    _believable(air_c, humidity_pct)
    holds = moist_ratio(humidity_pct / 100 * saturation_pa(air_c), pressure_pa)
    with unwatched():
        low, high = _dew(air_c, humidity_pct), air_c
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            low, high = (low, middle) if _told(middle, air_c, pressure_pa) > holds else (middle, high)
    _told(high, air_c, pressure_pa)  # watched, so that the balance found can be seen
    return note("wet bulb", "where the wet bulb tells of as much water as is in the air", high, "\u00b0C", "ASHRAE")


def _told(wet_c: float, air_c: float, pressure_pa: float) -> float:
    return ratio_at_wet_bulb(wet_c, air_c, moist_ratio(saturation_pa(wet_c), pressure_pa))


@formula("air_c - wet_c", gives="\u00b0C", source="definition", air_c=(0, 50), wet_c=(-5, 40))
def delta_t_c(air_c: float, wet_c: float) -> float:
    """Return Delta T, how fast drops dry [degC apart]. air_c, wet_c: dry and wet bulb [degC]."""
    return air_c - wet_c


@formula(
    "243.04 * (log(humidity_pct / 100) + 17.625 * air_c / (243.04 + air_c))"
    " / (17.625 - log(humidity_pct / 100) - 17.625 * air_c / (243.04 + air_c))",
    gives="\u00b0C",
    source="MAGNUS",
    air_c=(0, 50),
    humidity_pct=(10, 100),
)
def dew_point_c(air_c: float, humidity_pct: float) -> float:
    """Return the dew point [degC]. air_c: [degC]. humidity_pct: relative humidity [%]."""
    lift = log(humidity_pct / 100) + _MAGNUS_B * air_c / (_MAGNUS_C + air_c)
    return _MAGNUS_C * lift / (_MAGNUS_B - lift)


_MAGNUS_B = 17.625  # MAGNUS
_MAGNUS_C = 243.04  # MAGNUS [degC]


def _dew(air_c: float, humidity_pct: float) -> float:
    """Return a temperature below any wet bulb of that air [degC]."""
    return min(dew_point_c(air_c, humidity_pct), air_c) - 10


def _believable(air_c: float, humidity_pct: float) -> None:
    if not _COLDEST <= air_c <= _HOTTEST:
        raise Refusal(
            f"air of {air_c:g} \u00b0C", limit="-40 to 60 \u00b0C", do="Read the thermometer and its unit again."
        )
    if not 0 < humidity_pct <= 100:
        raise Refusal(f"humidity of {humidity_pct:g} %", limit="more than 0, at most 100 %", do="Read the meter again.")
