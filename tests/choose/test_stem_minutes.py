"""What a visit to a stem takes goes by way, size, slope, thorns, fruit and how far apart stems stand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some

from rootcollar.choose import Setting, Time, Way, decide, minutes_per_stem, replay_minutes
from rootcollar.choose.effort import off_path_kmh
from rootcollar.choose.kinds import kind_of
from rootcollar.kernel.doubt import best, sure
from rootcollar.kernel.formula import Step, watch
from tests.choose.hobbin import chosen, hobbin, plain_setting, plan, setting_of, stand, ways

HONEYSUCKLE, ROSE = "Amur honeysuckle", "multiflora rose"
ON = date(2026, 10, 2)


def way_of(plant: str, method: str) -> Way:
    return ways(plant, method)[0]


def minutes_of(plant: str, method: str, setting: Setting | None = None, count: float = 500, **facts: object) -> float:
    one = replace(stand(plant, 1, 2, count=count), **facts)
    return best(minutes_per_stem(way_of(plant, method), one, setting or plain_setting(slope_pct=0.0)))


def with_times(*times: Time, **facts: object) -> Setting:
    setting = plain_setting(**{"slope_pct": 0.0, **facts})
    return replace(setting, own=replace(setting.own, times=times))


def named(steps: list[Step]) -> Iterator[str]:
    for one in steps:
        yield one.formula.name
        yield one.formula.says
        yield from named(one.steps)


def test_thin_honeysuckle_in_a_thicket_takes_about_a_minute() -> None:
    assert 0.3 < minutes_of(HONEYSUCKLE, "basal_bark", count=5000, fruiting=False) < 2


@pytest.mark.parametrize("method", ["basal_bark", "cut_stump", "foliar"])
def test_fewer_stems_on_the_same_ground_take_longer_each(method: str) -> None:
    assert minutes_of(HONEYSUCKLE, method, count=20) > minutes_of(HONEYSUCKLE, method, count=2000)


def test_ground_worked_goes_before_the_whole_unit() -> None:
    less = plain_setting(slope_pct=0.0, worked_m2=400.0)
    assert minutes_of(HONEYSUCKLE, "foliar", less) < minutes_of(HONEYSUCKLE, "foliar")


@given(slope=some.floats(0, 80), more=some.floats(1, 40))
def test_steeper_ground_never_takes_less(slope: float, more: float) -> None:
    level, steep = (plain_setting(slope_pct=one) for one in (slope, slope + more))
    assert minutes_of(HONEYSUCKLE, "basal_bark", steep) > minutes_of(HONEYSUCKLE, "basal_bark", level)


def test_ground_that_is_not_known_is_neither_level_nor_near() -> None:
    told, untold = plain_setting(slope_pct=0.0), plain_setting(slope_pct=None)
    assert minutes_of(HONEYSUCKLE, "foliar", untold) > minutes_of(HONEYSUCKLE, "foliar", told)
    nowhere = plain_setting(slope_pct=0.0, area_m2=None)
    one = stand(HONEYSUCKLE, 1, 2, count=5000)
    way = way_of(HONEYSUCKLE, "foliar")
    assert best(minutes_per_stem(way, one, nowhere)) > best(minutes_per_stem(way, one, told))


def test_thorns_slow_the_hands_but_not_the_spray() -> None:
    one = replace(stand(HONEYSUCKLE, 1, 2, count=500), fruiting=False)
    for method, slows in (("cut_stump", True), ("basal_bark", True), ("foliar", False)):
        plain = best(minutes_per_stem(way_of(HONEYSUCKLE, method), one, plain_setting(slope_pct=0.0)))
        thorny = best(
            minutes_per_stem(way_of(ROSE, method), replace(one, species="romu"), plain_setting(slope_pct=0.0))
        )
        assert (thorny > plain) is slows, method


def test_fruit_is_bagged_only_by_a_way_that_cuts_and_perhaps_where_nobody_looked() -> None:
    def told(method: str, fruiting: bool | None) -> np.ndarray:
        one = replace(stand(HONEYSUCKLE, 1, 2, count=500), fruiting=fruiting)
        return minutes_per_stem(way_of(HONEYSUCKLE, method), one, plain_setting(slope_pct=0.0))

    assert best(told("basal_bark", True)) == best(told("basal_bark", False))
    bears, bears_none, unknown = (told("cut_stump", one) for one in (True, False, None))
    assert best(bears) > best(bears_none) == best(unknown)
    assert unknown[1:].mean() > bears_none[1:].mean()


def test_slash_grows_with_the_stem_and_a_way_that_cuts_nothing_has_none() -> None:
    setting = plain_setting(slope_pct=0.0)
    with watch() as steps:
        minutes_per_stem(way_of(HONEYSUCKLE, "cut_stump"), stand(HONEYSUCKLE, 1, 2), setting)
    assert any("stacked near by" in one for one in named(steps))
    with watch() as steps:
        minutes_per_stem(way_of(HONEYSUCKLE, "basal_bark"), stand(HONEYSUCKLE, 1, 2), setting)
    assert not any("stacked near by" in one for one in named(steps))
    rows = [one for one in setting.reference.effort["slash"] if "cut_stump" in one.methods]
    assert [one.figure.best for one in rows] == sorted(one.figure.best or 0 for one in rows)


def test_an_own_time_is_taken_whole_whatever_the_ground() -> None:
    own = Time("cut_stump", 2.5, ON, "A. Steward")
    for slope, count in ((0.0, 5000), (60.0, 5)):
        one = stand(ROSE, 1, 2, count=count)
        found = minutes_per_stem(way_of(ROSE, "cut_stump"), one, with_times(own, slope_pct=slope))
        assert found.tolist() == [2.5]


def test_the_own_time_that_fits_best_is_taken() -> None:
    anywhere, here, later = (
        Time("cut_stump", 2, ON, "A"), Time("cut_stump", 3, ON, "A", unit="plain"),
        Time("cut_stump", 4, date(2026, 11, 1), "A"),
    )  # fmt: skip
    elsewhere = Time("cut_stump", 9, ON, "A", unit="hill")
    thick = Time("cut_stump", 8, ON, "A", size_cm=(10.0, 20.0))
    other = Time("cut_stump", 7, ON, "A", species="romu")
    assert minutes_of(HONEYSUCKLE, "cut_stump", with_times(anywhere, elsewhere, thick, other)) == 2
    assert minutes_of(HONEYSUCKLE, "cut_stump", with_times(anywhere, later)) == 4
    assert minutes_of(HONEYSUCKLE, "cut_stump", with_times(here, later)) == 3
    guess = minutes_of(HONEYSUCKLE, "cut_stump")
    assert minutes_of(HONEYSUCKLE, "cut_stump", with_times(elsewhere, thick, other)) == guess


def test_an_own_time_of_slash_replaces_only_that() -> None:
    guess = minutes_of(HONEYSUCKLE, "cut_stump", fruiting=False)
    own = with_times(Time("cut_stump", 5.3, ON, "A", what="slash"))
    assert minutes_of(HONEYSUCKLE, "cut_stump", own, fruiting=False) == pytest.approx(guess + 5)  # 0.3 was the guess


def test_the_ranking_goes_by_the_ground_and_by_own_times() -> None:
    shelf = tuple(hobbin().shelf.values())
    one = replace(stand(HONEYSUCKLE, 1, 2, count=500), measured_at="root collar", fruiting=False)
    setting = plain_setting(shelf, slope_pct=0.0)
    first = chosen(one, setting)
    slow = Time(first.way.visit.method, 60, ON, "A. Steward")
    after = decide(one, replace(setting, own=replace(setting.own, times=(slow,))))
    assert first.way.visit.method != after.way.visit.method
    quick = replace(slow, minutes=0.1)
    kept = decide(one, replace(setting, own=replace(setting.own, times=(quick,))))
    assert kept.way.visit.method == first.way.visit.method
    assert "own time of 2026-10-02" in kept.because
    assert "guess until own times" in first.because


def test_stands_of_a_kind_share_their_work_and_not_their_ground() -> None:
    pairs = [
        (one, other)
        for one in plan().decided
        for other in plan().decided
        if one.option and other.option and one.stand.unit != other.stand.unit
        and kind_of(one.stand) == kind_of(other.stand) and one.way == other.way
    ]  # fmt: skip
    assert pairs
    assert all(best(one.per_stem.minutes) != best(other.per_stem.minutes) for one, other in pairs)


def test_what_was_chosen_by_is_what_is_worked_out_again() -> None:
    setting = setting_of(hobbin())
    for one in plan().choices:
        if one.option:
            again = minutes_per_stem(one.way, one.stand, setting)
            assert np.array_equal(again, one.per_stem.minutes)
            assert np.array_equal(replay_minutes(one, setting), one.stand.stems * one.per_stem.minutes)


def test_the_steps_name_slope_walk_and_thorns_with_their_inputs() -> None:
    one = stand(ROSE, 1, 2, count=500)
    with watch() as steps:
        minutes_per_stem(way_of(ROSE, "cut_stump"), one, plain_setting(slope_pct=22.0))
    told = list(named(steps))
    for name in ("choose.effort.apart_m", "choose.effort.off_path_kmh", "choose.effort.walk_min", "slope", "ground"):
        assert name in told
    assert any("recurved thorns" in one and "psu_rose" in one for one in told)


def test_a_walker_is_fastest_gently_downhill() -> None:
    speeds = [best(off_path_kmh(sure(pct), 6, -0.05, 3.5, 0.6)) for pct in range(-40, 41, 5)]
    assert speeds.index(max(speeds)) == range(-40, 41, 5).index(-5)
