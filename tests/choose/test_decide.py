"""The choice for one stand: the cheapest kill that no rule stops; every other way set aside with its reason."""

import re
from dataclasses import replace

import numpy as np
import pytest

from rootcollar.choose import Choice, Setting, expected, prescribe, ways_for
from rootcollar.kernel.verdict import Level
from rootcollar.label import Answer
from rootcollar.reference import middle
from tests.choose.hobbin import (
    DAY,
    aside,
    at,
    chosen,
    hobbin,
    open_methods,
    plain_setting,
    plan,
    retyped,
    setting_of,
    stand,
    with_units,
)

GLYPHOSATE, ESTER = "glyphosate-3-sl", "triclopyr-ester-4-ec"
BUCKTHORN = stand("common buckthorn", 2.6, 3, crown_ft=None)  # too thick to pull, no crown to spray by


def shelf_setting(*keys: str, **facts: object) -> Setting:
    """Return the plain setting with some of the demo's sheets."""
    return plain_setting([hobbin().shelf[key] for key in keys], **facts)


def everything(choice: Choice) -> list[str]:
    """Return the keys of all ways that a choice speaks of."""
    told = [one.way.key for one in choice.set_aside]
    told += [choice.option.way.key] if choice.option else []
    return told + ([choice.fallback.option.way.key] if choice.fallback else [])


@pytest.mark.parametrize("choice", plan().choices, ids=lambda one: one.stand.key)
def test_every_way_is_chosen_kept_as_fallback_or_set_aside(choice: Choice) -> None:
    setting = setting_of(hobbin())
    species = setting.reference.species[choice.stand.species]
    wanted = [way.key for way in ways_for(species, setting.products, setting.reference)]
    assert sorted(everything(choice)) == sorted(wanted)


def test_every_way_set_aside_says_why_and_what_would_change_it() -> None:
    for choice in plan().choices:
        for one in choice.set_aside:
            assert one.because
            assert one.would_win_if


def cents(choice: Choice) -> int:
    """Return the expected cost per stem killed in whole cents."""
    return round(100 * expected(choice.per_stem.cost_per_kill))


def test_no_open_way_is_cheaper_per_stem_killed_than_the_chosen_one() -> None:
    dearer = [(choice, one.because) for choice in plan().choices for one in choice.set_aside if "dearer" in one.because]
    assert len(dearer) > len(plan().choices)
    for choice, because in dearer:
        amount = round(100 * float(because.split("$")[1].split()[0].replace(",", "")))
        assert amount >= cents(choice)


def test_what_would_make_a_dearer_way_win_would_make_it_win() -> None:
    """A kill above what is reckoned for it, or a visit for less money."""
    told = [one.would_win_if for choice in plan().choices for one in choice.set_aside if "dearer" in one.because]
    by_kill = [words for words in told if words.startswith("it killed")]
    by_cost = [words for words in told if words.startswith("a visit cost")]
    assert by_kill and by_cost and len(by_kill) + len(by_cost) == len(told)
    for words in by_kill:
        needed, reckoned = (float(one) for one in re.findall(r"(\d+)%", words))
        assert reckoned <= needed <= 100
    for words in by_cost:
        needed, reckoned = (float(one.replace(",", "")) for one in re.findall(r"\$([\d.,]+\d)", words))
        assert needed <= reckoned


def test_equal_costs_are_settled_by_name() -> None:
    """Two sheets of one product: the same cost to the cent, so the first by name."""
    sheet = hobbin().shelf[ESTER]
    setting = plain_setting([replace(sheet, key="b-ester"), replace(sheet, key="a-ester")])
    choice = chosen(BUCKTHORN, setting)
    assert choice.recipe and choice.recipe.product == "a-ester"
    assert any("b-ester" in key for key in everything(choice))


def test_a_stop_is_never_chosen_even_where_it_would_be_cheapest() -> None:
    """A labelled distance of 25 ft from water shuts the oil, and stumps are treated from water instead."""
    open_choice = chosen(BUCKTHORN, shelf_setting(ESTER, GLYPHOSATE))
    assert open_choice.recipe and open_choice.recipe.product == ESTER
    near = chosen(BUCKTHORN, shelf_setting(ESTER, GLYPHOSATE, water_m=3.0))
    assert near.recipe and near.recipe.product == GLYPHOSATE
    assert any(one.stop and one.stop.rule == "L37a" for one in near.set_aside)


def test_no_line_of_the_demo_plan_rests_on_a_stopped_way() -> None:
    for choice in plan().choices:
        for option in (choice.option, choice.fallback and choice.fallback.option):
            assert option is None or option.level < Level.STOP


