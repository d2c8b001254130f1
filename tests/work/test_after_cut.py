"""What is done with what is cut: said for every way that cuts, on the unit's page, the day sheet and the gear list."""

from __future__ import annotations

from dataclasses import replace

import pytest

from rootcollar.choose import Option
from rootcollar.reference import find_tongue, load
from rootcollar.work.after_cut import CUTTING, after_cut, bags_for
from rootcollar.work.packet import Packet
from tests.choose.hobbin import at, hobbin, plain_setting, plan, retyped, setting_of, stand, ways
from tests.work.packets import hobbin_packet


def option(plant: str, method: str, fruiting: bool | None) -> Option:
    """Return an option of the demo with another way, plant and fruit."""
    known = at("brook-edge/loma6/2.5-5.1cm").option
    assert known is not None
    one = replace(stand(plant, 1, 2), fruiting=fruiting)
    return replace(known, stand=one, way=ways(plant, method)[0])


def said(plant: str, method: str, fruiting: bool | None = True) -> str:
    return " ".join(after_cut(option(plant, method, fruiting), plain_setting()))


@pytest.mark.parametrize("method", ["basal_bark", "foliar", "hack_squirt"])
def test_a_way_that_cuts_nothing_down_has_nothing_to_say(method: str) -> None:
    plant = "white mulberry" if method == "hack_squirt" else "Amur honeysuckle"
    assert said(plant, method) == ""


@pytest.mark.parametrize(("plant", "method"), [("Amur honeysuckle", "cut_stump"), ("porcelainberry", "vine_cut")])
def test_fruit_is_bagged_first_looked_for_where_nobody_did_and_not_named_where_there_is_none(
    plant: str, method: str
) -> None:
    assert said(plant, method, True).startswith("Bag fruit")
    assert said(plant, method, None).startswith("Nobody has said whether it fruits: look first. Bag fruit")
    assert "fruit" not in said(plant, method, False)


def test_rooting_pieces_come_off_the_soil() -> None:
    assert "PNW-IVY" in said("English ivy", "vine_cut", False)
    assert "lifted off the soil" in said("multiflora rose", "cut_stump", False)
    assert "off the soil" not in said("Amur honeysuckle", "cut_stump", False)


def test_treated_wood_is_not_burned_and_the_label_is_asked() -> None:
    line = at("brook-edge/loma6/2.5-5.1cm")
    assert line.option is not None
    silent = " ".join(after_cut(line.option, setting_of(hobbin())))
    assert "not burned and not taken as firewood" in silent
    note = "not for wood that is burned"
    shelf = {key: retyped(one, food_and_stock__firewood_note=note) for key, one in hobbin().shelf.items()}
    told = replace(hobbin(), shelf=shelf)
    assert "“not for wood that is burned”" in " ".join(after_cut(line.option, setting_of(told)))
    assert "firewood" not in said("Amur honeysuckle", "pull")


def test_every_cutting_way_has_a_habit_of_its_own() -> None:
    named = {method for one in load().practice.values() for method in one.methods}
    assert named >= CUTTING


def test_bags_go_along_for_lines_that_cut_and_fruit() -> None:
    setting = setting_of(hobbin())
    bears, none = at("brook-edge/loma6/2.5-5.1cm"), at("brook-edge/rhca3/1.3-2.5cm")
    (one,) = bags_for([bears, none], setting)
    assert "Amur honeysuckle" in one and "90 stems" in one
    unknown = replace(none, stand=replace(none.stand, fruiting=None))
    assert "nobody has said" in bags_for([unknown], setting)[0]


def two_units() -> Packet:
    return hobbin_packet("bench", "brook-edge")


def test_the_packet_says_it_on_the_units_page_the_day_sheet_and_the_gear_list() -> None:
    packet = two_units()
    lines = [one for one in packet.units[0].lines if not one.struck]
    assert any("Bag fruit" in " ".join(one.after) for one in lines)
    assert "bag fruit first" in packet.day.leftovers
    gear = next(one for one in packet.pages if one.title == "Gear and crew")
    assert any(one.title == "For what is cut" for one in gear.parts)


def test_both_languages_have_the_words() -> None:
    assert find_tongue("en").say("left.cut") != find_tongue("es").say("left.cut")


def test_a_line_that_is_left_or_held_says_nothing_of_it() -> None:
    for unit in two_units().units:
        assert all(not one.after for one in unit.lines if one.struck)
    assert any(one.is_work for one in plan().choices)
