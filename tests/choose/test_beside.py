"""What is hit beside the stems: from what was measured, apart from the cost, nothing where nothing is poured."""

from __future__ import annotations

import math

import pytest

from rootcollar.choose import cost_per_kill, decide, expected, side_area, side_words
from rootcollar.choose.ways import WITH_HERBICIDE
from rootcollar.kernel.doubt import band, best, sure
from rootcollar.kernel.units import convert
from rootcollar.reference import load, middle, spans
from tests.choose.hobbin import at, plain_setting, plan, stand, ways

RING_M2 = math.pi * 0.6**2  # OFFT05: all that missed fell within 0.6 m


def test_without_a_mix_nothing_is_hit() -> None:
    assert best(side_area(ways("common buckthorn", "pull")[0], plain_setting())) == 0


def test_round_a_stump_it_is_the_patch_that_was_measured() -> None:
    """OFFT05: affected areas from 0.36 m2 (cut stump)."""
    found = side_area(ways("common buckthorn", "cut_stump")[0], plain_setting())
    assert best(found) == 0.36
    assert band(found).high > 0.36


def test_by_leaf_more_is_hit_than_by_bark_and_by_cut_least() -> None:
    def reach(method: str) -> float:
        return best(side_area(ways("tree-of-heaven", method)[0], plain_setting()))

    assert reach("foliar") > reach("basal_bark") > reach("hack_squirt")


@pytest.mark.parametrize("method", WITH_HERBICIDE)
def test_every_way_with_a_mix_has_a_span(method: str) -> None:
    rows = spans(load().methods[method].rows("side_area_m2"))
    assert rows
    assert all(0 <= (one.value.low or 0) <= middle(one).value <= (one.value.high or 0) for one in rows)


@pytest.mark.parametrize("method", ["cut_stump", "basal_bark", "vine_cut"])
def test_at_most_it_is_the_ring_in_which_anything_fell(method: str) -> None:
    (row,) = spans(load().methods[method].rows("side_area_m2"))
    assert row.value.high == pytest.approx(RING_M2, abs=0.005)


def test_it_is_never_in_the_cost() -> None:
    for one in plan().choices:
        if one.option:
            assert one.per_stem.mean_cost_per_kill == expected(cost_per_kill(one.per_stem.cost, one.per_stem.kill))


def test_reasons_name_it_for_the_way_chosen_and_for_the_dearer_ones() -> None:
    choice = at("bench/rhca3/2.5-5.1cm")
    words, _ = side_words(choice.per_stem.side_m2)
    assert f"beside each, {words} hit" in choice.because
    assert any("beside each" in one.because for one in choice.set_aside if one.per_kill is not None)


def test_a_way_without_a_mix_says_nothing_of_it() -> None:
    pulled = decide(stand("common buckthorn", 0.1, 0.5), plain_setting())
    assert pulled.recipe is None
    assert "beside each" not in pulled.because


def test_in_words_it_is_square_feet_with_its_band() -> None:
    assert side_words(sure(convert(12.4, "sq ft", "m2"))) == ("12 sq ft", "")
    assert side_words(sure(convert(3.87, "sq ft", "m2"))) == ("3.9 sq ft", "")
