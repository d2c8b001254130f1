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
from rootcollar.mix.buy import Container, Purchase, Supply, cheapest, left_over_ml, still_needed_ml, supply
from rootcollar.mix.calibrate import (
    above_new_pct,
    course_m,
    flow_ml_per_s,
    in_time_ml,
    mean_of,
    moving_l_per_ha,
    off_mean_pct,
    on_area_mix_ml,
    on_plants_ml,
    output_l_per_ha,
    per_plant_ml,
    speed_m_per_s,
    tank_area_m2,
    tank_s,
    treated_cm2,
)  # fmt: skip
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
from rootcollar.mix.recipe import Carrier, Part, Recipe, Treatment, Visit, parts_of, sides
from rootcollar.mix.rinse import residue_ml, rinsate_ml, rinse_water_ml
from rootcollar.mix.sold import KINDS, sold
from rootcollar.mix.strength import active_g_per_l, off_pct
from rootcollar.mix.topup import topped_up_pct, topup_product_ml
from rootcollar.mix.water import (
    ams_for_ion,
    ams_in_tank_g,
    ams_lb_per_100_gal,
    hardness_ppm,
    ion_from_hardness_ppm,
)  # fmt: skip

__all__ = [
    "KINDS", "Card", "Carrier", "Container", "Limits", "Loads", "Part", "Purchase", "Recipe", "Supply",
    "Treatment", "Visit", "above_new_pct", "acid_from_active", "acid_kg_per_ha", "active_g_per_l", "adding_order",
    "air_gap_cm", "ams_for_ion", "ams_in_tank_g", "ams_lb_per_100_gal", "card", "cheapest", "course_m",
    "flow_ml_per_s", "g_from_rate", "g_from_weight_pct", "hardness_ppm", "implied_density_g_per_ml", "in_time_ml",
    "ion_from_hardness_ppm", "left_over_ml", "load_kg", "mean_of", "mix_density_kg_per_l", "ml_from_active_pct",
    "most_volume_l_per_ha", "moving_l_per_ha", "off_mean_pct", "off_pct", "on_area_mix_ml", "on_plants_ml",
    "output_l_per_ha", "parts_of", "pct_from_acid", "pct_from_parts", "pct_from_rate", "per_plant_ml", "plan_loads",
    "product_in_ml", "product_on_top_ml", "product_rate_l_per_ha", "residue_ml", "rinsate_ml", "rinse_water_ml",
    "same_acid_rate", "share_of_mix_pct", "sides", "smallest_batch_ml", "sold", "speed_m_per_s", "still_needed_ml",
    "supply", "tank_area_m2", "tank_by_weight_ml", "tank_s", "topped_up_pct", "topup_product_ml",
    "total_for_product_ml", "treated_cm2",
]  # fmt: skip
