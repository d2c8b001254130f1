"""Chemistry that can be reckoned anew: weights from formulas, acid shares from weights, densities from strengths."""

from __future__ import annotations

import re

import pytest

from rootcollar.reference import Reference

# Standard atomic weights, abridged to five figures: IUPAC Commission on Isotopic Abundances and Atomic Weights, 2021.
ATOMIC_WEIGHT = {
    "H": 1.0080, "C": 12.011, "N": 14.007, "O": 15.999, "F": 18.998, "P": 30.974, "S": 32.06, "Cl": 35.45, "K": 39.098,
}  # fmt: skip
LB_PER_GAL_G_PER_ML = 453.59237 / 3785.411784  # exact definitions of pound and US gallon


def weight(formula: str) -> float:
    parts = re.findall(r"([A-Z][a-z]?)(\d*)", formula)
    assert "".join(symbol + count for symbol, count in parts) == formula
    return sum(ATOMIC_WEIGHT[symbol] * int(count or 1) for symbol, count in parts)


def test_molecular_weights_follow_from_the_formulas(facts: Reference) -> None:
    assert len(facts.forms) == 42
    for form in facts.forms.values():
        assert form.molecular_weight.value == pytest.approx(weight(form.formula.value), abs=0.005), form


def test_the_acid_share_is_acid_weight_over_form_weight(facts: Reference) -> None:
    for (ingredient, _), form in facts.forms.items():
        acid = facts.forms.get((ingredient, "acid"), form)
        expected = weight(acid.formula.value) / weight(form.formula.value)
        assert form.ae_factor.value == pytest.approx(expected, abs=5e-4), form


@pytest.mark.parametrize(
    ("ingredient", "form", "share"),
    [
        ("glyphosate", "IPA salt", 0.741),
        ("triclopyr", "TEA salt", 0.717),
        ("triclopyr", "BEE", 0.719),
        ("triclopyr", "choline salt", 0.713),
        ("2-4-d", "DMA salt", 0.831),
        ("2-4-d", "2-EHE", 0.663),
    ],
)
def test_acid_shares_in_common_use(facts: Reference, ingredient: str, form: str, share: float) -> None:
    assert facts.forms[ingredient, form].ae_factor.value == pytest.approx(share, abs=0.002)


def test_percent_and_strength_imply_a_density_a_liquid_can_have(facts: Reference) -> None:
    """0.88 to 1.40 g/mL: outside it a percent or a strength was mistyped."""
    reckoned = 0
    for one in facts.formulations.values():
        if one.density_g_per_ml is None:
            continue
        assert one.percent_ai is not None
        if one.ae_lb_per_gal is not None:
            form_lb_per_gal = one.ae_lb_per_gal.value / one.ae_factor.value
        else:
            assert one.ai_lb_per_gal is not None
            form_lb_per_gal = one.ai_lb_per_gal.value
        expected = form_lb_per_gal / (one.percent_ai.value / 100) * LB_PER_GAL_G_PER_ML
        assert one.density_g_per_ml.value == pytest.approx(expected, abs=6e-4), one.key
        assert 0.88 <= one.density_g_per_ml.value <= 1.40, one.key
        reckoned += 1
    assert reckoned == 30


def test_a_formulation_has_a_strength_and_its_key_tells_it(facts: Reference) -> None:
    assert len(facts.formulations) == 36
    for key, one in facts.formulations.items():
        cited = one.ae_lb_per_gal or one.ai_lb_per_gal or one.percent_ai
        assert cited is not None
        assert f"-{cited.value:g}-{one.type.lower()}" in key
        assert key.startswith(one.ingredient) and one.ingredient in facts.ingredients


def test_ready_to_use_is_never_thinned_and_esters_mix_with_oil(facts: Reference) -> None:
    for one in facts.formulations.values():
        assert one.ready_to_use == (one.type == "RTU")
        if one.ready_to_use:
            assert one.carriers == ("none",)
        if one.type == "SL":
            assert "oil" not in one.carriers, one.key
    assert "oil" in facts.formulations["triclopyr-bee-4-ec"].carriers
    assert "oil" in facts.formulations["imazapyr-ipa-2-ec"].carriers


def test_the_ingredient_a_cautious_hand_must_know_is_marked(facts: Reference) -> None:
    """Root risk: picloram, imazapyr, aminocyclopyrachlor, dicamba and hexazinone high, all read in their sources."""
    high = {key for key, one in facts.ingredients.items() if one.root_risk.value == "high"}
    assert high == {"picloram", "imazapyr", "aminocyclopyrachlor", "dicamba", "hexazinone"}
    assert all(facts.ingredients[key].root_risk.mark == "read" for key in high)


def test_a_yearly_limit_is_not_mixed_with_rates_of_one_treatment(facts: Reference) -> None:
    for one in facts.ingredients.values():
        assert all("per treatment" not in row.unit for row in one.max_per_acre_year), one.key
    picloram = facts.ingredients["picloram"].max_per_acre_year
    assert [(row.value, row.unit, row.mark) for row in picloram] == [(1.0, "lb ae/acre/year", "read")]
