"""What has already been put on the ground this year, as the yearly limits need it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

__all__ = ["Applied", "History"]


@dataclass(frozen=True, slots=True)
class Applied:
    """One past application. ae_g: acid (or active) applied [g] over area_m2 of worked ground [m2]."""

    on: date
    unit: str
    ingredient: str
    ae_g: float
    area_m2: float
    product: str = ""


@dataclass(frozen=True, slots=True)
class History:
    """All known applications. complete: the user's word that none is missing; None: nobody has said so."""

    rows: tuple[Applied, ...] = ()
    complete: bool | None = None
