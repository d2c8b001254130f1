"""What can be weighed only when a day is prepared, and a packet whose mix has two products."""

from dataclasses import replace
from functools import cache

import pytest

from rootcollar.choose import Mixed, Own, prescribe
from rootcollar.kernel.verdict import Level, Verdict
from rootcollar.shelf import Lot, Sheet, Stock
from rootcollar.work import Packet, PacketAsked, Project, clear, day_verdicts
from rootcollar.work.day_rules import load_hours
from tests.choose.hobbin import DAY, hobbin, only, plan, retyped, setting_of
from tests.choose.test_partner import FIRST, SECOND, first, second
from tests.work.packets import made

GAL_ML = 3785.411784


def said(project: Project) -> dict[str, set[Verdict]]:
    """Return what the rules of the day say of a project, by rule."""
    setting = setting_of(project)
    whole = prescribe(project.stands, setting)
    units = tuple(key for key, _ in whole.order)
    found: dict[str, set[Verdict]] = {}
    asked = PacketAsked(
        clear(whole.choices, setting), whole.choices, units, whole, setting, project.crew, DAY, DAY, project.stock
    )
    for one in day_verdicts(asked):
        found.setdefault(one.rule, set()).add(one)
    return found


def with_sheets(**says: object) -> Project:
    """Return the ridge with other lines on every label."""
    project = only(hobbin(), "ridge")
    return replace(project, shelf={key: retyped(one, **says) for key, one in project.shelf.items()})


def worst(project: Project, rule: str) -> Level:
    """Return the worst word of a rule of the day."""
    return max(one.level for one in said(project)[rule])


def test_a_load_is_worked_with_in_its_share_of_the_time() -> None:
    assert load_hours(10.0, 4.0, 8.0) == pytest.approx(5.0)


def test_the_demo_mixes_no_more_than_is_used_in_time_and_carries_nothing_over_the_limits() -> None:
    found = said(only(hobbin(), "ridge"))
    assert {one.level for rule in ("L48", "L51") for one in found[rule]} == {Level.OK}


def test_a_mix_that_may_stand_minutes_only_warns() -> None:
    assert worst(with_sheets(mixing__mixture_storage_hours=0.01), "L48") is Level.WARN


def test_a_drum_of_a_classed_product_warns_by_the_shed_and_else_by_the_label() -> None:
    drum = with_sheets(transport__dot_class="9", transport__packing_group="III")
    assert worst(replace(drum, stock=None), "L51") is Level.OK
    lots = tuple(Lot(key, GAL_ML, holds_ml=15 * GAL_ML) for key in drum.shelf)
    assert worst(replace(drum, stock=Stock(lots)), "L51") is Level.WARN
    printed = with_sheets(
        transport__dot_class="9", identity__net_contents__amount=15.0, identity__net_contents__unit="gal"
    )
    assert worst(replace(printed, stock=None), "L51") is Level.WARN


def test_many_jugs_of_classed_products_are_too_much_for_one_vehicle() -> None:
    project = with_sheets(transport__dot_class="9", transport__packing_group="III")
    lots = tuple(
        Lot(key, 5 * GAL_ML, lot=str(number), holds_ml=5 * GAL_ML) for key in project.shelf for number in range(9)
    )
    (warned,) = {one for one in said(replace(project, stock=Stock(lots)))["L51"] if one.level is Level.WARN}
    assert "a vehicle may carry 440 lb" in warned.because


def test_what_the_rules_say_of_the_day_stands_on_the_gear_page_and_among_the_rules() -> None:
    packet = made(with_sheets(mixing__mixture_storage_hours=0.01), ("ridge",))
    (gear,) = (one for one in packet.pages if one.title == "Gear and crew")
    (part,) = (one for one in gear.parts if one.title == "What the rules say of the day")
    assert any(words.startswith("warn: a load of") and words.endswith("[L48]") for (words,) in part.rows)
    assert ("L48", "warn") in [(number, level) for number, _, level in packet.rules.weighed]
    quiet = made(only(hobbin(), "ridge"), ("ridge",), prescription=None)
    assert not [one for page in quiet.pages for one in page.parts if one.title == "What the rules say of the day"]


