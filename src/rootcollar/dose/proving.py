"""A proving batch: a measured batch on measured stems, and the crew's own figure that it gives."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

import numpy as np

from rootcollar.dose.amount import coverage_from_batch
from rootcollar.dose.geometry import circle_area_m2
from rootcollar.dose.rule import BY_CUTS, Asked, shape_of
from rootcollar.dose.stems import surface_cm2
from rootcollar.kernel.errors import Refusal
from rootcollar.reference import MethodFacts

__all__ = ["Proving", "own_figure"]

_HAIR = 1e-6  # relative; floating point is not a measurement


@dataclass(frozen=True, slots=True)
class Proving:
    """What one batch gave. product: key of a label sheet, or of a formulation. strength_pct: product in the mix [%].

    used_ml: mix gone from the bottle [mL]. sizes: (diameter at the place treated, or crown of leaves [cm], how many).
    ml_per_cut: for cuts, instead of both: what went into one [mL]. nozzle: what it was put on with, where said.
    """

    method: str
    product: str
    strength_pct: float
    carrier: str
    on: date
    by: str
    used_ml: float = 0.0
    sizes: tuple[tuple[float, int], ...] = ()
    ml_per_cut: float | None = None
    nozzle: str = ""

    @property
    def words(self) -> str:
        """Whose figure it is: "own proving batch of 2026-10-02, small cone"."""
        return f"own proving batch of {self.on.isoformat()}" + (f", {self.nozzle}" if self.nozzle else "")

    def same_mix(self, method: str, strength_pct: float, carrier: str) -> bool:
        """Return whether it was put on in this way at this strength: a coverage never crosses over to another."""
        near = abs(self.strength_pct - strength_pct) <= _HAIR * strength_pct
        return near and (self.method, self.carrier) == (method, carrier)


def own_figure(batch: Proving, asked: Asked, facts: MethodFacts) -> float:
    """Return the mix in a cut [mL], or on a square centimetre [mL/cm2], that a batch gave. facts: of its method.

    Raises Refusal for a batch of nothing, and for one that does not measure what the dose goes by.
    """
    if asked.method in BY_CUTS:
        if batch.ml_per_cut is None:
            raise Refusal("proving batch", limit="this dose goes by the cut", do="Measure what the syringe gives")
        return batch.ml_per_cut
    area_cm2 = _treated_cm2(batch, asked, facts)
    if not (batch.used_ml > 0 and area_cm2 > 0):
        raise Refusal("proving batch", limit="nothing was used or nothing treated", do="Treat 25 stems and measure")
    return coverage_from_batch(batch.used_ml, area_cm2)


def _treated_cm2(batch: Proving, asked: Asked, facts: MethodFacts) -> float:
    """The surface of all that was treated [cm2]."""
    if asked.method == "foliar":
        return sum(count * circle_area_m2(crown_cm / 100) * 100 * 100 for crown_cm, count in batch.sizes)
    diameters = np.array([size for size, _ in batch.sizes], dtype=np.float64)
    counts = np.array([count for _, count in batch.sizes], dtype=np.float64)
    return float(surface_cm2(shape_of(asked, facts), diameters) @ counts)
