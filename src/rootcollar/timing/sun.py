"""Sunrise, sunset and the twilights of a day at a place; a day without one is an answer, not an error."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from enum import StrEnum
from math import acos, cos, degrees, radians, sin
from typing import Literal

from rootcollar.kernel.formula import formula, unwatched
from rootcollar.timing.orbit import (
    apparent_longitude_deg,
    centre_deg,
    declination_deg,
    eccentricity,
    equation_of_time_min,
    mean_anomaly_deg,
    mean_longitude_deg,
    obliquity_deg,
)

__all__ = [
    "CIVIL", "RISE", "Day", "Never", "centuries", "event", "event_min", "horizon_cos", "hour_angle_deg", "sun_day",
    "zenith_deg",
]  # fmt: skip

RISE = 90.833  # degrees from straight up: half the sun's width and the bend of light at the horizon [SOLAR, read]
CIVIL = 96.0  # degrees from straight up at civil dawn and dusk [SOLAR, read]
_NOON_2000 = datetime(2000, 1, 1, 12, tzinfo=UTC)  # from which the series count [SOLAR]
_DAYS_PER_CENTURY = 36525  # Julian, by definition
_NOON_MIN = 720  # half a day, by definition
_MIN_PER_DEG = 4  # the earth turns a degree in four minutes
_PASSES = 3  # the sun moves while the earth turns; after three looks nothing changes by more than a millisecond
_TURN = 360.0  # a whole one, by definition

Side = Literal["rise", "set"]


class Never(StrEnum):
    """Why a day has no such event."""

    ABOVE = "the sun stays above"
    BELOW = "the sun stays below"


@dataclass(frozen=True, slots=True)
class Day:
    """The events of one day at a place, as moments with their zone; Never where there is none."""

    dawn: datetime | Never
    sunrise: datetime | Never
    noon: datetime
    sunset: datetime | Never
    dusk: datetime | Never


@formula(
    "(cos(zenith_deg * pi / 180) - sin(lat_deg * pi / 180) * sin(declination_deg * pi / 180))"
    " / (cos(lat_deg * pi / 180) * cos(declination_deg * pi / 180))",
    gives="cosine",
    source="SOLAR",
    lat_deg=(-65, 65),
    declination_deg=(-23.5, 23.5),
    zenith_deg=(90, 96),
)
def horizon_cos(lat_deg: float, declination_deg: float, zenith_deg: float) -> float:
    """Return the cosine of the turn from noon to where the sun stands so far from straight up; beyond 1 it never does.

    lat_deg: north positive [deg]. declination_deg: of the sun [deg]. zenith_deg: from straight up [deg].
    """
    lat, dec = radians(lat_deg), radians(declination_deg)
    return (cos(radians(zenith_deg)) - sin(lat) * sin(dec)) / (cos(lat) * cos(dec))


@formula("arccos(cosine) * 180 / pi", gives="deg", source="geometry", cosine=(-1, 1))
def hour_angle_deg(cosine: float) -> float:
    """Return the turn of the earth from noon [deg]. cosine: of it, from -1 to 1."""
    return degrees(acos(cosine))


@formula(
    "720 - 4 * (lon_deg + turn_deg) - equation_min",
    gives="min",
    source="SOLAR",
    lon_deg=(-180, 180),
    turn_deg=(-180, 180),
    equation_min=(-15, 17),
)
def event_min(lon_deg: float, turn_deg: float, equation_min: float) -> float:
    """Return when the sun stands there [min, from midnight of universal time].

    lon_deg: east positive [deg]. turn_deg: before noon positive, after it negative [deg]. equation_min: of time [min].
    """
    return _NOON_MIN - _MIN_PER_DEG * (lon_deg + turn_deg) - equation_min


@formula(
    "arccos(sin(lat_deg * pi / 180) * sin(declination_deg * pi / 180) + cos(lat_deg * pi / 180)"
    " * cos(declination_deg * pi / 180) * cos(turn_deg * pi / 180)) * 180 / pi",
    gives="deg",
    source="SOLAR",
    lat_deg=(-65, 65),
    declination_deg=(-23.5, 23.5),
    turn_deg=(-180, 180),
)
def zenith_deg(lat_deg: float, declination_deg: float, turn_deg: float) -> float:
    """Return how far from straight up the sun stands, air's bending left out [deg].

    lat_deg: north positive [deg]. declination_deg: of the sun [deg]. turn_deg: of the earth from noon [deg].
    """
    lat, dec = radians(lat_deg), radians(declination_deg)
    return degrees(acos(sin(lat) * sin(dec) + cos(lat) * cos(dec) * cos(radians(turn_deg))))


def centuries(moment: datetime) -> float:
    """Return Julian centuries from noon of 1 January 2000 to a moment with its zone."""
    return (moment - _NOON_2000) / timedelta(days=1) / _DAYS_PER_CENTURY


def event(on: date, lat_deg: float, lon_deg: float, side: Side, zenith: float = RISE) -> datetime | Never:
    """Return when on a day the sun comes up to, or goes down to, so far from straight up [universal time]; or Never.

    on: the day at the place by its sun: its noon falls on that day there, so an evening may be the next day in
    universal time. lat_deg, lon_deg: north and east positive [deg].
    """
    with unwatched():
        found: datetime | Never = _noon(on, lon_deg)
        for _ in range(_PASSES - 1):
            found = _look(found, on, lat_deg, lon_deg, side, zenith)
    return _look(found, on, lat_deg, lon_deg, side, zenith)


def _look(
    near: datetime | Never, on: date, lat_deg: float, lon_deg: float, side: Side, zenith: float
) -> datetime | Never:
    """Return when it is, from the sun's place at a moment near by."""
    if isinstance(near, Never):
        return near
    declination, equation = _sun(centuries(near))
    cosine = horizon_cos(lat_deg, declination, zenith)
    if abs(cosine) > 1:
        return Never.BELOW if cosine > 1 else Never.ABOVE
    turn = hour_angle_deg(cosine)
    return _midnight(on) + timedelta(minutes=event_min(lon_deg, turn if side == "rise" else -turn, equation))


def sun_day(on: date, lat_deg: float, lon_deg: float) -> Day:
    """Return the events of a day at a place [universal time]. lat_deg, lon_deg: north and east positive [deg]."""
    return Day(
        event(on, lat_deg, lon_deg, "rise", CIVIL),
        event(on, lat_deg, lon_deg, "rise"),
        _noon(on, lon_deg),
        event(on, lat_deg, lon_deg, "set"),
        event(on, lat_deg, lon_deg, "set", CIVIL),
    )


def _midnight(on: date) -> datetime:
    return datetime.combine(on, time(), UTC)


def _noon(on: date, lon_deg: float) -> datetime:
    found = _midnight(on) + timedelta(minutes=_NOON_MIN - _MIN_PER_DEG * lon_deg)
    with unwatched():
        for _ in range(_PASSES):
            found = _midnight(on) + timedelta(minutes=event_min(lon_deg, 0.0, _sun(centuries(found))[1]))
    return found


def _sun(t: float) -> tuple[float, float]:
    """Return declination [deg] and equation of time [min]. t: Julian centuries."""
    long, far, lean = mean_longitude_deg(t) % _TURN, mean_anomaly_deg(t) % _TURN, obliquity_deg(t)
    seen = apparent_longitude_deg(long, centre_deg(far, t), t)
    return declination_deg(lean, seen), equation_of_time_min(lean, long, eccentricity(t), far)
