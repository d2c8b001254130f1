"""Simple plots: published figures, the interval's honesty on stems at random, and none found is not none there."""

from math import inf

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.survey.simple import KIND, simple_random

FREESE = (10, 9, 10, 9, 11, 16, 11, 7, 12, 12, 11, 3, 5, 11, 14, 8, 13, 12, 20, 10)  # Freese 1962, ch. 3
SCHOOLS = (15, 143, 21, 51, 337, 50, 274, 145, 15, 86)  # R package survey, deff


def test_freese_as_printed() -> None:
    found = simple_random(FREESE, 95, 100)
    assert (found.mean, found.error) == (pytest.approx(10.7), pytest.approx(0.734, abs=5e-4))
    assert (found.low, found.high) == (pytest.approx(9.16, abs=0.005), pytest.approx(12.24, abs=0.005))
    assert (100 * found.mean, 100 * found.error) == (pytest.approx(1070), pytest.approx(73.4, abs=0.05))
    assert found.kind == KIND


def test_the_survey_packages_total() -> None:
    assert simple_random(SCHOOLS, 95, 1000).error == pytest.approx(35.448, abs=1e-3)
    assert simple_random(SCHOOLS, 95).error == pytest.approx(35.626, abs=1e-3)
    assert 1000 * simple_random(SCHOOLS, 95, 1000).mean == pytest.approx(113_700)


def test_the_interval_holds_the_truth_where_stems_stand_at_random() -> None:
    luck = np.random.default_rng(2)
    held = [simple_random(luck.poisson(8, 12).tolist(), 80) for _ in range(1500)]
    assert np.mean([one.low <= 8 <= one.high for one in held]) == pytest.approx(0.80, abs=0.04)


def test_none_found_is_not_none_there() -> None:
    found = simple_random([0] * 30, 95)
    assert (found.mean, found.high, found.clumping) == (0, 0, None)
    assert found.most_of_none == pytest.approx(3.0 / 30, abs=2e-4)
    assert simple_random([0, 1], 95).most_of_none is None


@given(st.lists(st.integers(0, 60), min_size=2, max_size=40), st.sampled_from([80.0, 95.0]))
def test_the_interval_lies_around_the_mean_and_a_full_count_has_none(counts: list[int], sure: float) -> None:
    found = simple_random(counts, sure)
    assert 0 <= found.low <= found.mean <= found.high
    whole = simple_random(counts, sure, len(counts))
    assert whole.low == whole.high == whole.mean
    assert simple_random(counts, sure, 3 * len(counts)).error <= found.error


@pytest.mark.parametrize(("counts", "fit"), [([3], inf), ([], inf), ([3, -1], inf), ([3, inf], inf), ([1, 2, 3], 2.5)])
def test_counts_that_tell_nothing_are_refused(counts: list[float], fit: float) -> None:
    with pytest.raises(ValueError, match=r"two plots|do not fit"):
        simple_random(counts, 95, fit)
