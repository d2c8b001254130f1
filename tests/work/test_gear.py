"""Gear: what each wears and who says so, what gets in the way, what goes along, and who does what."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from rootcollar.hazard import TASKS
from rootcollar.kernel.units import convert
from rootcollar.kernel.verdict import Level
from rootcollar.reference import load
from rootcollar.shelf import Lot
from rootcollar.work import Crew, Packet, Person, Project
from rootcollar.work.gear_aboard import largest_jug
from rootcollar.work.gear_people import people_part
from rootcollar.work.gear_wear import below_floor, eyes_asked, not_read, wear_rows
from rootcollar.work.mixes import DayMix, Product
from rootcollar.work.packet import Part
from tests.choose.hobbin import hobbin, only, plan, retyped, with_units
from tests.work.packets import hobbin_packet, made

RIDGE = "ridge"
REFERENCE = load()
DAY = date(2026, 9, 15)


def part(packet: Packet, title: str) -> Part:
    """Return a part of the gear page."""
    (page,) = [one for one in packet.pages if one.title == "Gear and crew"]
    return next(one for one in page.parts if one.title == title)


def texts(packet: Packet, title: str) -> str:
    """Return all that a part says."""
    return "\n".join(" ".join(row) for row in part(packet, title).rows)


def ridge(crew: Crew | None = None, **says: object) -> Project:
    """Return the ridge with other lines on every sheet, and another crew, working on its own land."""
    project = with_units(only(hobbin(), RIDGE), for_whom="own")
    shelf = {key: retyped(sheet, **says) for key, sheet in project.shelf.items()}
    return replace(project, shelf=shelf, crew=crew or project.crew)


def with_wear(*more: str, less: str = "") -> Crew:
    """Return the demo's crew with other things at hand."""
    return replace(hobbin().crew, wear=(hobbin().crew.wear or frozenset()) - {less} | set(more))


def jug(key: str = "triclopyr-ester-4-ec", **says: object) -> Product:
    """Return a product of the demo's shelf by itself, one mix of it; sheet None where `sheet` is said so."""
    recipe = next(one for one in plan().letters.values() if one.product == key)
    sheet = None if says.get("sheet", 0) is None else retyped(hobbin().shelf[key], **says)
    return Product("the jug", sheet, (DayMix("A", 0, recipe, "", (), ("basal_bark",), sheet),))


def people(*crew: Person, day: date = DAY, cutting: bool = True) -> dict[str, tuple[str, ...]]:
    """Return the rows of the people by name."""
    rows = people_part(Crew(crew), day, REFERENCE, cutting=cutting, mixing=True).rows
    return {row[0]: row[1:] for row in rows}


# What to wear.


def test_everything_a_label_asks_for_stands_in_its_tasks_column_as_the_labels_word() -> None:
    rows = part(hobbin_packet(RIDGE), "Wear, and who says so").rows
    for place, task in enumerate(TASKS, start=1):
        told = {item for row in rows if row[place].startswith("label") for item in row[0].split(", ")}
        wanted = {one for sheet in hobbin().shelf.values() for one in sheet.says(f"ppe.{task}")}
        assert told == wanted - {
            "protective eyewear"
        }  # only the amine asks for that, and it is not in the ridge's mixes


def test_what_only_some_labels_ask_for_names_their_mixes_and_the_rest_is_advice() -> None:
    asks = jug(ppe__mixing=("goggles",))
    other = replace(jug("glyphosate-3-sl"), mixes=(replace(jug("glyphosate-3-sl").mixes[0], letter="B"),))
    rows = {row[0]: row for row in wear_rows((asks, other), REFERENCE, Crew(), power=False, hand=False)}
    assert rows["goggles"][1] == "label A"
    assert any("protective eyewear" in items and row[1] == "advice" for items, row in rows.items())


def test_a_thing_that_the_crew_file_does_not_list_is_called_so_and_nobody_having_looked_is_not_none() -> None:
    def at_hand(crew: Crew) -> set[str]:
        return {row[5] for row in wear_rows((jug(),), REFERENCE, crew, power=False, hand=False) if "sleeves" in row[0]}

    assert at_hand(hobbin().crew) == {"listed ___"}
    assert at_hand(with_wear(less="long sleeves")) == {"NOT LISTED ___"}
    assert at_hand(Crew()) == {"look ___"}


def test_the_floor_by_category_is_named_and_a_label_typed_below_it_is_questioned_not_corrected() -> None:
    harsh = jug(hazard__category__skin="I")
    rows = wear_rows((harsh,), REFERENCE, Crew(), power=False, hand=False)
    floor = {item for row in rows if "floor" in row[1] for item in row[0].split(", ")}
    assert {"coveralls", "chemical-resistant footwear", "chemical-resistant apron"} <= floor
    told = list(below_floor(harsh, REFERENCE))
    assert len(told) == 3 and "coveralls" in told[0] and "the label wins" in told[0]
    assert list(below_floor(jug(), REFERENCE)) == []


