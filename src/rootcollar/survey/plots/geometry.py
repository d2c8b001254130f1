"""Sizes of plots on level and on sloping ground: radius for an area, stems for one counted, the limit on the tape."""

from __future__ import annotations

import math
from typing import Literal

import numpy as np

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.formula import formula

__all__ = ["SlopeWay", "along_slope_m", "limit_m", "one_radius_m", "per_ha_each", "radius_m"]

SlopeWay = Literal["one larger radius", "level distances"]
"""How a circle is kept at its level area on a slope; one way a survey, because the two differ by 12 % of the area.

one larger radius: the tape lies on the ground, and the same longer radius holds all round (radius / sqrt(cos)).
level distances: each distance is taken level, so the limit on the ground is longest straight up and down the slope.
"""

_WAYS: tuple[SlopeWay, ...] = ("one larger radius", "level distances")
_STEEPEST_PCT = 200  # ours: two up for one along; a figure above it is a slip of typing
_HALF_TURN_DEG = 180  # definition


@formula("sqrt(area_m2 / pi)", gives="m", source="geometry", area_m2=(1, 4000))
def radius_m(area_m2: float) -> float:
    """Return the radius [m] of a round plot of that level area [m2], > 0.

    >>> round(radius_m(404.69), 2)  # a tenth of an acre
    11.35
    """
    return math.sqrt(area_m2 / math.pi)


@formula("10000 / area_m2", gives="stems/ha", source="definition", area_m2=(1, 4000))
def per_ha_each(area_m2: float) -> float:
    """Return the stems on a hectare [stems/ha] that one stem counted on a plot of that level area [m2], > 0, means."""
    return 100 * 100 / area_m2


@formula(
    "radius_m / sqrt(cos(arctan(slope_pct / 100)))",
    gives="m",
    source="USFS-CSE",
    radius_m=(0.5, 40),
    slope_pct=(0, 150),
)
def one_radius_m(radius_m: float, slope_pct: float) -> float:
    """Return the radius on the ground [m] that keeps a plot's level area on a slope [%], the same all round."""
    return radius_m / math.sqrt(math.cos(math.atan(slope_pct / 100)))


@formula("level_m / cos(arctan(slope_pct / 100))", gives="m", source="geometry", level_m=(0.5, 200), slope_pct=(0, 150))
def along_slope_m(level_m: float, slope_pct: float) -> float:
    """Return the length on the ground [m] of a level distance [m], straight up or down a slope [%]."""
    return level_m / math.cos(math.atan(slope_pct / 100))


def limit_m(level: float, slope_pct: float, way: SlopeWay, from_uphill_deg: float = 0.0) -> float:
    """Return how far on the ground [m] a stem may stand from the centre and be in, for a radius on level ground [m].

    slope_pct: steepest slope [%]. from_uphill_deg: direction to the stem, 0 straight uphill, 90 along the contour;
    it counts only where distances are taken level. A stem is in by its middle at the ground line.
    Raises BadInput for a slope below 0 or above 200 %, or an unknown way.
    """
    if not 0 <= slope_pct <= _STEEPEST_PCT:
        raise BadInput(Fault(f"a slope of {slope_pct:g} %", f"0 to {_STEEPEST_PCT} %", field="slope"))
    if way not in _WAYS:
        raise BadInput(Fault(f"{way!r}", " or ".join(_WAYS), field="slope way"))
    if way == "one larger radius":
        return one_radius_m(level, slope_pct)
    return along_slope_m(level, slope_pct * abs(float(np.cos(from_uphill_deg * math.pi / _HALF_TURN_DEG))))
