"""Repeat visits: what makes the visits is found again, and no likelier share exists."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binom

from rootcollar.survey.looked import Occupied, occupied
from tests import draws


@pytest.mark.parametrize(("there", "chance"), [(0.49, 0.3), (0.8, 0.5), (0.3, 0.7)])
def test_many_places_tell_the_share_and_the_chance(there: float, chance: float) -> None:
    luck = np.random.default_rng(4)
    met = luck.binomial(5, chance, 4000) * (luck.random(4000) < there)
    found = occupied(met.tolist(), 5)
    assert found.there == pytest.approx(there, abs=0.03)
    assert found.chance_pct == pytest.approx(100 * chance, abs=2)
    assert found.seen < found.there


@settings(max_examples=draws.of(40))
@given(st.lists(st.integers(0, 4), min_size=6, max_size=20).filter(lambda met: sum(met) > sum(one > 0 for one in met)))
def test_no_other_share_and_chance_are_likelier(met: list[int]) -> None:
    found = occupied(met, 4)

    def unlikely(there: np.ndarray, chance: np.ndarray) -> np.ndarray:
        per = [there * binom.pmf(one, 4, chance) + (1 - there) * (one == 0) for one in met]
        with np.errstate(divide="ignore"):
            return -np.log(np.array(per)).sum(axis=0)

    there, chance = (part.ravel() for part in np.meshgrid(np.linspace(0.01, 1, 60), np.linspace(0.01, 0.999, 60)))
    best = unlikely(np.array([found.there]), np.array([found.chance_pct / 100]))[0]
    assert best <= unlikely(there, chance).min() + 1e-6
    assert found.seen - 1e-9 <= found.there <= 1


def test_never_met_twice_it_may_be_everywhere() -> None:
    assert occupied([1, 0, 0, 1], 3) == Occupied(0.5, 1.0, pytest.approx(100 / 6))


def test_met_each_time_it_is_where_it_was_met() -> None:
    assert occupied([3, 0, 3, 0], 3) == Occupied(0.5, 0.5, 100.0)


@pytest.mark.parametrize(("met", "visits"), [([1, 2], 1), ([0, 0], 3), ([4], 3), ([-1, 2], 3), ([], 3)])
def test_visits_that_tell_nothing_are_refused(met: list[int], visits: int) -> None:
    with pytest.raises(ValueError, match="want 2 visits"):
        occupied(met, visits)
