"""Cards: what is poured is what is said, no rounding passes the label, what cannot be measured is refused."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from rootcollar.kernel.errors import Refusal
from rootcollar.kernel.units import convert, jug, read
from rootcollar.mix import Card, Limits, Recipe, card, smallest_batch_ml

GAL, QT, FL_OZ = (convert(1, unit, "mL") for unit in ("gal", "qt", "fl oz"))
HAIR = 1e-9


def recipe(strength_pct: float, carrier: str = "water", **more: float) -> Recipe:
    thinned = carrier if strength_pct < 100 else "none"
    return Recipe(None, "sample", "sample", 360.0, strength_pct, thinned, **more)


systems = st.sampled_from(["us", "metric"])
recipes = st.builds(
    recipe,
    st.floats(0.25, 99),
    st.sampled_from(["water", "oil"]),
    surfactant_pct=st.sampled_from([0.0, 0.25, 0.5]),
    dye_pct=st.sampled_from([0.0, 0.1, 0.5]),
)
totals = st.floats(20, 100 * GAL)


def made(of: Recipe, total_ml: float, limits: Limits, system: str) -> Card:
    try:
        return card(of, total_ml, limits, system)
    except Refusal:
        assume(False)
        raise


@given(recipes, totals, systems)
def test_the_parts_of_a_card_add_up_to_its_volume(of, total_ml, system):
    one = made(of, total_ml, Limits(), system)
    parts = (one.product_ml, one.surfactant_ml, one.dye_ml, one.diluent_ml)
    assert sum(parts) == pytest.approx(one.total_ml, rel=1e-9)
    assert min(parts) >= 0


@given(recipes, totals, systems)
def test_a_batch_is_filled_to_the_mark_that_its_card_names(of, total_ml, system):
    """What is poured to the mark sets the strength, so the card's volume is the mark's, near what was asked."""
    one = made(of, total_ml, Limits(of.strength_pct), system)
    mark = one.steps[-1].partition(" to the ")[2].partition(" mark;")[0]
    assert read(mark).amount == pytest.approx(one.total_ml, rel=1e-6)
    assert one.total_ml == pytest.approx(total_ml, rel=0.07)
    marks = [jug(total_ml, system, direction).ml for direction in ("down", "up")]
    assert abs(one.total_ml - total_ml) <= min(abs(mark - total_ml) for mark in marks) + HAIR * total_ml


@given(st.integers(1, 400), st.integers(1, 500))
def test_a_batch_that_is_a_mark_is_that_mark(half_pints, tenths_l):
    for volume_ml, system in ((half_pints * GAL / 16, "us"), (tenths_l * 100.0, "metric")):
        assert made(recipe(20), volume_ml, Limits(20), system).total_ml == pytest.approx(volume_ml)


@given(recipes, totals, systems)
def test_the_true_strength_is_that_of_what_is_poured_and_comes_close(of, total_ml, system):
    one = made(of, total_ml, Limits(), system)
    assert one.true_pct == pytest.approx(100 * one.product_ml / one.total_ml)
    assert abs(one.true_pct - of.strength_pct) <= 0.1 * of.strength_pct * (1 + HAIR)


@given(recipes, totals, systems, st.floats(1, 1.2))
def test_rounding_never_passes_the_labels_most(of, total_ml, system, room):
    most = of.strength_pct * room
    assert made(of, total_ml, Limits(max_pct=most), system).true_pct <= most * (1 + HAIR)


@given(recipes, totals, systems, st.floats(0.8, 1))
def test_rounding_never_misses_the_labels_least(of, total_ml, system, room):
    least = of.strength_pct * room
    assert made(of, total_ml, Limits(min_pct=least), system).true_pct >= least * (1 - HAIR)


@given(recipes, totals, systems)
def test_every_part_is_poured_to_the_mark_that_the_card_names(of, total_ml, system):
    one = made(of, total_ml, Limits(of.strength_pct), system)
    said = [step.removeprefix("Add ").split(" of ")[0] for step in one.steps if step.startswith("Add ")]
    poured = [part for part in (one.product_ml, one.surfactant_ml, one.dye_ml) if part]
    for words, part_ml in zip(said, poured, strict=True):
        first = words.split(" (")[0]
        assert read(first).amount == pytest.approx(part_ml, rel=1e-4)


@given(recipes, systems, st.floats(1, 50))
def test_every_batch_from_the_smallest_on_can_be_measured(of, system, times):
    limits = Limits(max_pct=of.strength_pct)
    least = smallest_batch_ml(of, limits, system)
    assert card(of, least * times, limits, system).product_ml > 0
    assert jug(least, system).ml == pytest.approx(least)  # a mark, so that it can be filled to


@given(recipes, systems, st.floats(0.01, 0.9))
def test_a_batch_too_small_is_refused_with_one_that_can_be_measured(of, system, share):
    limits = Limits(max_pct=of.strength_pct)
    least = smallest_batch_ml(of, limits, system)
    try:
        card(of, least * share, limits, system)
    except Refusal as refusal:
        assert refusal.do == f"Mix at least {jug(least, system).text}, or measure with a syringe"
    else:
        assert share > 0.5  # a mark of total volume is rounded up, so a little less can still do


def test_a_batch_that_needs_less_than_a_millilitre_is_refused():
    with pytest.raises(Refusal, match="too little to measure"):
        card(recipe(0.25), 4 * FL_OZ, Limits(0.25))
    assert card(recipe(0.25), 14 * FL_OZ, Limits(0.25)).product_ml == 1.0


def test_ounces_too_coarse_give_way_to_millilitres():
    """1 % of 112 fl oz is 1.12 fl oz; the mark below is 1, a ninth too little."""
    one = card(recipe(1), 112 * FL_OZ, Limits(1))
    assert one.steps[1] == "Add 33 mL of product."
    assert one.true_pct == pytest.approx(0.996, abs=5e-4)


def test_a_surfactant_too_little_to_measure_is_never_left_out():
    with pytest.raises(Refusal, match="too little to measure"):
        card(recipe(20, surfactant_pct=0.25), 8 * FL_OZ, Limits(20))
    assert card(recipe(20, surfactant_pct=0.25), QT, Limits(20)).surfactant_ml == pytest.approx(2.4)


ROUND = [
    (
        recipe(20, "oil"), GAL, 25 * FL_OZ,
        "Dry sprayer, no water in it. Fill about half with oil. Add 25 fl oz (739 mL) of product. "
        "Oil to the 1 gal mark; stir or shake.",
    ),
    (
        recipe(2), 4 * GAL, 10 * FL_OZ,
        "Fill about half with clear water. Add 10 fl oz (296 mL) of product. Water to the 4 gal mark; stir, not shake.",
    ),
    (
        recipe(100), 8 * FL_OZ, 8 * FL_OZ,
        "Pour 8 fl oz through a funnel over a tray, undiluted. Tag the bottle.",
    ),
    (
        recipe(1), QT, 9.0,
        "Fill about half with clear water. Add 9 mL (1 3/4 tsp) of product. "
        "Water to the 32 fl oz mark; stir, not shake.",
    ),
    (
        recipe(25), QT, 8 * FL_OZ,
        "Fill about half with clear water. Add 8 fl oz (237 mL) of product. "
        "Water to the 32 fl oz mark; stir, not shake.",
    ),
    (
        recipe(20, "oil"), 2.5 * GAL, 64 * FL_OZ,
        "Dry sprayer, no water in it. Fill about half with oil. Add 2 qt (1.89 L) of product. "
        "Oil to the 2.5 gal mark; stir or shake.",
    ),
    (
        recipe(50), QT, 16 * FL_OZ,
        "Pour in 8 fl oz (237 mL) of clear water, about half of what it takes. Add 16 fl oz (473 mL) of product. "
        "Water to the 32 fl oz mark; stir, not shake.",
    ),
    (
        recipe(2, surfactant_pct=0.5, dye_pct=0.25), 4 * GAL, 10 * FL_OZ,
        "Fill about half with clear water. Add 10 fl oz (296 mL) of product. Add 2 1/2 fl oz (74 mL) of surfactant. "
        "Add 1 1/4 fl oz (37 mL) of dye. Water to the 4 gal mark; stir, not shake.",
    ),
    (
        recipe(1.5), 2.0625 * GAL, 3.875 * FL_OZ,
        "Fill about half with clear water. Add 3 7/8 fl oz (114 mL) of product. Water to the 2 gal 8 fl oz mark; stir, "
        "not shake.",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("of", "total_ml", "product_ml", "words"), ROUND)
def test_a_card_reads_as_people_pour(of, total_ml, product_ml, words):
    """20 % of a gallon is 25.6 fl oz; the mark below is taken, because 26 would pass the strength."""
    one = card(of, total_ml, Limits(max_pct=of.strength_pct))
    assert one.product_ml == pytest.approx(product_ml)
    assert " ".join(one.steps) == words


def test_a_card_in_litres():
    one = card(recipe(20, "oil"), 4000, Limits(20), "metric")
    assert (one.product_ml, one.true_pct) == (800, 20)
    assert one.steps[1:] == ("Add 800 mL of product.", "Oil to the 4 L mark; stir or shake.")


@given(st.floats(26, 99), totals, systems)
def test_a_strong_mix_is_not_started_with_half_a_tank_of_diluent(pct, total_ml, system):
    one = made(recipe(pct), total_ml, Limits(pct), system)
    assume(one.diluent_ml < 0.75 * one.total_ml)
    assert "Fill about half" not in one.steps[0]
    poured = read(one.steps[0].removeprefix("Pour in ").split(" of ")[0].split(" (")[0]).amount
    assert poured < 0.6 * one.diluent_ml or poured < 1  # half of it, as a jug measures that


def test_without_a_mark_within_the_label_there_is_no_card():
    with pytest.raises(Refusal, match="no mark of a jug keeps"):
        card(recipe(0.3), GAL, Limits(max_pct=0.3, min_pct=0.3))
    with pytest.raises(Refusal, match="no mark of a jug keeps"):
        smallest_batch_ml(recipe(0.3), Limits(max_pct=0.3, min_pct=0.3))


@pytest.mark.parametrize(
    ("of", "limits", "why"),
    [
        (recipe(20), Limits(max_pct=15), "at most 15% is allowed"),
        (recipe(1), Limits(min_pct=2), "at least 2% is demanded"),
        (recipe(100), Limits(max_pct=50), "at most 50% is allowed"),
        (replace(recipe(50), carrier="none"), Limits(), "nothing is named to thin it with"),
        (recipe(99.8, surfactant_pct=0.5), Limits(), "more than 100 %"),
        (recipe(0.0), Limits(), "above 0"),
    ],
)
def test_a_recipe_that_no_batch_could_be_is_refused(of, limits, why):
    for asked in (lambda: card(of, GAL, limits), lambda: smallest_batch_ml(of, limits)):
        with pytest.raises(Refusal, match=why):
            asked()


@pytest.mark.parametrize("total_ml", [0.0, -1.0, float("inf"), float("nan")])
def test_nothing_is_not_a_batch(total_ml):
    with pytest.raises(Refusal, match="nothing to mix"):
        card(recipe(20), total_ml)
