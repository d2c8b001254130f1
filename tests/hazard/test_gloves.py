"""Gloves: the group of a mix, the weaker group counts, materials as people name them."""

from __future__ import annotations

import pytest

from rootcollar.hazard import (
    Rating,
    chart_words,
    holding_times,
    liner_hours_left,
    material_of,
    read_chart,
    solvent_groups,
)
from rootcollar.kernel.sources import Mark
from rootcollar.reference import load

CHART = read_chart(load().hazard["gloves_chart"])
TIMES = holding_times(load().hazard["gloves_time"])


def test_the_chart_is_whole_and_every_row_of_it_is_marked_as_remembered() -> None:
    assert list(CHART.ratings) == list("ABCDEFGH") and len(CHART.materials) == 8
    assert all(set(cells) == set(CHART.materials) for cells in CHART.ratings.values())
    assert all(row.figure.mark is Mark.MEMORY for row in load().hazard["gloves_chart"])


@pytest.mark.parametrize(
    ("kind", "carrier", "groups"),
    [
        ("SL", "water", ("A",)), ("SL", "none", ("A",)), ("WG", "water", ("A",)), ("SL", "oil", ("E", "G")),
        ("EC", "water", ("E", "G")), ("EC", "oil", ("E", "G")), ("EC", "none", ("E", "G")), ("", "water", ("E", "G")),
        ("RTU", "none", ("E", "G")),
    ],
)  # fmt: skip
def test_only_what_is_known_to_be_water_based_counts_as_that(kind: str, carrier: str, groups: tuple[str, ...]) -> None:
    assert solvent_groups(kind, carrier) == groups


def test_in_oil_nitrile_holds_and_butyl_rubber_and_polyethylene_do_not() -> None:
    assert set(CHART.rated(Rating.HIGH, ("E",))) >= {"nitrile", "neoprene", "barrier laminate"}
    assert all(CHART.weakest(one, ("E",)) <= Rating.SLIGHT for one in ("butyl", "natural rubber", "polyethylene"))


def test_a_material_is_as_good_as_against_the_worst_that_may_be_in_it() -> None:
    for material in CHART.materials:
        assert CHART.weakest(material, ("E", "G")) == min(CHART.ratings[one][material] for one in "EG")
    assert CHART.rated(Rating.HIGH, ("E", "G")) == ("barrier laminate", "fluoro-elastomer")


def test_words_tell_the_groups_apart_where_they_differ_and_name_what_never_holds() -> None:
    words = chart_words(CHART, ("E", "G"), TIMES)
    assert "nitrile, neoprene: the day in E, 10 min in G" in words
    assert "butyl: 10 min;" in words and words.endswith("never polyethylene")
    assert "PVC: 1 to 2 h" in chart_words(CHART, ("E",), TIMES)


@pytest.mark.parametrize(
    ("said", "found"),
    [
        ("nitrile >= 14 mil", "nitrile"), ("nitrile gloves", "nitrile"), ("Butyl rubber", "butyl"),
        ("latex", "natural rubber"), ("rubber gloves", "natural rubber"), ("Barrier Laminate", "barrier laminate"),
        ("vinyl", "PVC"), ("PVC", "PVC"), ("neoprene rubber", "neoprene"), ("chemical-resistant gloves", ""),
        ("leather", ""),
    ],
)  # fmt: skip
def test_a_material_is_known_by_the_words_of_labels_and_shops(said: str, found: str) -> None:
    assert material_of(said, CHART.materials) == found


def test_a_liner_goes_after_ten_hours_of_use_or_a_day() -> None:
    assert liner_hours_left(10.5, 11, 10, 24) < 0
    assert liner_hours_left(2, 25, 10, 24) < 0
    assert liner_hours_left(2, 20, 10, 24) == 4
