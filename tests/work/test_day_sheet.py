"""Page one: all a crew lead needs, nothing that must not be done as work, what is not known left to write."""

from dataclasses import replace
from datetime import date

import pytest

from rootcollar.choose import stems
from rootcollar.kernel.verdict import Level
from rootcollar.reference import load
from rootcollar.work import Packet, Person
from rootcollar.work import text as words
from rootcollar.work.crew import Crew
from tests.choose.hobbin import hobbin, only, plan, retyped, with_units
from tests.work.packets import hobbin_packet, made

RIDGE, BENCH, HOLLOW, BROOK, ORCHARD = "ridge", "bench", "hollow", "brook-edge", "orchard-side"


@pytest.mark.parametrize("unit", [RIDGE, BENCH, HOLLOW, "trail-loop"])
def test_every_clean_line_is_on_the_sheet_once_by_its_stems(unit: str) -> None:
    rows = hobbin_packet(unit).day.sizes
    lines = [one for one in plan().choices if one.stand.unit == unit and one.level < Level.ASK]
    counted = sum(float(row.stems.split(" ")[0].replace(",", "")) for row in rows)
    assert counted == pytest.approx(float(stems(lines)[0]))


@pytest.mark.parametrize("unit", [BROOK, ORCHARD])
def test_a_unit_that_is_held_has_no_work_and_says_why(unit: str) -> None:
    packet = hobbin_packet(unit)
    assert packet.day.sizes == ()
    assert packet.day.mixes == ()
    assert packet.cards == ()
    held = [one for one in packet.day.struck if not one.what.startswith("here, ")]
    for line in (one for one in plan().choices if one.stand.unit == unit):  # each is named, alike ones together
        plant = load().species[line.stand.species].common_name
        who = f"{plant} {words.size(line.stand.band_cm)}, {words.count(line.stand.stems)} stems"
        assert len([one for one in held if who in one.what]) == 1
    assert all(one.level == "ask" and one.because for one in held)
    assert packet.day.entry == "No herbicide on this sheet."


def test_a_way_the_label_strikes_here_is_named_so_that_nobody_does_it_out_of_habit() -> None:
    """Hobbin Wood: the ester's label keeps 25 ft from water, the brook edge comes to 19."""
    told = [one for one in hobbin_packet(BROOK).day.struck if one.what.startswith("here, ")]
    assert any("coat the base" in one.what and "25 ft" in one.because for one in told)


def test_roles_come_from_the_crew_and_an_empty_one_leaves_a_line_to_write_on() -> None:
    crew = Crew((Person("Ann Alder", frozenset({"lead"})), Person("Bo Birch", frozenset({"treat", "saw"}))))
    roles = dict(made(replace(only(hobbin(), RIDGE), crew=replace(hobbin().crew, people=crew.people))).day.roles)
    assert roles["Lead"].startswith("Ann Alder:")
    assert roles["Treat"].startswith("Bo Birch:")
    empty = dict(made(replace(only(hobbin(), RIDGE), crew=replace(hobbin().crew, people=()))).day.roles)
    assert empty["Lead"].startswith("____")


def test_every_target_stands_with_its_look_alikes() -> None:
    day = hobbin_packet(RIDGE).day
    species = {one.common_name: one for one in load().species.values()}
    assert {one.name for one in day.targets} == {"common buckthorn", "Amur honeysuckle"}  # the mulberry waits
    for one in day.targets:
        assert one.tells
        assert {name for name, _ in one.not_these} == {look.name for look in species[one.name].look_alikes}


def test_wear_is_what_the_labels_say_for_every_task_and_the_strictest_of_them() -> None:
    sheet = hobbin().shelf["glyphosate-3-sl"]
    project = only(hobbin(), RIDGE)
    masked = retyped(sheet, ppe__mixing=(*sheet.says("ppe.mixing"), "chemical-resistant apron"))
    rows = made(replace(project, shelf={**project.shelf, sheet.key: masked})).day.wear
    told = {task: items for tasks, items in rows for task in tasks.lower().split(", ")}
    assert {"mixing", "applying", "cleaning", "gloves of", "saw"} == set(told)  # saw: a fallback cuts
    assert "chemical-resistant apron" in told["mixing"]
    assert "chemical-resistant apron" not in told["applying"]
    plain = hobbin_packet(RIDGE).day.wear
    assert len([tasks for tasks, _ in plain if "mixing" in tasks.lower()]) == 1  # tasks alike stand in one row
    for item in sheet.says("ppe.applying"):
        assert item in plain[0][1]


def test_the_longest_entry_of_the_mixes_is_the_one_to_keep() -> None:
    """The demo's glyphosate says 4 hours, its ester 12."""
    assert "until 12 h" in hobbin_packet(RIDGE).day.entry
    sheet = hobbin().shelf["glyphosate-3-sl"]
    project = only(hobbin(), RIDGE)
    longer = retyped(sheet, entry__rei_hours=48)
    assert "until 48 h" in made(replace(project, shelf={**project.shelf, sheet.key: longer})).day.entry


