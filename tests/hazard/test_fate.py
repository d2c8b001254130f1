"""Classes and laws of fate: where the sources draw their lines, and which way each figure pulls."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.hazard import (
    attenuation_factor,
    fish_word,
    gus_score,
    half_life_d,
    henry_dimensionless,
    leaching_word,
    left_share,
    retardation_factor,
    vapour_pressure_mpa,
    vapour_word,
)
from rootcollar.reference import load, named, numbers


def edges(topic: str, *names: str) -> list[float]:
    """Return figures of a topic by name."""
    return [numbers(named(load().hazard[topic], name))[0].value for name in names]


LEACHING = edges("leaching", "gus_low", "gus_moderate", "gus_high")
VAPOUR = edges("ester_vapour", "low_mpa", "high_mpa")
FISH = edges("fish_words", *(f"{one}_mg_per_l" for one in (
    "very_highly_toxic", "highly_toxic", "moderately_toxic", "slightly_toxic",
)))  # fmt: skip


# NPIC, groundwater ubiquity score.
@pytest.mark.parametrize(
    ("score", "word"),
    [(1.79, "low"), (1.81, "moderate"), (2.79, "moderate"), (2.81, "high"), (-0.01, "extremely low"), (0, "low")],
)
def test_leaching_has_the_classes_of_its_source(score: float, word: str) -> None:
    assert leaching_word(score, LEACHING) == word


@pytest.mark.parametrize(
    ("half_life", "koc", "word"),
    [(47, 24000, "extremely low"), (90, 16, "high"), (8, 150, "low"), (20, 78, "moderate"), (46, 780, "moderate")],
)
def test_ingredients_fall_where_they_were_reckoned_by_hand(half_life: float, koc: float, word: str) -> None:
    assert leaching_word(gus_score(half_life, koc), LEACHING) == word


# Noble and Hamilton: up to 0.6 mPa low-volatile, above 3.3 mPa high-volatile; Health Canada's vapour pressures.
@pytest.mark.parametrize(
    ("mpa", "word"),
    [(0.267, "low"), (0.6, "low"), (0.61, "unclear"), (3.3, "unclear"), (3.31, "high"), (146.7, "high")],
)
def test_esters_fall_into_the_classes_of_their_source(mpa: float, word: str) -> None:
    assert vapour_word(mpa, VAPOUR) == word


def test_the_iso_octyl_ester_is_low_and_the_ethyl_ester_high() -> None:
    pa = edges("air_and_water", "pa_per_mm_hg")[0]
    assert vapour_word(vapour_pressure_mpa(2e-6, pa), VAPOUR) == "low"
    assert vapour_word(vapour_pressure_mpa(1.1e-3, pa), VAPOUR) == "high"


# Fish: picloram acid, triclopyr ester in the field, a loaded glyphosate product, triclopyr acid.
@pytest.mark.parametrize(
    ("lc50", "word"),
    [
        (19.3, "slightly toxic"), (0.45, "highly toxic"), (2.3, "moderately toxic"), (148, "practically non-toxic"),
        (0.09, "very highly toxic"), (0.1, "highly toxic"), (100, "slightly toxic"),
    ],
)  # fmt: skip
def test_fish_have_the_agencys_words(lc50: float, word: str) -> None:
    assert fish_word(lc50, FISH) == word


def test_washingtons_letters_agree_with_the_agency_on_every_edge_they_share() -> None:
    letters = edges("fish_letters_washington", "X", "A", "B", "C", "D")
    assert letters[1:] == FISH


def test_air_over_water_is_the_factor_of_the_illinois_rule() -> None:
    factor, pa, gas = edges("air_and_water", "dimensionless_per_atm", "pa_per_atm", "gas_constant")
    assert henry_dimensionless(pa, gas, 298.15) == pytest.approx(factor, rel=0.005)


@given(st.floats(0.0001, 1))
def test_half_of_it_is_left_after_a_half_life(rate: float) -> None:
    life = half_life_d(rate)
    assert left_share(life, life) == pytest.approx(0.5)
    assert left_share(2 * life, life) == pytest.approx(0.25)


@given(st.floats(1, 1000), st.floats(1.1, 10))
def test_what_binds_more_sinks_slower_and_less_of_it_arrives(koc: float, more: float) -> None:
    slow, slower = (retardation_factor(1.4, 0.015, one, 0.25, 0.2, 0.001) for one in (koc, koc * more))
    assert 1 < slow < slower
    assert attenuation_factor(1, slower, 0.25, 0.001, 90) <= attenuation_factor(1, slow, 0.25, 0.001, 90) < 1


def test_a_volatile_ingredient_is_held_back_by_the_air_too() -> None:
    assert retardation_factor(1.4, 0.01, 10, 0.25, 0.2, 0.1) - retardation_factor(1.4, 0.01, 10, 0.25, 0.2, 0) == (
        pytest.approx(0.2 * 0.1 / 0.25)
    )
