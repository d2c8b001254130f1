"""Hazard: how harmful, to whom, and what keeps it off.

Question: how toxic is a product by route, what does that ask of clothing and water, where does an ingredient go?
Inputs: figures of a label or a source; toxicity categories; what a mix is thinned with; how many people work.
Outputs: categories and the signal word they lead to, the least to wear, gloves, wash water, leaching class.
Sources: 40 CFR 156.62, .64, .212 and 170; 49 CFR 173.6; each formula names its own.
Refuses: to replace a label's own word. What is reckoned here can only raise a doubt about what was typed, or a floor.
"""

from rootcollar.hazard.categories import (
    MEASURED,
    ROUTES,
    Category,
    Route,
    SignalWord,
    entry_default_h,
    signal_word,
    toxicity_category,
    worse_category,
)
from rootcollar.hazard.exposure import (
    behind_respirator_ug_per_lb,
    handler_dose_mg_per_kg,
    margin_of_exposure,
    shortcut_dose_mg_per_kg,
)
from rootcollar.hazard.fate import (
    attenuation_factor,
    drinking_water_benchmark_ppb,
    environmental_impact,
    fish_word,
    gus_score,
    half_life_d,
    henry_dimensionless,
    henry_pa_m3_per_mol,
    leaching_word,
    left_share,
    retardation_factor,
    vapour_pressure_mpa,
    vapour_word,
)
from rootcollar.hazard.gloves import (
    Chart,
    Rating,
    liner_hours_left,
    material_of,
    read_chart,
    solvent_groups,
    weaker_rating,
)
from rootcollar.hazard.holding import chart_words, holding_times, material_words
from rootcollar.hazard.molecule import acid_share, molar_mass
from rootcollar.hazard.saw import felling_distance_m
from rootcollar.hazard.transport import (
    Package,
    is_classed,
    liquid_kg,
    most_in_package_ml,
    most_in_vehicle_kg,
    packing_group,
    too_large,
)
from rootcollar.hazard.wash import Wash, carried_flush_ml, flush_water_ml, wash_needed, wash_water_ml
from rootcollar.hazard.wear import TASKS, Floor, Task, wear_floor

__all__ = [
    "MEASURED", "ROUTES", "TASKS", "Category", "Chart", "Floor", "Package", "Rating", "Route", "SignalWord", "Task",
    "Wash", "acid_share", "attenuation_factor", "behind_respirator_ug_per_lb", "carried_flush_ml", "chart_words",
    "drinking_water_benchmark_ppb", "environmental_impact", "felling_distance_m", "fish_word", "flush_water_ml",
    "gus_score", "half_life_d", "handler_dose_mg_per_kg", "henry_dimensionless", "henry_pa_m3_per_mol",
    "holding_times", "is_classed", "leaching_word", "left_share", "liner_hours_left", "liquid_kg",
    "margin_of_exposure", "material_of", "material_words", "molar_mass", "most_in_package_ml", "most_in_vehicle_kg",
    "entry_default_h", "packing_group",
    "read_chart", "retardation_factor", "shortcut_dose_mg_per_kg", "signal_word", "solvent_groups",
    "too_large", "toxicity_category", "vapour_pressure_mpa", "vapour_word", "wash_needed", "wash_water_ml",
    "weaker_rating", "wear_floor", "worse_category",
]  # fmt: skip
