"""Spill, leftovers, top-up and signs: the label's own words, the day's volumes, and never above the label."""

import re
from dataclasses import replace
from datetime import date

import pytest

from rootcollar.reference import load
from rootcollar.shelf import SILENT
from rootcollar.work import Packet, Project
from rootcollar.work.packet import Page, Part
from rootcollar.work.printed import active_words, figure, quoted, registration
from tests.choose.hobbin import hobbin, only, plan, retyped
from tests.work.packets import hobbin_packet, made


def page(packet: Packet, title: str) -> Page:
    """Return the page of that title."""
    return next(one for one in packet.pages if one.title == title)


def part(packet: Packet, title: str, start: str) -> Part:
    """Return the part of a page whose title begins so."""
    return next(one for one in page(packet, title).parts if one.title.startswith(start))


def retype(project: Project, **says: object) -> Project:
    """Return the project with other lines on every sheet."""
    return replace(project, shelf={key: retyped(sheet, **says) for key, sheet in project.shelf.items()})


SPILL, LEFT, TOPUP, SIGNS = (
    "Spill and first aid",
    "Leftover, rinse water, empty jugs",
    "Top-up card",
    "Signs and notice",
)


def test_first_aid_is_quoted_as_printed_with_its_page() -> None:
    rows = dict(part(hobbin_packet("ridge"), SPILL, "First aid").rows)
    sheet = hobbin().shelf["triclopyr-ester-4-ec"]
    assert rows["In the eyes"] == f"“{sheet.says('hazard.first_aid.eyes')}” (label page 2)"
    assert rows["Label's number"] == "the label is silent"


def test_labels_that_say_different_first_aid_are_told_apart() -> None:
    project = only(hobbin(), "ridge")
    ester = retyped(project.shelf["triclopyr-ester-4-ec"], hazard__first_aid__swallowed="Drink nothing.")
    packet = made(replace(project, shelf={**project.shelf, ester.key: ester}))
    parts = [one for one in page(packet, SPILL).parts if one.title.startswith("First aid")]
    assert len(parts) == 2
    told = {one.title: dict(one.rows)["Swallowed"] for one in parts}
    assert told["First aid as the label prints it: mix B"] == "“Drink nothing.”"  # the ester's letter, ridge alone


def test_first_aid_nobody_read_is_said_as_not_read() -> None:
    packet = made(retype(only(hobbin(), "ridge"), hazard__first_aid__skin=None))
    assert dict(part(packet, SPILL, "First aid").rows)["On the skin"] == "not read on the label yet"


def test_numbers_stand_with_source_and_mark_and_unknown_ones_are_lines_to_write_on() -> None:
    rows = {who: (number, source) for who, number, _, source in part(hobbin_packet("ridge"), SPILL, "Call").rows}
    known = {one.name: one.figure for one in load().emergency["phone"]}
    for who, cited in known.items():
        assert rows[who] == (cited.value, f"{cited.source}, {cited.mark}")
    assert set(rows["Hospital"][0]) == {"_"}
    project = only(hobbin(), "ridge")
    told = made(replace(project, ground=replace(project.ground, emergency={"hospital": "Invented, 12 mi"})))
    assert "Invented, 12 mi" in part(told, SPILL, "Call").rows[0]


def test_units_within_the_distance_of_water_are_named() -> None:
    near = " ".join(text for (text,) in part(hobbin_packet("bench", "brook-edge"), SPILL, "Near water").rows)
    assert "Within 50 ft of water" in near and "Brook edge, 19 ft" in near
    assert "The ridge" not in " ".join(text for (text,) in part(hobbin_packet("ridge"), SPILL, "Near water").rows)


def test_the_kit_takes_up_the_fullest_sprayer() -> None:
    """The demo's crew carries 40 lb: 3.48 gal, so absorbent for 3 1/2."""
    assert any("3.5 gal" in item for (item,) in part(hobbin_packet("ridge"), SPILL, "Spill kit").rows)


def test_a_quantity_on_the_sheet_is_what_must_be_reported() -> None:
    packet = made(retype(only(hobbin(), "ridge"), transport__reportable_quantity_lb=250.0))
    assert all(row[1] == "250 lb" for row in part(packet, SPILL, "What must").rows[:-1])


