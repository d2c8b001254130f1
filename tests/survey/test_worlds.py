"""Worlds of classes and their sum: their bands are the named intervals, and they go together as the plots do."""

import numpy as np
import pytest

from rootcollar.kernel.doubt import Doubt, band
from rootcollar.kernel.errors import Refusal
from rootcollar.survey.estimate import (
    by_t_of_log,
    clumped,
    limits,
    none_found,
    on_area,
    quarters,
    simple,
    with_curve,
    worlds_of,
    worlds_together,
)  # fmt: skip
from rootcollar.survey.estimate.quarters import QuarterPoint

KEYS = tuple(f"p{i:02}" for i in range(60))
EACH = 25.0  # stems on a hectare for one on 400 m2


def counts(seed, plots, classes, clumping=0.7, shared=True):
    """Counts of classes on plots, clumped; shared: all classes are many on the same plots."""
    rng = np.random.default_rng(seed)
    size = (plots, 1) if shared else (plots, classes)
    rich = rng.gamma(clumping, 8 / clumping, size) * rng.dirichlet(np.full(classes, 2.0))
    return rng.poisson(rich).astype(float)


def read(y, kind):
    keys = KEYS[: len(y)]
    if not y.any():
        return none_found(keys, 400.0)
    if kind == "clumped":
        return clumped(y, keys, 400.0)
    found = simple(y * EACH, keys)
    return with_curve(found, by_t_of_log) if kind == "log t" else found


def is_near(found, said):
    assert found.low == pytest.approx(said.low, abs=0.01 * said.high)
    assert found.high == pytest.approx(said.high, rel=0.01)


@pytest.mark.parametrize("kind", ["t", "log t"])
@pytest.mark.parametrize(
    ("seed", "plots", "classes", "shared"),
    [(1, 12, 2, True), (2, 14, 4, False), (3, 20, 6, True), (4, 25, 3, False), (5, 40, 6, False), (6, 30, 1, True)],
)
def test_the_band_of_each_class_and_of_the_sum_is_its_own_interval(seed, plots, classes, shared, kind):
    y = counts(seed, plots, classes, shared=shared)
    parts, total = {f"c{i}": read(y[:, i], kind) for i in range(classes)}, read(y.sum(axis=1), kind)
    found, together = worlds_together(parts, total, Doubt(seed))
    is_near(band(together), limits(total))
    for name, part in parts.items():
        is_near(band(found[name]), limits(part))
        assert found[name][0] == pytest.approx(part.figure)
    assert np.allclose(sum(found.values()), together)
    assert together.min() >= 0 <= min(one.min() for one in found.values())


def test_the_band_of_clumped_counts_is_their_interval():
    y = counts(4, 24, 3)
    parts, total = {f"c{i}": read(y[:, i], "clumped") for i in range(3)}, read(y.sum(axis=1), "clumped")
    found, together = worlds_together(parts, total, Doubt(1))
    is_near(band(together), limits(total))
    for name, part in parts.items():
        is_near(band(found[name]), limits(part))


@pytest.mark.parametrize("shared", [True, False])
def test_worlds_go_together_as_the_plots_do(shared):
    y = counts(11, 40, 3, shared=shared)
    parts, total = {f"c{i}": read(y[:, i], "t") for i in range(3)}, read(y.sum(axis=1), "t")
    found, _ = worlds_together(parts, total, Doubt(3))
    apart = np.corrcoef(y.T) - np.corrcoef([one[1:] for one in found.values()])
    assert abs(apart).max() < 0.1
    assert (np.corrcoef(y.T).min() > 0.5) == shared


def test_classes_that_make_room_for_each_other_go_apart():
    young = np.array([1.0, 9, 2, 8, 1, 9, 3, 7])
    parts, total = {"old": read(10.5 - young, "t"), "young": read(young, "t")}, read(young * 0 + 10.5, "t")
    found, together = worlds_together(parts, total, Doubt(3))
    assert np.corrcoef(found["old"][1:], found["young"][1:])[0, 1] < -0.98
    assert np.std(together[1:]) < 0.1 * np.std(found["old"][1:])


def test_worlds_of_one_estimate_of_any_kind():
    y = counts(2, 20, 1)[:, 0]
    points = [QuarterPoint(key, (2.0, 3.0, 1.5, 4.0 + i)) for i, key in enumerate(KEYS[:8])]
    every = [read(y, "t"), read(y, "log t"), read(y, "clumped"), none_found(KEYS[:20], 400.0), quarters(points)]
    for one in [*every, on_area(every[0], 5000)]:
        found = worlds_of(one, Doubt(7))
        is_near(band(found), limits(one))
        assert found[0] == one.figure and found.min() >= 0


def test_the_same_plots_give_the_same_worlds_whatever_else_is_asked():
    y = counts(2, 20, 2)
    one = worlds_of(read(y[:, 0], "t"), Doubt(7))
    assert np.array_equal(one, worlds_of(read(y[:, 0], "t"), Doubt(7)))
    assert not np.array_equal(one, worlds_of(read(y[:, 0], "t"), Doubt(8)))


def test_intervals_that_contradict_each_other_are_refused():
    """One plot makes the whole of a class: on the log scale its upper limit is above that of the sum."""
    lone, even = np.array([0.0, 0, 0, 0, 0, 90]), np.array([9.0, 3, 8, 4, 9, 3])
    parts = {"lone": read(lone, "log t"), "even": read(even, "log t")}
    total = read(lone + even, "t")
    with pytest.raises(Refusal, match="contradict"):
        worlds_together(parts, total, Doubt(1))


def test_what_cannot_be_drawn_together_is_refused():
    y = counts(2, 20, 2)
    parts = {f"c{i}": read(y[:, i], "t") for i in range(2)}
    total = read(y.sum(axis=1), "t")
    with pytest.raises(Refusal, match="add up"):
        worlds_together({"c0": parts["c0"]}, total, Doubt(1))
    with pytest.raises(Refusal, match="different units"):
        worlds_together(parts, on_area(total, 5000), Doubt(1))
    with pytest.raises(Refusal, match="nothing was found"):
        worlds_together({"c0": none_found(KEYS[:20], 400.0)}, none_found(KEYS[:20], 400.0), Doubt(1))
