"""The gates: what shuts a way before a label is opened, as published; and what only asks."""

import math
from dataclasses import replace
from dataclasses import replace as changed

import pytest

from rootcollar.choose.figures import per_stem
from rootcollar.choose.gates import ground_gate, plant_gate, weaknesses
from rootcollar.choose.judge import line_verdicts
from rootcollar.choose.option import Gate
from rootcollar.kernel.verdict import Level
from rootcollar.reference import find_species, load
from rootcollar.site import Ground
from tests.choose.hobbin import FT_M, PLAIN, plain_setting, stand, ways
from tests.shelf.sample import sample_sheet


def shut(plant: str, method: str, *inches: float, ingredient: str | None = None, **size: float | None) -> list[Gate]:
    """Return the gate of each way by a method, every one of which must be shut."""
    found = [
        plant_gate(way, find_species(plant), stand(plant, *inches, **size), load())  # type: ignore[arg-type]
        for way in ways(plant, method, ingredient)
    ]
    assert found, "no such way"
    assert all(found), "one way is open"
    return [gate for gate in found if gate]


def is_open(plant: str, method: str, *inches: float, **size: float | None) -> bool:
    """Return whether any way by a method is open."""
    return any(
        plant_gate(way, find_species(plant), stand(plant, *inches, **size), load()) is None  # type: ignore[arg-type]
        for way in ways(plant, method)
    )


# What a published source rules out. (plant, method, from inch, to inch, words of the reason, source)
SHUT = [
    ("tree-of-heaven", "cut", 2, 4, "sprouts", "psu_qs5"),  # "in any season", read
    ("tree-of-heaven", "cut", 0.5, 1, "sprouts", "psu_qs5"),
    ("Japanese knotweed", "cut", 0.5, 1, "stronger", "pierce_pocu"),  # a plan holding only cuts is refused
    ("common buckthorn", "cut", 1, 2, "sprouts", "mn_dnr"),
    ("Amur honeysuckle", "cut", 1, 2, "sprouting", ""),
    ("saltcedar", "cut", 1, 2, "resprout", "fick2010"),
    ("white mulberry", "cut", 4, 6, "resprout", "psu_fall2017"),
    ("Chinese privet", "cut", 1, 2, "sprouts", "enloe2018"),
    ("multiflora rose", "mow", 0.5, 1, "one mowing does not kill", "uw_romu2007"),
    ("white mulberry", "basal_bark", 6, 8, "at most", "NZ-WC"),  # SRS-131: under 6 inches
    ("common buckthorn", "basal_bark", 4, 6, "at most", "MN-BUCK"),  # "best under 2 to 3 inches"
    ("white mulberry", "hack_squirt", 1, 2, "at least 2 in", "SRS-131"),  # p. 24: more than 2 inches
    ("tree-of-heaven", "hack_squirt", 0.5, 1, "at least 2 in", "SRS-131"),
    ("Chinese privet", "cut_stump", 0.2, 0.4, "at least 1/2 in", "ACES-CS"),  # under 0.5 inch not reliable
    ("common buckthorn", "pull", 4, 6, "at most", ""),
]


@pytest.mark.parametrize(
    ("plant", "method", "thin", "thick", "words", "source"), SHUT, ids=lambda one: str(one).replace(" ", "-")
)
def test_what_a_source_rules_out_is_shut_and_the_source_named(
    plant: str, method: str, thin: float, thick: float, words: str, source: str
) -> None:
    for gate in shut(plant, method, thin, thick):
        assert words in gate.because
        assert source in gate.because
        assert not gate.asks


# (plant, method, from inch, to inch): the same limits from inside.
OPEN = [
    ("white mulberry", "basal_bark", 4, 6),  # 6 in is 15.24 cm; NZ-WC prints 15 cm
    ("common buckthorn", "basal_bark", 1, 3),  # a limit of its own
    ("white mulberry", "hack_squirt", 2, 4),
    ("Chinese privet", "cut_stump", 0.5, 1),
    ("common buckthorn", "pull", 0.5, 1),
    ("lesser celandine", "foliar", 0.1, 0.3),
    ("tree-of-heaven", "foliar", 0.5, 1),
]


@pytest.mark.parametrize(("plant", "method", "thin", "thick"), OPEN)
def test_what_lies_within_the_limit_is_open(plant: str, method: str, thin: float, thick: float) -> None:
    assert is_open(plant, method, thin, thick)


@pytest.mark.parametrize(
    ("plant", "method", "inches", "named"),
    [
        ("white mulberry", "basal_bark", (6, 10), ("hack-and-squirt", "cut stump")),  # SRS-131
        ("white mulberry", "hack_squirt", (0.5, 1), ("basal bark", "cut stump")),  # SRS-131
        ("Chinese privet", "cut_stump", (0.2, 0.4), ("basal bark", "leaves")),  # ACES-CS
    ],
)
def test_a_way_shut_by_size_names_the_next_one(
    plant: str, method: str, inches: tuple[float, float], named: tuple[str, ...]
) -> None:
    for gate in shut(plant, method, *inches):
        assert all(one in gate.would_win_if for one in named)


def test_a_lever_tool_pulls_buckthorn_thicker_than_the_general_limit() -> None:
    """mn_buckthorn (read): to 2.5 inches with a lever tool; the general limit of 1 inch is ours."""
    assert is_open("common buckthorn", "pull", 1, 2)
    assert shut("common buckthorn", "pull", 2, 4)


def test_leaves_above_head_height_are_not_sprayed() -> None:
    """Head height is taken as 6 ft (practice)."""
    assert is_open("common buckthorn", "foliar", 0.5, 1, tall_ft=6)
    for gate in shut("common buckthorn", "foliar", 0.5, 1, ingredient="glyphosate", tall_ft=7):
        assert "7 ft" in gate.because
        assert "regrowth" in gate.would_win_if
        assert not gate.asks


