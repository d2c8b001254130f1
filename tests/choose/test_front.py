"""The ways that nothing beats in everything: against the definition; who beats a way, by what, and what would not."""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.choose import Choice, expected
from rootcollar.choose.cost import cost_per_kill, cost_per_stem
from rootcollar.choose.figures import per_stem
from rootcollar.choose.front import ToShare, beaten_by, better_at, on_front, taken_by, to_share
from rootcollar.choose.option import Figured, PerStem, SetAside
from rootcollar.choose.wins import most_to_win, wins_at
from rootcollar.kernel.doubt import sure
from tests.choose.hobbin import at, hobbin, plan, setting_of, ways

SHARE = 0.95
WAY = ways("common buckthorn", "pull")[0]
MIXED = ways("common buckthorn", "basal_bark")[0]
FIGURES = st.tuples(
    st.sampled_from((0.3, 0.6, 0.8, 0.96)), st.integers(1, 5), st.sampled_from((0.0, 0.1, 0.5)),
    st.sampled_from((WAY, MIXED)),
)  # fmt: skip


def figured(kill: float, cost: float, side_m2: float, way: object) -> Figured:
    """Return a way with sure figures."""
    per = sure(cost) / sure(kill)
    return Figured(way, PerStem(sure(kill), sure(1.0), sure(1.0), sure(cost), per, side_m2=sure(side_m2)))  # type: ignore[arg-type]


def beats(one: ToShare, other: ToShare) -> bool:
    """Return whether one is no worse in anything and better in something, written out."""
    mine = (one.cents, one.visits, one.side_cm2, one.products)
    theirs = (other.cents, other.visits, other.side_cm2, other.products)
    return all(a <= b for a, b in zip(mine, theirs, strict=True)) and any(
        a < b for a, b in zip(mine, theirs, strict=True)
    )


@given(st.lists(FIGURES, max_size=8))
def test_the_front_is_what_no_other_beats(given_: list[tuple[float, int, float, object]]) -> None:
    some = [figured(*one) for one in given_]
    taken = [taken_by(one, SHARE) for one in some]
    wanted = [one for one, mine in zip(some, taken, strict=True) if not any(beats(other, mine) for other in taken)]
    assert list(on_front(some, SHARE)) == wanted
    assert bool(wanted) == bool(some)


@given(st.lists(FIGURES, min_size=1, max_size=8))
def test_whoever_is_off_the_front_is_told_who_of_it_beats_it(given_: list[tuple[float, int, float, object]]) -> None:
    some = [figured(*one) for one in given_]
    front = on_front(some, SHARE)
    for one in some:
        said = beaten_by(one, front, SHARE)
        assert bool(said) == (one not in front)
        if said:
            assert re.search(r"costs \$|takes \d|hits |needs \d", said)


def test_what_a_stem_takes_to_the_share_counts_survivors_again() -> None:
    """At 60 % a visit, 95 % takes four; 1 + 0.4 + 0.16 + 0.064 visits to a stem, at $2 and 0.1 m2 each."""
    one = figured(0.6, 2, 0.1, MIXED)
    assert to_share(one.per_stem, SHARE, 1) == ToShare(325, 4, 1624, 1)
    assert better_at(ToShare(1, 2, 3, 1), ToShare(2, 1, 3, 1)) == "costs less to the target"


def dearer() -> list[tuple[Choice, SetAside]]:
    """Return all dearer ways of the demo with their lines."""
    found = [(line, one) for line in plan().choices for one in line.set_aside if one.because.startswith("dearer")]
    assert len(found) > len(plan().choices)
    return found


def test_a_dearer_way_says_what_it_is_better_at_or_what_beats_it_but_never_both() -> None:
    told = [(one.front, "; but " in one.because, "in nothing" in one.because) for _, one in dearer()]
    assert {front for front, _, _ in told} == {True, False}
    for front, better, beaten in told:
        assert beaten != front
        assert not (better and beaten)


@given(st.floats(0.1, 100), st.floats(1, 50), st.floats(0, 0.9), st.floats(0.1, 60))
def test_at_the_most_a_way_costs_what_the_other_does(now: float, theirs: float, share: float, part: float) -> None:
    most = most_to_win(now, theirs, share * theirs, part)
    assert share * theirs + part * most / now == pytest.approx(theirs)


@pytest.mark.parametrize("what", ["minutes", "mix", "price"])
def test_with_the_figure_at_its_most_the_way_of_the_demo_costs_as_little(what: str) -> None:
    setting, seen = setting_of(hobbin()), 0
    for line, one in dearer():
        figures = per_stem(one.way, setting.reference.species[line.stand.species], line.stand, setting)
        theirs, recipe = figures.mean_cost_per_kill * 0.9, one.way.visit.recipe
        for found in wins_at(figures, recipe, theirs):
            if found.what != what:
                continue
            seen += 1
            wage, product, carrier = figures.rates
            times = found.most / found.now
            minutes = figures.minutes * (times if what == "minutes" else 1)
            mix_l = figures.mix_ml / 1000 * (times if what == "mix" else 1)
            product *= times if what == "price" else 1
            cost = cost_per_stem(minutes, wage, mix_l, recipe.products_pct if recipe else 0.0, product, carrier)
            assert expected(cost_per_kill(cost, figures.kill)) == pytest.approx(theirs)
    assert seen


def test_figures_without_rates_tell_no_amount_at_which_they_would_win() -> None:
    figures = replace(at(dearer()[0][0].stand.key).per_stem, rates=(0.0, 0.0, 0.0))
    assert wins_at(figures, None, 1.0) == ()


def test_expected_is_the_mean_to_the_last_bit() -> None:
    worlds = np.random.default_rng(3).random(1001)
    assert expected(worlds) == float(worlds[1:].mean())
