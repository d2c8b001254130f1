"""The conventions of strength, kept apart: of the finished mix, on top of a full diluent, as a ratio, from acid."""

from __future__ import annotations

from rootcollar.kernel.formula import formula

__all__ = [
    "g_from_rate", "g_from_weight_pct", "ml_from_active_pct", "pct_from_acid", "pct_from_parts", "product_in_ml",
    "product_on_top_ml", "share_of_mix_pct", "total_for_product_ml",
]  # fmt: skip


@formula("total_ml * pct / 100", gives="mL", source="UIUC06", total_ml=(100, 100000), pct=(0.1, 100))
def product_in_ml(total_ml: float, pct: float) -> float:
    """Return the product in a finished mix [mL]: percent of the finished volume, as labels and tables mean it [UIUC06].

    total_ml: finished mix [mL]. pct: product in it [%].
    """
    return total_ml * pct / 100


@formula("diluent_ml * pct / (100 - pct)", gives="mL", source="arithmetic", diluent_ml=(100, 100000), pct=(0.1, 75))
def product_on_top_ml(diluent_ml: float, pct: float) -> float:
    """Return the product to add on top of a full diluent so that the finished mix has pct of it [mL].

    Adding pct of the diluent instead comes out weaker: at 20 % it makes 16.7 %. diluent_ml: [mL]. pct: below 100 [%].
    """
    return diluent_ml * pct / (100 - pct)


@formula("100 * product_ml / total_ml", gives="%", source="arithmetic", product_ml=(1, 5000), total_ml=(5000, 100000))
def share_of_mix_pct(product_ml: float, total_ml: float) -> float:
    """Return the true strength of a mix [% of finished volume]. product_ml, total_ml: [mL]."""
    return 100 * product_ml / total_ml


@formula("100 / (parts_diluent + 1)", gives="%", source="arithmetic", parts_diluent=(0.5, 200))
def pct_from_parts(parts_diluent: float) -> float:
    """Return the strength of one part product to so many parts of diluent [%]: 1:4 is 20 %, not 25 %."""
    return 100 / (parts_diluent + 1)


@formula(
    "100 * wanted_g_per_l / have_g_per_l",
    gives="%",
    source="ENLOE-2023",
    wanted_g_per_l=(1, 90),
    have_g_per_l=(90, 600),
)
def pct_from_acid(wanted_g_per_l: float, have_g_per_l: float) -> float:
    """Return the strength [%] that gives so much acid in a litre of mix. Both: acid (or active) [g/L]."""
    return 100 * wanted_g_per_l / have_g_per_l


@formula("100 * product_ml / pct", gives="mL", source="arithmetic", product_ml=(1, 5000), pct=(0.1, 100))
def total_for_product_ml(product_ml: float, pct: float) -> float:
    """Return the finished mix that so much product makes at a strength [mL]. product_ml: [mL]. pct: [%]."""
    return 100 * product_ml / pct


@formula(
    "total_ml * pct / 100 * diluent_g_per_ml",
    gives="g",
    source="VADWR",
    total_ml=(100, 100000),
    pct=(0.1, 20),
    diluent_g_per_ml=(0.8, 1.1),
)
def g_from_weight_pct(total_ml: float, pct: float, diluent_g_per_ml: float) -> float:
    """Return the product for a percent by weight of the diluent [g]: 1 % in a gallon of water is 38 g [VADWR].

    total_ml: diluent [mL]. pct: by weight [%]. diluent_g_per_ml: its density [g/mL].
    """
    return total_ml * pct / 100 * diluent_g_per_ml


@formula(
    "total_ml * rate_kg_per_ha / volume_l_per_ha",
    gives="g",
    source="arithmetic",
    total_ml=(100, 100000),
    rate_kg_per_ha=(0.01, 20),
    volume_l_per_ha=(50, 1000),
)
def g_from_rate(total_ml: float, rate_kg_per_ha: float, volume_l_per_ha: float) -> float:
    """Return the weighed product in a mix that is put out at a measured volume an area [g].

    total_ml: finished mix [mL]. rate_kg_per_ha: of product [kg/ha]. volume_l_per_ha: what the sprayer puts out [L/ha].
    """
    return total_ml * rate_kg_per_ha / volume_l_per_ha


@formula(
    "10 * total_ml * pct * diluent_g_per_ml / active_g_per_l",
    gives="mL",
    source="arithmetic",
    total_ml=(100, 100000),
    pct=(0.1, 5),
    diluent_g_per_ml=(0.8, 1.1),
    active_g_per_l=(90, 600),
)
def ml_from_active_pct(total_ml: float, pct: float, diluent_g_per_ml: float, active_g_per_l: float) -> float:
    """Return the product for a percent of active by weight in the spray [mL], as dilution tables mean it.

    total_ml: spray [mL]. pct: active by weight [%]. diluent_g_per_ml: density of the spray, taken as its diluent's
    [g/mL]. active_g_per_l: in the product [g/L].
    """
    return 10 * total_ml * pct * diluent_g_per_ml / active_g_per_l
