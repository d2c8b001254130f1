"""What must hold of any property: what a rule strikes or asks about is nowhere printed as work."""

from dataclasses import replace
from datetime import date
from functools import cache
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from rootcollar.choose import Choice, Prescription, prescribe
from rootcollar.kernel.errors import NotCleared
from rootcollar.kernel.verdict import Level
from rootcollar.shelf import Sheet
from rootcollar.work import Cleared, Packet, PacketAsked, Project, clear, packet
from tests import draws
from tests.choose.hobbin import DAY, hobbin, retyped, setting_of

KEPT = (
    "bench/rhca3/1.3-2.5cm", "bench/rhca3/2.5-5.1cm", "bench/moal/15.2-25.4cm", "brook-edge/rhca3/2.5-5.1cm",
    "hollow/loma6/2.5-5.1cm", "hollow/alpe4/0.3-0.8cm", "ridge/loma6/1.3-2.5cm", "ridge/rhca3/5.1-10.2cm",
    "trail-loop/romu/1.3-2.5cm", "orchard-side/moal/10.2-15.2cm",
)  # fmt: skip
UNKNOWN = (
    "site_class", "permission", "water_m", "well_m", "keep_m", "wanted_beneath", "area_m2", "polygon", "power_m",
    "for_whom", "purpose", "mixing", "taken", "wanted_roots_m", "soil", "ground_water_m",
)  # fmt: skip
LINES = (
    "proof.complete_booklet_read", "identity.states_ok", "site", "methods.only_listed", "ppe.applying",
    "limits.per_application.amount", "limits.area_basis", "water.direct_to_water", "water.buffers_ft",
    "entry.rei_hours",
)  # fmt: skip


@cache
def few() -> Project:
    """Return the demo property with ten of its stands."""
    project = replace(hobbin(), stands=tuple(one for one in hobbin().stands if one.key in KEPT))
    assert len(project.stands) == len(KEPT)
    return project


def tightened(sheet: Sheet, changes: list[str], share: float) -> Sheet:
    """Return a sheet with some lines not read, or its limits tightened to a share, or a method forbidden."""
    says: dict[str, Any] = {one.replace(".", "__"): None for one in changes if one in LINES}
    if "limits" in changes:
        for limit in ("per_application", "per_year"):
            says[f"limits__{limit}__amount"] = float(sheet.says(f"limits.{limit}.amount")) * share
    if "forbid" in changes:
        says["methods__prohibited"] = ("basal bark", "foliar")
    return retyped(sheet, **says)


@st.composite
def properties(draw: st.DrawFn) -> Project:
    """Return the demo with facts forgotten, permissions gone, labels stricter or less read, other counts."""
    project = few()
    units = {
        key: replace(unit, **dict.fromkeys(draw(st.sets(st.sampled_from(UNKNOWN), max_size=2))))
        for key, unit in project.ground.units.items()
    }
    kinds = st.lists(st.sampled_from((*LINES, "limits", "forbid")), max_size=2)
    shelf = {
        key: tightened(sheet, draw(kinds), draw(st.sampled_from((0.0, 0.001, 0.1))))
        for key, sheet in project.shelf.items()
        if draw(st.integers(0, 5))
    }
    scale = draw(st.sampled_from((0.1, 1.0, 30.0, 300.0)))
    return replace(
        project,
        ground=replace(project.ground, units=units, demo=draw(st.sampled_from((True, True, True, False)))),
        shelf=shelf,
        stands=tuple(replace(one, stems=one.stems * scale) for one in project.stands),
        crew=replace(
            project.crew,
            wear=draw(st.sampled_from((project.crew.wear, project.crew.wear, None, frozenset({"long sleeves"})))),
            tank_l=draw(st.sampled_from((None, 15.0, 1.0))),
        ),
        answers=draw(st.sampled_from((project.answers, project.answers, ()))),
        history=replace(project.history, complete=draw(st.sampled_from((True, True, None, False)))),
    )


def made(project: Project, day: date | None) -> tuple[Prescription, Packet]:
    """Return the plan and packet of a property."""
    setting = setting_of(project)
    plan = prescribe(project.stands, setting)
    units = tuple(key for key, _ in plan.order)
    asked = PacketAsked(
        clear(plan.choices, setting), plan.choices, units, plan, setting, project.crew, day, DAY
    )  # fmt: skip
    return plan, packet(asked)


LAWS = settings(max_examples=draws.of(40), deadline=None, suppress_health_check=[HealthCheck.too_slow])


