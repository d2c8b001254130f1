"""Active ingredients, their forms, and the generic formulations sold of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rootcollar.kernel.sources import Cited
from rootcollar.reference.spans import Figure

__all__ = ["Form", "Formulation", "Ingredient"]


@dataclass(frozen=True, slots=True)
class Ingredient:
    """One active ingredient. Where sources differ every value is kept; `holds_for` tells the form or the site."""

    key: str
    name: Cited[str]
    group: Cited[str]
    action: Cited[str]
    selectivity: Cited[str]
    spares: Cited[str]
    harms: Cited[str]
    soil_activity: Cited[str]
    root_risk: Cited[str]
    volatility: Cited[str]
    over_water: Cited[str]
    carriers: Cited[tuple[str, ...]]
    form_types: Cited[tuple[str, ...]]
    rain_free_h: tuple[Figure, ...]
    max_per_acre_year: tuple[Figure, ...]
    soil_half_life_d: tuple[Figure, ...]
    koc_ml_per_g: tuple[Figure, ...]
    solubility_mg_per_l: tuple[Figure, ...]
    vapour_pressure_mpa: tuple[Figure, ...]
    fish_lc50_mg_per_l: tuple[Figure, ...]
    reference_dose_mg_per_kg_d: tuple[Figure, ...]
    more: Mapping[str, tuple[Figure, ...]]


@dataclass(frozen=True, slots=True)
class Form:
    """A salt, ester or acid: its formula, molecular weight and the share of it that is acid."""

    ingredient: str
    form: str
    formula: Cited[str]
    molecular_weight: Cited[float]
    ae_factor: Cited[float]


@dataclass(frozen=True, slots=True)
class Formulation:
    """A generic formulation, told by ingredient, form and strength. It is no label and permits nothing.

    type: SL, EC, RTU, WG, GR. carriers: "water", "oil", "none". ae_lb_per_gal or ai_lb_per_gal as the trade states
    it. ae_factor: acid share of the form. density_g_per_ml: what percent and strength together imply.
    """

    key: str
    words: str
    ingredient: str
    form: str
    type: str
    carriers: tuple[str, ...]
    ready_to_use: bool
    some_aquatic: Cited[bool]
    percent_ai: Cited[float] | None
    ae_lb_per_gal: Cited[float] | None
    ai_lb_per_gal: Cited[float] | None
    ae_factor: Cited[float]
    density_g_per_ml: Cited[float] | None
