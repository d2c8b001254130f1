"""Categories and the word they lead to: edges are the more toxic side, and only the three poisons add Poison."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.hazard import (
    MEASURED,
    ROUTES,
    Category,
    Route,
    SignalWord,
    entry_default_h,
    signal_word,
    toxicity_category,
)
from rootcollar.reference import load, named, numbers

I, II, III, IV = Category  # noqa: E741  the numerals of the rule
CATEGORIES = st.dictionaries(st.sampled_from(ROUTES), st.sampled_from(list(Category)), min_size=1)


def category(route: Route, figure: float, table: str = "toxicity_regulation") -> Category:
    """Return the category of a figure by one of the two tables of the facts."""
    rows = load().hazard[table]
    edges = [numbers(named(rows, f"{route}_{step}"))[0].value for step in ("i", "ii", "iii")]
    return Category(toxicity_category(figure, *edges))


# 40 CFR 156.62, 2015 edition: "up to and including" the figure.
@pytest.mark.parametrize(
    ("route", "figure", "found"),
    [
        ("oral", 50, I), ("oral", 50.1, II), ("oral", 500, II), ("oral", 501, III), ("oral", 5000, III),
        ("oral", 5001, IV), ("dermal", 200, I), ("dermal", 201, II), ("dermal", 2000, II), ("dermal", 2001, III),
        ("dermal", 20000, III), ("dermal", 20001, IV), ("inhalation", 0.2, I), ("inhalation", 0.21, II),
        ("inhalation", 2, II), ("inhalation", 2.1, III), ("inhalation", 20, III), ("inhalation", 20.1, IV),
    ],
)  # fmt: skip
def test_an_edge_of_the_regulation_belongs_to_the_more_toxic_side(route: Route, figure: float, found: Category) -> None:
    assert category(route, figure) is found


def test_the_agencys_practice_is_kept_beside_the_regulation_and_never_averaged() -> None:
    assert category("dermal", 20001, "toxicity_practice") is IV
    assert (category("dermal", 5001), category("dermal", 5001, "toxicity_practice")) == (III, IV)
    assert (category("inhalation", 1.0), category("inhalation", 1.0, "toxicity_practice")) == (II, III)


def test_practice_is_never_more_severe_than_the_regulation() -> None:
    for route in MEASURED:
        for figure in (0.04, 0.2, 1, 3, 30, 60, 300, 1000, 4000, 6000, 30000):
            assert category(route, figure, "toxicity_practice") >= category(route, figure)


# 40 CFR 156.64, 2015 edition.
@pytest.mark.parametrize(
    ("five", "word"),
    [
        ((III, III, IV, I, IV), SignalWord.DANGER),
        ((I, IV, IV, IV, IV), SignalWord.DANGER_POISON),
        ((IV, I, IV, IV, IV), SignalWord.DANGER_POISON),
        ((IV, IV, I, IV, IV), SignalWord.DANGER_POISON),
        ((IV, IV, IV, IV, I), SignalWord.DANGER),
        ((III, III, III, II, III), SignalWord.WARNING),
        ((III, IV, IV, IV, IV), SignalWord.CAUTION),
        ((IV, IV, IV, IV, IV), SignalWord.NONE),
    ],
)
def test_the_worst_route_sets_the_word(five: tuple[Category, ...], word: SignalWord) -> None:
    assert signal_word(dict(zip(ROUTES, five, strict=True))) is word


@given(CATEGORIES, st.sampled_from(ROUTES), st.sampled_from(list(Category)))
def test_one_more_route_never_makes_the_word_milder(told: dict[Route, Category], route: Route, one: Category) -> None:
    more = {**told, route: min(one, told.get(route, IV))}
    assert signal_word(more) >= signal_word(told)


def test_without_a_route_there_is_no_word() -> None:
    with pytest.raises(ValueError, match="no route"):
        signal_word({})


def test_a_word_is_printed_as_labels_print_it() -> None:
    assert [word.label for word in SignalWord] == [
        "no word", "CAUTION", "WARNING", "DANGER", "DANGER with Poison and skull",
    ]  # fmt: skip


# 40 CFR 156.208(c)(1), (2), 2015 edition: the most toxic of skin contact, eye and skin irritation of the active.
@pytest.mark.parametrize(
    ("told", "hours"),
    [
        ({"dermal": III, "eye": IV, "skin": IV}, 12.0), ({"dermal": IV, "eye": IV, "skin": IV}, 12.0),
        ({"dermal": IV, "eye": II, "skin": IV}, 24.0), ({"dermal": IV, "eye": IV, "skin": I}, 48.0),
        ({"oral": I, "dermal": III, "inhalation": I, "eye": IV, "skin": IV}, 12.0), ({"oral": II, "eye": IV}, 24.0),
        ({"inhalation": I}, None), ({}, None),
    ],
)  # fmt: skip
def test_the_entry_time_a_label_starts_from(told: dict[Route, Category], hours: float | None) -> None:
    assert entry_default_h(told, load().hazard["entry_default"]) == hours
