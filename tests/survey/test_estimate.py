"""Estimates from plots against worked examples of others, each with its source, and against what must hold anyway."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from rootcollar.kernel.errors import BadInput, Refusal
from rootcollar.survey.estimate import (
    Bunch,
    after_strata,
    bunches,
    by_t_of_log,
    clumped,
    clumping_of,
    counted_by_chance,
    limits,
    none_found,
    on_area,
    per_area,
    ratio,
    simple,
    strata,
    two_stage,
    with_curve,
)  # fmt: skip
from rootcollar.survey.estimate.plots import satterthwaite

# Freese 1962, chapter 3 (read): 20 plots of 100.
FREESE = np.array([10, 9, 10, 9, 11, 16, 11, 7, 12, 12, 11, 3, 5, 11, 14, 8, 13, 12, 20, 10], dtype=float)
# R package survey 4.1, tests/multistage (read): 5 of 50 municipalities, 3 parts of each.
MU284 = [(5, (41, 49, 49)), (8, (49, 49, 45)), (5, (31, 31, 35)), (9, (39, 41, 61)), (7, (49, 51, 33))]
CLUMPY = [0, 0, 3, 7, 1, 0, 12, 2, 0, 5]


def keys(values):
    return tuple(f"p{i}" for i in range(len(values)))


def test_plots_at_random_by_freese():
    found = simple(FREESE, keys(FREESE), sampled=0.2)
    assert found.figure == 10.7
    assert found.standard_error == pytest.approx(0.734, abs=5e-4)
    said = limits(found, 0.95)
    assert (said.low, said.high) == (pytest.approx(9.16, abs=5e-3), pytest.approx(12.24, abs=5e-3))
    assert said.kind == "t" and "clumped" in said.falls_short


def test_plots_at_random_by_scipy():
    said = limits(simple(FREESE, keys(FREESE)), 0.9)
    assert (said.low, said.high) == pytest.approx(stats.t.interval(0.9, 19, FREESE.mean(), stats.sem(FREESE)))


def test_plots_at_random_of_the_survey_package():
    """R package survey 4.1, tests/deff (read)."""
    y = np.array([15, 143, 21, 51, 337, 50, 274, 145, 15, 86], dtype=float)
    assert simple(y, keys(y)).standard_error == pytest.approx(35.626, abs=1e-3)
    assert simple(y, keys(y), sampled=0.01).standard_error == pytest.approx(35.448, abs=1e-3)


def test_strata_of_the_survey_package():
    """R package survey 4.1, tests/fpc (read)."""
    y = np.array([2.8, 4.1, 6.8, 6.8, 9.2, 3.7, 6.6, 4.2])
    named, areas = ["a"] * 5 + ["b"] * 3, {"a": 15.0, "b": 12.0}
    assert strata(y, keys(y), named, areas).figure == pytest.approx(5.4481, abs=1e-4)
    assert strata(y, keys(y), named, areas).standard_error == pytest.approx(0.7413, abs=1e-4)
    shares = {"a": 5 / 15, "b": 3 / 12}
    assert strata(y, keys(y), named, areas, shares).standard_error == pytest.approx(0.6160, abs=1e-4)


def test_three_strata_from_their_means_and_variances():
    """R package survey 4.1, tests/api (read): schools by kind; values made with the printed means and variances."""
    parts = {
        "E": (100, 4421, 674.43, 15687.42), "H": (50, 755, 625.82, 11947.09), "M": (50, 1018, 636.60, 13824.86)
    }  # fmt: skip
    y, named = [], []
    for name, (count, _, mean, variance) in parts.items():
        away = math.sqrt(variance * (count - 1) / count)
        y += [mean - away, mean + away] * (count // 2)
        named += [name] * count
    areas = {name: float(one[1]) for name, one in parts.items()}
    shares = {name: one[0] / one[1] for name, one in parts.items()}
    found = strata(np.array(y), keys(y), named, areas, shares)
    assert found.figure == pytest.approx(662.29, abs=5e-3)
    assert found.standard_error == pytest.approx(9.4089, abs=5e-4)


def test_a_ratio_of_the_boot_package():
    """R package boot, city (data read); its linear standard error was reckoned again outside of this project."""
    u = np.array([138, 93, 61, 179, 48, 37, 29, 23, 30, 2], dtype=float)
    x = np.array([143, 104, 69, 260, 75, 63, 50, 48, 111, 50], dtype=float)
    found = ratio(x, u, keys(u))
    assert found.figure == pytest.approx(1.5203125, abs=1e-6)
    assert found.standard_error == pytest.approx(0.190, abs=1e-3)
    assert ratio(x, u, keys(u), sampled=10 / 49).standard_error == pytest.approx(0.1695, abs=1e-3)


def test_two_stages_of_the_survey_package():
    found = two_stage([Bunch(str(i), size, values) for i, (size, values) in enumerate(MU284)], 50)
    assert found.figure == pytest.approx(15080)
    assert found.standard_error**2 == pytest.approx(5172234, rel=1e-6)
    assert found.df == 4


def test_two_stages_use_what_a_sample_tells_not_what_is_true_of_all():
    """Cochran's formula for known bunches adds the whole variance within; the one from a sample only a share of it."""
    within = sum(size**2 * (1 - 3 / size) * np.var(values, ddof=1) / 3 for size, values in MU284)
    totals = [size * np.mean(values) for size, values in MU284]
    between = 50**2 * (1 - 5 / 50) * np.var(totals, ddof=1) / 5
    found = two_stage([Bunch(str(i), size, values) for i, (size, values) in enumerate(MU284)], 50)
    assert found.standard_error**2 == pytest.approx(between + 50 / 5 * within)
    assert found.standard_error**2 < between + (50 / 5) ** 2 * within


