"""Where an ingredient goes: leaching, loss with time, air and water, fish. All of it ranks and warns; none permits."""

from __future__ import annotations

import math
from collections.abc import Sequence

from rootcollar.kernel.formula import formula

__all__ = [
    "FISH_WORDS", "LEACHING_WORDS", "VAPOUR_WORDS", "attenuation_factor", "drinking_water_benchmark_ppb",
    "environmental_impact", "fish_word", "gus_score", "half_life_d", "henry_dimensionless", "henry_pa_m3_per_mol",
    "leaching_word", "left_share", "retardation_factor", "vapour_pressure_mpa", "vapour_word",
]  # fmt: skip

LEACHING_WORDS = ("extremely low", "low", "moderate", "high")
VAPOUR_WORDS = ("low", "unclear", "high")
FISH_WORDS = ("very highly toxic", "highly toxic", "moderately toxic", "slightly toxic", "practically non-toxic")


@formula(
    "log10(half_life_d) * (4 - log10(koc_ml_per_g))",
    gives="score",
    source="NPIC-GUS",
    half_life_d=(1, 1500),
    koc_ml_per_g=(1, 100000),
)
def gus_score(half_life_d: float, koc_ml_per_g: float) -> float:
    """Return the groundwater ubiquity score, a rank of leaching and no more [NPIC-GUS].

    half_life_d: in soil [d]. koc_ml_per_g: sorption to organic carbon [mL/g].
    """
    return math.log10(half_life_d) * (4 - math.log10(koc_ml_per_g))


def leaching_word(score: float, edges: Sequence[float]) -> str:
    """Return the class of a leaching score [NPIC-GUS]. edges: below the first is extremely low, above the last high."""
    below, *steps = edges
    return LEACHING_WORDS[0] if score < below else LEACHING_WORDS[1 + sum(score > edge for edge in steps)]


@formula("0.5 ** (days / half_life_d)", gives="share", source="FRANCISCO-2018", days=(0, 1000), half_life_d=(1, 1500))
def left_share(days: float, half_life_d: float) -> float:
    """Return the share that is left after some days of first-order loss [0 to 1]. days, half_life_d: [d]."""
    return math.pow(1 / 2, days / half_life_d)


@formula("log(2) / rate_per_d", gives="d", source="FRANCISCO-2018", rate_per_d=(0.0001, 1))
def half_life_d(rate_per_d: float) -> float:
    """Return the half-life of a first-order loss [d]. rate_per_d: the share lost in a short time, by the day [1/d]."""
    return math.log(2) / rate_per_d


@formula(
    "vapour_pressure_pa * molar_mass_g_per_mol / solubility_g_per_m3",
    gives="Pa m3/mol",
    source="BCPC-24D",
    vapour_pressure_pa=(1e-9, 1),
    molar_mass_g_per_mol=(100, 500),
    solubility_g_per_m3=(1, 1000000),
)
def henry_pa_m3_per_mol(vapour_pressure_pa: float, molar_mass_g_per_mol: float, solubility_g_per_m3: float) -> float:
    """Return the Henry constant, how an ingredient parts between air and water [Pa m3/mol].

    The same product stands in atm m3/mol when the pressure is given in atm. solubility_g_per_m3: the same as mg/L.
    """
    return vapour_pressure_pa * molar_mass_g_per_mol / solubility_g_per_m3


@formula(
    "henry_pa_m3_per_mol / (gas_constant * temperature_k)",
    gives="share",
    source="IL-259E",
    henry_pa_m3_per_mol=(1e-9, 100000),
    gas_constant=(8, 9),
    temperature_k=(273, 313),
)
def henry_dimensionless(henry_pa_m3_per_mol: float, gas_constant: float, temperature_k: float) -> float:
    """Return the same constant as concentration in air over concentration in water.

    gas_constant: [Pa m3/(mol K)]. temperature_k: [K].
    """
    return henry_pa_m3_per_mol / (gas_constant * temperature_k)


@formula(
    "1000 * pressure_mm_hg * pa_per_mm_hg",
    gives="mPa",
    source="CRC-HB",
    pressure_mm_hg=(1e-9, 0.01),
    pa_per_mm_hg=(133, 134),
)
def vapour_pressure_mpa(pressure_mm_hg: float, pa_per_mm_hg: float) -> float:
    """Return a vapour pressure in millipascal. pressure_mm_hg: in mm of mercury. pa_per_mm_hg: one of them [Pa]."""
    return 1000 * pressure_mm_hg * pa_per_mm_hg


