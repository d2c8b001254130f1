"""A stand: one species in one size band on one unit, counted."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from rootcollar.kernel.doubt import Worlds

__all__ = ["MeasuredAt", "Stand", "TallyRow"]

MeasuredAt = Literal["breast height", "root collar"]


@dataclass(frozen=True, slots=True)
class TallyRow:
    """One row of a stem tally. low and high: the counter's own 80 % range, where given.

    band_cm: the diameter class [cm]. crown_m, height_m: width and height of a typical plant [m], where given.
    thicket: name of the thicket that it stands in, mixed with others. keep_inside: what is to stay in it, "" for looked
    and found none; None: nobody has said.
    """

    unit: str
    species: str
    band_cm: tuple[float, float]
    count: float
    low: float | None = None
    high: float | None = None
    measured_at: MeasuredAt | None = None
    crown_m: float | None = None
    height_m: float | None = None
    fruiting: bool | None = None
    thicket: str = ""
    keep_inside: str | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Stand:
    """Unit x species x size band. stems: the count as worlds. key: as "bench/rhca3/2.5-5.1cm".

    thicket, keep_inside: as of a `TallyRow`.
    """

    key: str
    unit: str
    species: str
    band_cm: tuple[float, float]
    stems: Worlds
    measured_at: MeasuredAt | None = None
    crown_m: float | None = None
    height_m: float | None = None
    fruiting: bool | None = None
    thicket: str = ""
    keep_inside: str | None = None