def test_a_question_holds_its_line_and_no_worse_way_takes_its_place() -> None:
    clear = chosen(BUCKTHORN, shelf_setting(ESTER, GLYPHOSATE))
    asked = chosen(BUCKTHORN, shelf_setting(ESTER, GLYPHOSATE, water_m=None))
    assert asked.option and clear.option
    assert asked.option.way.key == clear.option.way.key
    assert not any(one.rule == "L37a" and "nobody has looked" in one.because for one in clear.verdicts)
    assert asked.level is Level.ASK
    assert any(one.rule == "L37a" and "nobody has looked" in one.because for one in asked.verdicts)


def test_a_no_to_a_question_stops_the_way() -> None:
    question = next(one for one in chosen(BUCKTHORN, shelf_setting(ESTER)).verdicts if one.level is Level.ASK)
    assert question.answerable
    no = Answer(question.rule, "*", yes=False, by="a steward", on=DAY, note="there is a sinkhole")
    after = chosen(BUCKTHORN, replace(shelf_setting(ESTER), answers=(no,)))
    assert not after.recipe or after.recipe.product != ESTER
    assert any(one.stop and "there is a sinkhole" in one.because for one in after.set_aside)


def test_no_label_for_a_product_asks_and_holds_the_line() -> None:
    choice = chosen(stand("common buckthorn", 4, 6))
    assert choice.recipe and choice.recipe.product is None
    assert [one.rule for one in choice.verdicts if one.level is Level.ASK] == ["L01"]
    assert choice.level is Level.ASK


def test_a_way_with_a_label_goes_before_a_cheaper_one_without_and_the_reason_says_so() -> None:
    choice = chosen(BUCKTHORN)  # with no label at all, basal bark is the cheapest
    with_label = chosen(BUCKTHORN, shelf_setting(GLYPHOSATE))
    assert choice.way.visit.method == "basal_bark"
    assert with_label.recipe and with_label.recipe.product == GLYPHOSATE
    assert any("no label sheet" in because for because in aside(with_label, "basal_bark"))
    assert not any("dearer" in because for because in aside(with_label, "basal_bark"))


def test_a_fallback_is_of_another_method_and_no_less_clear() -> None:
    backs = [one for one in plan().choices if one.fallback]
    assert len(backs) > len(plan().choices) / 2
    for choice in backs:
        assert choice.option and choice.fallback
        back = choice.fallback.option
        assert back.way.visit.method != choice.way.visit.method
        assert back.level <= max(choice.option.level, Level.WARN)
        assert choice.fallback.trigger


@pytest.mark.parametrize(
    ("plant", "inches", "never"),
    [
        ("tree-of-heaven", (2, 4), "cut"),  # psu_qs5 (read)
        ("tree-of-heaven", (0.5, 1), "cut"),
        ("tree-of-heaven", (2, 4), "mow"),
        ("Japanese knotweed", (0.5, 1), "cut"),  # pierce_pocu (read)
        ("Chinese privet", (1, 2), "cut"),  # enloe2018 (read)
        ("common buckthorn", (1, 2), "cut"),
        ("white mulberry", (6, 8), "basal_bark"),  # SRS-131
        ("white mulberry", (0.5, 1), "hack_squirt"),  # SRS-131
    ],
)
def test_what_a_source_rules_out_is_never_offered(plant: str, inches: tuple[float, float], never: str) -> None:
    assert never not in open_methods(chosen(stand(plant, *inches)))


def test_tree_of_heaven_is_treated_standing_from_july() -> None:
    """psu_qs5 (read): July to September; the cut and the triclopyr cut stand behind glyphosate in cuts."""
    choice = chosen(stand("tree-of-heaven", 2, 4))
    assert choice.way.visit.method in {"hack_squirt", "basal_bark"}
    assert {7, 8, 9} <= choice.way.visit.months
    assert not {3, 4, 5, 6} & choice.way.visit.months
    assert choice.recipe and choice.recipe.ingredient == "glyphosate"


def test_triclopyr_in_cuts_of_tree_of_heaven_stands_behind_glyphosate() -> None:
    """ditomaso2007 (read): crown loss fell to 31 percent in the second year."""
    choice = chosen(stand("tree-of-heaven", 2, 4))
    behind = [one for one in choice.set_aside if one.way.key.startswith("hack_squirt/triclopyr")]
    assert behind
    assert all(float(one.would_win_if.split("reckoned ")[1].split("%")[0]) < 35 for one in behind)


def test_imazapyr_beside_a_tree_to_keep_is_not_offered_though_it_is_farther_off() -> None:
    """DITO07 (read): 16.5 feet through root grafts."""
    far = chosen(stand("chinaberry", 3, 5))
    near = chosen(stand("chinaberry", 3, 5), plain_setting(keep_m=3.0))
    offered = {one.way.key for one in far.set_aside if one.open} | {one.way.key for one in far.options}
    assert any(key.startswith("hack_squirt/imazapyr") for key in offered)
    assert near.recipe and near.recipe.ingredient != "imazapyr"
    assert not any("DITO07" in because for because in aside(far, "hack_squirt"))
    assert any("DITO07" in because for because in aside(near, "hack_squirt"))


