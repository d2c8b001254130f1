"""Detection curves: the chance to see a plant by its distance from the line that was walked.

Half a bell curve, from the chance on the line itself downwards. A calibration walk, on which every flag is known
whether found or missed, tells both its height and its width; nothing has to be believed of plants on the line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import erf, exp, pi, sqrt

from scipy.special import chdtrc

from rootcollar.kernel.formula import formula

__all__ = ["Curve", "Fit", "chance_at", "expected_between", "half_width_m", "how_good", "seen_share"]


@dataclass(frozen=True, slots=True)
class Curve:
    """Half a bell curve. on_line: chance to see a plant on the line, 0 to 1. sigma_m: its width [m], > 0."""

    on_line: float
    sigma_m: float


@dataclass(frozen=True, slots=True)
class Fit:
    """How well a curve goes with what was seen: chi-square, its degrees of freedom, chance of a worse one by luck.

    chance: None where no degree of freedom is left. few: a group has fewer than five expected, so take it lightly.
    """

    chi_square: float
    freedom: int
    chance: float | None
    few: bool


_FEW = 5  # expected in a group of a chi-square (practice)


@formula(
    "on_line * exp(-distance_m ** 2 / (2 * sigma_m ** 2))",
    gives="",
    source="BURNHAM80",
    distance_m=(0, 40),
    on_line=(0.1, 1),
    sigma_m=(2, 30),
)
def chance_at(distance_m: float, on_line: float, sigma_m: float) -> float:
    """Return the chance to see a plant at a distance from the line [m]. on_line, sigma_m: as `Curve`."""
    return on_line * exp(-(distance_m**2) / (2 * sigma_m**2))


@formula(
    "on_line * sigma_m * sqrt(pi / 2) * erf(reach_m / (sigma_m * sqrt(2)))",
    gives="m",
    source="BURNHAM80",
    on_line=(0.1, 1),
    sigma_m=(2, 30),
    reach_m=(5, 60),
)
def half_width_m(on_line: float, sigma_m: float, reach_m: float) -> float:
    """Return the effective half-width [m]: as many are missed within it as are found beyond it, to one side.

    reach_m: how far from the line plants were looked for [m].
    """
    return on_line * sigma_m * sqrt(pi / 2) * erf(reach_m / (sigma_m * sqrt(2)))


@formula("half_width_m / reach_m", gives="", source="BURNHAM80", half_width_m=(1, 15), reach_m=(15, 60))
def seen_share(half_width_m: float, reach_m: float) -> float:
    """Return the share of the plants within reach of the line that is seen; lines laid without regard to plants."""
    return half_width_m / reach_m


def expected_between(found: float, curve: Curve, edges_m: Sequence[float]) -> tuple[float, ...]:
    """Return how many of those found are expected between each two edges [m], the last edge being the reach."""
    upto = [half_width_m(curve.on_line, curve.sigma_m, edge) for edge in edges_m]
    return tuple(found * (far - near) / (upto[-1] - upto[0]) for near, far in pairwise(upto))


def how_good(observed: Sequence[float], expected: Sequence[float], freedom: int) -> Fit:
    """Return how well groups observed and expected go together.

    freedom: degrees of freedom: groups, less the figures of the curve fitted to them, less one where the expected were
    made to add up to the observed. Raises ValueError for groups of unlike number, or none expected in one.
    """
    if len(observed) != len(expected) or not all(one > 0 for one in expected):
        raise ValueError("want as many expected as observed, all above 0")
    chi = sum((seen - one) ** 2 / one for seen, one in zip(observed, expected, strict=True))
    chance = float(chdtrc(freedom, chi)) if freedom > 0 else None
    return Fit(chi, freedom, chance, any(one < _FEW for one in expected))
