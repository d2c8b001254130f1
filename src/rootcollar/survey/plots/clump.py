"""Plants of several stems: one plant, the faces of its stems together, and the height at which they were measured."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.kernel.formula import formula
from rootcollar.survey.stand import MeasuredAt

__all__ = ["Clump", "one_diameter_cm", "stem_face_cm2", "together"]


@dataclass(frozen=True, slots=True)
class Clump:
    """One plant: its stems' diameters [cm] and the height at which all of them were read. row: where it was typed."""

    stems_cm: tuple[float, ...]
    measured_at: MeasuredAt
    row: str = ""

    @property
    def face_cm2(self) -> float:
        """The faces of all stems together [cm2], never the face of the mean stem."""
        return sum(stem_face_cm2(one) for one in self.stems_cm)

    @property
    def diameter_cm(self) -> float:
        """The diameter of the one stem that has the same face [cm]."""
        return one_diameter_cm(self.face_cm2)


@formula("pi * (diameter_cm / 2) ** 2", gives="cm2", source="mitchell2015", diameter_cm=(0.5, 80))
def stem_face_cm2(diameter_cm: float) -> float:
    """Return the face [cm2] of one stem of that diameter [cm]."""
    return math.pi * (diameter_cm / 2) ** 2


@formula("sqrt(4 * face_cm2 / pi)", gives="cm", source="mitchell2015", face_cm2=(1, 5000))
def one_diameter_cm(face_cm2: float) -> float:
    """Return the diameter [cm] of one stem with the face [cm2] of a whole clump."""
    return math.sqrt(4 * face_cm2 / math.pi)


def together(clumps: tuple[Clump, ...]) -> tuple[int, int, float]:
    """Return plants, stems and the face of all stems [cm2] of clumps measured at one height.

    Plants and stems are told apart because a cut clump is one plant and many cuts. Raises BadInput with each clump
    that has no stem, a stem that is not above 0, or another height than the first one.
    """
    faults = []
    for number, one in enumerate(clumps, 1):
        row = one.row or f"clump {number}"
        if not one.stems_cm or not all(0 < stem < np.inf for stem in one.stems_cm):
            faults.append(Fault(f"stems of {one.stems_cm} cm", "one stem or more, each above 0", row=row))
        if one.measured_at != clumps[0].measured_at:
            allowed = f"{clumps[0].measured_at}, as the first: heights are never mixed"
            faults.append(Fault(f"measured at {one.measured_at}", allowed, row=row, field="measured at"))
    if faults:
        raise BadInput(*faults)
    return len(clumps), sum(len(one.stems_cm) for one in clumps), sum(one.face_cm2 for one in clumps)
