"""What a plan is missing: the one change that opens most is named, and made, it opens what it was said to."""

from dataclasses import replace
from datetime import date

import pytest

from rootcollar.choose import Prescription, opens_most, prescribe
from rootcollar.site import Permission
from rootcollar.work import Project
from tests.choose.hobbin import at, hobbin, only, plan, setting_of, with_units

PERMITTED = Permission("the owner", date(2030, 1, 1))


def planned(project: Project) -> Prescription:
    """Return the plan of a project."""
    return prescribe(project.stands, setting_of(project))


def closed(prescription: Prescription) -> set[str]:
    """Return the lines that are no work."""
    return {one.stand.key for one in prescription.choices if not one.is_work}


def no_shelf(project: Project) -> Project:
    return replace(project, shelf={})


def nobody(project: Project) -> Project:
    return replace(project, crew=replace(project.crew, people=()))


def no_permission(project: Project) -> Project:
    return with_units(project, permission=None)


def nothing_to_wear(project: Project) -> Project:
    return replace(project, crew=replace(project.crew, wear=frozenset()))


def unknown_water(project: Project) -> Project:
    return with_units(project, water_m=None)


@pytest.mark.parametrize(
    ("broken", "change", "missing"),
    [
        (no_shelf, "label of your own jug on the shelf", "no label sheet"),
        (nobody, "licence", "licence"),
        (no_permission, "write permission in ground.toml", "nobody has allowed work"),
        (nothing_to_wear, "crew.toml", "gloves"),
        (unknown_water, "write water of the unit", "how far the unit is"),
    ],
)
def test_what_is_missing_and_what_opens_most_is_said(broken: object, change: str, missing: str) -> None:
    opening = opens_most(planned(broken(hobbin())).choices)  # type: ignore[operator]
    assert opening is not None
    assert change in opening.change
    assert missing in opening.because
    assert opening.alone
    assert opening.words.startswith("Do first: ") and "Missing now: " in opening.words


@pytest.mark.parametrize("broken", [no_permission, unknown_water, nothing_to_wear, nobody])
def test_the_change_made_opens_at_least_the_lines_it_was_said_to(broken: object) -> None:
    """Made whole again, the plan of the demo has at least as many lines of work more as the sentence promised."""
    shut = planned(broken(hobbin()))  # type: ignore[operator]
    opening = opens_most(shut.choices)
    assert opening is not None
    assert len(closed(shut) - closed(plan())) >= opening.lines - len(closed(plan()))
    assert opening.closed == len(closed(shut))


def test_no_change_is_named_where_every_line_is_work() -> None:
    assert opens_most([one for one in plan().choices if one.is_work]) is None


def test_a_plant_that_nothing_may_be_done_to_names_no_change() -> None:
    """Shut by the plant alone: no paper and no jug opens that."""
    line = at(next(iter(closed(plan()))))
    shut = replace(line, option=None, set_aside=tuple(one for one in line.set_aside if not one.stop and not one.asks))
    assert opens_most([shut]) is None


def test_of_two_changes_the_one_before_more_stems_is_named() -> None:
    """Permission is missing on one unit and water is unknown on another: the larger of the two decides."""
    two = only(hobbin(), "bench", "ridge")
    one_way = with_units(with_units(two, "bench", permission=None), "ridge", water_m=None)
    opening = opens_most(planned(one_way).choices)
    assert opening is not None
    shut = [one for one in planned(one_way).choices if not one.is_work]
    held = {key: sum(one.stand.stems.mean() for one in shut if one.stand.unit == key) for key in ("bench", "ridge")}
    wanted = "permission" if held["bench"] >= held["ridge"] else "water"
    assert wanted in opening.change
