"""Cover: of crowns on lines, and of quadrats judged by class."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from rootcollar.kernel.errors import BadInput, Fault
from rootcollar.survey.estimate.bunches import ratio
from rootcollar.survey.estimate.estimate import Curve, Estimate
from rootcollar.survey.estimate.plots import simple
from rootcollar.survey.plots.strips import Line, covered_m

__all__ = ["SCALES", "CoverClass", "Quadrat", "Scale", "lines_cover", "quadrats_cover"]

Scale = Literal["Daubenmire", "Daubenmire with trace", "Braun-Blanquet"]
_PCT = "%"
_SHORT = "The middle of a class stands for all in it, and nobody places cover closer than about 5 %."


@dataclass(frozen=True, slots=True)
class CoverClass:
    """A class of cover: its name, and the cover [%] that stands for it."""

    name: str
    middle_pct: float


@dataclass(frozen=True, slots=True)
class Quadrat:
    """A quadrat and the class its cover was placed in."""

    key: str
    cover: str
    row: str = ""


# Daubenmire 1959, by Rangelands Gateway, University of Arizona (read): 0-5, 5-25, 25-50, 50-75, 75-95, 95-100 %.
_DAUBENMIRE = (2.5, 15.0, 37.5, 62.5, 85.0, 97.5)
# BLM technical reference 1734-4, table 2 (read): none, trace below 1, 1-5, then as Daubenmire.
_TRACE = (0.0, 0.5, 3.0, 15.0, 37.5, 62.5, 85.0, 97.5)
# Braun-Blanquet (memory; texts differ on r and +): r, +, 1 to 5.
_BRAUN_BLANQUET = (0.1, 0.5, 2.5, 15.0, 37.5, 62.5, 87.5)

SCALES: dict[Scale, tuple[CoverClass, ...]] = {
    "Daubenmire": tuple(map(CoverClass, "123456", _DAUBENMIRE)),
    "Daubenmire with trace": tuple(map(CoverClass, "0T123456", _TRACE)),
    "Braun-Blanquet": tuple(map(CoverClass, "r+12345", _BRAUN_BLANQUET)),
}


def lines_cover(lines: Sequence[Line]) -> Estimate:
    """Return the cover [%] from lines: all lengths under crowns over all lengths; the line is what was drawn.

    Raises BadInput for fewer than two lines or a piece that does not fit its line, Refusal where no crown was met.
    """
    covered = np.array(covered_m(lines))
    lengths = np.array([one.length_m for one in lines]) / 100
    return _whole(ratio(covered, lengths, [one.key for one in lines], unit=_PCT))


def quadrats_cover(quadrats: Sequence[Quadrat], scale: Scale = "Daubenmire") -> Estimate:
    """Return the mean cover [%] of quadrats placed in classes.

    Covers of several species may add up to more than 100 %: they overlap, and middles of classes stand for them.
    Raises BadInput with every quadrat whose class the scale does not have, or for fewer than two; Refusal for no
    cover at all.
    """
    middles = {one.name: one.middle_pct for one in SCALES[scale]}
    wrong = [one for one in quadrats if one.cover not in middles]
    if wrong:
        allowed = f"{', '.join(middles)} ({scale})"
        faults = [Fault(f"class {one.cover!r}", allowed, row=one.row or f"quadrat {one.key}") for one in wrong]
        raise BadInput(*faults)
    found = simple(np.array([middles[one.cover] for one in quadrats]), [one.key for one in quadrats], unit=_PCT)
    return _whole(found, _SHORT)


def _whole(found: Estimate, more: str = "") -> Estimate:
    """Return the estimate with its curve cut off at 100 %."""
    old = found.curve
    short = f"{old.falls_short} {more}".strip()
    curve = Curve(old.kind, short, lambda shares: np.minimum(old.quantile(shares), 100))
    return Estimate(found.way, found.unit, found.figure, found.keys, found.pulls, found.df, curve)
