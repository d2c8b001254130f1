"""One instruction for a mixed thicket: the cheapest of all there are, never too much to keep in mind, natives left."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from itertools import combinations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.choose import Choice, Setting, Thicket, expected, money_to_share, one_instruction, prescribe, thickets
from rootcollar.choose.decide import open_ways
from rootcollar.choose.option import Way
from rootcollar.choose.passes import passes_of
from rootcollar.choose.thicket import MOST_BANDS, MOST_MIXES, MOST_PASSES
from rootcollar.kernel.verdict import Level
from rootcollar.label import Weigher
from rootcollar.mix.recipe import Visit
from rootcollar.reference import load
from rootcollar.survey import Stand
from tests.choose.hobbin import hobbin, only, plain_setting, setting_of, stand

UNITS = ("ridge", "hollow", "orchard-side", "trail-loop")


def marked(unit: str, keep: str | None = "") -> tuple[tuple[Stand, ...], Setting]:
    """Return the woody stands of a unit of the demo as one thicket."""
    project = only(hobbin(), unit)
    woody = tuple(one for one in project.stands if load().species[one.species].growth_form != "herb")
    return tuple(replace(one, thicket="hedge", keep_inside=keep) for one in woody), setting_of(project)


@cache
def found(unit: str, keep: str | None = "") -> tuple[Thicket, Setting]:
    stands, setting = marked(unit, keep)
    (one,) = thickets(prescribe(stands, setting).choices, setting)
    return one, setting


@pytest.mark.parametrize("unit", UNITS)
def test_an_instruction_is_never_more_than_a_crew_keeps_in_mind(unit: str) -> None:
    one, _ = found(unit)
    assert one.instruction is not None
    made = one.instruction
    assert 1 <= len(made.bands) <= MOST_BANDS == 3
    assert len(made.recipes) <= MOST_MIXES == 2
    assert 1 <= len(made.passes) <= MOST_PASSES == 2
    for band in made.bands:
        assert len({(line.way.methods, line.recipe) for line in band.lines}) == 1
    for number, one_pass in enumerate(made.passes):
        assert one_pass.months
        for which in one_pass.bands:
            for line in made.bands[which].lines:
                at = min(number, len(line.way.treatment) - 1)
                assert one_pass.months <= line.way.treatment[at].months


@pytest.mark.parametrize("unit", UNITS)
def test_no_other_instruction_is_cheaper(unit: str) -> None:
    """Every parting of the stems and every treatment of each part, looked through without any shortcut."""
    one, setting = found(unit)
    assert one.instruction is not None
    stands = [line.stand for line in one.instruction.lines]
    weigher = Weigher(setting.answers, setting.on, setting.shelf)
    ways: dict[str, dict[object, int]] = {}
    for each in stands:
        for option in open_ways(each, setting, {}, weigher):
            key = option.way.methods, option.way.visit.recipe
            cents = round(100 * expected(money_to_share(Choice(each, option, ()), setting)))
            known = ways.setdefault(each.key, {})
            known[key] = min(cents, known.get(key, cents))
    limits = [size.diameter_cm.value for size in load().body]
    best = None
    for many in range(3):
        for cuts in combinations(limits, many):
            part = {each.key: sum(sum(each.band_cm) / 2 > cut for cut in cuts) for each in stands}
            bands = [[key for key in part if part[key] == number] for number in range(many + 1)]
            if not all(bands):
                continue
            shared = [set.intersection(*(set(ways[key]) for key in band)) for band in bands]
            for doing in product(*shared):
                if len({mix for _, mix in doing if mix}) <= 2 and all(mix is None or mix.product for _, mix in doing):
                    cents = sum(ways[key][how] for band, how in zip(bands, doing, strict=True) for key in band)
                    best = cents if best is None else min(best, cents)
    assert one.instruction.cents == best


def test_the_cost_stands_beside_that_of_choosing_by_kind() -> None:
    for unit in UNITS:
        stands, setting = marked(unit)
        lines = prescribe(stands, setting).choices
        one, _ = found(unit)
        by_kind = sum(round(100 * expected(money_to_share(line, setting))) for line in lines if line.option)
        assert one.by_kind_cents == by_kind
        assert one.instruction is not None
        assert one.instruction.cents == sum(
            round(100 * expected(money_to_share(line, setting))) for line in one.instruction.lines
        )


@settings(max_examples=5, deadline=None)
@given(st.randoms(use_true_random=False))
def test_the_order_of_the_rows_changes_nothing(random: object) -> None:
    stands, setting = marked("ridge")
    choices = list(prescribe(stands, setting).choices)
    random.shuffle(choices)  # type: ignore[attr-defined]
    (again,) = thickets(choices, setting)
    first, _ = found("ridge")
    assert again.instruction is not None
    assert first.instruction is not None
    assert again.instruction.cents == first.instruction.cents
    told = [
        [(band.upto and band.upto.word, sorted(line.stand.key for line in band.lines)) for band in one.bands]
        for one in (again.instruction, first.instruction)
    ]
    assert told[0] == told[1]


def test_leaves_are_sprayed_only_where_somebody_looked_and_nothing_is_to_stay() -> None:
    setting = plain_setting(hobbin().shelf.values(), worked_m2=4000.0)
    weigher = Weigher(setting.answers, setting.on, setting.shelf)
    ways = {
        one: [option for option in open_ways(one, setting, {}, weigher) if "foliar" in option.way.methods]
        for one in (stand(plant, 0.5, 1) for plant in ("Morrow's honeysuckle", "Amur honeysuckle"))
    }
    assert all(ways.values())
    looked, why = one_instruction(ways, "", setting)
    assert looked is not None
    assert why == ""
    assert {line.way.visit.method for line in looked.lines} == {"foliar"}
    for keep in (None, "spicebush"):
        made, why = one_instruction(ways, keep, setting)
        assert made is None
        assert why


def test_what_is_to_stay_is_kept_from_every_row_and_unknown_is_not_none() -> None:
    stands, setting = marked("ridge")
    names: Sequence[str | None]
    for names, wanted in ((("spicebush", "elder", ""), "spicebush; elder"), (("", None, ""), None), (("", "", ""), "")):
        mixed = [replace(one, keep_inside=names[at % 3]) for at, one in enumerate(stands)]
        (one,) = thickets(prescribe(mixed, setting).choices, setting)
        assert one.keep_inside == wanted


def test_a_thicket_of_one_kind_or_without_a_mark_has_no_instruction_of_its_own() -> None:
    stands, setting = marked("ridge")
    one_kind = [one for one in stands if one.species == "rhca3"]
    assert thickets(prescribe(one_kind, setting).choices, setting) == ()
    bare = [replace(one, thicket="") for one in stands]
    assert thickets(prescribe(bare, setting).choices, setting) == ()


def test_where_two_kinds_of_a_size_share_no_treatment_it_says_which() -> None:
    one, _ = found("brook-edge", None)
    assert one.instruction is None
    assert "of a size share none" in one.why_none


def test_what_it_comes_to_is_weighed_and_a_stop_is_a_stop() -> None:
    stands, setting = marked("trail-loop")
    unit = replace(setting.ground.units["trail-loop"], area_m2=30.0, worked_m2=30.0)
    tight = replace(setting, ground=replace(setting.ground, units={"trail-loop": unit}))
    choices = prescribe(stands, setting).choices
    first = next(one for one in thickets(choices, setting))
    assert first.instruction is not None
    assert first.instruction.level < Level.STOP
    (one,) = thickets(choices, tight)
    assert one.instruction is None or one.instruction.level < Level.STOP
    was = {(line.way.key) for line in first.instruction.lines}
    now = {(line.way.key) for line in one.instruction.lines} if one.instruction else set()
    assert was != now


def way(*months: set[int]) -> Way:
    """Return a way with the months of each of its visits."""
    return Way(tuple(Visit("cut", None, frozenset(one)) for one in months), ())


def test_passes_share_months_and_steps_keep_their_order() -> None:
    assert [one.months for one in passes_of([[way({5, 6})], [way({6, 7})]], 2) or ()] == [{6}]
    two = passes_of([[way({5})], [way({7})]], 2)
    assert [one.bands for one in two or ()] == [(0,), (1,)]
    steps = passes_of([[way({6}, {9})], [way({9, 10})]], 2)
    assert [(one.months, one.bands) for one in steps or ()] == [({6}, (0,)), ({9}, (0, 1))]
    assert passes_of([[way({5})], [way({7})], [way({9})]], 2) is None
    assert passes_of([[way({5}), way({6})]], 2) is None


@given(st.lists(st.sets(st.integers(1, 12), min_size=1), min_size=1, max_size=3))
def test_every_pass_can_be_walked(months: list[set[int]]) -> None:
    made = passes_of([[way(one)] for one in months], 2)
    if made is None:
        assert len(months) == 3
        return
    assert sorted(which for one in made for which in one.bands) == list(range(len(months)))
    for one in made:
        assert one.months == frozenset.intersection(*(frozenset(months[which]) for which in one.bands))
    if frozenset.intersection(*(frozenset(one) for one in months)):
        assert len(made) == 1


def test_the_body_goes_from_thin_to_thick_and_is_ours() -> None:
    sizes = [one.diameter_cm for one in load().body]
    assert [one.value for one in sizes] == sorted(one.value for one in sizes)
    assert {str(one.mark) for one in sizes} == {"ours"}
