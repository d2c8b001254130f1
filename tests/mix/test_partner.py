"""A mix of two products: both are poured within their own labels, and everything adds up."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from rootcollar.kernel.errors import Refusal
from rootcollar.mix import Card, Limits, Part, Recipe, card, parts_of, sides, smallest_batch_ml
from tests.mix.test_card import GAL, HAIR, recipes, systems, totals

SECOND = Part("second", "second-2-sl", "secondamine", 240.0, 1.5)


def made(of: Recipe, total_ml: float, limits: Limits, system: str) -> Card:
    """Return a card, or leave the example out where none can be measured."""
    try:
        return card(of, total_ml, limits, system)
    except Refusal:
        assume(False)
        raise


@given(recipes, st.floats(0.5, 40), totals, systems)
def test_product_partner_additives_and_diluent_add_up(of, pct, total_ml, system):
    one = made(replace(of, partner=replace(SECOND, strength_pct=pct)), total_ml, Limits(), system)
    poured = one.product_ml + one.partner_ml + one.surfactant_ml + one.dye_ml + one.diluent_ml
    assert poured == pytest.approx(one.total_ml, rel=1e-6)
    assert one.partner_pct == pytest.approx(100 * one.partner_ml / one.total_ml)


@given(recipes, st.floats(0.5, 40), totals, systems, st.floats(1, 1.2))
def test_rounding_never_passes_the_partners_most(of, pct, total_ml, system, room):
    limits = Limits(partner_max_pct=pct * room)
    one = made(replace(of, partner=replace(SECOND, strength_pct=pct)), total_ml, limits, system)
    assert one.partner_pct <= pct * room * (1 + HAIR)


def test_a_partner_above_its_labels_most_is_refused_with_what_is_allowed() -> None:
    mixed = Recipe("first", "first-3-sl", "firstamine", 360.0, 2.0, "water", partner=SECOND)
    with pytest.raises(Refusal, match=r"at most 1% is allowed"):
        card(mixed, GAL, Limits(5.0, None, 1.0))
    with pytest.raises(Refusal, match=r"more than 100 % together"):
        card(replace(mixed, strength_pct=60.0, partner=replace(SECOND, strength_pct=41.0)), GAL)
    with pytest.raises(Refusal, match=r"nothing is named to thin it with"):
        card(replace(mixed, carrier="none"), GAL)


def test_a_batch_in_which_the_partner_cannot_be_measured_is_refused_with_the_smallest_that_can() -> None:
    mixed = Recipe("first", "first-3-sl", "firstamine", 360.0, 20.0, "water", partner=replace(SECOND, strength_pct=0.1))
    with pytest.raises(Refusal, match="too little to measure"):
        card(mixed, 100.0)
    assert card(mixed, smallest_batch_ml(mixed)).partner_ml > 0


def test_each_label_sees_its_own_product_first() -> None:
    mixed = Recipe("first", "first-3-sl", "firstamine", 360.0, 2.0, "water", 0.5, partner=SECOND)
    one, other = sides(mixed)
    assert one is mixed
    assert (other.product, other.ingredient, other.strength_pct, other.surfactant_pct) == (
        "second",
        "secondamine",
        1.5,
        0.5,
    )
    assert sides(other)[1] == mixed
    assert dict(parts_of(one)) == dict(parts_of(other)) == {"first": 2.0, "second": 1.5, "surfactant": 0.5}


def test_a_mix_alone_or_with_fertiliser_has_one_label() -> None:
    alone = Recipe("first", "first-3-sl", "firstamine", 360.0, 2.0, "oil")
    fed = replace(alone, partner=Part("ammonium sulfate", "", "", 0.0, 1.0, fertiliser=True))
    assert sides(alone) == (alone,) and sides(fed) == (fed,)
    assert dict(parts_of(alone))["basal oil"] == 98.0
    assert dict(parts_of(fed)) == {"first": 2.0, "ammonium sulfate": 1.0, "basal oil": 97.0}


def test_both_products_stand_on_the_card_in_the_order_they_are_poured() -> None:
    mixed = Recipe("first", "first-3-sl", "firstamine", 360.0, 2.0, "water", partner=SECOND)
    steps = card(mixed, GAL).steps
    places = [next(place for place, one in enumerate(steps) if f"of {name}." in one) for name in ("first", "second")]
    assert places == sorted(places)
    assert card(replace(mixed, partner=None), GAL).partner_ml == 0
