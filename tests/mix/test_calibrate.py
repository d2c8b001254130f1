"""What a sprayer puts out: one way of measuring agrees with another, and nothing is lost in between."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.units import convert
from rootcollar.mix import (
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
    product_in_ml,
    speed_m_per_s,
    tank_area_m2,
    tank_s,
    topped_up_pct,
    topup_product_ml,
)

SECONDS = st.floats(5, 300)
VOLUMES = st.floats(100, 20000)


def test_the_constant_of_inches_and_mph_is_exact_in_whole_numbers() -> None:
    square_feet, inches, minutes, feet_in_a_mile = 43560, 12, 60, 5280
    assert square_feet * inches * minutes == 5940 * feet_in_a_mile
    assert 5940 == 495 * 12


def test_fluid_ounces_on_an_acre_in_128_parts_are_gallons_an_acre() -> None:
    for ounces in (7.5, 25, 150):
        out = output_l_per_ha(convert(ounces, "fl oz", "mL"), convert(1 / 128, "ac", "m2"))
        assert convert(out, "L/ha", "gal/ac") == pytest.approx(ounces, rel=1e-12)


@given(volume_ml=VOLUMES, seconds=SECONDS, length_m=st.floats(5, 200), swath_m=st.floats(0.2, 5))
def test_a_walk_and_its_ground_give_the_same_output(
    volume_ml: float, seconds: float, length_m: float, swath_m: float
) -> None:
    walked = moving_l_per_ha(flow_ml_per_s(volume_ml, seconds), speed_m_per_s(length_m, seconds), swath_m)
    assert walked == pytest.approx(output_l_per_ha(volume_ml, length_m * swath_m))


@given(volume_ml=VOLUMES, area_m2=st.floats(10, 5000), tank_ml=VOLUMES)
def test_a_tank_spread_over_what_it_covers_is_the_output_again(
    volume_ml: float, area_m2: float, tank_ml: float
) -> None:
    out = output_l_per_ha(volume_ml, area_m2)
    covers = tank_area_m2(tank_ml, out)
    assert output_l_per_ha(tank_ml, covers) == pytest.approx(out)
    assert on_area_mix_ml(covers, out) == pytest.approx(tank_ml)


@given(volume_ml=VOLUMES, seconds=SECONDS, other_s=SECONDS)
def test_a_catch_of_other_seconds_comes_to_the_same_flow(volume_ml: float, seconds: float, other_s: float) -> None:
    flow = flow_ml_per_s(volume_ml, seconds)
    assert flow_ml_per_s(in_time_ml(flow, other_s), other_s) == pytest.approx(flow)
    assert tank_s(volume_ml, flow) == pytest.approx(seconds)
    assert above_new_pct(flow, flow) == pytest.approx(0)


@given(volume_ml=VOLUMES, plants=st.integers(1, 500))
def test_what_the_plants_took_is_what_was_used(volume_ml: float, plants: int) -> None:
    assert on_plants_ml(per_plant_ml(volume_ml, plants), plants) == pytest.approx(volume_ml)


@given(runs=st.lists(SECONDS, min_size=1, max_size=6))
def test_the_mean_of_runs_lies_among_them_and_no_run_is_off_a_mean_of_itself(runs: list[float]) -> None:
    mean = mean_of(runs)
    assert min(runs) <= mean * (1 + 1e-12)
    assert mean <= max(runs) * (1 + 1e-12)
    assert off_mean_pct(mean, mean) == 0
    assert off_mean_pct(mean * 0.9, mean) == pytest.approx(off_mean_pct(mean * 1.1, mean)) == pytest.approx(10)


@given(width_m=st.floats(0.3, 5))
def test_a_course_is_the_plot_in_another_shape(width_m: float) -> None:
    assert course_m(31.6, width_m) * width_m == pytest.approx(31.6)


@given(left_ml=VOLUMES, left_pct=st.floats(0.1, 30), more_ml=VOLUMES, pct=st.floats(0.1, 30))
def test_topping_up_keeps_every_drop_of_product(left_ml: float, left_pct: float, more_ml: float, pct: float) -> None:
    total_ml = left_ml + more_ml
    added = topup_product_ml(left_ml, left_pct, total_ml, pct)
    assert product_in_ml(left_ml, left_pct) + added == pytest.approx(product_in_ml(total_ml, pct))
    assert topped_up_pct(left_ml, left_pct, added, total_ml) == pytest.approx(pct)
