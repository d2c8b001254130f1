"""Both steps on paper: their days on unit page and day sheet, in each language, and no mix on a day of cutting."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date

from rootcollar.choose import prescribe
from rootcollar.cli import plan_text, steps_text
from rootcollar.kernel.doubt import sure
from rootcollar.label import Applied, History
from rootcollar.paper import render_packet
from rootcollar.reference import load
from rootcollar.survey import Stand, stand_key
from rootcollar.work import Packet, Project
from rootcollar.work.day_sheet import DayAsked, day_sheet
from tests.choose.hobbin import PLAIN, hobbin, setting_of
from tests.work.packets import made

JUNE, AUGUST = date(2026, 6, 10), date(2026, 8, 20)
BAND = (1.27, 2.54)
LINE = stand_key("plain", "pocu6", BAND)


def project(*rows: Applied, **facts: object) -> Project:
    """Return the demo's shelf and crew on the plain unit, with knotweed of 12 feet."""
    home = hobbin()
    canes = Stand(LINE, "plain", "pocu6", BAND, sure(200.0), None, 1.2, 3.7)
    ground = replace(home.ground, units={"plain": replace(PLAIN, worked_m2=4000.0, **facts)}, features=())  # type: ignore[arg-type]
    return replace(home, ground=ground, stands=(canes,), history=History(rows, complete=True), picked={})


def cut_on(day: date) -> Applied:
    return Applied(day, "plain", "", 0.0, 100.0, species="pocu6", method="cut")


def made_on(day: date | None, *rows: Applied) -> Packet:
    return made(project(*rows), ["plain"], day)


def test_the_unit_page_says_both_steps_with_the_days_of_the_second() -> None:
    (line,) = made_on(None).units[0].lines
    assert line.instruction.startswith("Cut; later wet the leaves, low; come back after at least 60 days")
    said = " ".join(line.steps)
    assert "first step 2027-06-01 to 2027-06-30" in said
    assert "2027-07-31 to 2027-09-30" in said
    assert "What kills is the spray" in said
    assert "psu_pocu, read" in said
    assert line.mix


def test_the_day_of_the_first_step_pours_nothing_and_says_when_to_come_back() -> None:
    packet = made_on(JUNE)
    (row,) = packet.day.sizes
    assert row.verb == "Cut"
    assert row.mix == ""
    assert "2026-08-09 to 2026-09-30" in row.rest
    assert "until then nothing is dead" in row.rest
    assert packet.day.mixes == ()
    assert packet.cards == ()
    assert not any("200 stems" in one.what for one in packet.day.struck)
    assert render_packet(packet, made_on=JUNE)[:4] == b"%PDF"


def test_the_day_of_the_second_step_sprays_and_says_when_the_first_was() -> None:
    packet = made_on(AUGUST, cut_on(JUNE))
    (row,) = packet.day.sizes
    assert row.verb == "Wet the leaves"
    assert row.mix
    assert "the first was done 2026-06-10" in row.rest
    assert packet.day.mixes


def test_nothing_is_sprayed_on_a_day_before_the_first_step() -> None:
    packet = made_on(AUGUST)
    assert packet.day.sizes == ()
    assert packet.day.struck


def test_the_unit_page_and_the_list_say_that_the_second_is_owed() -> None:
    begun = project(cut_on(JUNE))
    setting = setting_of(begun, date(2026, 7, 1))
    plan = prescribe(begun.stands, setting)
    lines = list(steps_text.summary(plan, setting))
    at = lines.index("Second steps owed")
    assert "foliar is owed, 2026-08-09 to" in " ".join(one.strip() for one in lines[at:])
    told = plan_text.as_json(begun, plan, setting)
    assert told["second_steps_owed"][0]["between"] == [["2026-08-09", "2026-09-30"]]
    (line,) = made(begun, ["plain"], date(2026, 7, 1)).units[0].lines
    assert line.steps[0].startswith("Second step owed: the first was done 2026-06-10")
    assert (
        plan_text.as_json(project(), prescribe(project().stands, setting_of(project())), setting_of(project()))[
            "second_steps_owed"
        ]
        == []
    )


def test_json_has_both_steps() -> None:
    here = project()
    setting = setting_of(here)
    plan = prescribe(here.stands, setting)
    (line,) = plan_text.as_json(here, plan, setting)["lines"]
    json.dumps(line)
    assert line["steps"]["first"] == "cut"
    assert line["steps"]["first_months"] == [6]
    assert line["steps"]["second"] == "foliar"
    assert line["steps"]["second_between"] == [["2027-07-31", "2027-09-30"]]
    assert line["steps"]["wait_days"]["least"] == 60


def test_a_stopped_second_step_prints_no_cut() -> None:
    packet = made(project(wanted_beneath=True), ["plain"], JUNE)
    assert all(row.verb != "Cut" for row in packet.day.sizes)
    here = project(wanted_beneath=True)
    plan = prescribe(here.stands, setting_of(here, JUNE))
    shut = [one.because for one in plan.choices[0].set_aside if one.way.step]
    assert shut
    assert all("nothing is cut that cannot then be killed" in one for one in shut)


def test_every_text_of_the_steps_is_in_every_language() -> None:
    english = {key for key in load().tongues["en"].texts if key.startswith("step.")}
    assert english
    for code in load().tongues:
        mine = load().tongues[code].texts
        assert english == {key for key in mine if key.startswith("step.")}
    here = project()
    setting = setting_of(here)
    plan = prescribe(here.stands, setting)
    asked = DayAsked(here.ground.units["plain"], plan.choices, (), plan, setting, here.crew, None)
    (row,) = day_sheet(asked, load().tongues["es"]).sizes
    assert row.verb == "Cortar; más tarde mojar las hojas"
    assert "volver después de 60 días por lo menos" in row.rest
    assert "2027-07-31 a 2027-09-30" in row.rest
