"""Choose and prepare as a person calls them: what comes back, what it says of itself, what it refuses."""

from dataclasses import replace
from datetime import date

import pytest

from rootcollar.jobs.outcome import Outcome
from rootcollar.jobs.plan import Prepared, choose, prepare
from rootcollar.kernel.doubt import sure
from rootcollar.kernel.errors import BadInput, NotFound
from rootcollar.kernel.verdict import Level
from rootcollar.work import Project
from tests.choose.hobbin import DAY, hobbin, only, with_units

OCTOBER = date(2026, 10, 9)


def small(unit: str) -> Project:
    """Return the demo with one unit's stands, counted for sure (the job draws its own thousand worlds)."""
    project = only(hobbin(), unit)
    return replace(project, stands=tuple(replace(one, stems=sure(float(one.stems[0]))) for one in project.stands))


@pytest.fixture(scope="module")
def ridge() -> Outcome[Prepared]:
    """Return the ridge's packet."""
    return prepare(small("ridge"), DAY)


def test_a_unit_that_nothing_holds_comes_back_without_a_stop_or_a_question(ridge: Outcome[Prepared]) -> None:
    assert ridge.level < Level.ASK
    assert ridge.value.packet.day.sizes


def test_a_question_is_the_outcomes_word() -> None:
    assert choose(small("orchard-side"), DAY).level is Level.ASK
    assert prepare(small("orchard-side"), DAY).level is Level.ASK


def test_a_stop_is_the_outcomes_word_even_where_no_way_is_left_to_carry_it() -> None:
    barred = with_units(small("ridge"), "ridge", permission=None)
    assert choose(barred, DAY).level is Level.STOP
    assert prepare(barred, DAY).level is Level.STOP


def test_a_stand_left_by_its_nature_alone_counts_as_a_stop() -> None:
    """Knotweed over wanted plants: leaf spray is shut, and nothing else is offered."""
    project = with_units(small("ridge"), "ridge", wanted_beneath=True)
    one = replace(project.stands[0], key="ridge/pocu6/1.3-2.5cm", species="pocu6")
    outcome = choose(replace(project, stands=(one,)), DAY)
    assert outcome.value.choices[0].option is None
    assert outcome.level is Level.STOP
    assert outcome.verdicts[0].about == one.key


def test_the_level_is_of_the_asked_units_only() -> None:
    two = replace(hobbin(), stands=(*small("ridge").stands, *small("orchard-side").stands))
    assert prepare(two, DAY, ["ridge"]).level < Level.ASK
    assert prepare(two, DAY, ["orchard-side"]).level is Level.ASK


def test_preparing_for_a_day_weighs_permission_on_that_day() -> None:
    permission = replace(hobbin().ground.units["ridge"].permission, until=OCTOBER)  # type: ignore[type-var]
    project = with_units(small("ridge"), "ridge", permission=permission)
    assert prepare(project, DAY, day=OCTOBER).level < Level.ASK
    assert prepare(project, DAY, day=OCTOBER.replace(day=10)).level is Level.STOP


def test_the_packet_is_dated_when_it_was_made_and_for_when_it_is() -> None:
    packet = prepare(small("ridge"), DAY, day=OCTOBER).value.packet
    assert packet.made_on == DAY.isoformat()
    assert packet.day.when == "Friday 9 October 2026"


def test_units_come_in_the_plans_order_whatever_order_they_are_asked_in() -> None:
    two = replace(hobbin(), stands=(*small("ridge").stands, *small("hollow").stands))
    names = [page.name for page in prepare(two, DAY, ["hollow", "ridge"]).value.packet.units]
    assert names == ["The ridge", "The hollow"]


@pytest.mark.parametrize("key", ["rigde", "the moon"])
def test_a_unit_that_is_not_there_is_refused_with_the_ones_that_are(key: str) -> None:
    with pytest.raises(NotFound, match="ridge"):
        prepare(small("ridge"), DAY, [key])


def test_a_unit_without_stems_is_not_prepared_for() -> None:
    with pytest.raises(NotFound, match="unit with stems 'bench'"):
        prepare(small("ridge"), DAY, ["bench"])


def test_nothing_counted_is_nothing_to_choose() -> None:
    with pytest.raises(BadInput, match="no stems counted"):
        choose(replace(hobbin(), stands=()), DAY)
    with pytest.raises(BadInput, match="no stems counted"):
        prepare(replace(hobbin(), stands=()), DAY)


def test_the_job_is_the_same_twice(ridge: Outcome[Prepared]) -> None:
    assert repr(prepare(small("ridge"), DAY).value.packet) == repr(ridge.value.packet)


def test_another_seed_moves_the_doubt_and_never_the_best_figure() -> None:
    project = small("ridge")
    other = replace(project, ground=replace(project.ground, seed=7))
    for one, two in zip(choose(project, DAY).value.choices, choose(other, DAY).value.choices, strict=True):
        if one.option and two.option and one.way.key == two.way.key:
            assert one.per_stem.minutes[0] == two.per_stem.minutes[0]
            assert one.per_stem.kill[0] == two.per_stem.kill[0]
            assert repr(one.per_stem.kill) != repr(two.per_stem.kill) or one.per_stem.kill.size == 1