def test_a_stand_that_a_rule_closes_is_left_with_its_reason_and_counts_as_stopped() -> None:
    choice = chosen(BUCKTHORN, shelf_setting(ESTER, permission=None))
    assert choice.option is None
    assert choice.level is Level.STOP
    assert "nobody has allowed work" in choice.because
    assert [one.rule for one in choice.verdicts if one.level is Level.STOP] == ["P01"]


def test_a_stand_that_only_its_nature_closes_is_left_with_every_reason() -> None:
    """Knotweed whose leaves nobody may spray over wanted plants: nothing else is offered for it."""
    choice = chosen(stand("Japanese knotweed", 0.5, 1), plain_setting(wanted_beneath=True))
    assert choice.option is None
    assert choice.level is Level.STOP
    assert choice.verdicts == ()
    assert len(choice.set_aside) > 1
    for one in choice.set_aside:
        assert one.because in choice.because


def test_a_way_whose_figures_cannot_be_reckoned_is_set_aside_not_lost() -> None:
    """fick2010 gives 5 percent on saltcedar stumps; no coverage is kept for a mix so weak."""
    because = aside(chosen(stand("saltcedar", 1, 2)), "cut_stump")
    assert because
    assert all("no coverage" in one for one in because)


def test_unknown_water_asks_and_never_counts_as_far() -> None:
    project = with_units(hobbin(), "bench", water_m=None)
    lines = prescribe(
        [one for one in project.stands if one.unit == "bench" and one.species == "rhca3"], setting_of(project)
    ).choices
    sprayed = [one for one in lines if one.recipe]
    assert sprayed
    assert all(one.level is Level.ASK for one in sprayed)


@pytest.mark.parametrize("plant", ["saltcedar", "glossy buckthorn", "Japanese knotweed"])
def test_a_plant_of_wet_ground_asks_where_the_water_is_before_any_product(plant: str) -> None:
    """Over or at the edge of water is asked; with water at the foot only what its label lets come there is left."""
    one, shelf = stand(plant, 0.5, 1, tall_ft=4), tuple(hobbin().shelf.values())
    asked = chosen(one, plain_setting(shelf, water_m=None))
    assert asked.level is Level.ASK
    assert any("nobody has looked" in said.because or "nearest water" in said.because for said in asked.verdicts)
    wet = chosen(one, plain_setting(shelf, water_m=0.0))
    mixes = [option.way.visit.recipe for option in wet.options if option.way.visit.recipe]
    mixes += [found.way.visit.recipe for found in wet.set_aside if found.open and found.way.visit.recipe]
    assert mixes
    for mix in mixes:
        assert mix.product in {None, "glyphosate-4-sl-aquatic", "triclopyr-amine-3-sl"}, mix  # None: asks for a label


def test_a_label_that_forbids_the_method_is_not_planned_with_by_it() -> None:
    sheet = hobbin().shelf[ESTER]
    forbids = retyped(sheet, methods__prohibited=("aerial", "basal bark"))
    choice = chosen(BUCKTHORN, plain_setting([forbids, hobbin().shelf[GLYPHOSATE]]))
    assert choice.way.visit.method != "basal_bark"
    assert any("forbids basal bark" in because for because in aside(choice, "basal_bark"))


def test_a_visit_costs_its_hours_and_what_is_poured_at_the_prices_kept() -> None:
    choice = at("bench/rhca3/2.5-5.1cm")
    assert choice.recipe and choice.recipe.carrier == "oil"
    reference = setting_of(hobbin()).reference
    wage = middle(reference.placeholders["wage"]).value
    prices = [reference.price_usd_per_gal[choice.recipe.formulation], reference.placeholders["carrier_oil"]]
    product, oil = (middle(one).value / 3.785411784 for one in prices)  # $/gal to $/L
    figures, share = choice.per_stem, choice.recipe.strength_pct / 100
    litre = share * product + (1 - share) * oil
    assert np.allclose(figures.cost, figures.minutes / 60 * wage + figures.mix_ml / 1000 * litre)


def test_figures_of_a_line_are_worlds_of_one_length_or_sure() -> None:
    for choice in plan().choices:
        if choice.option is None:
            continue
        figures = choice.per_stem
        for worlds in (figures.kill, figures.mix_ml, figures.minutes, figures.cost, figures.cost_per_kill):
            assert worlds.size in {1, 21}
            assert np.isfinite(worlds).all()
            assert (worlds >= 0).all()
        assert (figures.kill <= 1).all()
        assert np.allclose(figures.cost_per_kill, figures.cost / figures.kill)
