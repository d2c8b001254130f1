"""What libraries of sun, moist air and falling drops say that know nothing of this project."""

from __future__ import annotations

from math import acos, cos, degrees, radians, sin

import fluids
from astral import SunDirection, sun
from CoolProp.HumidAirProp import HAPropsSI
from fluids import drag

__all__ = [
    "apart_by_coolprop", "balance_by_fluids", "centre_by_astral", "dew_point_by_coolprop", "drag_by_fluids",
    "eccentricity_by_astral", "fall_by_fluids", "horizon_by_astral", "longitude_by_astral",
    "mean_anomaly_by_astral", "mean_longitude_by_astral", "moist_by_coolprop", "obliquity_by_astral",
    "pressure_by_fluids", "reynolds_by_fluids", "turn_by_astral", "wet_ratio_by_coolprop", "zenith_by_vectors",
]  # fmt: skip

_KELVIN = 273.15  # of 0 degC


def mean_longitude_by_astral(t: float) -> float:
    return float(sun.geom_mean_long_sun(t))


def mean_anomaly_by_astral(t: float) -> float:
    return float(sun.geom_mean_anomaly_sun(t))


def eccentricity_by_astral(t: float) -> float:
    return float(sun.eccentric_location_earth_orbit(t))


def centre_by_astral(anomaly_deg: float, t: float) -> float:
    return float(sun.sun_eq_of_center(t))


def longitude_by_astral(mean_longitude_deg: float, centre_deg: float, t: float) -> float:
    return float(sun.sun_apparent_long(t))


def obliquity_by_astral(t: float) -> float:
    return float(sun.obliquity_correction(t))


def turn_by_astral(cosine: float) -> float:
    """At the equator with the sun over it, the turn from noon is the zenith angle itself."""
    return degrees(sun.hour_angle(0.0, 0.0, degrees(acos(cosine)), SunDirection.RISING))


def horizon_by_astral(lat_deg: float, declination_deg: float, zenith_deg: float) -> float:
    return cos(sun.hour_angle(lat_deg, declination_deg, zenith_deg, SunDirection.RISING))


def zenith_by_vectors(lat_deg: float, declination_deg: float, turn_deg: float) -> float:
    """The angle between two lines in space: straight up at the place, and toward the sun."""
    lat, dec, turn = (radians(one) for one in (lat_deg, declination_deg, turn_deg))
    up, to_sun = (cos(lat), 0.0, sin(lat)), (cos(dec) * cos(turn), cos(dec) * sin(turn), sin(dec))
    return degrees(acos(sum(a * b for a, b in zip(up, to_sun, strict=True))))


def moist_by_coolprop(vapour_pa: float, pressure_pa: float) -> float:
    return float(HAPropsSI("W", "P_w", vapour_pa, "P", pressure_pa, "T", 20 + _KELVIN))


def wet_ratio_by_coolprop(wet_c: float, air_c: float, saturated: float) -> float:
    return float(HAPropsSI("W", "T", air_c + _KELVIN, "B", wet_c + _KELVIN, "P", 101325))


def dew_point_by_coolprop(air_c: float, humidity_pct: float) -> float:
    return float(HAPropsSI("D", "T", air_c + _KELVIN, "R", humidity_pct / 100, "P", 101325)) - _KELVIN


def apart_by_coolprop(air_c: float, wet_c: float) -> float:
    """Of air of 20 degrees and half its most."""
    return 20 - float(HAPropsSI("B", "T", 20 + _KELVIN, "R", 0.5, "P", 101325)) + _KELVIN


def fall_by_fluids(height_m: float, settling_m_s: float) -> float:
    """Of a drop of 100 micrometres."""
    return height_m / balance_by_fluids(100, 0)


def pressure_by_fluids(height_m: float) -> float:
    return float(fluids.ATMOSPHERE_1976(height_m).P)


def drag_by_fluids(reynolds: float) -> float:
    return float(drag.drag_sphere(reynolds, Method="Clift_Gauvin"))


def reynolds_by_fluids(speed_m_s: float, drop_um: float) -> float:
    return float(fluids.Reynolds(V=speed_m_s, D=drop_um * 1e-6, rho=1.204, mu=1.813e-5))


def balance_by_fluids(drop_um: float, drag: float) -> float:
    """The speed at which the library finds weight and drag equal, with its own fit of the drag."""
    return float(fluids.v_terminal(D=drop_um * 1e-6, rhop=998.2, rho=1.204, mu=1.813e-5))
