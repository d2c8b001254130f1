"""Loads a crew can fill and carry, at a strength the label allows."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.choose import Choice
from rootcollar.kernel.doubt import best, sure
from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import convert
from rootcollar.work.batches import Batches, batches, limits_of
from rootcollar.work.crew import Crew
from tests.choose.hobbin import hobbin, plan, retyped
from tests.work.packets import hobbin_packet, hobbin_setting

GAL_ML = 3785.411784
CREW = hobbin().crew
SPRAYED = [one for one in plan().choices if one.recipe]


def loaded(line: Choice, need_ml: float, crew: Crew = CREW) -> Batches:
    """Return the loads for so much of a line's mix."""
    assert line.recipe
    return batches(line.recipe, sure(need_ml), line.way.visit.method, crew, hobbin_setting())


@given(st.sampled_from(SPRAYED), st.floats(1, 60 * GAL_ML))
def test_no_load_passes_the_tank_or_the_weight_and_all_together_are_enough(line: Choice, need_ml: float) -> None:
    made = loaded(line, need_ml)
    assert max(made.loads.volumes_ml) <= 4 * GAL_ML + 1e-6  # crew.toml of the demo: 4 gal
    assert made.loads.total_ml >= need_ml - 1e-6
    assert sorted(one.total_ml for _, one in made.cards) == sorted(set(made.loads.volumes_ml))


@given(st.sampled_from(SPRAYED), st.floats(1, 60 * GAL_ML))
def test_what_is_poured_is_never_stronger_than_the_label_allows(line: Choice, need_ml: float) -> None:
    assert line.recipe and line.recipe.product
    sheet = hobbin().shelf[line.recipe.product]
    high = sheet.says("concentration.high", line.way.visit.method)
    for _, one in loaded(line, need_ml).cards:
        assert one.true_pct <= high + 1e-9
        assert one.true_pct == pytest.approx(100 * one.product_ml / one.total_ml)
        assert abs(one.true_pct - line.recipe.strength_pct) <= 0.1 * line.recipe.strength_pct + 1e-9


def test_the_weight_of_a_full_sprayer_keeps_to_what_its_carrier_accepts() -> None:
    """40 lb carried, an empty backpack of up to 14 lb, oil and ester lighter than water: under 26 lb of mix."""
    line = next(one for one in SPRAYED if one.recipe and one.recipe.carrier == "oil")
    made = loaded(line, 20 * GAL_ML)
    assert made.bound == "the weight its carrier accepts"
    heaviest_ml = max(made.loads.volumes_ml)
    assert convert(heaviest_ml / 1000 * 0.86, "kg", "lb") <= 26  # 0.86 kg/L: lighter than the mix can be


def test_a_stronger_back_carries_a_full_tank() -> None:
    made = loaded(SPRAYED[0], 20 * GAL_ML, replace(hobbin().crew, carry_kg=60.0))
    assert made.bound == "the tank"
    assert max(made.loads.volumes_ml) == pytest.approx(4 * GAL_ML)


def test_without_a_tank_a_gallon_jug_is_taken_and_the_card_says_so() -> None:
    made = loaded(SPRAYED[0], 5 * GAL_ML, Crew())
    assert "gallon jug" in made.bound
    assert max(made.loads.volumes_ml) <= GAL_ML + 1e-6


def test_nobody_is_handed_a_sprayer_that_is_too_heavy_empty() -> None:
    with pytest.raises(Refusal, match="empty sprayer") as told:
        loaded(SPRAYED[0], GAL_ML, replace(hobbin().crew, carry_kg=4.0))
    assert "crew.toml" in told.value.do


def test_a_need_too_small_to_measure_becomes_the_least_that_can_be() -> None:
    line = next(one for one in SPRAYED if one.recipe and one.recipe.strength_pct == 50)
    made = loaded(line, 3.0)
    assert made.loads.total_ml >= 3.0
    assert made.cards[0][1].product_ml > 0


def test_where_the_label_gives_no_strength_the_plans_own_is_the_most() -> None:
    line = SPRAYED[0]
    assert line.recipe
    assert limits_of(line.recipe, line.way.visit.method, None).max_pct == line.recipe.strength_pct


def test_a_weakest_strength_binds_only_where_the_label_forbids_a_weaker_mix() -> None:
    line = next(one for one in SPRAYED if one.way.visit.method == "basal_bark")
    assert line.recipe and line.recipe.product
    sheet = hobbin().shelf[line.recipe.product]
    block = sheet.methods["basal_bark"]
    forbids = replace(
        sheet,
        methods={**sheet.methods, "basal_bark": {**block, "less_than_low_forbidden": type(block["carrier"])(True)}},
    )
    assert limits_of(line.recipe, "basal_bark", sheet).min_pct is None
    assert limits_of(line.recipe, "basal_bark", forbids).min_pct == 10.0
    assert retyped(sheet).says("concentration.low", "basal_bark") == 10.0


def test_the_cards_of_a_packet_make_what_its_lines_need() -> None:
    packet = hobbin_packet("bench")
    lines = [one for one in plan().choices if one.stand.unit == "bench" and one.recipe and one.is_work]
    for card in packet.cards:
        recipe = plan().letters[card.letter]
        need_ml = sum(float(best(one.stand.stems * one.per_stem.mix_ml)) for one in lines if one.recipe == recipe)
        if not need_ml:
            assert "only if the first way cannot be done" in card.asked
            continue
        gallons = float(card.asked.split("mix; ")[1].split(" gal needed")[0]) if "gal needed" in card.asked else None
        if gallons is not None:
            assert gallons == pytest.approx(need_ml / GAL_ML, rel=0.01)
        assert card.batches