def test_bunches_are_the_sample_not_their_plots():
    y = np.array([1.0, 2, 1, 9, 8, 9, 4, 5, 4])
    named = list("aaabbbccc")
    found = bunches(y, named)
    assert found.figure == pytest.approx(y.mean())
    assert found.standard_error == pytest.approx(simple(y.reshape(3, 3).mean(axis=1), "abc").standard_error)
    assert found.standard_error > 1.5 * simple(y, keys(y)).standard_error
    assert found.df == 2


def test_strata_after_the_walk_stand_between_none_and_strata_before():
    rng = np.random.default_rng(2)
    named = ["wet"] * 20 + ["dry"] * 20
    y = np.concatenate((rng.normal(50, 5, 20), rng.normal(20, 5, 20)))
    areas = {"wet": 1.0, "dry": 1.0}
    errors = [
        strata(y, keys(y), named, areas).standard_error, after_strata(y, keys(y), named, areas).standard_error,
        simple(y, keys(y)).standard_error,
    ]  # fmt: skip
    assert errors == sorted(errors)
    # Cochran 1977, 5A.9: (1/n) sum W s^2 + (1/n^2) sum (1 - W) s^2
    s2 = [float(y[:20].var(ddof=1)), float(y[20:].var(ddof=1))]
    assert errors[1] ** 2 == pytest.approx(sum(s2) / 2 / 40 + sum(s2) / 2 / 1600)


def test_degrees_of_freedom_by_satterthwaite():
    assert satterthwaite([(2.0, 9.0), (2.0, 9.0)]) == pytest.approx(18)
    assert satterthwaite([(4.0, 9.0), (0.0, 5.0)]) == pytest.approx(9)
    assert satterthwaite([(0.0, 3.0), (0.0, 4.0)]) == 7


def test_clumping_of_mites_on_leaves():
    """Bliss & Fisher 1953: leaves with 0 to 7 mites (frequencies read); k from memory, reckoned again."""
    counts = np.repeat(np.arange(8), [70, 38, 17, 10, 9, 3, 2, 1])
    found = clumping_of(counts)
    assert found.mean == pytest.approx(1.14667, abs=1e-5)
    assert found.k == pytest.approx(1.0246, abs=1e-4)
    expected = 150 * stats.nbinom.pmf(np.arange(8), found.k, found.k / (found.k + found.mean))
    assert expected == pytest.approx([69.49, 37.60, 20.10, 10.70, 5.69, 3.02, 1.60, 0.85], abs=0.01)


def test_the_profile_loses_at_each_limit_what_its_curve_says():
    """The likelihood by SciPy's own negative binomial, clumping sought on a fine ladder."""

    def profile(mean):
        k = np.exp(np.linspace(-5, 8, 4001))[:, None]
        return stats.nbinom.logpmf(np.array(CLUMPY)[None], k, k / (k + mean)).sum(axis=1).max()

    found = clumped(CLUMPY, keys(CLUMPY), 10_000)
    assert found.figure == 3
    said = limits(found, 0.9)
    for end in (said.low, said.high):
        assert 2 * (profile(3.0) - profile(end)) == pytest.approx(stats.t.ppf(0.95, 9) ** 2, rel=1e-3)


def test_clumped_counts_reach_higher_than_t_and_never_below_nothing():
    by_t, by_profile = simple(np.array(CLUMPY, dtype=float), keys(CLUMPY)), clumped(CLUMPY, keys(CLUMPY), 10_000)
    assert limits(by_profile, 0.95).high > limits(by_t, 0.95).high
    assert limits(by_profile, 0.999).low > 0 == limits(by_t, 0.999).low


