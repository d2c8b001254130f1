"""Three areas of one patch, never to be taken for each other: the ground around it, the ground it is on, its canopy.

Gross: the outline within which the plant occurs, clean ground among it. Infested: ground within the actual edge of the
plants' canopies; product for ground that is treated goes by this one. Canopy: infested ground times cover; what is put
on leaves goes by this one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from rootcollar.kernel.formula import formula
from rootcollar.kernel.units import convert

__all__ = ["Patch", "PatchAreas", "areas", "canopy_m2", "gaps_m", "infested_m2", "outline_doubt_m2", "patch_faults"]

SMALL_M2 = convert(1 / 10, "ac", "m2")  # USFS-R3-26: at or below a tenth of an acre a patch counts as infested whole
_CORNERS = 3  # of an outline, at least (definition)


@dataclass(frozen=True, slots=True)
class Patch:
    """One species on one outline, as recorded.

    gross_m2: within the outline [m2]. infested_pct: of it [%]; 0 only where a known patch was visited again and is
    gone. cover_pct: of the infested ground beneath canopy [%]; None where nobody judged it.
    """

    gross_m2: float
    infested_pct: float
    cover_pct: float | None = None
    gone: bool = False


@dataclass(frozen=True, slots=True)
class PatchAreas:
    """The three areas [m2]; canopy is None while nobody has judged the cover."""

    gross_m2: float
    infested_m2: float
    canopy_m2: float | None


@formula("gross_m2 * infested_pct / 100", gives="m2", source="USFS-R3-26", gross_m2=(1, 500_000), infested_pct=(0, 100))
def infested_m2(gross_m2: float, infested_pct: float) -> float:
    """Return the infested ground [m2]. gross_m2: within the outline [m2]. infested_pct: of it [%]."""
    return gross_m2 * infested_pct / 100


@formula("infested_m2 * cover_pct / 100", gives="m2", source="practice", infested_m2=(1, 500_000), cover_pct=(0, 100))
def canopy_m2(infested_m2: float, cover_pct: float) -> float:
    """Return the canopy pushed together, the "net" area [m2]. infested_m2: [m2]. cover_pct: of that ground [%]."""
    return infested_m2 * cover_pct / 100


@formula("sigma_m / 2 * sqrt(sum(gaps_m ** 2))", gives="m2", source="ours", sigma_m=(0.5, 10), gaps_m=(5, 300))
def outline_doubt_m2(sigma_m: float, gaps_m: NDArray[np.float64]) -> float:
    """Return the standard deviation of an area that was walked around with a receiver [m2].

    sigma_m: error of each corner, east and north alike and each for itself [m]; under trees often 4 to 8 m.
    gaps_m: for each corner the distance between its two neighbours [m].
    """
    return float(sigma_m / 2 * np.sqrt(np.sum(np.asarray(gaps_m) ** 2)))


def gaps_m(corners: Sequence[tuple[float, float]]) -> NDArray[np.float64]:
    """Return for each corner of an outline the distance between its two neighbours [m]. corners: each once, in order.

    Raises ValueError for fewer than three corners.
    """
    if len(corners) < _CORNERS:
        raise ValueError(f"want {_CORNERS} corners or more, got {len(corners)}")
    places = np.asarray(corners, dtype=np.float64)
    return np.asarray(np.linalg.norm(np.roll(places, -1, axis=0) - np.roll(places, 1, axis=0), axis=1))


def patch_faults(patch: Patch) -> tuple[str, ...]:
    """Return what is wrong with a patch as recorded, in words; empty when nothing is.

    A patch of a tenth of an acre or less is infested whole, and none of it infested says that it is gone.
    """
    told = []
    if not patch.gross_m2 > 0:
        told.append("want a gross area above 0")
    if not 0 <= patch.infested_pct <= 100:
        told.append("want 0 to 100 % infested")
    if patch.cover_pct is not None and not 0 <= patch.cover_pct <= 100:
        told.append("want 0 to 100 % cover")
    if (patch.infested_pct == 0) != patch.gone:
        told.append(
            "0 % infested is only for a patch that was visited again and is gone, and a patch that is gone has 0 %"
        )
    elif 0 < patch.gross_m2 <= SMALL_M2 and patch.infested_pct not in (0, 100):
        told.append("a patch of a tenth of an acre or less is infested whole: 100 %")
    return tuple(told)


def areas(patch: Patch) -> PatchAreas:
    """Return the three areas of a patch. Raises ValueError with every fault of it.

    Areas of several species are never added up: they stand on each other's ground.
    """
    if faults := patch_faults(patch):
        raise ValueError("; ".join(faults))
    infested = infested_m2(patch.gross_m2, patch.infested_pct)
    cover = 0.0 if patch.gone else patch.cover_pct
    return PatchAreas(patch.gross_m2, infested, None if cover is None else canopy_m2(infested, cover))
