"""The whole plan: the same from the same, its sums weighed, its mixes lettered once."""

from dataclasses import replace

import numpy as np
import pytest

from rootcollar.choose import (
    Choice,
    Prescription,
    line_mix_ml,
    poured_ml,
    prescribe,
    sum_worlds,
    total_verdicts,
    unit_totals,
)
from rootcollar.kernel.doubt import best, sure
from rootcollar.kernel.verdict import Level
from rootcollar.label import Answer
from rootcollar.work import Project
from tests.choose.hobbin import DAY, at, hobbin, only, plan, retyped, setting_of, with_units


def told(prescription: Prescription) -> str:
    """Return everything a plan says, arrays by their bytes."""
    with np.printoptions(threshold=10_000, precision=17, floatmode="unique"):
        return repr(prescription)


def planned(project: Project) -> Prescription:
    """Return the plan of a project."""
    return prescribe(project.stands, setting_of(project))


def test_the_same_inputs_give_the_same_plan_to_the_last_bit() -> None:
    assert told(planned(hobbin())) == told(plan())


def test_the_order_in_which_stands_are_given_changes_nothing() -> None:
    shuffled = replace(hobbin(), stands=(*hobbin().stands[7::-1], *hobbin().stands[:7:-1]))
    assert sorted(one.key for one in shuffled.stands) == sorted(one.key for one in hobbin().stands)
    assert told(planned(shuffled)) == told(plan())


def test_another_stand_changes_nothing_on_another_unit() -> None:
    alone = planned(only(hobbin(), "ridge"))
    for one in alone.choices:
        assert repr(one.option) == repr(at(one.stand.key).option)


def test_lines_stand_in_key_order_one_a_stand() -> None:
    keys = [one.stand.key for one in plan().choices]
    assert keys == sorted(one.key for one in hobbin().stands)


def test_every_unit_is_in_the_order_once() -> None:
    assert sorted(key for key, _ in plan().order) == sorted({one.unit for one in hobbin().stands})


def test_every_mix_has_one_letter_and_no_letter_two_mixes() -> None:
    letters = plan().letters
    used = {one.recipe for one in plan().choices} | {
        one.fallback.option.way.visit.recipe for one in plan().choices if one.fallback
    }
    assert set(letters.values()) == used - {None}
    assert len(set(letters.values())) == len(letters)
    assert "I" not in letters and "O" not in letters


def test_letters_come_by_how_much_is_poured() -> None:
    poured = [
        poured_ml([one for one in plan().choices if one.recipe == recipe])[0] for recipe in plan().letters.values()
    ]
    assert poured == sorted(poured, reverse=True)


def test_a_unit_total_is_the_sum_of_its_lines() -> None:
    for total in unit_totals(plan().choices, setting_of(hobbin())):
        lines = [at(key) for key in total.lines]
        assert {one.stand.unit for one in lines} == {total.unit}
        mix_ml = sum(best(line_mix_ml(one.stand.stems, one.per_stem.mix_ml)) for one in lines)
        assert total.mix_ml[0] == pytest.approx(mix_ml)
        assert total.product_ml[0] == pytest.approx(mix_ml * total.strength_pct / 100)


def test_every_line_with_a_mix_is_in_exactly_one_total() -> None:
    keys = [key for total in unit_totals(plan().choices, setting_of(hobbin())) for key in total.lines]
    assert sorted(keys) == sorted(one.stand.key for one in plan().choices if one.recipe)


@pytest.fixture(scope="module")
def flooded() -> Prescription:
    """Return the plan of the bench with two hundred times the buckthorn: one product of triclopyr, in oil."""
    project = only(hobbin(), "bench")
    buckthorn = [one for one in project.stands if one.species == "rhca3"]
    return planned(replace(project, stands=tuple(replace(one, stems=one.stems * 200) for one in buckthorn)))


def test_a_plan_over_the_labels_limit_is_struck_and_says_how_much_may_be_poured(flooded: Prescription) -> None:
    oil = [one for one in flooded.choices if one.recipe and one.recipe.ingredient == "triclopyr"]
    assert len(oil) > 1
    for one in oil:
        assert one.level is Level.STOP
        stops = {said.rule: said for said in one.verdicts if said.level is Level.STOP}
        assert {"L12", "L13"} <= set(stops)
        assert all("pour no more than" in said.clear for said in stops.values())


def test_the_year_counts_what_was_put_on_before(flooded: Prescription) -> None:
    """applied.csv of the demo: 24 fl oz of a 4 lb ae/gal product on 0.6 ac, that is 0.75 lb ae, 1.25 lb ae/ac."""
    oil = at("bench/rhca3/2.5-5.1cm", flooded)
    said = next(one for one in oil.verdicts if one.rule == "L13" and one.level is Level.STOP)
    assert "1.25 lb ae/ac of it from other work" in said.because


def test_what_may_be_poured_keeps_to_the_limit() -> None:
    """Pouring just what the plan names clears the stop; a tenth more brings it back."""
    project = only(hobbin(), "ridge")
    stands = tuple(replace(one, stems=sure(float(one.stems[0]) * 200)) for one in project.stands)
    setting = setting_of(project)
    lines = prescribe(stands, setting).choices
    total = next(one for one in unit_totals(lines, setting) if one.ingredient == "triclopyr")
    pounds = float(total.product_ml[0]) / 1000 * total.ae_g_per_l / 453.59237
    per_acre = pounds / (total.treated_m2 / 4046.8564224)  # type: ignore[operator]
    for share, level in ((0.98, Level.OK), (1.02, Level.STOP)):
        scale = 6.0 / per_acre * share  # the sheet's most in one treatment is 6 lb ae/ac
        fewer = [replace(one, stand=replace(one.stand, stems=one.stand.stems * scale)) for one in lines]
        said = total_verdicts(fewer, setting)[total.lines[0]]
        word = max((one.level for one in said if one.rule == "L12" and "doubt" not in one.because), default=Level.OK)
        assert word is level


