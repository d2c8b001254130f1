"""Calibration walks: the curve that made the finds is found again, and the published one is met."""

import numpy as np
import pytest

from rootcollar.kernel.doubt import Doubt, band
from rootcollar.survey.looked import Curve, Flag, expected_between, fit_walk, half_width_m, half_width_worlds, how_good


def walked(curve: Curve, flags: int, reach_m: float, seed: int) -> tuple[Flag, ...]:
    """Flags at even distances, found by luck as the curve has it."""
    luck = np.random.default_rng(seed).random(flags)
    x = np.linspace(0, reach_m, flags)
    chances = curve.on_line * np.exp(-(x**2) / (2 * curve.sigma_m**2))
    return tuple(Flag(float(far), bool(one < chance)) for far, one, chance in zip(x, luck, chances, strict=True))


@pytest.mark.parametrize("curve", [Curve(0.85, 7.0), Curve(1.0, 9.0), Curve(0.6, 12.0)])
def test_many_flags_tell_the_curve_that_made_them(curve: Curve) -> None:
    found = fit_walk(walked(curve, 4000, 25, 3))
    assert found.curve.sigma_m == pytest.approx(curve.sigma_m, rel=0.06)
    assert found.curve.on_line == pytest.approx(curve.on_line, abs=0.04)
    assert found.half_width_m == pytest.approx(half_width_m(curve.on_line, curve.sigma_m, 25), rel=0.06)
    assert found.fit.chance is not None and found.fit.chance > 0.001


@pytest.mark.slow
def test_the_doubt_of_the_width_covers_the_truth_as_often_as_it_says() -> None:
    curve, truth = Curve(0.9, 8.0), half_width_m(0.9, 8.0, 25)
    hits = tried = 0
    for seed in range(60):
        try:
            found = fit_walk(walked(curve, 40, 25, seed))
        except ValueError:
            continue
        tried += 1
        held = band(half_width_worlds(found, Doubt(seed), "walk"))
        hits += held.low <= truth <= held.high
    assert tried >= 55
    assert 0.65 <= hits / tried <= 0.95  # a band of 80 %; 60 walks are off by a tenth at most, mostly


def test_fewer_flags_leave_more_doubt_and_the_same_walk_the_same_worlds() -> None:
    few, many = (fit_walk(walked(Curve(0.9, 8), flags, 25, 1)) for flags in (40, 1000))
    wide, narrow = (band(half_width_worlds(one, Doubt(7), "walk")) for one in (few, many))
    assert wide.high - wide.low > 2 * (narrow.high - narrow.low)
    again = half_width_worlds(few, Doubt(7), "walk")
    assert again.tolist() == half_width_worlds(few, Doubt(7), "walk").tolist()
    assert again[0] == few.half_width_m


def test_no_miss_near_the_line_is_one_figure_less() -> None:
    flags = [Flag(0.5 * at, True) for at in range(15)] + [Flag(7.5 + at, at % 4 == 0) for at in range(15)]
    found = fit_walk(flags)
    assert found.curve.on_line == 1
    assert found.spread.shape == (1, 1)
    assert found.fit.freedom == 4


def test_a_wrong_curve_shows_in_the_fit() -> None:
    # Seen only in a ring away from the line: no bell falls so.
    flags = [Flag(0.25 * at, 20 <= at < 50) for at in range(100)]
    assert (fit_walk(flags).fit.chance or 0) < 0.001


@pytest.mark.parametrize(
    ("flags", "words"),
    [
        ([Flag(1, True)] * 19, "want 20 flags"),
        ([Flag(1 + at, True) for at in range(20)], "farther out"),
        ([Flag(1 + at, False) for at in range(20)], "nearer"),
        ([Flag(-1, True), *[Flag(2, False)] * 20], "distances of 0"),
        ([Flag(0, at > 3) for at in range(30)], "not all 0"),
        ([Flag(1 + at, at % 4 in (0, 3)) for at in range(28)], "do not fall off"),
        ([Flag(1 + at, at > 14) for at in range(30)], "do not fall off"),
    ],
)
def test_a_walk_that_tells_no_width_is_refused(flags: list[Flag], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        fit_walk(flags)


def test_stakes_in_sagebrush_as_published() -> None:
    # Reference output of the R package mrds for observer 1 of stake77: 81 found within 20 m, sigma 9.137 m.
    due = expected_between(81, Curve(1, 9.137), [20 * at / 9 for at in range(10)])
    assert due == pytest.approx((16.023, 15.107, 13.430, 11.256, 8.894, 6.627, 4.655, 3.083, 1.925), abs=0.01)
    assert sum(due) == pytest.approx(81)
    off = [one + (2.97 * one / 9) ** 0.5 * (-1) ** at for at, one in enumerate(due)]  # made to give the printed 2.97
    fit = how_good(off, due, 7)
    assert fit.chi_square == pytest.approx(2.97)
    assert fit.chance == pytest.approx(0.8878, abs=5e-4)
    assert fit.few


def test_groups_that_do_not_match_are_refused() -> None:
    for wrong in (([1], [1, 2]), ([1, 2], [1, 0])):
        with pytest.raises(ValueError, match="as many expected"):
            how_good(*wrong, 1)
    assert how_good([1, 2], [1, 2], 0).chance is None
