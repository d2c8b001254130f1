"""The areas and counts that a stem's size gives, and their exact means over a size band taken as even within.

A mean over a band is the integral of the quantity from a to b, divided by b - a; a band of no width is one size.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from rootcollar.kernel.formula import formula

__all__ = [
    "band_area_cm2", "circle_area_m2", "cuts", "hole_ml", "holes", "mean_band_area_cm2", "mean_cuts",
    "mean_diameter_cm", "mean_face_cm2", "mean_ring_area_cm2", "mean_square_cm2", "ring_area_cm2",
]  # fmt: skip

Sizes = NDArray[np.float64]


@formula("pi * height_cm * diameter_cm", gives="cm2", source="geometry", diameter_cm=(0.5, 60), height_cm=(5, 100))
def band_area_cm2(diameter_cm: float | Sizes, height_cm: float) -> float | Sizes:
    """Return the bark of a stem's lowest part [cm2], a cylinder. diameter_cm: over bark [cm]; height_cm: band [cm]."""
    return np.pi * height_cm * diameter_cm


@formula(
    "pi / 4 * (diameter_cm ** 2 - maximum(diameter_cm - 2 * ring_cm, 0) ** 2)",
    gives="cm2",
    source="geometry",
    diameter_cm=(0.5, 100),
    ring_cm=(0.5, 30),
)
def ring_area_cm2(diameter_cm: float | Sizes, ring_cm: float) -> float | Sizes:
    """Return the outer ring of a cut face [cm2]; the whole face where the stump is no wider than two rings."""
    inner = np.maximum(diameter_cm - 2 * ring_cm, 0)
    return np.pi / 4 * (diameter_cm**2 - inner**2)


@formula("pi / 4 * width_cm ** 2 * depth_cm", gives="mL", source="geometry", width_cm=(0.3, 3), depth_cm=(1, 10))
def hole_ml(width_cm: float, depth_cm: float) -> float:
    """Return what a drilled hole holds [mL], a cylinder full to the brim. width_cm: of the bit; depth_cm: its depth."""
    return float(np.pi / 4 * width_cm**2 * depth_cm)


@formula(
    "ceil(pi * diameter_cm / apart_cm - 1e-9)", gives="holes", source="geometry", diameter_cm=(3, 100), apart_cm=(3, 50)
)
def holes(diameter_cm: float, apart_cm: float) -> float:
    """Return the holes round a stem, no further apart than so much [cm]. diameter_cm: of the stem there [cm]."""
    return float(np.ceil(np.pi * diameter_cm / apart_cm - _HAIR))


@formula("pi / 4 * crown_m ** 2", gives="m2", source="geometry", crown_m=(0.1, 10))
def circle_area_m2(crown_m: float) -> float:
    """Return the ground a round crown covers [m2]. crown_m: its width [m]."""
    return float(np.pi / 4 * crown_m**2)


@formula(
    "maximum(ceil(diameter_cm / cm_per_cut - 1e-9), min_cuts)",
    gives="cuts",
    source="PSU-HS",
    diameter_cm=(0.5, 100),
    cm_per_cut=(1, 15),
    min_cuts=(1, 4),
)
def cuts(diameter_cm: float | Sizes, cm_per_cut: float, min_cuts: float) -> float | Sizes:
    """Return the cuts on a stem: one for each begun cm_per_cut of diameter, never fewer than min_cuts [PSU-HS].

    A hair is taken off first, so that 6.000 in stays six cuts. No source says what a fraction counts: it counts whole.
    """
    return np.maximum(np.ceil(diameter_cm / cm_per_cut - _HAIR), min_cuts)


_HAIR = 1e-9  # in cuts; floating point is not a measurement


@formula("(low_cm + high_cm) / 2", gives="cm", source="arithmetic", low_cm=(0.5, 20), high_cm=(20, 60))
def mean_diameter_cm(low_cm: float, high_cm: float) -> float:
    """Return the mean diameter of a band [cm]."""
    return (low_cm + high_cm) / 2


