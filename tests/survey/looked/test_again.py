"""Looking again: both rules are kept, and neither is ever cut short by the other."""

from math import inf

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.survey.looked import clear_when, found_by_then, still_there
from tests import draws

SHARE = st.floats(5, 95)


@pytest.mark.parametrize(("before", "chance", "looks", "left"), [(50, 60, 4, 2.496), (80, 40, 9, 3.874)])
def test_known_numbers_of_looks(before: float, chance: float, looks: int, left: float) -> None:
    found = clear_when(chance, before, 5, 0)
    assert found.looks == looks
    assert found.left_pct == pytest.approx(left, abs=0.01)


@settings(max_examples=draws.of(100))
@given(SHARE, SHARE, st.floats(0.5, 50), st.floats(0, 40), st.sampled_from([0.5, 1.0, 2.0]))
def test_both_rules_are_kept_and_the_fewest_looks_taken(chance, before, most_left, seed_years, a_year) -> None:
    found = clear_when(chance, before, most_left, seed_years, a_year)
    assert still_there(before, chance, found.looks) <= most_left
    assert found.looks == 1 or still_there(before, chance, found.looks - 1) > most_left
    assert found.years >= seed_years - 1e-9
    assert found.visits >= found.looks
    assert found.visits >= found.years * a_year - 1e-6
    assert found.years == pytest.approx(max(found.look_years, seed_years), abs=1)
    assert found.by == ("looks" if found.look_years >= seed_years else "seed")


def test_seed_that_lives_long_decides() -> None:
    found = clear_when(60, 50, 5, 6)
    assert (found.looks, found.years, found.visits, found.by) == (4, 6, 6, "seed")
    twice = clear_when(60, 50, 5, 1, 2)
    assert (twice.look_years, twice.visits, twice.by) == (2, 4, "looks")


@pytest.mark.parametrize(
    "wrong",
    [
        (0, 50, 5, 1),
        (100, 50, 5, 1),
        (50, 0, 5, 1),
        (50, 50, 100, 1),
        (50, 50, 5, -1),
        (50, 50, 5, inf),
        (50, 50, 5, 1, 0),
    ],
)
def test_what_has_no_sense_is_refused(wrong) -> None:
    with pytest.raises(ValueError, match="want shares"):
        clear_when(*wrong)


def test_hardly_ever_seen_is_no_rule() -> None:
    with pytest.raises(ValueError, match="too little to wait for"):
        clear_when(0.001, 90, 1, 0)


@given(SHARE, st.integers(1, 12))
def test_more_looks_find_more_and_leave_less(chance: float, looks: int) -> None:
    assert found_by_then(chance, looks + 1) > found_by_then(chance, looks)
    assert still_there(50, chance, looks + 1) < still_there(50, chance, looks)
