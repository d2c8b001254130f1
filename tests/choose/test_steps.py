"""Two visits, one that prepares and one that kills: their days, their cost, and never the first without the second."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.choose import Choice, Setting, Way, begun, holds_of, on_day, owed_steps, second_spans, step_days
from rootcollar.choose.figures import on_its_ground, per_stem
from rootcollar.choose.gates import plant_gate, weaknesses
from rootcollar.choose.judge import weighed_of
from rootcollar.choose.kill import kill_pool
from rootcollar.choose.kinds import ways_of_kind
from rootcollar.choose.months import in_season, year_of
from rootcollar.choose.stem_minutes import on_ground
from rootcollar.choose.steps import only_prepares, regrown
from rootcollar.choose.ways import ways_for
from rootcollar.kernel.days import holds, read_window
from rootcollar.label import Applied, History, Weigher
from rootcollar.reference import StepRow, find_species, load
from tests.choose.hobbin import DAY, at, chosen, hobbin, plain_setting, plan, stand, ways

KNOTWEED = "pocu6"
ROWS = load().steps


def stepped(plant: str) -> list[Way]:
    """Return the ways of two visits for a plant, in their seasons."""
    species = find_species(plant)
    return [in_season(one, species, load()) for one in ways_for(species, (), load()) if one.step]


def knotweed(**facts: object) -> Choice:
    """Return the choice for knotweed of 12 feet on the plain unit, with the demo's labels."""
    return chosen(stand(KNOTWEED, 0.5, 1, tall_ft=12), plain_setting(hobbin().shelf.values(), **facts))


def cut_on(day: str, species: str = KNOTWEED, method: str = "cut") -> Applied:
    """Return a row of applied.csv by which plants were cut or sprayed on the plain unit."""
    ingredient, acid_g = ("", 0.0) if method in {"cut", "mow"} else ("glyphosate", 10.0)
    return Applied(date.fromisoformat(day), "plain", ingredient, acid_g, 100.0, species=species, method=method)


def with_rows(setting: Setting, *rows: Applied, on: date = DAY) -> Setting:
    return replace(setting, history=History(rows, complete=True), on=on)


def test_tall_knotweed_is_cut_in_june_and_sprayed_after_two_months() -> None:
    """psu_pocu (read): cut two months before spraying, late July into September; too high to spray whole."""
    choice = knotweed()
    first, second = choice.way.treatment
    assert (first.method, first.recipe, first.months) == ("cut", None, frozenset({6}))
    assert second.method == "foliar"
    assert second.wait_days == 60
    assert second.months <= frozenset({7, 8, 9})
    found = step_days(choice.way, date(2027, 1, 1))
    assert found is not None
    assert found.first == (date(2027, 6, 1), date(2027, 6, 30))
    assert found.second == ((date(2027, 7, 31), date(2027, 9, 30)),)


def test_the_kill_is_that_of_the_second_step_and_the_work_that_of_both() -> None:
    setting = plain_setting(hobbin().shelf.values())
    choice = knotweed()
    spray = replace(choice.way, treatment=choice.way.treatment[1:], step=None)
    low = replace(choice.stand, height_m=1.0)
    species = load().species[KNOTWEED]
    alone = on_its_ground(spray, per_stem(spray, species, low, setting), low, on_ground(low, setting), setting)
    both = choice.per_stem
    assert np.mean(both.minutes) > np.mean(alone.minutes) * 1.2
    assert both.mean_cost > alone.mean_cost
    assert np.array_equal(both.side_m2, alone.side_m2)
    assert np.array_equal(both.mix_ml, alone.mix_ml)
    assert 0.3 < float(both.kill[0]) < 1


def test_trials_on_regrowth_count_whole_for_two_steps_and_less_for_one() -> None:
    one = ways("Japanese barberry", "foliar", "glyphosate")[0]
    two = next(way for way in stepped("Japanese barberry") if way.visit.recipe == one.visit.recipe)
    counted = [
        {row.row.key: row.weight for row in kill_pool(way, load().species["beth"], load()).rows} for way in (one, two)
    ]
    assert counted[0]["beth-foliar-regrowth"] < counted[1]["beth-foliar-regrowth"]


@pytest.mark.parametrize("facts", [{"wanted_beneath": True}, {"water_m": 0.0}, {"permission": None}])
def test_where_the_step_that_kills_is_stopped_nothing_is_cut_and_the_reason_is_named(facts: dict[str, object]) -> None:
    if "water_m" in facts:  # over water only a label for it may be used: leave those that are not
        shelf = [one for key, one in hobbin().shelf.items() if "aquatic" not in key and "amine" not in key]
        choice = chosen(stand(KNOTWEED, 0.5, 1, tall_ft=12), plain_setting(shelf, **facts))
    else:
        choice = knotweed(**facts)
    assert choice.option is None or choice.option.way.visit.recipe is not None
    shut = [one for one in choice.set_aside if one.way.step]
    assert shut
    for one in shut:
        assert one.because.startswith("nothing is cut that cannot then be killed: ")
        assert len(one.because) > len("nothing is cut that cannot then be killed: ")
        assert not one.open
    bare = [one for one in choice.set_aside if one.way.visit.method == "cut" and not one.way.step]
    assert bare
    assert not bare[0].open