def test_a_limit_of_the_year_lowered_below_the_plan_strikes_it() -> None:
    project = only(hobbin(), "hollow")
    sheet = project.shelf["triclopyr-ester-4-ec"]
    tight = retyped(sheet, limits__per_year__amount=0.01)
    after = planned(replace(project, shelf={**project.shelf, sheet.key: tight}))
    lines = [one for one in after.choices if one.recipe and one.recipe.product == sheet.key]
    assert lines
    assert all(one.level is Level.STOP and any(v.rule == "L13" for v in one.verdicts) for one in lines)


def test_without_permission_every_line_of_the_unit_stops_and_no_other() -> None:
    after = planned(only(with_units(hobbin(), "ridge", permission=None), "ridge", "hollow"))
    for one in after.choices:
        assert (one.level is Level.STOP) == (one.stand.unit == "ridge")
    assert after.order[-1][0] == "ridge"


def test_permission_that_has_run_out_stops_too() -> None:
    permission = replace(hobbin().ground.units["ridge"].permission, until=DAY.replace(day=DAY.day - 1))  # type: ignore[type-var]
    after = planned(only(with_units(hobbin(), "ridge", permission=permission), "ridge"))
    assert all(one.level is Level.STOP and any(v.rule == "P02" for v in one.verdicts) for one in after.choices)


def test_a_history_nobody_calls_complete_asks() -> None:
    project = only(hobbin(), "ridge")
    after = planned(replace(project, history=replace(project.history, complete=None)))
    sprayed = [one for one in after.choices if one.recipe]
    assert sprayed
    assert all(one.level is Level.ASK and any(v.rule == "L13" for v in one.verdicts) for one in sprayed)


def test_a_fallback_whose_own_sum_passes_a_limit_is_set_aside_with_the_reason() -> None:
    """Glyphosate on stumps of the ridge with a yearly limit next to nothing; the oil stays as it was."""
    project = only(hobbin(), "ridge")
    sheet = project.shelf["glyphosate-3-sl"]
    tight = {**project.shelf, sheet.key: retyped(sheet, limits__per_year__amount=0.0001)}
    before, after = planned(project), planned(replace(project, shelf=tight))
    key = "ridge/loma6/2.5-5.1cm"
    had = at(key, before).fallback
    assert had is not None
    line = at(key, after)
    assert line.level < Level.ASK
    assert line.fallback is None
    lost = [one for one in line.set_aside if one.way.key == had.option.way.key]
    assert lost
    assert "most in a year" in lost[0].because


def test_one_answer_clears_the_question_on_its_unit_only() -> None:
    asks = {
        one.stand.key for one in plan().choices if any(v.rule == "L16" and v.level is Level.ASK for v in one.verdicts)
    }
    assert {key.split("/")[0] for key in asks} == {"brook-edge", "orchard-side"}
    yes = Answer("L16", "brook-edge", yes=True, by="a steward", on=DAY, note="")
    after = planned(replace(hobbin(), answers=(*hobbin().answers, yes)))
    left = {
        one.stand.key for one in after.choices if any(v.rule == "L16" and v.level is Level.ASK for v in one.verdicts)
    }
    assert left == {key for key in asks if not key.startswith("brook-edge/")}


def test_sums_of_nothing_are_nothing() -> None:
    assert sum_worlds([]).tolist() == [0.0]
    assert poured_ml([]).tolist() == [0.0]


def test_first_ways_and_fallbacks_of_one_ingredient_keep_to_the_limit_together() -> None:
    """Leaves sprayed with glyphosate, and stumps too, should the bark be wet: each alone keeps to the limit."""
    project = only(hobbin(), "ridge")
    setting = setting_of(project)
    lines = [one for one in planned(project).choices if one.stand.species in {"loma6", "rhca3"}]
    firsts = [one for one in lines if one.recipe and one.recipe.ingredient == "glyphosate"]
    backs = [
        replace(one, option=one.fallback.option)
        for one in lines
        if one.fallback and one.recipe and one.recipe.ingredient == "triclopyr"
    ]
    assert firsts and backs

    def pounds_per_acre(some: list[Choice]) -> float:
        kilos = sum(best(one.product_ml) / 1e6 * one.ae_g_per_l for one in unit_totals(some, setting))
        return kilos / 0.45359237 / (project.ground.units["ridge"].area_m2 / 4046.8564224)  # type: ignore[operator]

    alone = max(pounds_per_acre(firsts), pounds_per_acre(backs))
    together = pounds_per_acre(firsts) + pounds_per_acre(backs)
    assert alone < 0.95 * together
    key = "glyphosate-3-sl"
    limit = (alone + together) / 2
    tight = retyped(
        project.shelf[key], limits__per_application__amount=limit, limits__per_year__amount=limit,
    )  # fmt: skip
    after = prescribe([one.stand for one in lines], setting_of(replace(project, shelf={key: tight, **{
        name: sheet for name, sheet in project.shelf.items() if name != key
    }})))  # fmt: skip
    kept = [one for one in after.choices if one.fallback and one.recipe and one.recipe.ingredient == "triclopyr"]
    used = [
        one for one in kept if one.fallback and one.fallback.option.way.visit.recipe
        and one.fallback.option.way.visit.recipe.product == key
    ]  # fmt: skip
    still = [one for one in after.choices if one.recipe and one.recipe.product == key and one.level < Level.ASK]
    assert not (used and still)
