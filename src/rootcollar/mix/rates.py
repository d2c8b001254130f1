"""Rates and acid: the same acid from another product, acid on an acre, what a label's cap leaves room for."""

from __future__ import annotations

from rootcollar.kernel.formula import formula

__all__ = [
    "acid_from_active", "acid_kg_per_ha", "implied_density_g_per_ml", "most_volume_l_per_ha", "pct_from_rate",
    "product_rate_l_per_ha", "same_acid_rate",
]  # fmt: skip


@formula(
    "rate * named_g_per_l / have_g_per_l",
    gives="as the rate",
    source="arithmetic",
    rate=(0.1, 100),
    named_g_per_l=(90, 600),
    have_g_per_l=(90, 600),
)
def same_acid_rate(rate: float, named_g_per_l: float, have_g_per_l: float) -> float:
    """Return the rate of the product in hand that brings the same acid as a rate of the named product.

    rate: of the named product [any volume an area]. named_g_per_l, have_g_per_l: acid in each [g/L].
    """
    return rate * named_g_per_l / have_g_per_l


@formula(
    "pct / 100 * volume_l_per_ha * acid_g_per_l / 1000",
    gives="kg/ha",
    source="arithmetic",
    pct=(0.1, 100),
    volume_l_per_ha=(1, 1000),
    acid_g_per_l=(90, 600),
)
def acid_kg_per_ha(pct: float, volume_l_per_ha: float, acid_g_per_l: float) -> float:
    """Return acid put on the ground by a percent mix at a volume [kg/ha].

    pct: strength [%]. volume_l_per_ha: finished mix [L/ha]. acid_g_per_l: in the product [g/L].
    """
    return pct / 100 * volume_l_per_ha * acid_g_per_l / 1000


@formula(
    "1000 * cap_kg_per_ha / (pct / 100 * acid_g_per_l)",
    gives="L/ha",
    source="arithmetic",
    cap_kg_per_ha=(0.1, 12),
    pct=(0.1, 100),
    acid_g_per_l=(90, 600),
)
def most_volume_l_per_ha(cap_kg_per_ha: float, pct: float, acid_g_per_l: float) -> float:
    """Return the most finished mix under a cap of acid [L/ha]. cap_kg_per_ha: [kg/ha]. Others as `acid_kg_per_ha`."""
    return 1000 * cap_kg_per_ha / (pct / 100 * acid_g_per_l)


@formula(
    "1000 * acid_kg_per_ha / acid_g_per_l",
    gives="L/ha",
    source="PNW-RIP",
    acid_kg_per_ha=(0.1, 12),
    acid_g_per_l=(90, 600),
)
def product_rate_l_per_ha(acid_kg_per_ha: float, acid_g_per_l: float) -> float:
    """Return the product that brings so much acid (or active) to an area [L/ha] [PNW-RIP].

    acid_kg_per_ha: [kg/ha]. acid_g_per_l: in the product [g/L].
    """
    return 1000 * acid_kg_per_ha / acid_g_per_l


@formula(
    "100 * rate_l_per_ha / volume_l_per_ha",
    gives="%",
    source="UFUGA",
    rate_l_per_ha=(0.1, 20),
    volume_l_per_ha=(50, 1000),
)
def pct_from_rate(rate_l_per_ha: float, volume_l_per_ha: float) -> float:
    """Return the strength of a rate of product in so much mix [%]: 1 qt/ac is 1 % only at 25 gal/ac [UFUGA].

    rate_l_per_ha: of product. volume_l_per_ha: of finished mix. Both in one unit [L/ha].
    """
    return 100 * rate_l_per_ha / volume_l_per_ha


@formula("active * ae_factor", gives="as the active", source="arithmetic", active=(50, 800), ae_factor=(0.5, 1))
def acid_from_active(active: float, ae_factor: float) -> float:
    """Return the acid in a salt or ester: its share by molecular weight. active: any strength. ae_factor: 0 to 1."""
    return active * ae_factor


@formula(
    "active_g_per_l / (10 * active_pct)",
    gives="g/mL",
    source="arithmetic",
    active_g_per_l=(50, 800),
    active_pct=(5, 90),
)
def implied_density_g_per_ml(active_g_per_l: float, active_pct: float) -> float:
    """Return the density that a strength and a percent by weight imply together [g/mL]; a typing slip shows in it.

    active_g_per_l: [g/L]. active_pct: percent by weight [%].
    """
    return active_g_per_l / (10 * active_pct)