def test_where_no_product_is_named_for_the_step_that_kills_there_is_no_first_step() -> None:
    species = load().species[KNOTWEED]
    none = replace(species, methods=tuple(one for one in species.methods if one.method != "foliar"))
    assert not [one for one in ways_for(none, (), load()) if one.step]
    cut = next(one for one in ways_for(none, (), load()) if one.visit.method == "cut")
    bare = replace(none, fails=(), resprouts_from_stump=replace(none.resprouts_from_stump, value=False))
    gate = plant_gate(cut, bare, stand(KNOTWEED, 0.5, 1), load())
    assert gate is not None
    assert "only prepares" in gate.because
    assert "psu_pocu" in gate.because


def test_no_plan_holds_a_first_step_alone() -> None:
    setting = plain_setting(hobbin().shelf.values())
    plants = sorted({key for row in ROWS for key in row.species})
    choices = [chosen(stand(key, 0.5, 1, tall_ft=tall), setting) for key in plants for tall in (4, 12)]
    for one in (*choices, *plan().choices):
        for option in one.options:
            species = load().species[one.stand.species]
            assert only_prepares(option.way, species, load()) is None
            assert option.way.step is None or (len(option.way.treatment) == 2 and option.way.visit.recipe is not None)
    assert any(one.option and one.way.step for one in choices), "no plan of two steps: nothing was checked"


def test_a_wait_that_no_day_of_the_year_can_keep_shuts_the_way_and_says_so() -> None:
    way = stepped(KNOTWEED)[0]
    row = way.step
    assert row is not None
    late = replace(row, first_windows=(read_window("09-01", "09-30"),))
    whole = replace(way, step=late, treatment=(replace(way.treatment[0], months=frozenset({9})), way.visit))
    found = in_season(whole, find_species(KNOTWEED), load())
    gate = plant_gate(found, find_species(KNOTWEED), stand(KNOTWEED, 0.5, 1), load())
    assert gate is not None
    assert "cannot follow in the same year" in gate.because
    assert "at least 60 days" in gate.because
    next_year = replace(late, next_windows=row.windows)
    met = in_season(replace(whole, step=next_year), find_species(KNOTWEED), load())
    assert plant_gate(met, find_species(KNOTWEED), stand(KNOTWEED, 0.5, 1), load()) is None
    assert second_spans(met, date(2026, 9, 1)) == ((date(2027, 7, 25), date(2027, 9, 30)),)


@given(st.sampled_from(ROWS), st.dates(date(2024, 1, 1), date(2032, 12, 31)))
def test_both_visits_lie_in_their_windows_months_and_wait(row: StepRow, on: date) -> None:
    for way in stepped(row.species[0]):
        assert way.step == row
        found = step_days(way, on)
        assert found is not None
        first, last = found.first
        assert on <= first <= last
        for start, end in second_spans(way, first):
            assert start <= end
            assert start >= first + timedelta(days=row.least_days)
            windows = row.windows if start.year == first.year else row.next_windows
            for day in (start, end):
                assert day.month in way.visit.months
                assert any(holds(one, day) for one in windows)
        for day in (first, last):
            assert day.month in way.treatment[0].months
            assert not row.first_windows or any(holds(one, day) for one in row.first_windows)
            assert second_spans(way, day)


def test_a_longest_wait_closes_the_second_step() -> None:
    way = stepped(KNOTWEED)[0]
    assert way.step is not None
    assert way.step.wait_days is not None
    span = replace(way.step.wait_days.value, high=70.0)
    short = replace(way, step=replace(way.step, wait_days=replace(way.step.wait_days, value=span)))
    assert second_spans(short, date(2027, 6, 1)) == ((date(2027, 7, 31), date(2027, 8, 10)),)


def test_the_months_of_two_steps_are_those_of_either_and_say_which() -> None:
    way = stepped(KNOTWEED)[0]
    year = year_of(way, find_species(KNOTWEED), load())
    assert {one.month for one in year if one.state != "shut"} == way.months
    june, december = year[5], year[11]
    assert "first step, cut" in june.because
    assert "neither step" in december.because


def test_the_rules_weigh_the_first_step_too() -> None:
    setting = plain_setting(hobbin().shelf.values())
    judge = Weigher(setting.answers, setting.on, setting.shelf)
    found = {one.way.key: one for one in ways_of_kind(stand(KNOTWEED, 0.5, 1, tall_ft=12), setting, judge)}
    two = next(one for one in found.values() if one.way.step and one.templates)
    one = found[two.way.key.removeprefix("june-cut-then-spray/")]
    assert [way.visit.method for way in weighed_of(two.way)] == ["foliar", "cut"]
    assert [way.visit.method for way in weighed_of(one.way)] == ["foliar"]
    assert len(two.templates) == 2


