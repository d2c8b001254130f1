"""From cuts, areas and diameters to millilitres."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from rootcollar.kernel.doubt import Worlds
from rootcollar.kernel.formula import formula

__all__ = ["coverage_from_batch", "in_cuts_ml", "on_area_ml", "on_diameter_ml"]


@formula("cuts * ml_per_cut", gives="mL", source="PNW-STEM", cuts=(1, 40), ml_per_cut=(0.5, 3))
def in_cuts_ml(cuts: float | Worlds, ml_per_cut: Worlds) -> Worlds:
    """Return the mix in a stem's cuts [mL]: so many cuts, so much in each [PNW-STEM]."""
    return cuts * ml_per_cut


@formula("area_cm2 * ml_per_cm2", gives="mL", source="MO-314", area_cm2=(10, 10000), ml_per_cm2=(0.001, 0.2))
def on_area_ml(area_cm2: float | Worlds, ml_per_cm2: Worlds) -> Worlds:
    """Return the mix on a surface [mL]: its area, and what wets a square centimetre [MO-314 for bark]."""
    return area_cm2 * ml_per_cm2


@formula("diameter_cm * ml_per_cm", gives="mL", source="MO-314", diameter_cm=(0.5, 60), ml_per_cm=(0.1, 20))
def on_diameter_ml(diameter_cm: NDArray[np.float64], ml_per_cm: Worlds) -> NDArray[np.float64]:
    """Return the mix on a band of bark [mL]: it goes with the diameter [MO-314].

    diameter_cm: over bark [cm], shape (n,). ml_per_cm: for each centimetre of diameter [mL/cm], length 1.
    """
    return diameter_cm * ml_per_cm


@formula("mix_used_ml / area_cm2", gives="mL/cm2", source="arithmetic", mix_used_ml=(50, 2000), area_cm2=(500, 50000))
def coverage_from_batch(mix_used_ml: float, area_cm2: float) -> float:
    """Return a crew's own coverage [mL/cm2] from a proving batch.

    mix_used_ml: what is gone from the bottle [mL]. area_cm2: the surface of all stems treated with it [cm2].
    """
    return mix_used_ml / area_cm2