def vapour_word(pressure_mpa: float, edges: Sequence[float]) -> str:
    """Return how volatile an ester is by its vapour pressure at 25 C [mPa]: low, unclear, high [NOBLE-HAM].

    edges: the most of "low" and the most of "unclear" [mPa].
    """
    return VAPOUR_WORDS[sum(pressure_mpa > edge for edge in edges)]


@formula(
    "1 + (bulk_g_per_ml * carbon_share * koc_ml_per_g + air_share * henry) / water_share",
    gives="times slower than water",
    source="RAO-1985",
    bulk_g_per_ml=(0.8, 1.8),
    carbon_share=(0.0001, 0.05),
    koc_ml_per_g=(1, 30000),
    water_share=(0.05, 0.5),
    air_share=(0, 0.4),
    henry=(0, 0.1),
)
def retardation_factor(
    bulk_g_per_ml: float, carbon_share: float, koc_ml_per_g: float, water_share: float, air_share: float, henry: float
) -> float:
    """Return how many times slower than water an ingredient sinks through soil [RAO-1985].

    bulk_g_per_ml: density of the dry soil. carbon_share: of its weight. koc_ml_per_g: sorption. water_share, air_share:
    of its volume. henry: the dimensionless constant.
    """
    return 1 + (bulk_g_per_ml * carbon_share * koc_ml_per_g + air_share * henry) / water_share


@formula(
    "exp(-log(2) * depth_m * retardation * water_share / (recharge_m_per_d * half_life_d))",
    gives="share",
    source="RAO-1985",
    depth_m=(0.1, 3),
    retardation=(1, 50),
    water_share=(0.05, 0.5),
    recharge_m_per_d=(0.0003, 0.01),
    half_life_d=(1, 500),
)
def attenuation_factor(
    depth_m: float, retardation: float, water_share: float, recharge_m_per_d: float, half_life_d: float
) -> float:
    """Return the share of a dose that is still there when it has sunk to a depth [0 to 1], steady flow [RAO-1985].

    retardation: as `retardation_factor`. water_share: of the soil's volume. recharge_m_per_d: rain that sinks in.
    """
    return math.exp(-math.log(2) * depth_m * retardation * water_share / (recharge_m_per_d * half_life_d))


def fish_word(lc50_mg_per_l: float, edges: Sequence[float]) -> str:
    """Return the agency's word for an LC50 of fish [mg/L]; edges: below the first very highly toxic, and so on.

    An edge belongs to the less toxic side at the first, to the more toxic side at the others [EPA-ECOCAT].
    """
    below, *steps = edges
    return FISH_WORDS[0] if lc50_mg_per_l < below else FISH_WORDS[1 + sum(lc50_mg_per_l > edge for edge in steps)]


@formula(
    "1000 * reference_dose_mg_per_kg_d * body_kg / water_l_per_d * share_from_water",
    gives="ppb",
    source="EPA-HHBP",
    reference_dose_mg_per_kg_d=(0.001, 3),
    body_kg=(10, 80),
    water_l_per_d=(1, 3),
    share_from_water=(0.1, 1),
)
def drinking_water_benchmark_ppb(
    reference_dose_mg_per_kg_d: float, body_kg: float, water_l_per_d: float, share_from_water: float
) -> float:
    """Return the most in drinking water that a reference dose allows [ppb, the same as ug/L] [EPA-HHBP].

    share_from_water: of the whole dose; a fifth for a chronic benchmark, all of it for an acute one.
    """
    return 1000 * reference_dose_mg_per_kg_d * body_kg / water_l_per_d * share_from_water


@formula("(worker + consumer + ecology) / 3", gives="score", source="EIQ-TAB",
         worker=(6, 250), consumer=(2, 130), ecology=(12, 300))  # fmt: skip
def environmental_impact(worker: float, consumer: float, ecology: float) -> float:
    """Return the environmental impact quotient of its three parts [EIQ-TAB]. Nothing here ranks by it.

    For herbicides it follows the rate of use and little else [KNISS-2015]; it is kept so that a quotient found in
    print can be checked.
    """
    return (worker + consumer + ecology) / 3