def test_entry_hours_nobody_read_keep_people_out() -> None:
    project = only(hobbin(), RIDGE)
    shelf = {
        key: retyped(sheet, entry__rei_hours=None, entry__wps_box=False, entry__non_wps_entry=None)
        for key, sheet in project.shelf.items()
    }
    entry = made(replace(project, shelf=shelf)).day.entry
    assert "not known" in entry
    assert "keep out" in entry


def test_first_aid_of_the_labels_is_on_the_sheet() -> None:
    told = " ".join(hobbin_packet(RIDGE).day.first_aid)
    assert "Rinse" in told or "rinse" in told
    assert "Eyes:" in told and "Skin:" in told


def test_what_nobody_wrote_down_for_an_emergency_is_a_line_to_write_on() -> None:
    told = dict(hobbin_packet(RIDGE).day.emergency)
    assert told["Hospital"] == "" and told["Poison line"] == ""
    assert "Hobbin Lane" in told["Meet at"]
    project = only(hobbin(), RIDGE)
    known = replace(project, ground=replace(project.ground, emergency={"hospital": "St. Invented, 12 mi"}))
    assert dict(made(known).day.emergency)["Hospital"] == "St. Invented, 12 mi"


def test_a_unit_with_an_outline_is_drawn_and_one_without_leaves_room() -> None:
    assert len(hobbin_packet(RIDGE).day.sketch.outline) >= 4
    bare = made(with_units(only(hobbin(), RIDGE), RIDGE, polygon=None))
    assert bare.day.sketch.outline == ()
    assert bare.day.sizes  # the map is missing, not the work


def test_a_labels_distance_from_a_well_is_not_drawn_around_the_water() -> None:
    """The ester keeps 50 ft from wells and 25 ft from water; the sinkhole lies on no map."""
    project = only(hobbin(), "bench")
    keep_out = [told for told, _ in made(project, ("bench",)).day.sketch.keep_out]
    assert all("sinkhole" not in one for one in keep_out)
    wells = [feature for feature in project.ground.features if feature.kind == "well"]
    dry = replace(project, ground=replace(project.ground, features=tuple(wells)))
    assert all("surface water" not in told for told, _ in made(dry, ("bench",)).day.sketch.keep_out)


def test_a_line_that_shares_its_mix_with_others_has_the_letter_of_the_plan() -> None:
    packet = hobbin_packet(BENCH)
    letters = {one.letter for one in packet.day.mixes}
    assert {row.mix for row in packet.day.sizes if row.mix} <= letters
    assert letters == {one.letter for one in packet.cards}


def test_the_load_table_has_a_row_for_each_load_and_room_to_spare() -> None:
    day = hobbin_packet(BENCH).day
    assert [one.number for one in day.loads] == list(range(1, len(day.loads) + 1))
    assert {one.mix for one in day.loads} - {""} == {one.letter for one in day.mixes if one.total != "–"}
    assert day.loads[-1].mix == ""


def sprayed_in(day: date) -> Packet:
    """Return the bench's packet for a day."""
    return made(only(hobbin(), BENCH), (BENCH,), day)


def test_a_line_out_of_its_season_is_not_printed_as_work_on_that_day() -> None:
    """Buckthorn leaves are sprayed in fall (uwex_buckthorn, read), not in June."""
    june, october = sprayed_in(date(2026, 6, 10)), sprayed_in(date(2026, 10, 9))
    assert "Wet the leaves" in {row.verb for row in october.day.sizes}
    assert "Wet the leaves" not in {row.verb for row in june.day.sizes}
    told = [one for one in june.day.struck if "wet the leaves" in one.what]
    assert told and all("not in June" in one.because for one in told)
    foliar = [card for card in june.cards if "2 % in water" in card.title]
    assert not foliar


def test_a_fallback_out_of_its_season_is_not_printed_on_that_day() -> None:
    """Buckthorn stumps are treated from September to February; coating the base has no season."""
    june, october = sprayed_in(date(2026, 6, 10)), sprayed_in(date(2026, 10, 9))
    assert any("cut and treat the stump" in row.fallback for row in october.day.sizes)
    assert not any("cut and treat the stump" in row.fallback for row in june.day.sizes)


def test_the_day_is_printed_where_it_is_known() -> None:
    packet = sprayed_in(date(2026, 10, 9))
    assert packet.day.when == "Friday 9 October 2026"
    assert dict(packet.record_fields)["Date"] == "2026-10-09"
    assert hobbin_packet(BENCH).day.when == ""


def test_the_season_is_what_all_lines_of_the_sheet_share() -> None:
    assert hobbin_packet(BENCH).day.season == "September to November"


def test_sizes_are_those_of_the_stands() -> None:
    rows = hobbin_packet(HOLLOW).day.sizes
    assert words.size((1.27, 10.16)) in {row.size for row in rows}
