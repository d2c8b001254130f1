"""Do percent, density and pounds a gallon fit? A slip in one of the three shows in the other two."""

from __future__ import annotations

from rootcollar.kernel.formula import formula

__all__ = ["active_g_per_l", "off_pct"]


@formula(
    "10 * density_g_per_ml * active_pct",
    gives="g/L",
    source="arithmetic",
    density_g_per_ml=(0.8, 1.4),
    active_pct=(1, 100),
)
def active_g_per_l(density_g_per_ml: float, active_pct: float) -> float:
    """Return the ingredient in a product [g/L]. density_g_per_ml: of the product. active_pct: percent by weight [%]."""
    return 10 * density_g_per_ml * active_pct


@formula("100 * (said - reckoned) / reckoned", gives="%", source="arithmetic", said=(50, 800), reckoned=(50, 800))
def off_pct(said: float, reckoned: float) -> float:
    """Return how far a figure that was typed lies from the reckoned one [% of the reckoned], above 0 where it is more.

    said, reckoned: in one unit.
    """
    return 100 * (said - reckoned) / reckoned
