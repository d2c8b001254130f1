"""What a person does against a source's advice stands on page one and on the unit's page, with name and date."""

from dataclasses import replace
from datetime import date

from rootcollar.choose import Pick, Prescription, prescribe
from rootcollar.work import Packet
from tests.choose.hobbin import hobbin, only, setting_of
from tests.work.packets import made

DAY = date(2026, 9, 15)


def packet_and_plan(way: str) -> tuple[Packet, Prescription]:
    """Return the ridge's packet after somebody has chosen a way for its thinnest honeysuckle."""
    project = only(hobbin(), "ridge")
    line = next(one.key for one in project.stands if one.species == "loma6")
    project = replace(project, picked={line: Pick(way, "goats come in October", "Ottoline Fernwick", date(2026, 9, 1))})
    setting = replace(setting_of(project, DAY), picked=project.picked)
    plan = prescribe(project.stands, setting)
    return made(project, ["ridge"], DAY, plan, setting), plan


def test_a_reason_of_ones_own_stands_on_the_day_sheet_and_the_unit_page() -> None:
    packet, _ = packet_and_plan("cut/-")
    (box,) = [one for one in packet.day.boxes if "against a source" in one]
    words = ("Amur honeysuckle", "Ottoline Fernwick", "2026-09-01", "goats come in October", "sprout")
    assert all(one in box for one in words)
    said = [one.because for line in packet.units[0].lines for one in line.said if "against a source" in one.because]
    assert len(said) == 1 and all(one in said[0] for one in words[1:])


def test_a_choice_that_no_source_is_against_makes_no_such_box() -> None:
    packet, plan = packet_and_plan("basal_bark/triclopyr-ester-4-ec/oil")
    assert not [one for one in packet.day.boxes if "against a source" in one]
    assert any("chosen by Ottoline Fernwick" in one.because for one in plan.choices)
