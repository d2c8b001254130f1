"""The packet as a whole: sources, rules, record, and the strip across every page."""

import re
from dataclasses import replace

import pytest

from rootcollar.choose import way_words
from rootcollar.kernel.verdict import Level
from rootcollar.reference import load
from rootcollar.site import Taken
from tests.choose.hobbin import hobbin, only, plan, with_units
from tests.work.packets import earnest, hobbin_packet, made

UNITS = ("ridge", "bench", "hollow", "trail-loop", "orchard-side", "brook-edge")


def test_every_source_named_anywhere_in_a_packet_is_cited_at_its_end() -> None:
    packet = hobbin_packet()
    text = repr(replace(packet, sources=()))
    named = {key for key in load().sources if re.search(rf"(?<![\w-]){re.escape(key)}(?![\w-])", text)}
    assert len(named) > 10
    assert named - {"plants"} == {key for key, _ in packet.sources}  # "plants" is printed as a word, not as a source
    assert all(cite for _, cite in packet.sources)


def test_every_line_of_a_unit_is_on_its_page_struck_and_held_ones_marked() -> None:
    packet = hobbin_packet()
    assert [page.name for page in packet.units] == [hobbin().ground.units[key].name for key, _ in plan().order]
    for page, (key, _) in zip(packet.units, plan().order, strict=True):
        lines = [one for one in plan().choices if one.stand.unit == key]
        assert len(page.lines) == len(lines)
        assert sorted(one.struck for one in page.lines) == sorted(
            {Level.STOP: "stop", Level.ASK: "ask"}.get(one.level, "") for one in lines
        )


def test_every_way_set_aside_is_on_the_units_page_with_its_reason() -> None:
    for page, (key, _) in zip(hobbin_packet().units, plan().order, strict=True):
        told = {(one.option.split(": ")[0], one.because) for one in page.set_aside}
        for line in (one for one in plan().choices if one.stand.unit == key):
            for one in line.set_aside:
                way = way_words(one.way)
                if one.per_kill is None:
                    assert (way, one.because) in told
                else:  # sizes of one way stand together, with the span of what they cost
                    costs = [re.findall(r"[0-9,]+\.[0-9]{2}", because) for words, because in told if words == way]
                    spans = [[float(cost.replace(",", "")) for cost in found] for found in costs if found]
                    assert any(min(span) - 0.01 <= one.per_kill <= max(span) + 0.01 for span in spans)


def test_the_facts_of_a_unit_tell_unknown_from_none() -> None:
    page = next(one for one in hobbin_packet().units if one.name == "Orchard side")
    assert dict(page.facts)["Kind of place"] == "not said"
    bare = made(with_units(only(hobbin(), "ridge"), "ridge", permission=None, well_m=None, wanted_beneath=None))
    facts = dict(bare.units[0].facts)
    assert facts["Permission"] == "none: a stop"
    assert facts["Well"] == "not looked for"
    assert facts["Wanted plants beneath"] == "not said"
    assert facts["Power line"] == "none there"


@pytest.mark.parametrize(
    ("purpose", "taken", "words"),
    [
        ("nature", (), "nature; the Non-Agricultural Use Requirements box governs"),
        ("produce", None, "timber or other plants for sale or research; the Agricultural Use Requirements box governs"),
        ("pasture", (Taken("hay"),), "pasture; the Agricultural Use Requirements box governs"),
        ("pasture", None, "pasture; which box governs is asked"),
        (None, (), "not said"),
    ],
)
def test_a_units_page_says_what_the_ground_is_worked_for_and_which_box_governs(
    purpose: str | None, taken: tuple[Taken, ...] | None, words: str
) -> None:
    packet = made(with_units(only(hobbin(), "ridge"), "ridge", purpose=purpose, taken=taken))
    assert dict(packet.units[0].facts)["Worked for"] == words