def test_without_a_label_nothing_passes_for_a_list() -> None:
    bare = jug(sheet=None)
    assert "no label sheet" in next(not_read((bare,), REFERENCE))
    rows = wear_rows((bare,), REFERENCE, Crew(), power=False, hand=False)
    assert {cell for row in rows for cell in row[1:4]} == {"advice", "–"}
    assert eyes_asked((bare,), "mixing", REFERENCE)
    unread = jug(ppe__applying=None, hazard__category__eye=None, hazard__signal_word=None)
    told = " ".join(not_read((unread,), REFERENCE))
    assert "applying was not read" in told and "category of eye not typed" in told


def test_a_saws_wear_is_there_where_somebody_saws_and_only_then() -> None:
    def wear(*crew: Person) -> str:
        return texts(made(ridge(replace(hobbin().crew, people=crew))), "Wear, and who says so")

    ann = Person("Ann", frozenset({"treat", "cut"}))
    assert "leg protection" not in wear(ann) and "eye protection" in wear(ann)
    assert "leg protection" in wear(ann, Person("Bo", frozenset({"saw"})))


# Gloves and clashes.


def test_gloves_go_by_what_is_in_the_mix() -> None:
    rows = {row[0]: row for row in part(hobbin_packet(RIDGE), "Gloves").rows}
    water, oil = (next(row for name, row in rows.items() if word in name) for word in ("water-based", "oil"))
    assert "every material" in water[2]
    assert "never polyethylene" in oil[2] and "butyl: 10 min" in oil[2]
    assert "label page 3" in oil[1]


def test_a_label_that_names_only_butyl_for_an_oil_mix_is_a_clash_and_keeps_its_word() -> None:
    packet = made(ridge(with_wear("butyl gloves"), ppe__glove_types=("butyl",)))
    told = texts(packet, "What gets in each other's way")
    assert "the label names butyl" in told and "still binds" in told
    assert "the label names" not in texts(hobbin_packet(RIDGE), "What gets in each other's way")


def test_leather_heat_fog_and_masks_are_named_where_they_come_up_and_not_otherwise() -> None:
    plain = texts(hobbin_packet(RIDGE), "What gets in each other's way")
    assert "Leather" in plain and "Heat" not in plain and "fog" not in plain and "Respirator" not in plain
    wear = hobbin().shelf["triclopyr-ester-4-ec"].says("ppe.mixing")
    cleared = tuple(replace(one, respirator_until=DAY) for one in hobbin().crew.people)
    asks = ridge(
        replace(with_wear("half-mask respirator"), people=cleared),
        ppe__mixing=(*wear, "coveralls", "protective eyewear"),
        ppe__respirator="half-mask respirator",
    )
    told = texts(made(asks), "What gets in each other's way")
    assert all(word in told for word in ("Heat: coveralls", "fog", "fit test"))


# What goes along.


def test_wash_water_goes_by_heads_and_eye_flush_by_what_a_label_asks() -> None:
    water = dict(part(hobbin_packet(RIDGE), "Water").rows)
    assert water["Wash water"].startswith("9 gal for 3 who")
    assert "no label of the day asks" in water["Eye flush"]
    wear = hobbin().shelf["triclopyr-ester-4-ec"].says("ppe.mixing")
    eyes = dict(part(made(ridge(ppe__mixing=(*wear, "goggles"), crew=with_wear("goggles"))), "Water").rows)
    assert eyes["Eye flush, mixing"].startswith("6 gal") and "Eye flush, carried" not in eyes
    nobody = dict(part(made(ridge(replace(hobbin().crew, people=()))), "Water").rows)
    assert nobody["Wash water"].startswith("3 gal for each who")


def test_washington_has_figures_of_its_own() -> None:
    project = ridge(identity__states_ok=("WA",))
    packet = made(replace(project, ground=replace(project.ground, state="WA")))
    assert dict(part(packet, "Water").rows)["In Washington"].startswith("10 gal for one, 20 gal for two or more")
    assert "In Washington" not in dict(part(hobbin_packet(RIDGE), "Water").rows)


def test_the_spill_kit_takes_up_the_largest_jug_and_says_which() -> None:
    volume, whose = largest_jug((jug(identity__net_contents__amount=2.5), jug("glyphosate-3-sl")), REFERENCE)
    assert convert(volume, "mL", "gal") == pytest.approx(2.5) and "by its label" in whose
    volume, whose = largest_jug((jug(sheet=None), jug()), REFERENCE)
    assert convert(volume, "mL", "gal") == pytest.approx(5) and "not typed" in whose
    lots = (Lot("triclopyr-ester-4-ec", 100.0, holds_ml=9_000.0), Lot("basal oil", 19_000.0))
    assert largest_jug((jug(identity__net_contents__amount=None),), REFERENCE, lots[:1])[0] == 9_000
    assert largest_jug((jug(),), REFERENCE, lots) == (19_000, "the jug of basal oil in the shed")
    packet = made(ridge(identity__net_contents__amount=5))
    assert "absorbent for 5 gal (the jug of" in texts(packet, "Vehicle")


