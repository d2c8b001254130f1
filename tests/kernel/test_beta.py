"""The Beta curve: its quantiles by closed forms that others have worked out."""

from __future__ import annotations

from math import comb

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.beta import beta

RANKS = np.array([0.01, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 0.99])


@pytest.mark.parametrize(("dead", "alive"), [(1, 1), (5, 1), (2, 3), (17, 3), (1, 19), (100, 50)])
def test_a_quantile_is_where_the_binomial_sum_reaches_its_rank(dead: int, alive: int) -> None:
    """For whole numbers P(share < x) is the chance of at least `dead` successes in dead + alive - 1 throws of x."""
    n = dead + alive - 1
    for rank, x in zip(RANKS, beta(dead, alive)(RANKS), strict=True):
        assert sum(comb(n, k) * x**k * (1 - x) ** (n - k) for k in range(dead, n + 1)) == pytest.approx(rank, abs=2e-5)


def test_half_a_plant_each_is_the_arcsine_law() -> None:
    assert beta(0.5, 0.5)(RANKS) == pytest.approx(np.sin(np.pi * RANKS / 2) ** 2, abs=1e-5)


@pytest.mark.parametrize("few", [0.1, 0.3, 2.7])
def test_one_plant_on_the_other_side_is_a_power_of_the_rank(few: float) -> None:
    assert beta(few, 1)(RANKS) == pytest.approx(RANKS ** (1 / few), abs=2e-4)
    assert beta(1, few)(RANKS) == pytest.approx(1 - (1 - RANKS) ** (1 / few), abs=2e-4)


@pytest.mark.parametrize(
    ("first", "second", "upper"), [(2, 10, 4.103), (10, 20, 2.348), (4, 8, 3.838), (6, 6, 4.284), (1, 10, 4.965)]
)
def test_the_upper_twentieth_is_that_of_the_printed_f_table(first: int, second: int, upper: float) -> None:
    """NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.3, upper 5 % of F; x = mF / (mF + n) is Beta."""
    x = first * upper / (first * upper + second)
    assert beta(first / 2, second / 2)(np.array([0.95]))[0] == pytest.approx(x, abs=2e-4)


@given(st.floats(0.2, 40), st.floats(0.2, 40))
def test_the_mean_of_the_draws_is_the_share_of_the_dead(dead: float, alive: float) -> None:
    ranks = (np.arange(2000) + 0.5) / 2000
    shares = beta(dead, alive)(ranks)
    assert shares.mean() == pytest.approx(dead / (dead + alive), abs=2e-3)
    assert (np.diff(shares) >= 0).all()
    assert ((shares >= 0) & (shares <= 1)).all()


def test_with_nothing_alive_or_nothing_dead_the_share_is_sure() -> None:
    assert (beta(3, 0)(RANKS) == 1).all()
    assert (beta(0, 3)(RANKS) == 0).all()


@pytest.mark.parametrize(("dead", "alive"), [(0, 0), (-1, 2), (1, float("inf")), (float("nan"), 1)])
def test_no_curve_of_no_plants(dead: float, alive: float) -> None:
    with pytest.raises(ValueError, match="want plants"):
        beta(dead, alive)