def test_counts_as_by_chance_or_evener_are_fitted_too():
    for counts in ([3, 4, 3, 5, 4, 3], [4, 4, 4, 4]):
        found = clumped(counts, keys(counts), 400)
        exact = counted_by_chance(sum(counts), keys(counts), 400 * len(counts))
        assert limits(found).high == pytest.approx(limits(exact).high, rel=0.15)
        assert limits(found).low < found.figure < limits(found).high


def test_what_the_clumped_curve_cannot_do_it_refuses():
    with pytest.raises(Refusal, match="fewer than 3"):
        clumped([0, 0, 9, 0, 4], "abcde", 400)
    with pytest.raises(BadInput, match="2.5"):
        clumped([0, 2.5, 9, 1], "abcd", 400)
    with pytest.raises(Refusal, match="empty"):
        clumped([0, 0, 0], "abc", 400)


def test_none_found_is_not_none():
    found = none_found(keys(range(20)), 400)
    assert found.figure == 0
    # one-sided 95 %: three over the number of plots (Poisson), on a hectare of 25 plots
    assert limits(found, 0.9).high == pytest.approx(25 * 3.0 / 20, rel=2e-3)
    assert limits(found, 0.9).low == 0
    assert limits(none_found(keys(range(20)), 400, clumping=0.3), 0.9).high > limits(found, 0.9).high
    assert limits(none_found(keys(range(20)), 400, clumping=1e6), 0.9).high == pytest.approx(limits(found, 0.9).high)


@given(st.integers(0, 300), st.floats(0.5, 0.99))
def test_limits_of_one_count_are_the_exact_ones(count, level):
    said = limits(counted_by_chance(count, keys(range(5)), 10_000), level)
    tail = (1 - level) / 2
    low, high = stats.gamma.ppf(tail, count) if count else 0, stats.gamma.ppf(1 - tail, count + 1)
    assert (said.low, said.high) == (pytest.approx(low), pytest.approx(high))


def test_plots_that_are_all_empty_give_no_spread_and_no_interval():
    with pytest.raises(Refusal, match="none found"):
        simple(np.zeros(5), keys(range(5)))
    with pytest.raises(Refusal, match="none found"):
        strata(np.zeros(4), "abcd", list("xxyy"), {"x": 1.0, "y": 1.0})


def test_a_stratum_with_one_plot_none_or_no_area_is_refused():
    y = np.array([1.0, 2, 3])
    with pytest.raises(BadInput, match="1 plots in stratum 'y'"):
        strata(y, "abc", list("xxy"), {"x": 1.0, "y": 1.0})
    with pytest.raises(BadInput, match="0 plots in stratum 'z'"):
        strata(y, "abc", list("xxx"), {"x": 1.0, "z": 1.0})
    with pytest.raises(BadInput, match="stratum 'y' without an area"):
        strata(y, "abc", list("xxy"), {"x": 1.0})
    with pytest.raises(BadInput, match="1 plots"):
        simple(np.array([2.0]), "a")


def test_total_and_density_are_one_estimate():
    found = simple(FREESE, keys(FREESE))
    total = on_area(found, 50_000)
    assert total.figure == pytest.approx(53.5)
    assert limits(total).high == pytest.approx(5 * limits(found).high)
    assert total.standard_error == pytest.approx(5 * found.standard_error)
    assert per_area(total, 50_000).figure == pytest.approx(found.figure)
    with pytest.raises(ValueError, match="stems/ha"):
        on_area(total, 1.0)


values = st.lists(st.floats(0, 1000), min_size=3, max_size=30).filter(lambda y: sum(y) > 1 and np.std(y) > 1e-3)


@given(values, st.lists(st.floats(0.001, 0.999), min_size=2, max_size=9))
def test_curves_never_fall_and_never_go_below_nothing(y, shares):
    found = simple(np.array(y), keys(y))
    for one in (found, with_curve(found, by_t_of_log)):
        read = one.curve.quantile(np.sort(shares))
        assert (read >= 0).all() and (np.diff(read) >= 0).all()


@given(values)
def test_the_pulls_of_plots_add_up_to_the_standard_error(y):
    assert simple(np.array(y), keys(y)).standard_error == pytest.approx(stats.sem(y), rel=1e-6)


def test_variances_of_classes_are_never_added():
    """Two classes on the same plots: the doubt of the sum is that of the summed plots."""
    young, old = np.array([0.0, 2, 9, 4]), np.array([1.0, 3, 8, 5])
    both, parts = simple(young + old, "abcd"), [simple(one, "abcd") for one in (young, old)]
    added = math.sqrt(sum(one.standard_error**2 for one in parts))
    assert both.standard_error > 1.3 * added
    together = parts[0].pulls + parts[1].pulls
    assert both.standard_error == pytest.approx(math.sqrt((together**2).sum()))
