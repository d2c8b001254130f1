"""Hobbin Wood is what it says it is: invented, 96 acres, six units side by side, one stop and a few asks."""

from dataclasses import fields
from datetime import date
from itertools import combinations
from pathlib import Path

import pytest
from shapely import Polygon

from rootcollar.exchange import read_folder, write_demo
from rootcollar.exchange.start import DEMO_DAY
from rootcollar.kernel.units import convert
from rootcollar.kernel.verdict import Level
from rootcollar.label import Facts, Planned, place_facts, settle, template_facts, weigh_place
from rootcollar.mix.recipe import Recipe
from rootcollar.shelf import Sheet, actives, ae_g_per_l, carriers, is_placeholder, strength_range, unread
from rootcollar.site import flat
from rootcollar.work.project import Project
from rootcollar.work.standing import dead_standing

LEFT_UNREAD = {"limits.max_applications_per_year", "weather.rain_free_hours"}


@pytest.fixture(scope="module")
def wood(tmp_path_factory: pytest.TempPathFactory) -> Project:
    path = Path(tmp_path_factory.mktemp("demo")) / "wood"
    write_demo(path, DEMO_DAY)
    return read_folder(path)


def test_it_says_that_it_is_a_demo(wood):
    assert wood.ground.demo
    assert "invented" in wood.ground.name
    assert wood.ground.notes == ()


def test_six_units_come_to_ninety_six_acres_and_do_not_overlap(wood):
    units = wood.ground.units.values()
    assert len(units) == 6
    assert convert(sum(unit.area_m2 for unit in units), "m2", "ac") == pytest.approx(96, abs=0.05)
    shapes = {unit.key: Polygon(flat(unit.polygon, (-89.9, 43.3))) for unit in units}
    assert all(one.intersection(other).area < 1 for one, other in combinations(shapes.values(), 2))
    together = shapes.popitem()[1]
    for one in shapes.values():
        together = together.union(one.buffer(0.2))
    assert together.geom_type == "Polygon" and not together.interiors


def test_only_the_brook_edge_comes_within_25_feet_of_water(wood):
    near = [unit.key for unit in wood.ground.units.values() if convert(unit.water_m, "m", "ft") < 25]
    assert near == ["brook-edge"]
    assert wood.ground.units["brook-edge"].water_m > 0


def test_only_the_orchard_side_leaves_something_to_ask_of_the_ground(wood):
    asked = {
        (unit.key, line.name)
        for unit in wood.ground.units.values()
        for line in fields(unit)
        if getattr(unit, line.name) is None and line.name != "wanted_bare"  # it opens a way; nothing asks for it
    }
    assert asked == {("orchard-side", "site_class"), ("orchard-side", "worked_m2"), ("brook-edge", "worked_m2")}


def test_the_ground_holds_what_the_story_tells(wood):
    told = [(one.kind, one.own) for one in wood.ground.features]
    assert told.count(("water", True)) == 2
    assert (told.count(("well", True)), told.count(("well", False))) == (1, 1)
    assert told.count(("keep", True)) == 5
    assert (told.count(("trail", True)), told.count(("neighbour", False)), told.count(("gate", True))) == (1, 1, 1)


def test_all_six_plants_are_there_with_doubt_on_some(wood):
    assert {stand.species for stand in wood.stands} == {"rhca3", "loma6", "romu", "moal", "ambr7", "alpe4"}
    assert {stand.unit for stand in wood.stands} == set(wood.ground.units)
    assert {stand.stems.size for stand in wood.stands} == {1, 1001}


def test_every_label_is_invented_and_says_so(wood):
    assert len(wood.shelf) == 4
    for sheet in wood.shelf.values():
        assert "INVENTED LABEL, DEMO ONLY" in sheet.product
        assert is_placeholder(sheet.says("identity.epa_reg_no"))
    assert len({sheet.says("identity.epa_reg_no") for sheet in wood.shelf.values()}) == 4


