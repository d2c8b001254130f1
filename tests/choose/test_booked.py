"""Booked first: what is owed takes its place in a year before new ground; limits hold to the cent and minute."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rootcollar.choose import Booked, Choice, Own, Prescription, Setting, booked, rounds_of
from rootcollar.choose.booked import NO_WORK, Year, owed_years
from rootcollar.choose.first import order_units
from rootcollar.choose.owed import owed
from rootcollar.kernel.doubt import best, sure
from rootcollar.label import Applied, History
from tests.choose.hobbin import DAY, PLAIN, chosen, plain_setting, stand

ACRE_M2 = 4046.8564224
UNITS = ("a", "b", "c")
INCH_CM = 2.54


@cache
def _pulled(plant: str) -> Choice:
    return chosen(stand(plant, 0.1, 0.5), plain_setting())


def line(unit: str, count: float, plant: str = "common buckthorn") -> Choice:
    one = _pulled(plant)
    return replace(one, stand=replace(one.stand, key=f"{unit}/{plant}", unit=unit, stems=sure(count), fruiting=False))


def setting(own: Own | None = None, rows: Sequence[Applied] = ()) -> Setting:
    base = plain_setting()
    units = {key: replace(PLAIN, key=key, name=f"unit {key}", area_m2=ACRE_M2) for key in UNITS}
    return replace(
        base, ground=replace(base.ground, units=units), history=History(tuple(rows), complete=True), own=own or Own(),
    )  # fmt: skip


def plan(lines: Sequence[Choice], of: Setting) -> Prescription:
    places = order_units(lines, of)
    return Prescription(tuple(lines), tuple((one.key, one.because) for one in places), places=places)


def book(lines: Sequence[Choice], own: Own | None = None, rows: Sequence[Applied] = ()) -> Booked:
    of = setting(own, rows)
    return booked(plan(lines, of), of)


def treated(unit: str, on: date = date(2025, 9, 1), stems: float = 200.0, species: str = "rhca3") -> Applied:
    return Applied(on, unit, "triclopyr", 100.0, ACRE_M2, species=species, method="basal_bark", stems=stems,
                   diameter_cm=(INCH_CM, 2 * INCH_CM))  # fmt: skip


def starts(found: Booked) -> dict[str, int | None]:
    return {one.unit: one.years for one in found.starts}


LINES = (line("a", 100), line("b", 200), line("c", 300))


def needs(*units: str) -> float:
    """Minutes of the first visit to some of the lines' units."""
    return sum(one.takes for one in book(LINES).starts if one.unit in units)


def test_without_a_limit_all_begins_now() -> None:
    assert starts(book(LINES)) == {"a": 0, "b": 0, "c": 0}


def test_in_the_order_of_the_plan_and_no_more_than_the_year_holds() -> None:
    found = book(LINES, Own(year_min=needs("a", "b") + 1))
    at = starts(found)
    assert (at["a"], at["b"]) == (0, 0)
    assert at["c"] is not None
    assert at["c"] > 0
    assert not any(found.passes(one) for one in found.taken)


def test_the_limit_is_exact_to_the_minute() -> None:
    whole = round(needs("a", "b", "c"))
    assert starts(book(LINES, Own(year_min=whole)))["c"] == 0
    assert starts(book(LINES, Own(year_min=whole - 1)))["c"] == 1


def test_the_limit_is_exact_to_the_cent() -> None:
    whole = round(100 * sum(one.money for one in book(LINES).starts)) / 100
    assert starts(book(LINES, Own(year_money=whole)))["c"] == 0
    assert starts(book(LINES, Own(year_money=whole - 0.01)))["c"] == 1


def test_what_is_owed_is_booked_before_new_ground_and_caps_it() -> None:
    rows = [treated("c")]
    own = Own(year_min=needs("a", "b") + 1)
    without, with_ = book(LINES[:2], own), book(LINES[:2], own, rows)
    assert starts(without) == {"a": 0, "b": 0}
    assert starts(with_)["b"] != 0
    assert best(with_.owed[0].minutes) > 0
    assert [one.unit for one in with_.owed_starts] == ["c"]


def test_a_unit_that_never_fits_is_named_and_holds_nobody_back() -> None:
    found = book((line("a", 90_000), line("b", 100)), Own(year_min=60 * 20))
    assert starts(found) == {"b": 0, "a": None}


def test_follow_up_that_does_not_fit_is_named_the_longest_owed_first() -> None:
    rows = [treated("b", date(2024, 9, 1), 4000), treated("a", date(2025, 9, 1), 4000)]
    one = book((), None, rows).owed_starts
    assert [(start.unit, start.years) for start in one] == [("b", 0), ("a", 0)]
    most = Own(year_min=max(start.takes for start in one) + 100)
    assert book((), most, rows).owed_starts[0].years == 0
    assert book((), most, rows).owed_starts[1].years != 0
    assert best(book((), most, rows).owed[0].minutes) == pytest.approx(best(book((), None, rows).owed[0].minutes))


