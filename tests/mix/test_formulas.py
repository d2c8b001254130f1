"""Laws of the plain formulas: conventions of percent are kept apart, and each undoes its opposite."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.mix import (
    acid_from_active,
    acid_kg_per_ha,
    g_from_weight_pct,
    implied_density_g_per_ml,
    ml_from_active_pct,
    most_volume_l_per_ha,
    pct_from_acid,
    pct_from_parts,
    pct_from_rate,
    product_in_ml,
    product_on_top_ml,
    product_rate_l_per_ha,
    same_acid_rate,
    share_of_mix_pct,
    total_for_product_ml,
)

volumes, pcts, acids = st.floats(100, 1e5), st.floats(0.1, 99), st.floats(90, 600)


@given(volumes, pcts)
def test_the_share_of_what_was_measured_is_the_strength(total_ml, pct):
    product = product_in_ml(total_ml, pct)
    assert share_of_mix_pct(product, total_ml) == pytest.approx(pct)
    assert total_for_product_ml(product, pct) == pytest.approx(total_ml)


@given(volumes, pcts)
def test_on_top_of_a_full_diluent_takes_more_than_a_share_of_it(diluent_ml, pct):
    product = product_on_top_ml(diluent_ml, pct)
    assert product > product_in_ml(diluent_ml, pct)
    assert share_of_mix_pct(product, diluent_ml + product) == pytest.approx(pct)


@given(st.floats(0.01, 500))
def test_parts_are_parts_of_the_whole(parts):
    assert share_of_mix_pct(1, 1 + parts) == pytest.approx(pct_from_parts(parts))


def test_one_to_four_is_a_fifth_and_one_to_one_a_half():
    assert (pct_from_parts(4), pct_from_parts(1)) == (20, 50)


@given(pcts, acids)
def test_a_strength_from_acid_brings_that_acid(pct, acid_g_per_l):
    assert pct_from_acid(acid_g_per_l * pct / 100, acid_g_per_l) == pytest.approx(pct)


@given(st.floats(0.1, 100), acids, acids)
def test_the_same_acid_from_another_product_and_back(rate, named, have):
    other = same_acid_rate(rate, named, have)
    assert other * have == pytest.approx(rate * named)
    assert same_acid_rate(other, have, named) == pytest.approx(rate)


@given(pcts, st.floats(1, 1000), acids)
def test_the_most_volume_under_a_cap_brings_just_the_cap(pct, volume, acid):
    acid_kg = acid_kg_per_ha(pct, volume, acid)
    assert most_volume_l_per_ha(acid_kg, pct, acid) == pytest.approx(volume)
    assert product_rate_l_per_ha(acid_kg, acid) == pytest.approx(volume * pct / 100)
    assert pct_from_rate(product_rate_l_per_ha(acid_kg, acid), volume) == pytest.approx(pct)


@given(st.floats(0.5, 1), acids)
def test_acid_is_never_more_than_its_salt_or_ester(ae_factor, active):
    assert acid_from_active(active, ae_factor) <= active


@given(volumes, pcts, st.floats(0.8, 1.1), acids)
def test_percent_by_weight_of_active_takes_the_product_that_holds_it(total_ml, pct, density, active):
    product = ml_from_active_pct(total_ml, pct, density, active)
    assert product / 1000 * active == pytest.approx(g_from_weight_pct(total_ml, pct, density))


@given(st.floats(50, 800), st.floats(5, 90))
def test_an_implied_density_gives_back_the_strength(active, pct):
    assert implied_density_g_per_ml(active, pct) * 1000 * pct / 100 == pytest.approx(active)
