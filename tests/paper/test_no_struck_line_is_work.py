"""Whatever the ground, tally, crew, answers and labels: what is struck or held is not printed as work."""

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from rootcollar.choose import Choice, Prescription, alike, instruction, prescribe, stems
from rootcollar.kernel.verdict import Level
from rootcollar.label import RULES, Answer, History
from rootcollar.paper import render_packet
from rootcollar.shelf import FIELDS, SITE_CLASSES, Sheet
from rootcollar.work import Packet, Project, text
from tests.choose.hobbin import DAY, hobbin, setting_of
from tests.label.mutations import directed, milder, path_of, stricter, with_line
from tests.work.packets import made

UNITS = sorted(hobbin().ground.units)


@st.composite
def sheets(draw: st.DrawFn) -> dict[str, Sheet]:
    """Return the demo's shelf, some sheets gone and some lines of the others read otherwise."""
    shelf: dict[str, Sheet] = {}
    for key, sheet in hobbin().shelf.items():
        if draw(st.integers(0, 5)) == 0:
            continue
        lines = list(directed(sheet))
        for method, path, says in draw(st.lists(st.sampled_from(lines), max_size=3, unique_by=lambda one: one[:2])):
            row = FIELDS[path_of(path, bool(method))]
            readings = [*stricter(row, says), *milder(row, says)]
            if readings:
                sheet = with_line(sheet, method, path, draw(st.sampled_from(readings)))
        shelf[key] = sheet
    return shelf


@st.composite
def projects(draw: st.DrawFn) -> tuple[str, Project]:
    """Return one unit of a property like the demo, and the property with nothing else counted."""
    key = draw(st.sampled_from(UNITS))
    unit = hobbin().ground.units[key]
    facts: dict[str, Any] = draw(
        st.fixed_dictionaries(
            {},
            optional={
                "site_class": st.sampled_from([None, *SITE_CLASSES[:4], "aquatic"]),
                "water_m": st.sampled_from([None, 0.0, 5.0, 200.0]),
                "keep_m": st.sampled_from([None, 1.0, 200.0]),
                "wanted_beneath": st.sampled_from([None, True, False]),
                "worked_m2": st.sampled_from([None, 50.0, 2_000.0, unit.area_m2]),
                "permission": st.sampled_from([None, unit.permission]),
            },
        )
    )
    ground = replace(hobbin().ground, units={key: replace(unit, **facts)}, state=draw(st.sampled_from(["WI", None])))
    mine = [one for one in hobbin().stands if one.unit == key]
    some = draw(st.lists(st.sampled_from(mine), min_size=1, max_size=3, unique_by=lambda one: one.key))
    stands = tuple(replace(one, stems=one.stems * draw(st.sampled_from([0.1, 1, 30, 3_000]))) for one in some)
    answer = st.builds(
        Answer, st.sampled_from(sorted(RULES)), st.sampled_from(["*", key, mine[0].key]), st.booleans(),
        st.just("a steward"), st.just(DAY),
    )  # fmt: skip
    history = History(
        tuple(replace(one, unit=key) for one in draw(st.sampled_from([(), hobbin().history.rows]))),
        draw(st.sampled_from([True, True, None])),
    )
    crew = replace(
        hobbin().crew, wear=draw(st.sampled_from([hobbin().crew.wear, hobbin().crew.wear, frozenset(), None]))
    )
    return key, replace(
        hobbin(), ground=ground, stands=stands, shelf=draw(sheets()), crew=crew, history=history,
        answers=tuple(draw(st.lists(answer, max_size=3))),
    )  # fmt: skip


def level(line: Choice) -> Level:
    """Return the worst said of a line, added up here and not by the line itself."""
    if line.option is None:
        return Level.STOP
    return max((one.level for one in (*line.option.verdicts, *line.total_verdicts)), default=Level.OK)


def check(packet: Packet, lines: tuple[Choice, ...]) -> tuple[int, int]:
    """Check that just the lines which nothing stops or asks about are work; return how many are, and how many not."""
    work = [one for one in lines if level(one) < Level.ASK]
    rows = [
        (text.count(stems(group)), instruction(group[0].way)[0], instruction(group[0].way)[1]) for group in alike(work)
    ]
    assert sorted((one.stems, one.verb, one.rest) for one in packet.day.sizes) == sorted(rows)
    (page,) = packet.units
    unstruck = sorted((one.stems, one.size) for one in page.lines if not one.struck)
    assert unstruck == sorted((text.count(one.stand.stems), text.size(one.stand.band_cm)) for one in work)
    for one in page.lines:
        assert not one.struck or not one.most
    recipes = {option.way.visit.recipe for one in work for option in one.options} - {None}
    assert len(packet.day.mixes) <= len(recipes)
    assert work or not (packet.cards or packet.tags or packet.day.mixes)
    return len(work), len(lines) - len(work)


def planned(project: Project) -> Prescription:
    """Return the plan of a property."""
    return prescribe(project.stands, setting_of(project))


SEEN: list[tuple[int, int]] = []


@settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
@given(projects())
def test_just_what_nothing_stops_or_asks_about_is_printed_as_work(case: tuple[str, Project]) -> None:
    key, project = case
    plan = planned(project)
    SEEN.append(check(made(project, (key,), prescription=plan), plan.choices))


def test_among_those_plans_were_lines_of_work_and_lines_that_were_not() -> None:
    """The test above would pass on plans without either."""
    if not SEEN:
        pytest.skip("the plans were not made in this run")
    assert sum(work for work, _ in SEEN) and sum(rest for _, rest in SEEN)


@pytest.mark.slow
@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(projects())
def test_the_same_of_many_more_plans(case: tuple[str, Project]) -> None:
    key, project = case
    plan = planned(project)
    check(made(project, (key,), prescription=plan), plan.choices)


@pytest.mark.slow
@settings(max_examples=4, deadline=None, suppress_health_check=list(HealthCheck))
@given(projects())
def test_the_printed_pages_mark_every_line_that_is_no_work(
    tmp_path: Path, poppler: Any, case: tuple[str, Project]
) -> None:
    key, project = case
    plan = planned(project)
    packet = made(project, (key,), prescription=plan)
    _, rest = check(packet, plan.choices)
    file = tmp_path / "packet.pdf"
    file.write_bytes(render_packet(replace(packet, tags=(), signs=()), made_on=DAY))
    words = " ".join(str(poppler("pdftotext", "-layout", file, "-")).split())
    assert words.count("Struck out: not to be done here.") + words.count("Held: not to be done until") == rest
