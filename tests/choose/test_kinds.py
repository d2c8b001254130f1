"""What is worked out once for stems of a kind is what would be worked out for each stand."""

from __future__ import annotations

import pytest

from rootcollar.choose import Choice, decide
from rootcollar.choose.kinds import kind_of
from tests.choose.hobbin import hobbin, plan, setting_of, stand


@pytest.mark.parametrize("planned", plan().decided, ids=lambda one: one.stand.key)
def test_a_line_is_chosen_alike_alone_and_in_a_plan(planned: Choice) -> None:
    alone = decide(planned.stand, setting_of(hobbin()))
    assert (alone.because, alone.set_aside, alone.verdicts) == (planned.because, planned.set_aside, planned.verdicts)
    assert [one.way for one in alone.options] == [one.way for one in planned.options]


def test_the_demo_has_stands_of_one_kind_on_several_units() -> None:
    kinds = [kind_of(one) for one in hobbin().stands]
    assert len(set(kinds)) < len(kinds)


def test_more_stems_are_of_the_same_kind_and_thicker_ones_are_not() -> None:
    few, many, thicker = (stand("rhca3", 1, high, count=count) for high, count in ((2, 5), (2, 50), (3, 5)))
    assert kind_of(few) == kind_of(many) != kind_of(thicker)


def test_what_is_said_of_a_line_names_that_line() -> None:
    for one in plan().decided:
        assert one.option is None or {said.about for said in one.option.verdicts} == {one.stand.key}


def test_the_mean_by_which_ways_are_put_in_order_is_that_of_their_worlds() -> None:
    """The mean of a sum is the sum of the means: checked on every line of the demo, chosen way and fallback."""
    options = [one for line in plan().choices for one in line.options]
    assert len(options) > 20
    for one in options:
        assert one.per_kill == pytest.approx(one.per_stem.mean_cost_per_kill, rel=1e-12)