def test_a_quarter_of_the_jug_three_times_comes_off_the_water() -> None:
    """40 CFR 156.146(b)(1): a quarter full, three times; of 2 1/2 gal it is 2 1/2 qt each and 1.875 gal in all."""
    packet = made(retype(only(hobbin(), "ridge"), identity__net_contents__amount=2.5))
    for _, held, each, total in part(packet, LEFT, "Water for each").rows:
        assert held == "2.5 gal"
        assert each.startswith("2 qt 16 fl oz") and total.startswith("1 gal 3 qt 16 fl oz")


def test_a_jug_sold_by_weight_has_no_rinse_volume() -> None:
    packet = made(retype(only(hobbin(), "ridge"), identity__net_contents__unit="lb"))
    assert all(row[1:] == ("volume not on the sheet", "–", "–") for row in part(packet, LEFT, "Water for each").rows)


def test_rinse_water_never_goes_into_an_oil_mix() -> None:
    rows = {row[0].split("  ")[0]: row[3] for row in part(hobbin_packet(), LEFT, "By mix").rows}
    assert rows["B, D, E, G"].startswith("is water of the next load")
    assert rows["C"].startswith("not into this mix")


def test_leftover_goes_where_the_label_lists_and_keeps_as_long_as_it_says() -> None:
    for _, keeps, goes, _ in part(hobbin_packet("ridge"), LEFT, "By mix").rows:
        assert keeps == "24 h (label page 12)"
        assert "“forests”" in goes and "never on “water and its banks”" in goes
    silent = made(retype(only(hobbin(), "ridge"), mixing__mixture_storage_hours=SILENT))
    assert all("use it the same day" in row[1] for row in part(silent, LEFT, "By mix").rows)


def test_storage_and_disposal_are_the_labels_or_said_as_not_read() -> None:
    rows = dict(part(hobbin_packet("ridge"), LEFT, "The label on its jug: TRI").rows)
    assert rows["Not colder than"] == "28 °F (label page 13)"
    assert rows["Rinse it"] == "“triple or pressure” (label page 13)"
    assert rows["Get rid of it"] == "read label page 13 before you do"
    bare = made(retype(only(hobbin(), "ridge"), storage__temp_f__low=None, storage__rinse=None))
    rows = dict(part(bare, LEFT, "The label on its jug: TRI").rows)
    assert rows["Not colder than"] == rows["Rinse it"] == "not read on the label yet"


def test_a_top_up_is_never_stronger_than_the_label() -> None:
    packet = hobbin_packet()
    letters = plan().letters
    seen = 0
    for one in (one for one in page(packet, TOPUP).parts if one.heads[-1:] == ("Strength",)):
        recipe = letters[one.title.split("  ")[0]]
        sheet = hobbin().shelf[recipe.product or ""]
        uses = [
            option.way.visit.method
            for line in plan().choices
            for option in line.options
            if option.way.visit.recipe == recipe
        ]
        tops = [sheet.says("concentration.high", method) for method in uses]
        for *_, strength in one.rows:
            assert float(strength.removesuffix(" %")) <= min(top for top in tops if top is not None) + 1e-9
            seen += 1
    assert seen >= 12


def test_a_top_up_of_a_gallon_is_the_percent_of_a_gallon() -> None:
    """20 % of 128 fl oz is 25.6; the nearest mark is 26, which is 20.3 %."""
    rows = {row[0]: row for row in part(hobbin_packet(), TOPUP, "C").rows}
    assert rows["1 gal"][1].startswith("26 fl oz")
    assert rows["1 gal"][3] == "20.3 %"


def test_the_most_on_an_acre_is_named_with_the_limits_it_was_taken_from() -> None:
    """By hand: 6 lb ae/ac over 4 lb ae/gal x 0.2 is 7.5 gal an acre."""
    rows = [row for row in part(hobbin_packet("ridge"), TOPUP, "Pour no more").rows if row[1] == "C"]
    assert rows and all(row[4] == "7.5 gal" for row in rows)
    assert rows[0][5] == "6 lb ae/ac in one treatment; 8 lb ae/ac in a year"


