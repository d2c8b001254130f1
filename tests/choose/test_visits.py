"""How often to come: whole visits, enough of them and not one more; and what they all take."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.choose import line_money, minutes_to_share, money_to_share, unit_day_minutes, visits_of
from rootcollar.choose.visits import days_of_work, stem_visits, visits_to_share
from rootcollar.kernel.doubt import sure
from tests.choose.hobbin import at, hobbin, plan, setting_of

kills, shares = st.floats(0.02, 0.99), st.floats(0.5, 0.98)


@given(kills, shares)
def test_after_the_visits_the_share_is_dead_and_one_visit_before_it_was_not(kill: float, share: float) -> None:
    visits = visits_to_share(sure(kill), share)[0]
    assert 1 - (1 - kill) ** visits >= share - 1e-6
    assert visits == 1 or 1 - (1 - kill) ** (visits - 1) < share + 1e-6


@given(kills, shares)
def test_a_stem_is_visited_as_often_as_visits_counted_one_by_one(kill: float, share: float) -> None:
    visits = visits_to_share(sure(kill), share)
    one_by_one = np.sum((1 - kill) ** np.arange(visits[0]))
    assert stem_visits(sure(kill), visits)[0] == pytest.approx(one_by_one)


def test_half_dying_of_each_visit_takes_five_to_ninety_five_percent() -> None:
    assert visits_to_share(sure(0.5), 0.95)[0] == 5
    assert visits_to_share(sure(0.5), 0.75)[0] == 2
    assert visits_to_share(sure(1.0), 0.95)[0] == 1


def test_a_higher_target_takes_more_visits_and_never_less_money() -> None:
    line, setting = at("bench/rhca3/2.5-5.1cm"), setting_of(hobbin())
    more = replace(setting, own=replace(setting.own, target_share=0.999))
    assert (visits_of(line, more) >= visits_of(line, setting)).all()
    assert (money_to_share(line, more) >= money_to_share(line, setting)).all()
    assert visits_of(line, more).mean() > visits_of(line, setting).mean()


def test_all_visits_to_a_stem_killed_cost_what_the_ranking_goes_by() -> None:
    """So that ranking by the cost per stem killed ranks by the cost to any share."""
    setting = setting_of(hobbin())
    for line in (one for one in plan().choices if one.option):
        dead = 1 - (1 - line.per_stem.kill) ** visits_of(line, setting)
        killed = line_money(line.stand.stems, line.per_stem.cost_per_kill) * dead
        np.testing.assert_allclose(money_to_share(line, setting), killed)


def test_days_are_none_until_own_ones_are_written_and_no_fewer_than_visits() -> None:
    lines = [one for one in plan().choices if one.stand.unit == "ridge" and one.is_work]
    setting = setting_of(hobbin())
    assert unit_day_minutes(lines, setting)[0] == 0
    own = replace(setting.own, set_up_min=30.0, travel_min=60.0, day_h=1000.0)
    visits = max(visits_of(one, setting)[0] for one in lines)
    assert unit_day_minutes(lines, replace(setting, own=own))[0] == 90 * visits
    short = unit_day_minutes(lines, replace(setting, own=replace(own, day_h=1.0)))[0]
    whole = sum(minutes_to_share(one, setting)[0] for one in lines)
    assert short == 90 * max(visits, np.ceil(whole / 60))
    assert days_of_work(sure(601.0), sure(1.0), 10)[0] == 2
