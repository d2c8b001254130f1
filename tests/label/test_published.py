"""Worked cases written down before the rules were: doses, lawful departures, registration numbers.

Doses were reckoned by hand from exact units (pound 453.59237 g, gallon 3785.411784 mL, acre 4046.8564224 m2); the
departures are those of 7 U.S.C. 136(ee), read in the public copy of the Code (2023).
"""

import math
from dataclasses import replace

import pytest

from rootcollar.kernel.doubt import sure
from rootcollar.kernel.units import convert
from rootcollar.kernel.verdict import Level
from rootcollar.label import UnitTotal
from rootcollar.label.limits import active_g, active_kg_per_ha, least_area_m2, most_mix_ml, product_l_per_ha
from rootcollar.label.rules.dose import most_by_diameter_ml
from rootcollar.label.rules.sums import lb_per_gal
from rootcollar.mix.recipe import Recipe
from rootcollar.shelf import base_product
from tests.label.sample import ACRE_M2, AE_G_PER_L, PLANNED, RECIPE, facts_of, lines, said, total, whole

LB_G = 453.59237


def poured(mix_ml: float, strength_pct: float, acres: float) -> UnitTotal:
    """Return the sum of so much mix on so much treated ground."""
    area = acres * ACRE_M2
    made = total(mix_ml * strength_pct / 100, strength_pct=strength_pct, area_m2=area, treated_m2=area)
    return replace(made, mix_ml=sure(mix_ml))


def test_250_stumps_of_2_ml_undiluted_bring_0_3963_lb_of_acid() -> None:
    grams = active_g(sure(250 * 2.0), AE_G_PER_L)[0]
    assert grams / LB_G == pytest.approx(0.3963, abs=5e-5)


def test_the_same_on_a_quarter_acre_is_1_585_lb_an_acre_and_the_rule_does_not_object() -> None:
    work = poured(500.0, 100.0, 0.25)
    rate = convert(active_kg_per_ha(active_g(work.product_ml, AE_G_PER_L), 0.25 * ACRE_M2)[0], "kg/ha", "lb/acre")
    assert rate == pytest.approx(1.585, abs=5e-4)
    assert said(facts_of(work=work))["L12"].level is Level.OK


def test_12_gallons_of_2_percent_spray_on_a_fifth_of_an_acre_are_too_much() -> None:
    work = poured(convert(12, "gal", "mL"), 2.0, 0.20)
    assert active_g(work.product_ml, AE_G_PER_L)[0] / LB_G == pytest.approx(0.72, abs=1e-4)
    verdict = said(facts_of(work=work))["L12"]
    assert verdict.level is Level.STOP and "3.6 lb ae/ac" in verdict.because
    # 3.0 of 3.6 lb: ten of the twelve gallons keep to it, less a hair of rounding down
    assert verdict.clear.startswith(("pour no more than 10 gal", "pour no more than 9 gal 3 qt"))


@pytest.mark.parametrize(
    ("strength_pct", "forbidden", "number", "level"),
    [
        (2.5, False, "L08", Level.STOP),
        (0.8, False, "L09", Level.WARN),
        (0.8, True, "L09", Level.STOP),
        (1.0, True, "L09", Level.OK),
        (2.0, True, "L08", Level.OK),
    ],
)
def test_a_stronger_mix_stops_and_a_weaker_one_is_a_departure(
    strength_pct: float, forbidden: bool, number: str, level: Level
) -> None:
    planned = replace(PLANNED, recipe=replace(RECIPE, strength_pct=strength_pct))
    facts = facts_of(planned) | lines(sheet__method__less_than_low_forbidden=forbidden)
    assert said(facts)[number].level is level


def test_density_and_percent_agree_with_the_pounds_in_a_gallon() -> None:
    assert lb_per_gal(9.68, 31.0) == pytest.approx(3.0008, abs=5e-5)


@pytest.mark.parametrize(
    ("species", "site", "method", "changes", "number", "level"),
    [
        ("an unlisted shrub", "forest", "foliar", {}, "L06", Level.WARN),
        ("shrub example", "residential", "foliar", {}, "L05", Level.STOP),
        ("shrub example", "forest", "wipe", {}, "L07", Level.ASK),
        ("shrub example", "forest", "wipe", {"sheet__methods__only_listed": True}, "L07", Level.STOP),
    ],
)
def test_what_the_law_lets_depart_from_a_label_and_what_not(
    species: str, site: str, method: str, changes: dict[str, object], number: str, level: Level
) -> None:
    planned = replace(PLANNED, species=(species,), method=method)
    assert said(facts_of(planned) | lines(place__site_class=site) | lines(**changes))[number].level is level


def test_basal_bark_in_oil_from_a_label_for_water_is_a_stop() -> None:
    oil = Recipe("sample", "exemplamine-3-sl", "exemplamine", AE_G_PER_L, 20.0, "oil")
    facts = facts_of(replace(PLANNED, method="basal_bark", recipe=oil)) | lines(sheet__method__carrier=("water",))
    assert said(facts)["L10"].level is Level.STOP


def test_half_the_labels_rate_is_no_objection() -> None:
    half = said(facts_of(work=poured(convert(5, "gal", "mL"), 2.0, 0.20)))
    assert half["L12"].level is Level.OK


def test_numbers_of_the_demo_pass_only_in_the_demo_and_a_distributors_product_is_the_same() -> None:
    assert said(whole())["L02"].level is Level.OK and said(whole())["L03"].level is Level.OK
    assert said(whole() | lines(plan__demo=False))["L03"].level is Level.STOP
    assert base_product("00000-12-00034") == base_product("00000-12")


def test_the_plain_formulas_agree_with_a_hand_reckoning() -> None:
    assert product_l_per_ha(sure(1000.0), 500.0)[0] == pytest.approx(20.0)  # 1 L on a twentieth of a hectare
    assert most_mix_ml(1200.0, 3.0, 3.6) == pytest.approx(1000.0)
    assert least_area_m2(1000.0, 1.5, 3.0) == pytest.approx(500.0)
    assert most_by_diameter_ml(1.5, 4.0) == pytest.approx(6.0)
    assert math.isclose(active_kg_per_ha(sure(100.0), 1000.0)[0], 1.0)  # 100 g on a tenth of a hectare
