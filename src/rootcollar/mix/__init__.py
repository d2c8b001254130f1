"""Mix: how much of what into which jug, in how many loads; what to buy.

Question: what is poured for this much finished mix, so that the label's strength is kept by the marks of a jug?
Inputs: a `Recipe`, an amount [mL], the label's limits of strength, tank and carried weight, container sizes.
Outputs: a `Card` with steps and the true strength, `Loads`, a `Purchase`; rates and acid by plain formulas.
Sources: percent of the finished mix [UIUC06]; air gap [HILLS, SANM]; weights [VADWR]; conventions are kept apart.
Refuses: a batch too small to measure, with the smallest that can be; a tank that holds less than a mark.
"""

from rootcollar.mix.batch import (
    g_from_rate,
    g_from_weight_pct,
    ml_from_active_pct,
    pct_from_acid,
    pct_from_parts,
    product_in_ml,
    product_on_top_ml,
    share_of_mix_pct,
    total_for_product_ml,
)  # fmt: skip
from rootcollar.mix.buy import Container, Purchase, cheapest
from rootcollar.mix.card import Card, Limits, card, smallest_batch_ml
from rootcollar.mix.loads import Loads, load_kg, mix_density_kg_per_l, plan_loads, tank_by_weight_ml
from rootcollar.mix.order import adding_order, air_gap_cm
from rootcollar.mix.rates import (
    acid_from_active,
    acid_kg_per_ha,
    implied_density_g_per_ml,
    most_volume_l_per_ha,
    pct_from_rate,
    product_rate_l_per_ha,
    same_acid_rate,
)  # fmt: skip
from rootcollar.mix.recipe import Carrier, Recipe, Treatment, Visit

__all__ = [
    "Card", "Carrier", "Container", "Limits", "Loads", "Purchase", "Recipe", "Treatment", "Visit",
    "acid_from_active", "acid_kg_per_ha", "adding_order", "air_gap_cm", "card", "cheapest", "g_from_rate",
    "g_from_weight_pct",
    "implied_density_g_per_ml", "load_kg", "mix_density_kg_per_l", "ml_from_active_pct", "most_volume_l_per_ha",
    "pct_from_acid", "pct_from_parts", "pct_from_rate", "plan_loads", "product_in_ml", "product_on_top_ml",
    "product_rate_l_per_ha", "same_acid_rate", "share_of_mix_pct", "smallest_batch_ml", "tank_by_weight_ml",
    "total_for_product_ml",
]  # fmt: skip
