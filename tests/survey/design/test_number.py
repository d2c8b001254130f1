"""How many plots: enough by its own t, never more than fit."""

from math import inf

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from rootcollar.survey.design import plots_needed, spread_pct
from tests import draws


@pytest.mark.parametrize(
    ("spread", "fit", "plots"),
    [(80, inf, 64), (80, 800, 60), (120, 800, 120)],  # the formula of MU-NR3110 with t in step, worked out by hand
)
def test_known_numbers_come_out(spread: float, fit: float, plots: int) -> None:
    assert plots_needed(spread, 20, 95, fit).plots == plots


@settings(max_examples=draws.of(100))
@given(st.floats(1, 300), st.floats(2, 60), st.sampled_from([80.0, 90.0, 95.0]), st.floats(2, 5000) | st.just(inf))
def test_the_number_is_enough_by_its_own_t_and_one_less_is_not(
    spread: float, within: float, sure: float, fit: float
) -> None:
    found = plots_needed(spread, within, sure, fit)
    assert 1 <= found.plots <= fit
    if found.whole:
        return

    def needed(plots: int) -> float:
        endless = (stats.t.ppf(0.5 + sure / 200, plots - 1) * spread / within) ** 2
        return float(endless / (1 + endless / fit))

    assert needed(found.plots) <= found.plots + 1e-6
    assert found.plots == 2 or needed(found.plots - 1) > found.plots - 1 - 1e-6


def test_closer_surer_and_more_uneven_take_more_plots() -> None:
    base = plots_needed(80, 20).plots
    assert plots_needed(80, 10).plots > base
    assert plots_needed(80, 20, 99).plots > base
    assert plots_needed(120, 20).plots > base


def test_ground_of_few_plots_is_counted_whole() -> None:
    found = plots_needed(200, 5, 95, 12.7)
    assert (found.plots, found.whole) == (12, True)


@pytest.mark.parametrize("wrong", [(0, 20), (80, 0), (inf, 20), (80, 20, 95, 0), (80, 20, 100), (80, 20, 0)])
def test_figures_without_sense_are_refused(wrong: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match="want"):
        plots_needed(*wrong)


def test_the_spread_of_a_first_walk() -> None:
    assert spread_pct([2, 4, 6]) == pytest.approx(50)
    for none in ([3], [0, 0, 0], []):
        with pytest.raises(ValueError, match="two counts"):
            spread_pct(none)