def test_what_a_first_step_may_spread_is_a_warning() -> None:
    said = " ".join(weaknesses(stepped(KNOTWEED)[0], find_species(KNOTWEED)))
    assert "the first step: pieces of stem and root sprout" in said
    assert "first step" not in " ".join(weaknesses(ways(KNOTWEED, "foliar")[0], find_species(KNOTWEED)))


def test_sprouts_are_sprayed_at_their_own_height() -> None:
    way = stepped("Amur honeysuckle")[0]
    tall = stand("Amur honeysuckle", 1, 2, tall_ft=14)
    assert regrown(tall, way).height_m == 1
    assert regrown(tall, replace(way, step=None)).height_m == tall.height_m


def test_on_a_day_of_the_first_step_only_the_first_is_done_and_no_mix_is_poured() -> None:
    setting, choice = plain_setting(hobbin().shelf.values()), knotweed()
    june = on_day(choice, date(2027, 6, 10), setting)
    assert june is not None
    assert june.way.methods == ("cut",)
    assert june.recipe is None
    assert not june.per_stem.mix_ml.any()
    assert on_day(choice, date(2027, 8, 20), setting) is None, "sprayed without the cut"
    assert on_day(choice, None, setting) is choice


def test_the_second_step_is_due_after_its_wait_and_not_before() -> None:
    choice = knotweed()
    setting = with_rows(plain_setting(hobbin().shelf.values()), cut_on("2027-06-10"))
    assert on_day(choice, date(2027, 6, 20), setting) is None
    assert on_day(choice, date(2027, 8, 8), setting) is None
    due = on_day(choice, date(2027, 8, 9), setting)
    assert due is not None
    assert due.way.methods == ("foliar",)
    assert due.recipe == choice.recipe
    assert on_day(choice, date(2027, 10, 1), setting) is None


def test_what_was_cut_and_not_yet_sprayed_is_owed() -> None:
    setting = plain_setting(hobbin().shelf.values())
    on = date(2027, 7, 1)
    (owed,) = owed_steps((), with_rows(setting, cut_on("2027-06-10"), on=on))
    assert (owed.unit, owed.species, owed.first) == ("plain", KNOTWEED, date(2027, 6, 10))
    assert owed.spans == ((date(2027, 8, 9), date(2027, 9, 30)),)
    assert "foliar is owed, 2027-08-09 to 2027-09-30" in owed.words
    assert not owed.missed
    done = with_rows(setting, cut_on("2027-06-10"), cut_on("2027-08-20", method="foliar"), on=date(2027, 9, 1))
    assert owed_steps((), done) == ()
    (late,) = owed_steps((), with_rows(setting, cut_on("2027-06-10"), on=date(2027, 11, 1)))
    assert late.missed
    assert "have passed" in late.words
    assert owed_steps((), with_rows(setting, cut_on("2027-06-10"), on=date(2027, 6, 1))) == (), "not done yet"
    assert owed_steps((), with_rows(setting, cut_on("2027-06-10", species="aial"), on=on)) == ()


def test_a_spray_before_the_cut_does_not_pay_what_is_owed() -> None:
    setting = plain_setting(hobbin().shelf.values())
    rows = (cut_on("2026-08-20", method="foliar"), cut_on("2027-06-10"))
    row = next(one for one in ROWS if KNOTWEED in one.species)
    assert begun("plain", KNOTWEED, row, History(rows, complete=True), date(2027, 7, 1)) == date(2027, 6, 10)
    assert len(owed_steps((), with_rows(setting, *rows, on=date(2027, 7, 1)))) == 1


def test_treated_tree_of_heaven_is_left_uncut_and_a_stump_is_not() -> None:
    species = find_species("tree-of-heaven")
    hack = next(one for one in ways_for(species, (), load()) if one.visit.method == "hack_squirt")
    days = {one.source: one.days.value.low for one in holds_of(hack, species, load())}
    assert days == {"rutgers_aial": 30, "COIMBRA": 365}
    for one in ways_for(species, (), load()):
        if one.visit.method == "cut_stump" or one.visit.recipe is None:
            assert holds_of(one, species, load()) == ()
    basal = ways("Amur honeysuckle", "basal_bark")[0]
    assert holds_of(basal, find_species("Amur honeysuckle"), load()) == ()


def test_a_line_of_one_visit_is_work_in_its_months_and_stays_as_it_is() -> None:
    line, setting = at("brook-edge/loma6/2.5-5.1cm"), plain_setting()
    assert line.way.step is None
    for month in range(1, 13):
        same = on_day(line, date(2027, month, 1), setting)
        assert same is (line if month in line.way.visit.months else None)


def test_two_visits_months_apart_are_no_fallback() -> None:
    setting = plain_setting(hobbin().shelf.values())
    for plant in sorted({key for row in ROWS for key in row.species}):
        choice = chosen(stand(plant, 0.5, 1, tall_ft=5), setting)
        assert choice.fallback is None or choice.fallback.option.way.step is None