def test_owed_beyond_the_limit_leaves_no_room_for_new_ground_that_year() -> None:
    found = book((line("a", 100),), Own(year_min=needs("a") + 1), [treated("b", stems=20_000)])
    assert found.passes(found.owed[0])
    assert starts(found)["a"] != 0


def test_the_visit_owed_to_a_plant_is_not_new_ground_too() -> None:
    found = book((line("a", 100), line("a", 50, "garlic mustard")), None, [treated("a")])
    both = book((line("a", 100), line("a", 50, "garlic mustard")))
    assert found.starts[0].takes < both.starts[0].takes
    assert book((line("a", 100),), None, [treated("a")]).starts == ()


def test_plants_of_one_unit_are_looked_at_on_one_walk() -> None:
    of = setting(rows=[treated("a"), treated("a", species="loma6")])
    alone = setting(rows=[treated("a")])
    both, one = (owed_years(owed(each), 3, each)["a"] for each in (of, alone))
    assert best(both[0].walk_min) == pytest.approx(best(one[0].walk_min))
    assert best(both[0].stems_min) > best(one[0].stems_min)


def test_new_ground_takes_its_visits_and_looks_in_later_years() -> None:
    found = book(LINES[:1])
    assert best(found.taken[1].minutes) > 0
    assert best(found.taken[0].walk_min) == 0
    assert best(found.taken[1].walk_min) > 0


def test_years_nobody_gives_are_named_and_not_counted_as_none() -> None:
    found = book((line("a", 10, "white mulberry"),))
    assert any("white mulberry comes up is not known" in words for words in found.not_known)


def test_the_plan_counts_visits_look_backs_and_years_of_seed() -> None:
    """Common buckthorn: two years of seed (schuster2023); garlic mustard ten (feis)."""
    of = setting()
    short, long_ = (rounds_of(plan([line("a", 50, plant)], of), of) for plant in ("common buckthorn", "garlic mustard"))
    assert (short.seed, long_.seed) == (2 - 1, 10 - 1)  # the look-back stands for the first
    assert long_.years == long_.visits - 1 + 10
    assert short.looks == long_.looks == 1
    two = rounds_of(plan([line("a", 50), line("b", 50)], of), of)
    assert (two.visits, two.looks, two.seed) == (2 * short.visits, 2 * short.looks, 2 * short.seed)
    assert two.years == short.years


def test_no_work_has_no_rounds() -> None:
    of = setting()
    none = rounds_of(plan([], of), of)
    assert (none.visits, none.looks, none.seed, none.years) == (0, 0, 0, 0)


@settings(max_examples=25)
@given(st.lists(st.integers(1, 900), min_size=3, max_size=3), st.integers(10, 4000), st.permutations(range(3)))
def test_no_year_is_overfilled_and_the_order_of_the_lines_changes_nothing(
    counts: list[int], hours: int, turn: list[int]
) -> None:
    lines = [line(unit, count) for unit, count in zip(UNITS, counts, strict=True)]
    own = Own(year_min=60.0 * hours / 100)
    found = book(lines, own, ROWS)
    again = book([lines[at] for at in turn], own, ROWS[::-1])
    assert starts(found) == starts(again)
    for owed_, taken in zip(found.owed, found.taken, strict=True):
        assert not found.passes(taken) or round(best(taken.minutes)) == round(best(owed_.minutes))


ROWS = [treated("a"), treated("b", species="loma6")]


@settings(max_examples=25)
@given(st.integers(60, 6000), st.integers(0, 3000))
def test_a_wider_year_never_starts_the_first_unit_later(minutes: int, more: int) -> None:
    narrow, wide = (book(LINES, Own(year_min=float(one))).starts[0].years for one in (minutes, minutes + more))
    assert narrow is None or (wide is not None and wide <= narrow)


def test_a_year_is_its_stems_and_its_walk() -> None:
    year = Year(sure(10.0), sure(4.0), sure(5.0), sure(2.0))
    assert (best(year.minutes), best(year.money)) == (15, 6)
    assert best(NO_WORK.minutes) == 0


def test_the_day_of_the_plan_is_the_first_of_its_years() -> None:
    assert best(book((), None, [treated("a", date(2025, 9, 1))]).owed[0].minutes) > 0
    assert date(2026, 9, 15) == DAY
    late = book((), None, [treated("a", date(2026, 9, 15))])
    assert (best(late.owed[0].minutes), best(late.owed[1].minutes) > 0) == (0, True)
