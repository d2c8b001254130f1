"""From plots to the stems of each class by the interval that holds best, and on to worlds."""

from pathlib import Path

import numpy as np
import pytest

from rootcollar.kernel.doubt import Doubt, band
from rootcollar.survey.estimate import limits, of_classes, on_area, usual, worlds_together
from rootcollar.survey.plots import Counted, Plot, Ring, expanded

ROOT = Path(__file__).resolve().parents[2]
SMALL, LARGE = (0.0, 2.5), (2.5, 10.0)
KEYS = tuple(f"p{i:02}" for i in range(20))


def table(rings, seed=1):
    rng = np.random.default_rng(seed)
    rich = rng.gamma(0.8, 6, len(KEYS))
    plots = [Plot(key, "bench", rings) for key in KEYS]
    found = [
        Counted(key, "rhca3", band_cm, int(rng.poisson(rich[i] * share)), "root collar")
        for i, key in enumerate(KEYS)
        for band_cm, share in ((SMALL, 1.0), (LARGE, 0.5))
    ]
    return expanded(plots, found)


def test_classes_on_one_ring_are_read_from_the_clumped_curve_and_so_is_their_sum():
    classes, total = of_classes(table((Ring(SMALL, 400), Ring(LARGE, 400))))
    assert {limits(one).kind for one in (*classes.values(), total)} == {"negative binomial profile"}
    assert sum(one.figure for one in classes.values()) == pytest.approx(total.figure)


def test_the_usual_interval_is_the_one_that_held_best_on_real_maps():
    said = (ROOT / "docs" / "coverage.md").read_text(encoding="utf-8")
    found = usual(np.array([2.0, 0, 1, 4, 9]), np.full(5, 400.0), KEYS[:5])
    assert f"**{limits(found).kind}**, and so it is the usual one" in said


def test_the_sum_over_rings_is_that_of_the_plots_expanded():
    nested = table((Ring(SMALL, 40), Ring(LARGE, 400)))
    classes, total = of_classes(nested)
    assert limits(total).kind == "t on the log scale"
    assert total.figure == pytest.approx(nested.total_per_ha.mean())
    assert total.standard_error == pytest.approx(nested.total_per_ha.std(ddof=1) / np.sqrt(20))
    added = np.sqrt(sum(one.standard_error**2 for one in classes.values()))
    assert total.standard_error > added


def test_worlds_of_a_unit_follow_from_its_plots():
    classes, total = of_classes(table((Ring(SMALL, 40), Ring(LARGE, 400))))
    there = {f"{group.band_cm}": on_area(one, 8000) for group, one in classes.items()}
    found, together = worlds_together(there, on_area(total, 8000), Doubt(5))
    said = limits(on_area(total, 8000))
    assert band(together).low == pytest.approx(said.low, abs=0.01 * said.high)
    assert band(together).high == pytest.approx(said.high, rel=0.01)
    assert np.allclose(sum(found.values()), together)


def test_what_cannot_be_read_from_the_clumped_curve_is_read_from_another():
    same, unlike = np.full(5, 400.0), np.array([400.0, 400, 300, 400, 250])
    kinds = [
        limits(usual(np.array(counts, dtype=float), areas, KEYS[:5])).kind
        for counts, areas in (
            ([0] * 5, same),
            ([0, 0, 3, 0, 1], same),
            ([0, 2, 3, 0, 1], unlike),
            ([2, 0, 1, 4, 9], same),
        )
    ]
    assert kinds == [
        "exact limits of a Poisson count", "t on the log scale", "t on the log scale", "negative binomial profile"
    ]  # fmt: skip


def test_plots_of_unlike_size_are_weighed_by_it():
    counts, areas = np.array([2.0, 4, 9]), np.array([100.0, 200, 300])
    assert usual(counts, areas, KEYS[:3]).figure == pytest.approx(15 / 0.06)
