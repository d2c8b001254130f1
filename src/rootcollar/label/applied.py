"""What has already been put on the ground this year, as the yearly limits need it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

__all__ = ["Applied", "History"]


@dataclass(frozen=True, slots=True)
class Applied:
    """One past application over area_m2 of worked ground [m2].

    ae_g: acid applied [g], or what has no acid form as it is; None where nobody can say how much. product: key of its
    sheet. acid_known: False where ae_g is active ingredient (salt, ester) whose acid is not known, never more than it.
    species: its key in the reference, method: how it was done, "" where nobody wrote it. diameter_cm: thinnest and
    thickest of the stems treated [cm]. stems: how many. down: the day from which none of them stands any more.
    A product of two ingredients is two of these; the first alone carries what is said of the stems.
    """

    on: date
    unit: str
    ingredient: str
    ae_g: float | None
    area_m2: float
    product: str = ""
    acid_known: bool = True
    species: str = ""
    method: str = ""
    diameter_cm: tuple[float, float] | None = None
    stems: float | None = None
    down: date | None = None


@dataclass(frozen=True, slots=True)
class History:
    """All known applications. complete: the user's word that none is missing; None: nobody has said so."""

    rows: tuple[Applied, ...] = ()
    complete: bool | None = None
