"""Months: what a source shuts is shut and says why; what it names stays open; and when in the year is best."""

from __future__ import annotations

import pytest

from rootcollar.choose import MonthSaid, Way, best_months, in_month, reasons, year_of
from rootcollar.kernel.days import MONTHS
from rootcollar.reference import find_species, load
from tests.choose.hobbin import hobbin, plan, setting_of, ways


def year(plant: str, method: str, ingredient: str | None = None, carrier: str = "") -> tuple[MonthSaid, ...]:
    """Return the year of the first way of a plant by a method."""
    found = [
        one
        for one in ways(plant, method, ingredient)
        if not carrier or (one.visit.recipe and one.visit.recipe.carrier == carrier)
    ]
    return year_of(found[0], find_species(plant), load())


def all_ways() -> list[tuple[str, Way]]:
    methods = ("pull", "cut", "girdle", "mow", "hack_squirt", "cut_stump", "basal_bark", "foliar", "vine_cut")
    plants = ("rhca3", "loma6", "romu", "moal", "ambr7", "alpe4", "aial", "lisi", "rafi")
    return [(plant, way) for plant in plants for method in methods for way in ways(plant, method)]


def test_a_way_is_planned_in_exactly_the_months_that_are_not_shut() -> None:
    for plant, way in all_ways():
        said = {one.month for one in year_of(way, find_species(plant), load()) if one.state != "shut"}
        assert not said or said == way.months, (plant, way.key)


def test_every_month_of_every_way_says_why() -> None:
    for plant, way in all_ways():
        told = year_of(way, find_species(plant), load())
        assert [one.month for one in told] == list(range(1, len(MONTHS) + 1))
        assert all(one.because for one in told)


# (plant, method, ingredient, carrier, month, state, words, source)
SAID = [
    ("white mulberry", "cut_stump", "glyphosate", "", 4, "shut", "sap flow", "ACES-CS"),
    ("white mulberry", "cut_stump", "glyphosate", "", 1, "maybe", "not frozen", "SE-EPPC"),
    ("white mulberry", "hack_squirt", None, "", 3, "shut", "sap flow", "PSU-HS"),
    ("white mulberry", "hack_squirt", None, "", 10, "open", "named for it", "psu_fall2017"),
    ("common buckthorn", "basal_bark", None, "oil", 1, "maybe", "wet or icy", "PNW-BB"),
    ("common buckthorn", "basal_bark", None, "oil", 7, "open", "no source names a month", ""),
    ("common buckthorn", "foliar", "glyphosate", "", 10, "open", "natives are bare", "uwex_buckthorn"),
    ("common buckthorn", "foliar", "glyphosate", "", 1, "shut", "no green leaves", "uwex_buckthorn"),
    ("multiflora rose", "foliar", "glyphosate", "", 10, "maybe", "frost", "SRS-131"),
    ("garlic mustard", "pull", None, "", 4, "maybe", "memory", "wi_dnr"),
]


@pytest.mark.parametrize(("plant", "method", "ingredient", "carrier", "month", "state", "words", "source"), SAID)
def test_what_a_source_says_of_a_month_is_said_with_its_name(
    plant: str, method: str, ingredient: str | None, carrier: str, month: int, state: str, words: str, source: str
) -> None:
    said = year(plant, method, ingredient, carrier)[month - 1]
    assert said.state == state
    assert words in said.because
    assert source in said.because


def test_leaves_that_stay_green_are_best_sprayed_when_natives_are_bare() -> None:
    best = best_months(year("common buckthorn", "foliar", "glyphosate"))
    assert best.months == {10, 11}
    assert "natives are bare" in best.because


def test_where_no_source_names_a_month_none_is_called_best_by_a_source() -> None:
    best = best_months(year("common buckthorn", "basal_bark"))
    assert not best.sourced
    assert best.months == set(range(4, 12))  # without the months of wet and icy bark


def test_months_of_one_reason_are_told_together_and_none_is_lost() -> None:
    told = reasons(year("common buckthorn", "foliar", "glyphosate"))
    assert sorted(month for which, _, _ in told for month in which) == list(range(1, len(MONTHS) + 1))
    assert len({(state, because) for _, state, because in told}) == len(told)


@pytest.mark.parametrize("month", range(1, len(MONTHS) + 1))
def test_a_month_has_every_line_with_a_way_once_and_agrees_with_its_months(month: int) -> None:
    lines = in_month(plan().choices, month, setting_of(hobbin()))
    assert [one.choice.stand.key for one in lines] == [one.stand.key for one in plan().choices if one.option]
    for one in lines:
        assert one.is_open == (month in one.choice.way.visit.months)
        assert one.instead is None or (not one.is_open and month in one.instead.way.visit.months)
    assert {one.is_open for one in lines} == {True, False} or month == 10


def test_privet_stumps_are_best_in_november_not_in_april() -> None:
    """Enloe and others 2018: stumps treated at once died in both months, better in November."""
    best = best_months(year("Chinese privet", "cut_stump", "glyphosate")).months
    assert 11 in best and 4 not in best
