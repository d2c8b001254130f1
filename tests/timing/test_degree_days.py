"""Degree-days against the tests of an open package, and against the integral they stand for."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.errors import Refusal
from rootcollar.timing import capped_c, met_approximation_c, simple_c, sine_c

THRESHOLDS = (12.0, 33.0)


@pytest.mark.parametrize(
    ("low", "high", "found"), [(13, 14, 1.5), (7, 10, 0), (7, 20, 2.87), (13, 40, 12.94), (7, 40, 10.94), (35, 40, 21)]
)
def test_the_packages_own_tests(low: float, high: float, found: float) -> None:
    """12 and 33 degrees, cut off flat. (35, 40) is 21 in its other two ways: a day cannot hold more."""
    assert sine_c(low, high, *THRESHOLDS) == pytest.approx(found, abs=0.006)


@pytest.mark.parametrize(
    ("low_f", "high_f", "sine_f"),
    [(45, 75, 10.882), (40, 60, 10 / np.pi), (35, 65, 15 / np.pi), (30, 52, 0.258), (70, 92, 31.0)],
)
def test_days_in_fahrenheit(low_f: float, high_f: float, sine_f: float) -> None:
    low, high, base = ((one - 32) / 1.8 for one in (low_f, high_f, 50))
    assert sine_c(low, high, base) * 1.8 == pytest.approx(sine_f, abs=0.001)


temperatures = st.floats(-20, 45)


@given(temperatures, temperatures, st.floats(0, 20))
def test_a_sine_day_is_its_integral(one: float, other: float, base: float) -> None:
    low, high = sorted((one, other))
    turns = (np.arange(20000) + 0.5) / 20000 * 2 * np.pi
    warmth = (low + high) / 2 + (high - low) / 2 * np.sin(turns)
    assert sine_c(low, high, base) == pytest.approx(np.maximum(warmth - base, 0).mean(), abs=0.001)
    assert sine_c(low, high, base, base + 10) == pytest.approx(np.clip(warmth - base, 0, 10).mean(), abs=0.001)


@given(temperatures, temperatures, st.floats(0, 20))
def test_the_ways_agree_where_the_whole_day_is_above(one: float, other: float, base: float) -> None:
    low, high = sorted((max(one, base), max(other, base)))
    middle = (low + high) / 2 - base
    for found in (simple_c(low, high, base), sine_c(low, high, base), met_approximation_c(low, high, base)):
        assert found == pytest.approx(middle, abs=1e-9)
    assert capped_c(low, high, base, 100) == pytest.approx(middle, abs=1e-9)


def test_a_day_of_one_temperature_at_the_threshold_is_nothing() -> None:
    assert sine_c(12, 12, 12) == 0 and sine_c(12, 12, 12, 33) == 0


def test_a_day_the_wrong_way_round_is_refused() -> None:
    with pytest.raises(Refusal, match="least is above its most"):
        sine_c(20, 7, 12)
    with pytest.raises(Refusal, match="not above the lower"):
        sine_c(7, 20, 12, 12)
