"""The least to wear: the rows of the rule's table, what stands in for what is missing, and never less for more harm."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.hazard import ROUTES, TASKS, Category, Floor, Route, SignalWord, Task, wear_floor
from rootcollar.reference import load

I, II, III, IV = Category  # noqa: E741  the numerals of the rule
CATEGORIES = st.fixed_dictionaries({route: st.sampled_from(list(Category)) for route in ROUTES})
GLOVES, EYES, APRON = "chemical-resistant gloves", "protective eyewear", "chemical-resistant apron"
FOUR = {"long sleeves", "long trousers", "shoes and socks"}
TWO = {"coveralls", "short sleeves", "short trousers", "socks", "chemical-resistant footwear", GLOVES}
ONE = {"coveralls", "long sleeves", "long trousers", "socks", "chemical-resistant footwear", GLOVES}


def floor(
    task: Task, categories: Mapping[Route, Category], word: SignalWord | None = None, *, ready: bool = False,
    overhead: bool = False,
) -> Floor:  # fmt: skip
    """Return the floor by the facts' own table."""
    return wear_floor(task, categories, word, load().hazard["wear_floor"], ready_to_use=ready, overhead=overhead)


def five(dermal: Category, skin: Category, eye: Category = IV, inhalation: Category = IV) -> dict[Route, Category]:
    """Return categories of all routes."""
    return {"oral": IV, "dermal": dermal, "skin": skin, "eye": eye, "inhalation": inhalation}


# 40 CFR 156.212(e) table 1, 2015 edition.
@pytest.mark.parametrize(
    ("categories", "items"),
    [
        (five(IV, IV, III), FOUR),
        (five(III, IV), FOUR | {GLOVES}),
        (five(II, IV), TWO),
        (five(IV, II), TWO),
        (five(I, IV), ONE),
        (five(IV, I), ONE),
        (five(IV, IV, II), FOUR | {EYES}),
        (five(IV, IV, I), FOUR | {EYES}),
        (five(IV, IV, IV, II), FOUR | {"respirator"}),
        (five(III, III, I, I), FOUR | {GLOVES, EYES, "respirator"}),
    ],
)
def test_the_floor_is_what_the_rules_table_prints(categories: dict[Route, Category], items: set[str]) -> None:
    assert set(floor("applying", categories).items) == items


# 40 CFR 156.212(i), 2015 edition.
def test_an_apron_is_for_mixing_and_cleaning_where_the_skin_is_at_risk_and_not_for_what_is_ready_to_use() -> None:
    harsh = five(II, IV)
    assert {task for task in TASKS if APRON in floor(task, harsh).items} == {"mixing", "cleaning"}
    assert {task for task in TASKS if APRON in floor(task, harsh, ready=True).items} == {"cleaning"}
    assert not any(APRON in floor(task, five(III, III)).items for task in TASKS)


def test_headgear_is_for_what_comes_from_above() -> None:
    assert "chemical-resistant headgear" in floor("applying", five(I, IV), overhead=True).items
    assert "chemical-resistant headgear" not in floor("applying", five(I, IV)).items
    assert "chemical-resistant headgear" not in floor("applying", five(III, IV), overhead=True).items


def test_oral_stands_in_for_skin_contact_and_breathing_and_then_the_word_and_it_is_said() -> None:
    found = floor("applying", {"oral": II, "eye": IV, "skin": IV})
    assert set(found.items) == TWO | {"respirator"}
    assert len(found.stands_in) == 2 and all("oral II" in one for one in found.stands_in)
    by_word = floor("applying", {}, SignalWord.CAUTION)
    assert set(by_word.items) == FOUR | {GLOVES} and len(by_word.stands_in) == 4
    assert set(floor("applying", {}, SignalWord.DANGER_POISON).items) == ONE | {EYES, "respirator"}


def test_where_nothing_is_known_the_floor_is_empty_and_says_so() -> None:
    assert floor("mixing", {}) == Floor((), (), ("dermal", "inhalation", "eye", "skin"))
    assert floor("mixing", {"skin": III}).unknown == ("dermal", "inhalation", "eye")


@given(CATEGORIES, st.sampled_from(ROUTES), st.sampled_from(TASKS))
def test_gloves_eyewear_mask_and_apron_never_fall_away_for_a_worse_category(
    told: dict[Route, Category], route: Route, task: Task
) -> None:
    worse = {**told, route: Category(max(1, told[route] - 1))}
    kept = {GLOVES, EYES, APRON, "respirator", "coveralls"}
    assert kept & set(floor(task, told).items) <= set(floor(task, worse).items)