@pytest.mark.slow
@LAWS
@given(properties(), st.sampled_from((None, date(2026, 6, 10), date(2026, 10, 9))))
def test_nothing_struck_or_held_is_printed_as_work(project: Project, day: date | None) -> None:
    plan, packet = made(project, day)
    by_name = {unit.name: key for key, unit in project.ground.units.items()}
    for page in packet.units:
        lines = [one for one in plan.choices if one.stand.unit == by_name[page.name]]
        clean = [one for one in lines if one.level < Level.ASK]
        assert len(page.lines) == len(lines)
        assert len([one for one in page.lines if not one.struck]) == len(clean)
    first = by_name[packet.day.title.removesuffix(", day sheet")]
    clean = [
        one
        for one in plan.choices
        if one.stand.unit == first and one.level < Level.ASK and (day is None or day.month in one.way.visit.months)
    ]
    printed = sum(float(row.stems.split(" ")[0].replace(",", "")) for row in packet.day.sizes)
    assert printed == pytest.approx(sum(float(one.stand.stems[0]) for one in clean), abs=len(clean))
    assert bool(packet.day.sizes) == bool(clean)
    if not packet.day.sizes:
        assert packet.cards == ()
    assert {one.letter for one in packet.tags} - {""} == {one.letter for one in packet.cards}
    assert {dict(one.lines)["Place"].split(",")[0] for one in packet.signs} <= {one.name for one in packet.units}
    alone = {"Gear and crew", "Shopping"}  # for a day of saws alone too, and for the work of later days
    mixing = [one for one in packet.pages if one.title not in alone]
    assert bool(packet.signs) == bool(packet.tags) == bool(mixing) == bool(packet.cards)


@pytest.mark.slow
@LAWS
@given(properties())
def test_clearing_keeps_no_line_that_is_stopped_or_asked_about(project: Project) -> None:
    setting = setting_of(project)
    plan = prescribe(project.stands, setting)
    cleared = clear(plan.choices, setting).lines
    assert all(one.level < Level.ASK for one in cleared)
    assert len(cleared) == len([one for one in plan.choices if one.level < Level.ASK])
    for line in plan.choices:
        if line.option is None or line.option.level >= Level.ASK:
            with pytest.raises(NotCleared):
                Cleared((line,), setting)
    held_by_sums = [one for one in plan.choices if one.option and one.option.level < Level.ASK <= one.level]
    for line in held_by_sums:  # alone it may keep to the limit; with the lines it shares the ground with it does not
        beside = tuple(one for one in plan.choices if one.option and one.stand.unit == line.stand.unit)
        with pytest.raises(NotCleared):
            Cleared(beside, setting)


def facts_missing(line: Choice, project: Project) -> bool:
    """Return whether something is unknown or forbidden that no line with a mix may go without, asked of the facts."""
    unit = project.ground.units[line.stand.unit]
    if unit.permission is None or unit.power_m is None:
        return True
    if line.recipe is None:
        return False
    sheet = project.shelf.get(line.recipe.product or "")
    return (
        sheet is None
        or not project.ground.demo  # the demo's sheets are invented
        or unit.site_class is None
        or unit.area_m2 is None
        or unit.for_whom is None
        or unit.mixing is None
        or (unit.purpose is None and bool(sheet.says("entry.wps_box")))
        or project.crew.wear is None
        or not set(sheet.says("ppe.applying") or ("?",)) <= project.crew.wear
        or not project.history.complete
        or not sheet.says("proof.complete_booklet_read")
        or not sheet.says("limits.per_application.amount")
        or (unit.water_m is None and bool(sheet.says("water.direct_to_water") != "allowed"))
    )


@LAWS
@given(properties())
def test_what_is_not_known_holds_a_line_whatever_the_rules_are_called(project: Project) -> None:
    """Asked of the facts themselves, not of the rules' own words."""
    for line in prescribe(project.stands, setting_of(project)).choices:
        if line.option is not None and facts_missing(line, project):
            assert line.level >= Level.ASK, line.stand.key


@LAWS
@given(properties())
def test_a_stop_is_never_chosen_and_never_a_fallback(project: Project) -> None:
    for line in prescribe(project.stands, setting_of(project)).choices:
        for option in (line.option, line.fallback.option if line.fallback else None):
            assert option is None or option.level < Level.STOP
        if line.fallback and line.level < Level.ASK:
            assert line.fallback.option.level < Level.ASK
