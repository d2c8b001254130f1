"""Doubt: the same seed and name give the same worlds, in the spread that was said."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.doubt import Doubt, band, best, between, sure

SEEDS = st.integers(0, 2**31)
NAMES = st.text(max_size=20)
THREE = st.tuples(st.floats(0, 1e4), st.floats(0, 1e4), st.floats(0, 1e4)).map(lambda ends: tuple(sorted(ends)))


@given(SEEDS, NAMES, st.integers(1, 500))
def test_ranks_take_each_layer_once(seed: int, name: str, n: int) -> None:
    ranks = Doubt(seed, n).ranks(name)
    assert sorted(np.floor(ranks * n).astype(int)) == list(range(n))


@given(SEEDS, NAMES)
def test_the_same_seed_and_name_give_the_same_ranks_whatever_came_between(seed: int, name: str) -> None:
    doubt = Doubt(seed, 50)
    before = doubt.ranks(name)
    doubt.ranks(name + "other")
    assert np.array_equal(before, Doubt(seed, 50).ranks(name))


def test_ranks_are_pinned_on_every_machine() -> None:
    """A frozen draw: if it moves, every project's bands move."""
    frozen = [0.5756752803031063, 0.40035025014030134, 0.11126810339574592, 0.7896236344168786]
    assert Doubt(1, 4).ranks("stems") == pytest.approx(frozen, abs=1e-12)


def test_two_unknowns_are_not_tied_together() -> None:
    doubt = Doubt(7, 4000)
    tie = np.corrcoef(doubt.ranks("stems"), doubt.ranks("mix"))[0, 1]
    other = np.corrcoef(doubt.ranks("stems"), Doubt(8, 4000).ranks("stems"))[0, 1]
    assert abs(tie) < 0.06 and abs(other) < 0.06  # about four standard errors


def test_ranks_are_shuffled_and_not_in_order() -> None:
    ranks = Doubt(7, 4000).ranks("stems")
    assert abs(np.corrcoef(ranks, np.arange(4000))[0, 1]) < 0.06


@given(SEEDS, THREE)
def test_world_0_is_the_best_figure_and_the_rest_keep_the_band(seed: int, ends: tuple[float, float, float]) -> None:
    low, middle, high = ends
    worlds = Doubt(seed).worlds("dose", middle, between(low, middle, high))
    assert len(worlds) == 1001
    assert best(worlds) == middle
    got = band(worlds)
    assert (got.best, got.low, got.high) == pytest.approx((middle, low, high), rel=0.02, abs=0.01 * (high - low) + 1e-9)
    assert worlds.min() >= 0


@given(THREE)
def test_between_passes_through_its_three_points_and_rises(ends: tuple[float, float, float]) -> None:
    quantile = between(*ends)
    assert quantile(np.array([0.1, 0.5, 0.9])) == pytest.approx(ends, rel=1e-9, abs=1e-9)
    assert (np.diff(quantile(np.linspace(0, 1, 101))) >= 0).all()


@pytest.mark.parametrize("ends", [(2, 1, 3), (1, 3, 2), (-1, 1, 2), (float("nan"), 1, 2)])
def test_points_out_of_order_are_refused(ends: tuple[float, float, float]) -> None:
    with pytest.raises(ValueError, match="low <= middle <= high"):
        between(*ends)


def test_a_sure_number_is_its_own_band() -> None:
    got = band(sure(3.5))
    assert (got.best, got.low, got.high) == (3.5, 3.5, 3.5)
    assert best(sure(3.5)) == 3.5
    assert len(sure(3.5)) == 1


def test_the_best_figure_is_no_part_of_its_own_doubt() -> None:
    got = band(np.array([100.0, 1.0, 1.0, 1.0]))
    assert (got.best, got.low, got.high) == (100, 1, 1)


def test_worlds_cannot_be_written_over() -> None:
    for worlds in (sure(1.0), Doubt(1).worlds("x", 1.0, between(0, 1, 2))):
        with pytest.raises(ValueError, match="read-only"):
            worlds[0] = 2
