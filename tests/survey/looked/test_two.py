"""Two observers, searches and mended counts: what is worked out holds over many trials, and says where it does not."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.doubt import Doubt, band, sure
from rootcollar.survey.looked import (
    ALIKE,
    TwoWalks,
    chance_found,
    chapman,
    lincoln_petersen,
    mended,
    standing,
    times_swept,
    track_needed_m,
)


def test_the_stakes_show_why_two_observers_are_not_enough() -> None:
    assert lincoln_petersen(81, 68, 60) == pytest.approx(91.8)
    assert chapman(81, 68, 60) == pytest.approx(91.75, abs=0.005)
    held = band(standing(TwoWalks(81, 68, 60), Doubt(1), "strip"))
    assert held.high < 150  # what stood there: the doubt is that of chance, and does not hold eyes that are alike
    assert "the least that stood there" in ALIKE


def test_chapman_is_right_on_average_where_eyes_are_unlike() -> None:
    luck = np.random.default_rng(5)
    tried = [(int((a := luck.random(200) < 0.6).sum()), int((b := luck.random(200) < 0.7).sum()), int((a & b).sum()))
             for _ in range(400)]  # fmt: skip
    assert np.mean([chapman(*one) for one in tried]) == pytest.approx(200, abs=2)
    held = [band(standing(TwoWalks(*one), Doubt(at, 200), "x")) for at, one in enumerate(tried)]
    assert 0.72 < np.mean([one.low <= 200 <= one.high for one in held]) < 0.88


@given(st.integers(0, 60), st.integers(0, 60), st.integers(0, 60))
def test_never_fewer_than_were_seen(one: int, other: int, both: int) -> None:
    walks = TwoWalks(both + one, both + other, both)
    found = standing(walks, Doubt(2, 50), "x")
    assert found.min() >= walks.seen - 1e-9
    assert not (one == 0 or other == 0) or found.tolist() == [walks.seen]


@pytest.mark.parametrize("wrong", [(5, 6, 7), (5, 6, -1), (-1, 3, 0)])
def test_more_found_by_both_than_by_one_is_refused(wrong: tuple[int, int, int]) -> None:
    with pytest.raises(ValueError, match="want both"):
        standing(TwoWalks(*wrong), Doubt(1), "x")


@given(st.floats(5, 99), st.floats(1000, 1e5), st.floats(1, 40))
def test_the_track_that_is_needed_gives_the_chance(wanted: float, area: float, width: float) -> None:
    assert chance_found(times_swept(track_needed_m(wanted, area, width), width, area)) == pytest.approx(wanted)


def test_two_looks_add_up() -> None:
    assert 100 - chance_found(1) == pytest.approx((100 - chance_found(0.5)) ** 2 / 100)


def test_a_mended_count_carries_both_doubts() -> None:
    doubt = Doubt(4)
    counted = doubt.worlds("count", 100, lambda r: 80 + 40 * r)
    share = doubt.worlds("share", 0.5, lambda r: 0.4 + 0.2 * r)
    both, one = band(mended(counted, share)), band(mended(counted, sure(0.5)))
    assert both.best == one.best == 200
    assert both.high - both.low > one.high - one.low
    for wrong in (0.0, 1.01, -0.2):
        with pytest.raises(ValueError, match="share seen"):
            mended(counted, sure(wrong))