def test_the_labels_are_read_but_for_two_lines_left_to_meet_an_ask(wood):
    left = {path for sheet in wood.shelf.values() for method in sheet.methods for path in unread(sheet, method)}
    assert left == LEFT_UNREAD


def test_the_figures_of_each_label_agree_with_each_other(wood):
    for sheet in wood.shelf.values():
        (active,) = actives(sheet)
        density = sheet.says("formulation.density_lb_per_gal")
        assert active.ai_percent + sheet.says("formulation.other_ingredients_percent") == pytest.approx(100)
        assert density * active.ae_percent / 100 == pytest.approx(active.ae_lb_per_gal, rel=0.01)
        assert density * active.ai_percent / 100 == pytest.approx(active.ai_lb_per_gal, rel=0.01)


def test_the_crew_has_the_wear_that_the_labels_name(wood):
    tasks = ("mixing", "applying", "cleaning", "early_entry")
    named = {item for sheet in wood.shelf.values() for task in tasks for item in sheet.says(f"ppe.{task}")}
    assert named <= wood.crew.wear
    assert len(wood.crew.people) == 4
    assert {one for person in wood.crew.people for one in person.may} == {"lead", "treat", "saw", "cut", "supervise"}


def test_the_crew_has_somebody_who_saws_and_must_not_treat_and_one_who_reads_spanish(wood):
    assert [one.name for one in wood.crew.people if one.cuts and not one.treats] == ["Wendell Quickset"]
    assert [one.name for one in wood.crew.people if one.language == "es"] == ["Juniper Marrowby"]
    assert wood.crew.treaters == 3


def test_an_earlier_application_and_answers_with_names_are_on_record(wood):
    *put_on, girdled = sorted(wood.history.rows, key=lambda one: not one.ingredient)
    assert len(put_on) == 2 and {one.product for one in put_on} <= set(wood.shelf) and wood.history.complete
    assert (girdled.method, girdled.ae_g, girdled.ingredient) == ("girdle", 0.0, "")
    assert wood.answers


def test_trees_that_were_killed_standing_still_stand_on_the_ridge_alone(wood):
    still = {unit: dead_standing(unit, wood.history, DEMO_DAY) for unit in wood.ground.units}
    assert {unit: [one.stems for one in rows] for unit, rows in still.items() if rows} == {"ridge": [12]}


def test_the_labels_stop_work_at_the_brook_and_ask_at_the_orchard_and_nowhere_else(wood):
    said = [
        (unit.key, one)
        for unit in wood.ground.units.values()
        for sheet in wood.shelf.values()
        for method in sheet.methods
        for one in weigh_place(place_facts(_line(wood, sheet, method), unit, on=date(2027, 1, 15)), unit.key)
    ]
    stops = {(unit, one.rule) for unit, one in said if one.level is Level.STOP}
    assert stops == {("brook-edge", "L37a")}
    settled = [(unit, settle(one, wood.answers, on=DEMO_DAY)) for unit, one in said]
    assert {(unit, one.rule) for unit, one in settled if one.level is Level.ASK} == {("orchard-side", "L05")}
    assert sum(one.level is Level.ASK for _, one in said) > sum(one.level is Level.ASK for _, one in settled)


def _line(wood: Project, sheet: Sheet, method: str) -> Facts:
    low, _ = strength_range(sheet, method)
    (active,) = actives(sheet)
    recipe = Recipe(sheet.key, "", active.common_name, ae_g_per_l(active), low, carriers(sheet, method)[-1])
    planned = Planned(method, ("common buckthorn",), recipe, (5.08, 10.16), height_m=1.4)
    people = wood.crew.people
    return template_facts(planned, sheet, state="WI", demo=True, wear=frozenset(), people=people)


def test_no_telephone_number_is_made_up(wood):
    assert wood.ground.emergency["hospital"] == wood.ground.emergency["poison line"] == ""
    assert not any(sheet.says("hazard.first_aid.emergency_phone") for sheet in wood.shelf.values())