def test_open_questions_are_told_once_each() -> None:
    opening, *told = hobbin_packet().rules.questions
    assert opening.because.startswith("Do first: ") and "Missing now: " in opening.because
    questions = [(one.rule, one.because) for one in told]
    assert len(questions) == len(set(questions))
    asked = {(v.rule, v.because) for one in plan().choices for v in one.verdicts if v.level is Level.ASK}
    assert set(questions) == asked


def test_the_rules_page_gives_the_worst_word_of_each_rule() -> None:
    weighed = {number: word for number, _, word in hobbin_packet().rules.weighed}
    assert weighed["L05"] == "ask"  # nobody has said what class of place the orchard side is
    assert weighed["P01"] == "ok"
    assert hobbin_packet().rules.not_checked and hobbin_packet().rules.waits


def test_a_missing_permission_is_a_stop_on_the_rules_page() -> None:
    packet = made(with_units(only(hobbin(), "ridge"), "ridge", permission=None))
    assert {number: word for number, _, word in packet.rules.weighed} == {"P01": "stop"}
    assert packet.day.sizes == ()
    assert packet.cards == ()
    assert len(packet.day.struck) >= 1


def test_what_is_known_stands_on_the_record_and_the_rest_is_left_to_write() -> None:
    fields = dict(hobbin_packet("ridge").record_fields)
    assert fields["Property and unit"] == "Hobbin Wood (invented demo), The ridge"
    assert fields["State, county"] == "WI, Quillet County (invented)"
    assert fields["Permission by"] == "the Hobbin Wood trustees (invented)"
    assert fields["Registration numbers"] == "00000-00011; 00000-00014"
    assert set(fields["Active ingredients"].split("; ")) == {"triclopyr", "glyphosate"}
    assert fields["Targets"] == "Amur honeysuckle, common buckthorn"  # the mulberry waits for an answer
    assert fields["Area treated, of"] == "10 ac"
    for name in ("Date", "Start and end", "Total product used", "Air temperature, start / end", "Signed, date"):
        assert fields[name] == ""


def test_the_record_of_a_held_unit_claims_no_product() -> None:
    fields = dict(hobbin_packet("brook-edge").record_fields)
    assert fields["Products"] == "" and fields["Registration numbers"] == "" and fields["Targets"] == ""


def test_the_demo_says_on_every_page_that_it_is_none() -> None:
    assert "INVENTED LABEL, DEMO ONLY" in hobbin_packet().banner


def test_a_mix_without_a_sheet_is_called_unchecked_on_every_page() -> None:
    packet = made(replace(earnest(), shelf={}))
    assert packet.banner.startswith("NOT CHECKED AGAINST A LABEL")
    assert packet.cards == ()  # and no mix of it is printed as work


def test_a_property_with_typed_sheets_has_no_strip() -> None:
    packet = made(earnest())
    assert packet.banner == ""
    assert packet.day.sizes  # and there is work on it


def test_invented_sheets_are_refused_for_real_ground() -> None:
    project = replace(only(hobbin(), "ridge"), ground=replace(hobbin().ground, demo=False))
    packet = made(project)
    assert all(row.mix == "" for row in packet.day.sizes)
    assert not packet.cards


@pytest.mark.parametrize("unit", UNITS)
def test_the_foot_never_says_that_the_work_is_lawful(unit: str) -> None:
    packet = hobbin_packet(unit)
    assert "does not say that the work is lawful" in packet.foot
    assert not re.search(r"\b(is|are) (safe|legal|lawful)\b", repr((packet.day, packet.units, packet.cards)))


def test_cards_are_for_cleared_work_and_its_fallbacks_only() -> None:
    letters = {card.letter for card in hobbin_packet().cards}
    used = set()
    for one in plan().choices:
        if one.level < Level.ASK:
            used |= {one.recipe, one.fallback.option.way.visit.recipe if one.fallback else None}
    assert letters == {letter for letter, recipe in plan().letters.items() if recipe in used}


def test_a_cards_working_ends_in_its_amounts() -> None:
    for card in hobbin_packet("ridge").cards:
        names = [name for name, _ in card.working]
        assert "product in ml" in names
        assert all("=" in told or "[" in told for _, told in card.working)
