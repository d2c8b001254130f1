"""Areas of plain shapes agree with drawn ones, and a slope never makes a map larger."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon

from rootcollar.site import (
    along_slope_m2,
    circle_m2,
    level_m2,
    oval_m2,
    rectangle_m2,
    slope_pct_from_degrees,
    triangle_m2,
)

LENGTHS = st.floats(1, 500)
POINTS = st.tuples(st.floats(-200, 200), st.floats(-200, 200))


@given(length_m=LENGTHS, width_m=LENGTHS)
def test_an_oval_fits_into_its_rectangle_and_a_round_one_is_a_circle(length_m: float, width_m: float) -> None:
    assert oval_m2(length_m, width_m) < rectangle_m2(length_m, width_m)
    assert oval_m2(length_m, length_m) == pytest.approx(circle_m2(length_m))


@given(corners=st.tuples(POINTS, POINTS, POINTS))
def test_three_sides_give_the_area_of_the_triangle_they_were_measured_on(
    corners: tuple[tuple[float, float], tuple[float, float], tuple[float, float]],
) -> None:
    sides = [math.dist(corners[at], corners[at - 1]) for at in range(3)]
    assert triangle_m2(*sides) == pytest.approx(Polygon(corners).area, abs=0.5, rel=1e-6)


def test_sides_that_do_not_close_enclose_nothing() -> None:
    assert triangle_m2(10, 20, 40) == 0
    assert triangle_m2(10, 20, 30) == 0


@given(area_m2=st.floats(1, 50000), slope_pct=st.floats(0, 200))
def test_the_level_area_is_never_larger_and_comes_back_along_the_slope(area_m2: float, slope_pct: float) -> None:
    level = level_m2(area_m2, slope_pct)
    assert level <= area_m2
    assert along_slope_m2(level, slope_pct) == pytest.approx(area_m2)


@pytest.mark.parametrize(("slope_pct", "less"), [(30, 4.2), (50, 10.6), (80, 21.9)])
def test_a_slope_takes_its_share_of_the_map(slope_pct: float, less: float) -> None:
    assert 100 * (1 - level_m2(1, slope_pct)) == pytest.approx(less, abs=0.05)


@given(degrees=st.floats(0, 60))
def test_degrees_and_percent_name_the_same_slope(degrees: float) -> None:
    pct = slope_pct_from_degrees(degrees)
    assert level_m2(1, pct) == pytest.approx(math.cos(math.radians(degrees)))