def test_a_limit_near_the_plan_is_printed_as_an_amount() -> None:
    tight = retype(only(hobbin(), "ridge"), limits__area_basis="site_acre", limits__per_year__amount=0.15)
    rows = {row[1]: row for row in part(made(tight), TOPUP, "Pour no more").rows}
    _, _, planned, most, _, _ = rows["B"]  # the ester's letter, ridge alone
    assert re.fullmatch(r"[\d.]+ gal", most)
    assert float(planned.split(" ")[0]) <= float(most.split(" ")[0]) <= 10 * float(planned.split(" ")[0])
    assert rows["A"][3] == "far above the plan"


def test_a_sign_names_every_product_that_may_be_poured_on_its_unit() -> None:
    packet = hobbin_packet()
    for sign in packet.signs:
        lines = [words for what, words in sign.lines if what == "Product"]
        assert lines and len(lines) == len(set(lines))
        numbers = [words for what, words in sign.lines if what == "EPA Reg. No."]
        assert len(numbers) == len(lines)
    places = [dict(sign.lines)["Place"].split(",")[0] for sign in packet.signs]
    assert places == [row for row in dict.fromkeys(one.name for one in packet.units) if row in places]


def test_a_sign_keeps_people_out_for_the_longest_hours_of_its_labels() -> None:
    assert dict(hobbin_packet("ridge").signs[0].lines)["No entry for"].startswith("12 h")
    project = only(hobbin(), "ridge")
    longer = retyped(project.shelf["glyphosate-3-sl"], entry__rei_hours=48)
    packet = made(replace(project, shelf={**project.shelf, longer.key: longer}))
    assert dict(packet.signs[0].lines)["No entry for"].startswith("48 h")


def test_hours_nobody_read_are_left_to_write_and_keep_people_out() -> None:
    packet = made(retype(only(hobbin(), "ridge"), entry__rei_hours=None))
    for sign in packet.signs:
        told = dict(sign.lines)["No entry for"]
        assert told.startswith("___") and "keep out until then" in told


def test_a_sign_has_times_to_write_in_and_the_day_where_it_is_known() -> None:
    lines = dict(hobbin_packet("ridge").signs[0].lines)
    assert lines["Telephone"] == lines["Take down after"] == ""
    assert lines["Work"].count("___") >= 3 and lines["Entry from / Entrada desde"].count("___") >= 2
    dated = made(only(hobbin(), "ridge"), day=date(2026, 10, 9))
    assert dict(dated.signs[0].lines)["Work"].startswith("2026-10-09, began ___")


def test_the_table_of_posting_is_what_the_reference_holds_with_its_date() -> None:
    table = part(hobbin_packet("ridge"), SIGNS, "Ask your state")
    assert [row[0] for row in table.rows] == [one.place for one in load().posting]
    assert max(one.seen_on for one in load().posting).isoformat() in table.note
    assert all(row[4] == f"{one.source}, {one.mark}" for row, one in zip(table.rows, load().posting, strict=True))


def test_what_a_label_wants_told_and_posted_is_said() -> None:
    packet = made(retype(only(hobbin(), "ridge"), entry__tell_and_post=True))
    assert all("people must be told and signs posted" in words for _, words in part(packet, SIGNS, "What the").rows)


@pytest.mark.parametrize("unit", ["ridge", "bench", "hollow"])
def test_no_paper_says_that_work_is_safe_or_lawful(unit: str) -> None:
    packet = hobbin_packet(unit)
    assert packet.pages and packet.tags and packet.signs
    assert not re.search(r"\b(safe|legal|lawful)\b", repr((packet.pages, packet.tags, packet.signs)).lower())


def test_a_product_without_a_sheet_is_a_line_to_write_on_and_says_so() -> None:
    assert registration(None) == ""
    assert quoted(None, "storage.rinse") == figure(None, "storage.temp_f.low") == "no label sheet typed: read the label"
    assert active_words(None, "triclopyr") == "triclopyr"


def test_a_minimum_risk_product_has_no_number_and_a_special_label_has_two() -> None:
    sheet = hobbin().shelf["triclopyr-ester-4-ec"]
    assert registration(retyped(sheet, identity__registration="exempt_25b")).startswith("none")
    special = retyped(sheet, identity__epa_reg_no="99999-1", identity__sln_no="WI-200001")
    assert registration(special) == "99999-1, WI-200001"
