"""Plans for the whole property: every stand in each, nothing that a rule shuts, and sums as of its lines."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from rootcollar.choose import (
    NO_OWN,
    PLAN_FIGURES,
    Choice,
    PropertyPlan,
    Setting,
    day_money,
    expected,
    line_mix_ml,
    money_to_share,
    plan_figure,
    plans,
    prescribe,
    total_verdicts,
    unit_day_minutes,
    visits_of,
    wage_per_h,
)
from rootcollar.choose.plans import extra_mix_price
from rootcollar.kernel.doubt import sure
from rootcollar.kernel.verdict import Level
from rootcollar.survey import Stand
from tests.choose.hobbin import at, hobbin, only, plain_setting, plan, setting_of, stand

KEYS = ("chosen", "cheapest", "kit", "side", "by-hand")


@cache
def made() -> dict[str, PropertyPlan]:
    """Return the plans of the demo by key."""
    found = plans(hobbin().stands, setting_of(hobbin()), plan())
    assert tuple(one.key for one in found) == KEYS
    return {one.key: one for one in found}


def of(stands: tuple[Stand, ...], setting: Setting) -> dict[str, PropertyPlan]:
    """Return the plans of some stands by key."""
    return {one.key: one for one in plans(stands, setting, prescribe(stands, setting))}


def told(one: PropertyPlan) -> list[tuple[str, str, str]]:
    """Return what a plan does on each stand."""
    return [(line.stand.key, line.option.way.key if line.option else "", line.because) for line in one.plan.choices]


@pytest.mark.parametrize("key", KEYS)
def test_every_stand_is_done_or_named_with_its_reason(key: str) -> None:
    here = made()[key]
    done, without = {one.stand.key for one in here.lines}, {one.stand.key for one, _ in here.without}
    assert done | without == {one.key for one in hobbin().stands}
    assert not done & without
    assert all(why for _, why in here.without)


@pytest.mark.parametrize("key", KEYS)
def test_no_plan_takes_a_way_that_is_shut_or_stopped(key: str) -> None:
    for line in made()[key].plan.choices:
        if line.option is None:
            continue
        first = at(line.stand.key)
        open_ = {one.way.key for one in first.options} | {one.way.key for one in first.set_aside if one.open}
        assert line.way.key in open_
        assert line.option.level < Level.STOP


@pytest.mark.parametrize("key", KEYS)
def test_the_sums_of_a_plan_are_those_of_its_lines(key: str) -> None:
    here, setting = made()[key], setting_of(hobbin())
    cost, product, side, left = sure(0.0), sure(0.0), sure(0.0), sure(0.0)
    units: dict[str, list[Choice]] = {}
    for one in here.lines:
        kill, visits = one.per_stem.kill, visits_of(one, setting)
        often = (1 - (1 - kill) ** visits) / kill
        pct = one.recipe.products_pct if one.recipe else 0.0
        cost = cost + money_to_share(one, setting)
        product = product + line_mix_ml(one.stand.stems, one.per_stem.mix_ml) * often * pct / 100
        side = side + one.stand.stems * one.per_stem.side_m2 * often
        left = left + one.stand.stems * (1 - kill) ** visits
        units.setdefault(one.stand.unit, []).append(one)
    for lines in units.values():
        cost = cost + day_money(unit_day_minutes(lines, setting), wage_per_h(setting))
    cost = cost + max(len(here.mixes) - 1, 0) * extra_mix_price(setting)
    left = left + sum(one.stand.stems for one, _ in here.without)
    wanted = {"cost": cost, "herbicide": product, "side": side, "left": left}
    for what, figure in wanted.items():
        assert plan_figure(here, what, setting) + 0 * figure == pytest.approx(figure), what
    most = [np.maximum.reduce([visits_of(one, setting) + sure(0.0) for one in lines]) for lines in units.values()]
    assert plan_figure(here, "visits", setting) == pytest.approx(sum(most))
    assert plan_figure(here, "years", setting) == pytest.approx(np.maximum.reduce(np.broadcast_arrays(*most)))


def stem_cents(here: PropertyPlan) -> int:
    """Return what the lines of a plan are expected to cost to the target, in whole cents."""
    return sum(round(100 * expected(money_to_share(one, setting_of(hobbin())))) for one in here.lines)


def test_each_plan_is_the_best_at_what_it_is_named_for() -> None:
    setting, all_ = setting_of(hobbin()), made()
    price = 100 * extra_mix_price(setting)
    whole = {key: stem_cents(one) + price * max(len(one.mixes) - 1, 0) for key, one in all_.items()}
    side = {key: expected(plan_figure(one, "side", setting)) for key, one in all_.items()}
    full = [key for key in KEYS if not all_[key].without]
    assert {"chosen", "cheapest", "kit", "side"} <= set(full)
    assert stem_cents(all_["cheapest"]) == min(stem_cents(all_[key]) for key in full)
    assert whole["kit"] == min(whole[key] for key in full)
    assert len(all_["kit"].mixes) < len(all_["cheapest"].mixes)
    assert side["side"] == min(side[key] for key in full)
    assert all(one.recipe is None for one in all_["by-hand"].lines)
    assert all_["by-hand"].without


def test_the_price_of_a_mix_is_the_crews_own_and_decides_the_kit() -> None:
    few, setting = only(hobbin(), "bench", "hollow").stands, setting_of(hobbin())
    counts = [
        len(of(few, replace(setting, own=replace(NO_OWN, extra_mix=price)))["kit"].mixes) for price in (0.01, 60, 5000)
    ]
    assert counts == sorted(counts, reverse=True)
    assert counts[0] > counts[-1]


def test_the_same_stands_in_another_order_give_the_same_plans() -> None:
    setting, stands = setting_of(hobbin()), hobbin().stands
    again = {one.key: one for one in plans(stands[::-1], setting, prescribe(stands[::-1], setting))}
    for key in KEYS:
        assert told(again[key]) == told(made()[key])
        for what in PLAN_FIGURES:
            ours, theirs = plan_figure(again[key], what, setting), plan_figure(made()[key], what, setting)
            assert ours.tobytes() == theirs.tobytes()


def test_what_people_have_chosen_is_followed_as_chosen_alone() -> None:
    from rootcollar.choose import Pick
    from tests.choose.hobbin import DAY

    line = next(one for one in plan().choices if any(each.open and each.per_kill for each in one.set_aside))
    way = next(each.way.key for each in line.set_aside if each.open and each.per_kill)
    setting = replace(setting_of(hobbin()), picked={line.stand.key: Pick(way, "tried before", "A", DAY)})
    stands = only(hobbin(), line.stand.unit).stands
    found = of(stands, setting)
    here = {key: next(one for one in found[key].plan.choices if one.stand.key == line.stand.key) for key in KEYS}
    assert here["chosen"].way.key == way
    plainly = of(stands, setting_of(hobbin()))
    assert told(found["cheapest"]) == told(plainly["cheapest"])


def test_a_stand_with_no_open_way_is_named_under_every_plan() -> None:
    setting = plain_setting([hobbin().shelf["glyphosate-3-sl"]], permission=None)
    for one in of((stand("common buckthorn", 2.6, 3),), setting).values():
        assert len(one.lines) + len(one.without) == 1


def test_a_plan_whose_sums_pass_a_limit_names_the_stands_and_leaves_their_stems() -> None:
    """Two hundred times the buckthorn of the bench: whatever plan pours too much of it is struck by the same rules."""
    setting = setting_of(hobbin())
    many = tuple(
        replace(one, stems=one.stems * 200) for one in only(hobbin(), "bench").stands if one.species == "rhca3"
    )
    found = of(many, setting)
    for one in found.values():
        said = total_verdicts(one.plan.choices, setting)
        stopped = {key for key, all_ in said.items() if any(each.level is Level.STOP for each in all_)}
        named = {line.stand.key: because for line, because in one.without if line.option is not None}
        assert set(named) == stopped
        assert all("pour" in because or "limit" in because or "label" in because for because in named.values())
        left = plan_figure(one, "left", setting)[0]
        assert left >= sum(line.stand.stems[0] for line, _ in one.without)
    assert found["cheapest"].without


def test_without_stands_the_plans_are_empty() -> None:
    setting = setting_of(hobbin())
    for one in plans((), setting, prescribe((), setting)):
        assert [float(plan_figure(one, what, setting)[0]) for what in PLAN_FIGURES] == [0.0] * len(PLAN_FIGURES)