def test_a_classed_jug_is_held_against_its_packing_group() -> None:
    told = texts(made(ridge(transport__dot_class="Class 3", transport__packing_group="PG III")), "Transport class")
    assert "8 gal (packing group III)" in told and "THE JUG HOLDS MORE" not in told
    unknown = texts(made(ridge(transport__dot_class="Class 3")), "Transport class")
    assert "as for I" in unknown and "THE JUG HOLDS MORE" in unknown


def test_saw_rules_keep_others_two_lengths_off_and_the_sprayer_away_from_the_saw() -> None:
    told = texts(hobbin_packet(RIDGE), "Saw")
    assert "Nobody saws alone" in told and "two tree lengths" in told and "no sprayer" in told
    project = ridge()
    tall = replace(project, stands=tuple(replace(one, height_m=3.048) for one in project.stands))
    assert "20 ft for the tallest" in texts(made(tall), "Saw")


# People.


def test_whoever_only_saws_has_somebody_named_who_treats() -> None:
    rows = people(Person("Ann", frozenset({"treat"})), Person("Bo", frozenset({"saw"})))
    assert rows["Bo"][0] == "saws, never alone; Ann treats at once" and rows["Bo"][1] == "Cut"
    assert "NOBODY TREATS" in people(Person("Bo", frozenset({"saw"})))["Bo"][0]


def test_nobody_under_18_mixes_treats_or_runs_a_chainsaw() -> None:
    (row,) = people(Person("Cy", frozenset({"treat", "saw", "cut"}), minor=True)).values()
    assert row[0].startswith("cuts by hand") and row[1] == "Cut" and "CFR170-309" in row[2]


def test_a_person_of_whom_nothing_is_said_is_given_nothing_to_do() -> None:
    assert "no mix, no saw" in people(Person("Di"))["Di"][0]


@pytest.mark.parametrize(
    ("trained", "old"),
    [(date(2025, 9, 14), True), (date(2025, 9, 15), False), (date(2025, 10, 1), False), (date(2024, 12, 31), True)],
)
def test_training_is_old_after_twelve_calendar_months(trained: date, old: bool) -> None:
    (row,) = people(Person("Ann", frozenset({"treat"}), date(2030, 1, 1), trained_on=trained)).values()
    assert ("older than 12 months" in row[2]) is old


def test_a_licence_is_held_against_the_day_and_a_missing_date_is_asked_about() -> None:
    may = frozenset({"treat"})
    assert "RAN OUT on 2026-09-14" in people(Person("Ann", may, date(2026, 9, 14)))["Ann"][2]
    assert "runs until 2026-09-15" in people(Person("Ann", may, date(2026, 9, 15)))["Ann"][2]
    assert "no date" in people(Person("Ann", may))["Ann"][2]


def test_a_volunteer_and_a_reader_of_spanish_are_told_apart() -> None:
    told = texts(hobbin_packet(RIDGE), "People")
    assert "reads Spanish" in told and "volunteer" in told


def test_no_crew_leaves_lines_to_write_on() -> None:
    assert "____" in people_part(Crew(), DAY, REFERENCE, cutting=True, mixing=True).rows[0][0]


# The rule that goes with it.


def test_without_anybody_who_may_treat_no_cut_is_planned_and_without_a_crew_it_is_asked_about() -> None:
    def cut_levels(*crew: Person) -> set[Level]:
        packet_plan = _plan(ridge(replace(hobbin().crew, people=crew)))
        return {
            verdict.level
            for line in packet_plan.choices
            for option in line.options
            if option.way.visit.method in ("cut_stump", "vine_cut") and option.way.visit.recipe
            for verdict in option.verdicts
            if verdict.rule == "P06"
        }

    sawyer, treater = Person("Bo", frozenset({"saw"})), Person("Ann", frozenset({"treat"}))
    assert Level.STOP not in cut_levels(sawyer)  # a way that a rule stops is not chosen, nor a fallback
    assert cut_levels(sawyer) == set()
    assert cut_levels(sawyer, treater) == {Level.OK}
    assert cut_levels() <= {Level.ASK}


def _plan(project: Project):  # type: ignore[no-untyped-def]
    from rootcollar.choose import prescribe
    from tests.choose.hobbin import setting_of

    return prescribe(project.stands, setting_of(project))
