"""Where the sun stands in the sky of a day: the low-accuracy series of Meeus as NOAA prints them.

Every angle is in degrees; t is Julian centuries of 36,525 days from noon of 1 January 2000.
"""

from __future__ import annotations

from math import asin, cos, degrees, radians, sin, tan

from rootcollar.kernel.formula import formula

# The numbers below are the coefficients of the published series, in its own order; the source names each.
_OVER_T = (-0.5, 1.5)  # 1950 to 2150: the series were made for our own time

__all__ = [
    "apparent_longitude_deg", "centre_deg", "declination_deg", "eccentricity", "equation_of_time_min",
    "mean_anomaly_deg", "mean_longitude_deg", "obliquity_deg",
]  # fmt: skip


@formula("280.46646 + 36000.76983 * t + 0.0003032 * t ** 2", gives="deg", source="SOLAR", t=_OVER_T)
def mean_longitude_deg(t: float) -> float:
    """Return the sun's mean longitude, whole turns left in [deg]. t: [Julian centuries]."""
    return _series(t, *_MEAN_LONGITUDE)


@formula("357.52911 + 35999.05029 * t - 0.0001537 * t ** 2", gives="deg", source="SOLAR", t=_OVER_T)
def mean_anomaly_deg(t: float) -> float:
    """Return the sun's mean anomaly, whole turns left in [deg]. t: [Julian centuries]."""
    return _series(t, *_MEAN_ANOMALY)


@formula("0.016708634 - 0.000042037 * t - 0.0000001267 * t ** 2", gives="share", source="SOLAR", t=_OVER_T)
def eccentricity(t: float) -> float:
    """Return how far the earth's path is from a circle [share]. t: [Julian centuries]."""
    return _series(t, *_ECCENTRICITY)


@formula(
    "sin(anomaly_deg * pi / 180) * (1.914602 - 0.004817 * t - 0.000014 * t ** 2)"
    " + sin(2 * anomaly_deg * pi / 180) * (0.019993 - 0.000101 * t) + sin(3 * anomaly_deg * pi / 180) * 0.000289",
    gives="deg",
    source="SOLAR",
    anomaly_deg=(0, 360),
    t=_OVER_T,
)
def centre_deg(anomaly_deg: float, t: float) -> float:
    """Return how far the sun is before its mean place [deg]. anomaly_deg: mean anomaly [deg]; t: [Julian centuries]."""
    turn = radians(anomaly_deg)
    return sum(_series(t, *row) * sin((index + 1) * turn) for index, row in enumerate(_CENTRE))


@formula(
    "mean_longitude_deg + centre_deg - 0.00569 - 0.00478 * sin((125.04 - 1934.136 * t) * pi / 180)",
    gives="deg",
    source="SOLAR",
    mean_longitude_deg=(0, 360),
    centre_deg=(-2, 2),
    t=_OVER_T,
)
def apparent_longitude_deg(mean_longitude_deg: float, centre_deg: float, t: float) -> float:
    """Return the sun's longitude as seen [deg]. mean_longitude_deg, centre_deg: [deg]; t: [Julian centuries]."""
    return mean_longitude_deg + centre_deg - _ABERRATION - _NUTATION * sin(_node(t))


@formula(
    "23 + (26 + (21.448 - t * (46.815 + t * (0.00059 - 0.001813 * t))) / 60) / 60"
    " + 0.00256 * cos((125.04 - 1934.136 * t) * pi / 180)",
    gives="deg",
    source="SOLAR",
    t=_OVER_T,
)
def obliquity_deg(t: float) -> float:
    """Return how far the earth's axis leans [deg]. t: [Julian centuries]."""
    return _series(t, *_OBLIQUITY) + _NUTATION_OF_LEAN * cos(_node(t))


@formula(
    "arcsin(sin(obliquity_deg * pi / 180) * sin(longitude_deg * pi / 180)) * 180 / pi",
    gives="deg",
    source="SOLAR",
    obliquity_deg=(23, 24),
    longitude_deg=(0, 360),
)
def declination_deg(obliquity_deg: float, longitude_deg: float) -> float:
    """Return how far north of the equator the sun stands [deg]. obliquity_deg, longitude_deg (apparent): [deg]."""
    return degrees(asin(sin(radians(obliquity_deg)) * sin(radians(longitude_deg))))


@formula(
    "4 * 180 / pi * (tan(obliquity_deg * pi / 360) ** 2 * sin(2 * mean_longitude_deg * pi / 180)"
    " - 2 * eccentricity * sin(anomaly_deg * pi / 180) + 4 * eccentricity * tan(obliquity_deg * pi / 360) ** 2"
    " * sin(anomaly_deg * pi / 180) * cos(2 * mean_longitude_deg * pi / 180)"
    " - tan(obliquity_deg * pi / 360) ** 4 / 2 * sin(4 * mean_longitude_deg * pi / 180)"
    " - 5 / 4 * eccentricity ** 2 * sin(2 * anomaly_deg * pi / 180))",
    gives="min",
    source="SOLAR",
    obliquity_deg=(23, 24),
    mean_longitude_deg=(0, 360),
    eccentricity=(0.0165, 0.0169),
    anomaly_deg=(0, 360),
)
def equation_of_time_min(
    obliquity_deg: float, mean_longitude_deg: float, eccentricity: float, anomaly_deg: float
) -> float:
    """Return by how much the sundial is ahead of the clock [min].

    obliquity_deg, mean_longitude_deg, anomaly_deg: [deg]; eccentricity: [share].
    """
    y, e = tan(radians(obliquity_deg) / 2) ** 2, eccentricity
    long, far = radians(mean_longitude_deg), radians(anomaly_deg)
    turn = (
        y * sin(2 * long)
        - 2 * e * sin(far)
        + 4 * e * y * sin(far) * cos(2 * long)
        - y**2 / 2 * sin(4 * long)
        - _LAST * e**2 * sin(2 * far)
    )
    return _MIN_PER_DEG * degrees(turn)


_MEAN_LONGITUDE = (280.46646, 36000.76983, 0.0003032)  # SOLAR
_MEAN_ANOMALY = (357.52911, 35999.05029, -0.0001537)  # SOLAR
_ECCENTRICITY = (0.016708634, -0.000042037, -0.0000001267)  # SOLAR
_CENTRE = ((1.914602, -0.004817, -0.000014), (0.019993, -0.000101), (0.000289,))  # SOLAR
_OBLIQUITY = (  # degrees, minutes and seconds of arc in one series
    23 + 26 / 60 + 21.448 / 3600, -46.815 / 3600, -0.00059 / 3600, 0.001813 / 3600,
)  # fmt: skip
_NODE = (125.04, -1934.136)  # SOLAR: where the moon's path crosses the sun's
_ABERRATION = 0.00569  # SOLAR
_NUTATION = 0.00478  # SOLAR
_NUTATION_OF_LEAN = 0.00256  # SOLAR
_MIN_PER_DEG = 4  # the sky turns one degree in four minutes
_LAST = 1.25  # SOLAR: of the last part of the series


def _series(t: float, *parts: float) -> float:
    return sum(part * t**power for power, part in enumerate(parts))


def _node(t: float) -> float:
    return radians(_series(t, *_NODE))