def both() -> dict[str, Sheet]:
    """Return the labels of two products that name each other."""
    return {FIRST: first(), SECOND: second()}


@cache
def mixed_packet() -> Packet:
    """Return the ridge's packet with a second product in every mix; its mulberry would take the second by itself."""
    project = only(hobbin(), "ridge")
    stands = tuple(one for one in project.stands if one.species != "moal")
    own = Own(mixed=(Mixed(FIRST, SECOND, 1.0),))
    return made(replace(project, stands=stands, shelf=both(), stock=None, own=own), ("ridge",))


def test_a_mix_card_pours_both_products_each_by_its_name() -> None:
    for card in mixed_packet().cards:
        for _, steps, true in card.batches:
            assert sum(f"of {FIRST}." in one or f"of {SECOND}." in one for one in steps) == 2
            assert " % + " in true
        assert any(SECOND in one for one in card.order)
        assert SECOND in card.title and SECOND in card.buy[0][0]


def test_shopping_tags_gear_and_leftovers_hold_both_products() -> None:
    packet = mixed_packet()
    names = [one.product for one in both().values()]
    for title in ("Shopping", "Gear and crew", "Leftover, rinse water, empty jugs", "Signs and notice"):
        page = next(one for one in packet.pages if one.title == title)
        assert all(name in repr(page) for name in names), title
    for tag in packet.tags:
        if tag.letter:
            assert [value for what, value in tag.lines if what == "Product"] == names
            assert len([what for what, _ in tag.lines if what == "EPA Reg. No."]) == len(names)


def test_the_record_names_both_products_their_numbers_and_the_departures() -> None:
    fields = dict(mixed_packet().record_fields)
    assert fields["Registration numbers"] == "00000-00014; 00000-00099"
    assert fields["Active ingredients"] == "glyphosate; triclopyr"
    assert f"+ 1 % {SECOND}" in fields["Strengths"]
    assert "the label's weakest is" in fields["Departures to record"]
    assert "[FIFRA 2(ee)(1)]" in fields["Departures to record"]


def test_the_longer_entry_of_both_labels_holds() -> None:
    shelf = {FIRST: first(entry__rei_hours=4.0), SECOND: second(entry__rei_hours=48.0)}
    project = replace(only(hobbin(), "ridge"), shelf=shelf, stock=None, own=Own(mixed=(Mixed(FIRST, SECOND, 1.0),)))
    packet = made(project, ("ridge",))
    assert "48 h" in packet.day.entry
    assert all("No entry until 48 h after the last load." in card.cautions for card in packet.cards)


def test_a_label_that_gives_four_hours_of_entry_is_followed_though_the_federal_default_is_twelve() -> None:
    shelf = {FIRST: first(entry__rei_hours=4.0)}
    packet = made(replace(only(hobbin(), "ridge"), shelf=shelf, stock=None), ("ridge",))
    assert "4 h" in packet.day.entry and "12 h" not in packet.day.entry


def test_a_plan_that_keeps_to_its_labels_has_no_departure_to_record() -> None:
    packet = made(only(hobbin(), "ridge"), ("ridge",), prescription=None)
    assert dict(packet.record_fields)["Departures to record"] == "none planned"
    assert all(choice.recipe is None or choice.recipe.partner is None for choice in plan().choices)


def test_a_fertiliser_in_the_mix_is_poured_bought_tagged_and_recorded_by_its_name() -> None:
    shelf = {FIRST: first(mixing__tank_mix_forbidden=(), mixing__tank_mix_allowed_named=())}
    own = Own(mixed=(Mixed(FIRST, "ammonium sulfate", 1.0, fertiliser=True),))
    packet = made(replace(only(hobbin(), "ridge"), shelf=shelf, stock=None, own=own), ("ridge",))
    assert packet.cards and all("of ammonium sulfate." in repr(card.batches) for card in packet.cards)
    shopping = next(one for one in packet.pages if one.title == "Shopping")
    assert [row[0] for row in shopping.parts[0].rows].count("ammonium sulfate") == 1
    assert all("ammonium sulfate, a fertiliser" in repr(tag.lines) for tag in packet.tags if tag.letter)
    assert "[FIFRA 2(ee)(4)]" in dict(packet.record_fields)["Departures to record"]
