"""Rinsing a jug or a sprayer: the water it takes, what that takes off the tank's water, and what stays behind."""

from __future__ import annotations

from rootcollar.kernel.formula import formula

__all__ = ["residue_ml", "rinsate_ml", "rinse_water_ml"]


@formula(
    "container_ml * fill_share", gives="mL", source="arithmetic", container_ml=(100, 1000000), fill_share=(0.05, 0.5)
)
def rinse_water_ml(container_ml: float, fill_share: float) -> float:
    """Return the water of one rinse [mL]: of a jug a quarter of what it holds, by the rule [CFR15, 156.146].

    container_ml: what the jug or tank holds. fill_share: of it [0 to 1].
    """
    return container_ml * fill_share


@formula("times * each_ml", gives="mL", source="arithmetic", times=(1, 6), each_ml=(50, 100000))
def rinsate_ml(times: int, each_ml: float) -> float:
    """Return the water of all rinses together [mL]; poured into the tank it is a part of the tank's water."""
    return times * each_ml


@formula(
    "left_ml * (left_ml / (left_ml + rinse_ml)) ** times",
    gives="mL",
    source="arithmetic",
    left_ml=(1, 1000),
    rinse_ml=(50, 100000),
    times=(1, 6),
)
def residue_ml(left_ml: float, rinse_ml: float, times: int) -> float:
    """Return the product that is still in a container after some rinses [mL].

    Every drained rinse leaves as much liquid behind as the product did, each time thinner. left_ml: what stays in when
    it is drained. rinse_ml: water of each rinse.
    """
    return left_ml * (left_ml / (left_ml + rinse_ml)) ** times