@formula(
    "(low_cm ** 2 + low_cm * high_cm + high_cm ** 2) / 3",
    gives="cm2",
    source="arithmetic",
    low_cm=(0.5, 20),
    high_cm=(20, 60),
)
def mean_square_cm2(low_cm: float, high_cm: float) -> float:
    """Return the mean of the diameter squared over a band [cm2]: more than the square of the mean diameter."""
    return (low_cm**2 + low_cm * high_cm + high_cm**2) / 3  # the 3 is the integral of x squared


@formula("pi / 4 * mean_square_cm2", gives="cm2", source="geometry", mean_square_cm2=(0.2, 4000))
def mean_face_cm2(mean_square_cm2: float) -> float:
    """Return the mean whole cut face over a band [cm2]. mean_square_cm2: mean of the diameter squared [cm2]."""
    return float(np.pi / 4 * mean_square_cm2)


@formula("pi * mean_cm * height_cm", gives="cm2", source="geometry", mean_cm=(0.5, 60), height_cm=(5, 100))
def mean_band_area_cm2(mean_cm: float, height_cm: float) -> float:
    """Return the mean bark area of a band's stems [cm2]: it goes with the diameter, so the mean diameter gives it."""
    return float(np.pi * mean_cm * height_cm)


def mean_ring_area_cm2(low_cm: float, high_cm: float, ring_cm: float) -> float:
    """Return the mean outer ring of cut faces over a band [cm2], whole faces for the thin ones."""
    if high_cm <= low_cm:
        return float(ring_area_cm2(low_cm, ring_cm))
    return ring_over_band_cm2(low_cm, high_cm, ring_cm)


@formula(
    "pi / 4 * ((high_cm ** 3 - low_cm ** 3) - (maximum(high_cm - 2 * ring_cm, 0) ** 3"
    " - maximum(low_cm - 2 * ring_cm, 0) ** 3)) / (3 * (high_cm - low_cm))",
    gives="cm2",
    source="geometry",
    low_cm=(0.5, 20),
    high_cm=(21, 60),
    ring_cm=(0.5, 30),
)
def ring_over_band_cm2(low_cm: float, high_cm: float, ring_cm: float) -> float:
    """Return the integral of the ring over a band, divided by its width [cm2]."""
    inner_low, inner_high = max(low_cm - 2 * ring_cm, 0), max(high_cm - 2 * ring_cm, 0)
    cubes = (high_cm**3 - low_cm**3) - (inner_high**3 - inner_low**3)
    return float(np.pi / 4 * cubes / (3 * (high_cm - low_cm)))


def mean_cuts(low_cm: float, high_cm: float, cm_per_cut: float, min_cuts: int) -> float:
    """Return the mean number of cuts over a band: the staircase of `cuts`, integrated exactly."""
    if high_cm <= low_cm:
        return float(cuts(low_cm, cm_per_cut, min_cuts))
    low, high = low_cm / cm_per_cut, high_cm / cm_per_cut
    return mean_of_stairs(low, high, stairs(low, min_cuts), stairs(high, min_cuts))


@formula(
    "where(size <= least, size * least, least ** 2 + (floor(size) * (floor(size) + 1) - least * (least + 1)) / 2"
    " + (size - floor(size)) * (floor(size) + 1))",
    gives="cuts x steps",
    source="arithmetic",
    size=(0.1, 40),
    least=(1, 4),
)
def stairs(size: float, least: int) -> float:
    """Return the area under the staircase of cuts from 0 to a size: at least `least`, one up at each whole step.

    size: diameter in steps of the spacing. least: the fewest cuts, a whole number.
    """
    if size <= least:
        return least * size
    whole = float(np.floor(size))
    steps = (whole * (whole + 1) - least * (least + 1)) / 2  # least + 1 up to whole, each over a width of one
    return least**2 + steps + (size - whole) * (whole + 1)


@formula(
    "(stairs_high - stairs_low) / (high - low)",
    gives="cuts",
    source="arithmetic",
    low=(0.1, 10),
    high=(11, 40),
    stairs_low=(0.1, 60),
    stairs_high=(70, 900),
)
def mean_of_stairs(low: float, high: float, stairs_low: float, stairs_high: float) -> float:
    """Return the mean cuts between two sizes: the area under the staircase between them, divided by the width.

    low, high: diameters in steps of the spacing. stairs_low, stairs_high: the area from 0 to each.
    """
    return (stairs_high - stairs_low) / (high - low)
