"""Falling drops against an open library of fluid mechanics, and against the rows of a printed table that agree."""

from __future__ import annotations

import fluids
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.timing import carried_m, fall_s, settling_m_s

TEN_FEET_M = 3.048
WALKING_WIND_M_S = 1.34112  # 3 mph


@given(st.floats(5, 1000))
def test_the_speed_of_fall_is_near_the_librarys(drop_um: float) -> None:
    """The two fits of drag differ by some percent, most between 600 and 1,000 micrometres."""
    theirs = fluids.v_terminal(D=drop_um * 1e-6, rhop=998.2, rho=1.204, mu=1.813e-5)
    assert settling_m_s(drop_um) == pytest.approx(theirs, rel=0.05)


@pytest.mark.parametrize(("drop_um", "seconds"), [(5, 66 * 60), (20, 4.2 * 60), (400, 2)])
def test_the_printed_table_where_physics_agrees(drop_um: float, seconds: float) -> None:
    """Fall from ten feet, printed in many handbooks; its rows for 100 and 240 micrometres are off by physics."""
    assert fall_s(TEN_FEET_M, settling_m_s(drop_um)) == pytest.approx(seconds, rel=0.06)


def test_small_drops_are_carried_far() -> None:
    """Rows of the same table: 20 um 1,100 feet, 400 um 8.5 feet, in 3 miles an hour."""
    for drop_um, feet in ((20, 1100), (400, 8.5)):
        found = carried_m(fall_s(TEN_FEET_M, settling_m_s(drop_um)), WALKING_WIND_M_S)
        assert found / 0.3048 == pytest.approx(feet, rel=0.06)


@given(st.floats(5, 1900), st.floats(1.01, 1.05))
def test_a_larger_drop_falls_faster(drop_um: float, times: float) -> None:
    assert settling_m_s(drop_um * times) > settling_m_s(drop_um)