def test_leaf_spray_without_a_crown_asks_for_it() -> None:
    for gate in shut("common buckthorn", "foliar", 0.5, 1, ingredient="glyphosate", crown_ft=None):
        assert gate.asks
        assert "tally" in gate.would_win_if


def test_spray_over_wanted_plants_is_shut_and_asked_where_nobody_has_looked() -> None:
    for way in ways("common buckthorn", "foliar"):
        reaches = ground_gate(way, changed(PLAIN, wanted_beneath=True), load())
        asked = ground_gate(way, changed(PLAIN, wanted_beneath=None), load())
        assert reaches and not reaches.asks and "beneath" in reaches.because
        assert asked and asked.asks and "wanted_beneath" in asked.would_win_if
        assert ground_gate(way, PLAIN, load()) is None


def test_work_on_single_stems_does_not_ask_what_stands_beneath() -> None:
    for method in ("basal_bark", "cut_stump", "pull"):
        for way in ways("common buckthorn", method):
            assert ground_gate(way, changed(PLAIN, wanted_beneath=None), load()) is None


REACH_FT = 16.5  # DITO07 p. 59: untreated stems were hurt this far off through root grafts


@pytest.mark.parametrize(("plant", "method"), [("chinaberry", "hack_squirt"), ("saltcedar", "cut_stump")])
def test_imazapyr_is_shut_within_16_and_a_half_feet_of_a_tree_to_keep(plant: str, method: str) -> None:
    way = ways(plant, method, "imazapyr")[0]
    near = ground_gate(way, changed(PLAIN, keep_m=(REACH_FT - 0.1) * FT_M), load())
    assert near and not near.asks and "DITO07" in near.because and "16" in near.because
    assert ground_gate(way, changed(PLAIN, keep_m=(REACH_FT + 0.5) * FT_M), load()) is None
    assert ground_gate(way, changed(PLAIN, keep_m=math.inf), load()) is None


def test_a_wanted_tree_that_is_on_no_map_shuts_it_like_one_that_is() -> None:
    way = ways("chinaberry", "hack_squirt", "imazapyr")[0]
    near = ground_gate(way, changed(PLAIN, wanted_roots_m=(REACH_FT - 0.1) * FT_M), load())
    assert near and not near.asks and "one that is wanted stands at 16 ft" in near.because


def test_where_nobody_has_looked_for_wanted_trees_the_gate_leaves_the_question_to_the_rule() -> None:
    way, nobody = ways("chinaberry", "hack_squirt", "imazapyr")[0], changed(PLAIN, keep_m=None, wanted_roots_m=None)
    assert ground_gate(way, nobody, load()) is None
    one = stand("chinaberry", 2, 4)
    shelf = {"jug": sample_sheet()}
    setting = replace(plain_setting(), shelf=shelf, ground=Ground("The plain", "WI", {"plain": nobody}, demo=True))
    recipe = replace(way.visit.recipe, product="jug")
    labelled = replace(way, treatment=(replace(way.visit, recipe=recipe),))
    figures = per_stem(labelled, find_species("chinaberry"), one, setting)
    asked = {said.rule: said for said in line_verdicts(labelled, find_species("chinaberry"), one, figures, setting)}
    assert asked["L44"].level is Level.ASK and "imazapyr can leave roots" in asked["L44"].because


def test_glyphosate_in_cuts_may_stand_beside_a_tree_to_keep() -> None:
    for way in ways("white mulberry", "hack_squirt", "glyphosate"):
        assert ground_gate(way, changed(PLAIN, keep_m=0.0), load()) is None


def test_triclopyr_in_cuts_of_tree_of_heaven_carries_its_warning() -> None:
    """ditomaso2007 (read): crown loss fell from 67 to 31 percent in the second year."""
    warned = weaknesses(ways("tree-of-heaven", "hack_squirt", "triclopyr")[0], find_species("tree-of-heaven"))
    assert any("67 to 31" in one and "ditomaso2007" in one for one in warned)
    unwarned = weaknesses(ways("tree-of-heaven", "hack_squirt", "glyphosate")[0], find_species("tree-of-heaven"))
    assert not any("ditomaso2007" in one for one in unwarned)


def test_imazapyr_in_cuts_of_callery_pear_would_carry_its_warning() -> None:
    """poole2025 (read): a fifth of midstory trees died in a year."""
    pear = find_species("Callery pear")
    row = next(one for one in pear.fails if one.source == "poole2025" and one.method == "hack_squirt")
    way = ways("chinaberry", "hack_squirt", "imazapyr")[0]  # any way with imazapyr in cuts
    assert any(row.why in one for one in weaknesses(way, pear))


# (plant, method, ingredient, months in which the sources' reading shuts it out, a month in which it is open, source)
SEASONS = [
    ("tree-of-heaven", "foliar", "glyphosate", {3, 4, 5, 6}, 8, "psu_qs5: too early does not reach the roots"),
    ("lesser celandine", "foliar", "triclopyr", {5, 6, 7, 8, 9, 10, 11, 12}, 3, "once it yellows nothing goes down"),
]


@pytest.mark.parametrize(("plant", "method", "ingredient", "shut_months", "open_month", "_source"), SEASONS)
def test_a_failure_in_some_months_takes_these_months_and_leaves_the_others(
    plant: str, method: str, ingredient: str, shut_months: set[int], open_month: int, _source: str
) -> None:
    for way in ways(plant, method, ingredient):
        assert not way.visit.months & shut_months
        assert open_month in way.visit.months
        assert plant_gate(way, find_species(plant), stand(plant, 0.2, 0.4), load()) is None
