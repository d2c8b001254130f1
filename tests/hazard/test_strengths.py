"""Every strength of the trade closes: percent, acid share and pounds a gallon make a liquid that can be."""

from __future__ import annotations

import pytest

from rootcollar.kernel.units import convert
from rootcollar.label.rules import sums
from rootcollar.mix import acid_from_active, active_g_per_l, implied_density_g_per_ml
from rootcollar.reference import Formulation, find_form, load, named, numbers, spans

LIQUIDS = [
    one
    for one in load().formulations.values()
    if one.percent_ai and (one.ae_lb_per_gal or one.ai_lb_per_gal)
]  # fmt: skip
RANGES = {"SL": "sl_g_per_ml", "EC": "ec_g_per_ml", "RTU": "ec_g_per_ml"}
LIGHT = {"hexazinone-2-sl"}  # no salt: percent and pounds imply 0.96 g/mL, below the salts

# Form, percent, pounds of active, of acid, percent of acid, pounds a gallon: strengths of the trade, closed by hand
# from molecular weights.
TABLE = [
    ("glyphosate-ipa", 41.0, 4.00, 2.96, 30.4, 9.76), ("glyphosate-ipa", 50.2, 5.00, 3.70, 37.2, 9.96),
    ("glyphosate-ipa", 53.8, 5.40, 4.00, 39.9, 10.04), ("glyphosate-k", 48.7, 5.50, 4.49, 39.7, 11.29),
    ("triclopyr-tea", 44.4, 4.18, 3.00, 31.8, 9.42), ("triclopyr-bee", 61.6, 5.56, 4.00, 44.3, 9.03),
    ("triclopyr-bee", 60.45, 5.56, 4.00, 43.5, 9.20), ("triclopyr-choline", 54.7, 5.61, 4.00, 39.0, 10.25),
    ("triclopyr-bee", 13.6, 1.04, 0.75, 9.8, 7.67), ("2-4-d-dma", 46.8, 4.58, 3.8, 38.9, 9.78),
    ("2-4-d-2-ehe", 66.2, 5.73, 3.8, 43.9, 8.65), ("2-4-d-2-ehe", 88.8, 8.29, 5.5, 58.9, 9.34),
    ("2-4-d-choline", 55.7, 5.57, 3.8, 38.0, 10.0), ("imazapyr-ipa", 27.8, 2.45, 2.0, 22.7, 8.82),
    ("imazapyr-ipa", 53.1, 4.90, 4.0, 43.3, 9.24), ("aminopyralid-tipa", 40.6, 3.85, 2.0, 21.1, 9.48),
    ("picloram-k", 24.4, 2.32, 2.0, 21.1, 9.49), ("clopyralid-mea", 40.9, 3.95, 3.0, 31.0, 9.67),
    ("fosamine-ammonium-ammonium", 41.5, 4.00, 3.6, 37.3, 9.64), ("dicamba-dga", 56.8, 5.90, 4.0, 38.5, 10.39),
]  # fmt: skip


def test_the_bench_and_the_label_rule_let_rounding_go_equally_far() -> None:
    assert numbers(named(load().mixing["strength"], "differ_pct"))[0].value == pytest.approx(100 * sums._SHARE)


@pytest.mark.parametrize(("form", "percent", "ai", "ae", "ae_pct", "heavy"), TABLE)
def test_the_trades_strengths_close(
    form: str, percent: float, ai: float, ae: float, ae_pct: float, heavy: float
) -> None:
    factor = find_form(form).ae_factor.value
    assert acid_from_active(ai, factor) == pytest.approx(ae, abs=0.01)
    assert acid_from_active(percent, factor) == pytest.approx(ae_pct, abs=0.06)
    implied = implied_density_g_per_ml(convert(ai, "lb/gal", "g/L"), percent)
    assert convert(implied, "g/mL", "lb/gal") == pytest.approx(heavy, rel=0.003)
    made = active_g_per_l(convert(heavy, "lb/gal", "g/mL"), percent)
    assert convert(made, "g/L", "lb/gal") == pytest.approx(ai, abs=0.02)


@pytest.mark.parametrize("one", LIQUIDS, ids=[one.key for one in LIQUIDS])
def test_every_formulation_of_the_facts_implies_a_believable_density(one: Formulation) -> None:
    stated = one.ae_lb_per_gal or one.ai_lb_per_gal
    assert stated and one.percent_ai and one.density_g_per_ml
    percent = one.percent_ai.value
    if one.ae_lb_per_gal:
        percent = acid_from_active(percent, one.ae_factor.value)
    implied = implied_density_g_per_ml(convert(stated.value, "lb/gal", "g/L"), percent)
    assert implied == pytest.approx(one.density_g_per_ml.value, abs=0.001)
    name = "believable_g_per_ml" if one.key in LIGHT else RANGES[one.type]
    (believed,) = spans(named(load().mixing["strength"], name))
    assert believed.value.holds(round(implied, 2)), f"{implied:.3f} g/mL"
