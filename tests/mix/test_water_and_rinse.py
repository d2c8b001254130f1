"""Hard water and rinsing: what adds up, what goes down, and that nothing is lost."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.hazard import molar_mass
from rootcollar.kernel.units import convert
from rootcollar.mix import (
    ams_for_ion,
    ams_lb_per_100_gal,
    hardness_ppm,
    ion_from_hardness_ppm,
    residue_ml,
    rinsate_ml,
    rinse_water_ml,
)
from rootcollar.reference import load, named, numbers

WATER, AMS = load().mixing["water"], load().mixing["ams"]
PER_CA, PER_MG = (numbers(named(WATER, f"hardness_per_{ion}_ppm"))[0].value for ion in ("ca", "mg"))


def test_hardness_counts_each_ion_by_the_weight_of_its_carbonate() -> None:
    weights = {row.name: float(str(row.figure.value)) for row in load().hazard["atomic_weight"]}
    lime = molar_mass("CaCO3", weights)
    assert pytest.approx(lime / weights["Ca"], abs=0.001) == PER_CA
    assert pytest.approx(lime / weights["Mg"], abs=0.001) == PER_MG


def test_a_grain_a_gallon_is_17_1_ppm() -> None:
    assert convert(1, "grain/gal", "ppm") == pytest.approx(
        numbers(named(WATER, "grain_per_gal_ppm"))[0].value, abs=0.05
    )


@given(st.floats(0, 1000))
def test_calcium_alone_gives_the_hardness_back(hardness: float) -> None:
    assert hardness_ppm(ion_from_hardness_ppm(hardness, PER_CA), 0, PER_CA, PER_MG) == pytest.approx(hardness)


def test_every_ion_of_the_equation_stands_in_the_facts() -> None:
    """Potassium 0.002, sodium 0.005, calcium 0.009, magnesium 0.014, iron 0.042 [NDSU15]."""
    factors = [numbers(named(AMS, f"lb_per_100_gal_per_ppm_{ion}"))[0].value for ion in ("k", "na", "ca", "mg", "fe")]
    assert factors == [0.002, 0.005, 0.009, 0.014, 0.042]
    parts = [ams_for_ion(100, factor) for factor in factors]
    assert ams_lb_per_100_gal(*parts) == pytest.approx(7.2)


def test_hard_water_by_the_equation_asks_for_less_than_labels_do() -> None:
    assert ams_for_ion(ion_from_hardness_ppm(350, PER_CA), 0.009) < 8.5


@given(st.floats(1, 500), st.floats(600, 5000), st.integers(1, 5))
def test_one_rinse_more_always_leaves_less(left: float, rinse: float, times: int) -> None:
    assert residue_ml(left, rinse, times + 1) < residue_ml(left, rinse, times) < left


@given(st.floats(50, 500), st.floats(600, 5000))
def test_the_same_water_in_more_rinses_leaves_less(left: float, rinse: float) -> None:
    assert residue_ml(left, rinse, 3) < residue_ml(left, 3 * rinse, 1)


def test_a_jug_of_2_5_gallons_takes_three_times_0_625() -> None:
    each = rinse_water_ml(2.5, 0.25)
    assert (each, rinsate_ml(3, each)) == (0.625, 1.875)  # 40 CFR 156.146(b)(1): a quarter, three times
