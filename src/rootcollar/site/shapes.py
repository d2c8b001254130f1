"""Areas of plain shapes from a tape, and what a slope makes of them."""

from __future__ import annotations

from math import cos, pi, radians, sqrt

from rootcollar.kernel.formula import formula

__all__ = [
    "along_slope_m2", "circle_m2", "level_m2", "oval_m2", "rectangle_m2", "slope_pct_from_degrees", "triangle_m2",
]  # fmt: skip


@formula("length_m * width_m", gives="m2", source="geometry", length_m=(1, 2000), width_m=(1, 500))
def rectangle_m2(length_m: float, width_m: float) -> float:
    """Return the area of a rectangle or a strip [m2]. length_m, width_m: [m]."""
    return length_m * width_m


@formula("pi / 4 * diameter_m ** 2", gives="m2", source="geometry", diameter_m=(1, 500))
def circle_m2(diameter_m: float) -> float:
    """Return the area of a circle [m2]. diameter_m: straight across [m]."""
    return pi / 4 * diameter_m**2


@formula("pi / 4 * length_m * width_m", gives="m2", source="geometry", length_m=(1, 500), width_m=(1, 500))
def oval_m2(length_m: float, width_m: float) -> float:
    """Return the area of an oval, taken as an ellipse [m2]. length_m, width_m: across at the widest each way [m]."""
    return pi / 4 * length_m * width_m


@formula(
    "sqrt((a_m + b_m + c_m) * (b_m + c_m - a_m) * (a_m + c_m - b_m) * (a_m + b_m - c_m)) / 4",
    gives="m2",
    source="geometry",
    a_m=(40, 70),
    b_m=(40, 70),
    c_m=(40, 70),
)
def triangle_m2(a_m: float, b_m: float, c_m: float) -> float:
    """Return the area of a triangle from its three sides [m2]; 0 for sides that do not close. a_m, b_m, c_m: [m]."""
    product = (a_m + b_m + c_m) * (b_m + c_m - a_m) * (a_m + c_m - b_m) * (a_m + b_m - c_m)
    return sqrt(max(product, 0.0)) / 4


@formula(
    "along_m2 / sqrt(1 + (slope_pct / 100) ** 2)",
    gives="m2",
    source="geometry",
    along_m2=(10, 50000),
    slope_pct=(0, 120),
)
def level_m2(along_m2: float, slope_pct: float) -> float:
    """Return the level area, as on a map [m2], of ground measured along an even slope.

    along_m2: measured along the slope [m2]. slope_pct: rise in a hundred [%].
    """
    return along_m2 / sqrt(1 + (slope_pct / 100) ** 2)


@formula(
    "flat_m2 * sqrt(1 + (slope_pct / 100) ** 2)", gives="m2", source="geometry", flat_m2=(10, 50000), slope_pct=(0, 120)
)
def along_slope_m2(flat_m2: float, slope_pct: float) -> float:
    """Return the ground along an even slope [m2] over a level area. flat_m2: as on a map [m2]. slope_pct: [%]."""
    return flat_m2 * sqrt(1 + (slope_pct / 100) ** 2)


@formula("100 * sqrt(1 / cos(degrees * pi / 180) ** 2 - 1)", gives="%", source="geometry", degrees=(1, 60))
def slope_pct_from_degrees(degrees: float) -> float:
    """Return a slope told in degrees as rise in a hundred [%]: its tangent. degrees: above level, below 90."""
    return 100 * sqrt(1 / cos(radians(degrees)) ** 2 - 1)
