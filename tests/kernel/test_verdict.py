"""Verdicts: the worst one counts and comes first."""

import itertools
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.kernel.verdict import Level, Stage, Verdict, worst, worst_first

SAID = st.lists(
    st.builds(Verdict, st.sampled_from(Level), because=st.just("x"), rule=st.sampled_from(["L01", "L02", "L10"]),
              about=st.sampled_from(["", "a", "b"])),
    max_size=8,
)  # fmt: skip


def test_levels_and_stages_have_one_order() -> None:
    assert [level.word for level in sorted(Level)] == ["ok", "warn", "ask", "stop"]
    assert Stage.PLAN < Stage.HOURS < Stage.CLOSE


def test_nothing_said_is_ok() -> None:
    assert worst([]) is Level.OK
    assert worst_first([]) == ()


@given(SAID)
def test_the_worst_is_the_first_of_them(said: list[Verdict]) -> None:
    assert worst(said) == (worst_first(said)[0].level if said else Level.OK)
    assert worst(iter(said)) == worst(said)


@given(SAID, SAID)
def test_hearing_more_never_makes_it_better(said: list[Verdict], more: list[Verdict]) -> None:
    assert worst([*said, *more]) >= worst(said)
    assert worst([*said, *more]) == max(worst(said), worst(more))


@given(SAID)
def test_sorting_keeps_every_verdict_and_its_order(said: list[Verdict]) -> None:
    got = worst_first(said)
    assert sorted(map(repr, got)) == sorted(map(repr, said))
    for one, next_ in itertools.pairwise(got):
        assert one.level >= next_.level
        if one.level == next_.level:
            assert (one.rule, one.about) <= (next_.rule, next_.about)


@given(SAID, st.randoms())
def test_the_order_heard_makes_no_difference(said: list[Verdict], chance: random.Random) -> None:
    shuffled = list(said)
    chance.shuffle(shuffled)
    assert worst_first(shuffled) == worst_first(said)


def test_a_verdict_cannot_be_changed() -> None:
    verdict = Verdict(Level.STOP, "over the label's top strength")
    with pytest.raises(AttributeError):
        verdict.level = Level.OK  # type: ignore[misc]
