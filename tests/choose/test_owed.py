"""Follow-up owed: when it is due, what comes after it, how long seed is looked after, what is lost."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rootcollar.choose import LOOK, NOTHING, SEED, VISIT, Owed, Setting, bank_words, bank_years, judge_years, owed
from rootcollar.choose.after import lost_words, survivors, timeline, years_to_share
from rootcollar.choose.owed import next_due, owed_soon
from rootcollar.kernel.doubt import best, sure
from rootcollar.kernel.formula import watch
from rootcollar.label import Applied, History
from tests.choose.hobbin import DAY, plain_setting

LAST = date(2026, 3, 12)
EARLY = timedelta(days=92)
INCH_CM = 2.54


def row(on: date = LAST, **facts: Any) -> Applied:
    known = {"species": "rhca3", "method": "basal_bark", "stems": 40.0, "diameter_cm": (INCH_CM, 2 * INCH_CM)}
    return Applied(on, "plain", "triclopyr", 100.0, 1000.0, **(known | facts))


def setting(*rows: Applied, on: date = DAY) -> Setting:
    return replace(plain_setting(), history=History(rows, complete=True), on=on)


def one_owed(*rows: Applied, on: date = DAY) -> Owed:
    (found,) = owed(setting(*rows, on=on))
    return found


def test_nothing_is_owed_where_nothing_was_treated() -> None:
    assert owed(setting()) == ()


@pytest.mark.parametrize(
    ("visits", "judge", "bank", "kinds"),
    [
        (0, 1, 0, (LOOK,)),
        (0, 1, 2, (LOOK, SEED)),
        (1, 1, 2, (VISIT, LOOK, SEED)),
        (2, 2, 0, (VISIT, VISIT, NOTHING, LOOK)),
        (0, 2, 3, (SEED, LOOK, SEED)),
    ],
)
def test_visits_come_before_the_look_back_and_the_look_back_before_seed(
    visits: int, judge: int, bank: int, kinds: tuple[str, ...]
) -> None:
    assert timeline(visits, judge, bank) == kinds


@given(st.integers(0, 5), st.integers(1, 3), st.integers(0, 20))
def test_a_timeline_ends_with_the_last_that_is_due(visits: int, judge: int, bank: int) -> None:
    kinds = timeline(visits, judge, bank)
    assert kinds.count(VISIT) == visits
    assert kinds.count(LOOK) == 1
    assert len(kinds) == visits + max(judge, bank)
    assert kinds[-1] != NOTHING


def test_a_follow_up_is_due_a_year_after_the_visit() -> None:
    assert one_owed(row()).due == date(2027, 3, 12)


def test_of_a_leap_day_it_is_due_the_day_before_march() -> None:
    assert one_owed(row(date(2024, 2, 29)), on=date(2024, 6, 1)).due == date(2025, 2, 28)


def test_stems_that_live_are_treated_again_until_the_share_is_dead() -> None:
    """A kill below the target share leaves visits to come; as many visits as it takes leave the look-back."""
    first = one_owed(row())
    assert first.kind == VISIT
    again = [row(date(2026 - year, 3, 12)) for year in range(6)]
    assert one_owed(*again).kind == LOOK


def test_a_look_that_found_nothing_settles_what_was_due_then() -> None:
    looked = row(date(2026, 9, 1), method="look", stems=None)
    began = [row(date(2025 - year, 9, 1)) for year in range(6)]
    before, after = one_owed(*began), one_owed(*began, looked)
    assert (before.kind, before.due) == (LOOK, date(2026, 9, 1))
    assert (after.kind, after.due) == (SEED, date(2027, 9, 1))


def test_what_was_missed_for_years_is_owed_since_the_first_and_done_once() -> None:
    kinds = (VISIT, LOOK, SEED)
    assert next_due(kinds, LAST, None, date(2029, 6, 1), EARLY) == (0, date(2027, 3, 12))
    assert next_due((LOOK, SEED, SEED), LAST, date(2029, 3, 1), date(2029, 6, 1), EARLY) == (3, date(2029, 6, 1))


def test_a_follow_up_may_be_done_a_little_early_and_not_much() -> None:
    assert set(owed_soon(setting(row(), on=date(2026, 12, 20)))) == {"plain"}
    assert owed_soon(setting(row(), on=date(2026, 11, 20))) == {}


def test_rows_of_the_future_are_no_treatment_yet() -> None:
    assert owed(setting(row(DAY + timedelta(days=1)))) == ()


def test_what_nobody_wrote_is_said_and_never_none() -> None:
    nameless = one_owed(row(species="", method="", stems=None, diameter_cm=None))
    assert any("which plant it was" in one for one in nameless.not_known)
    assert nameless.spent is None
    assert nameless.kind == LOOK
    mulberry = one_owed(row(species="moal", stems=None, diameter_cm=None))
    assert any("for how many years seed of white mulberry comes up is not known" in one for one in mulberry.not_known)


def test_what_was_spent_is_the_cost_of_the_stems() -> None:
    found = one_owed(row(stems=40.0))
    assert found.spent is not None
    double = one_owed(row(stems=80.0)).spent
    assert double is not None
    assert best(double) == pytest.approx(2 * best(found.spent))
    assert best(found.spent) > 0


def test_a_product_of_two_ingredients_is_one_visit() -> None:
    second = Applied(LAST, "plain", "2,4-D", 50.0, 1000.0, product="two-in-one")
    assert one_owed(row(product="two-in-one"), second).done == 1


def test_the_order_of_the_rows_changes_nothing() -> None:
    rows = [row(), row(date(2025, 3, 12)), row(species="loma6"), row(method="hack_squirt")]
    told = [(one.unit, one.species, one.kind, one.due, one.ahead) for one in owed(setting(*rows))]
    again = [(one.unit, one.species, one.kind, one.due, one.ahead) for one in owed(setting(*reversed(rows)))]
    assert told == again


@pytest.mark.parametrize(
    ("species", "method", "years"),
    [("rhca3", "basal_bark", 1), ("rhca3", "cut_stump", 2), ("aial", "basal_bark", 2), ("loja", "foliar", 3)],
)
def test_the_verdict_waits_as_long_as_the_longest_source_says(species: str, method: str, years: int) -> None:
    """poole2025: 12 months; BALL06: two seasons on stumps; ditomaso2007 and enloe2015: 24 months on suckering trees;
    regehr1988: 28 months on Japanese honeysuckle.
    """
    found = setting()
    assert judge_years(found.reference.species[species], method, found) == years


@pytest.mark.parametrize(
    ("species", "years"),
    [("rhca3", 2), ("loma6", 6), ("elum", 3), ("tara", 1), ("cysc4", 60), ("aial", 6), ("moal", None), ("romu", 20)],
)
def test_seed_is_looked_after_as_long_as_its_source_says(species: str, years: int | None) -> None:
    """schuster2023; 44 % a year (compadre2019) to 1 %; vt_elaeagnus; ucw_tamarix; fourcounty_broom; rebbeck2018."""
    found = setting()
    assert bank_years(found.reference.species[species], found) == years


def test_years_of_seed_are_told_with_source_and_mark_and_a_second_figure_beside() -> None:
    found = setting()
    species = found.reference.species
    assert bank_words(species["rhca3"], found).endswith("2 years [schuster2023, read]")
    assert "44% of it staying each year" in bank_words(species["loma6"], found)
    assert "20 years [wi_dnr, memory]; 3 by 12% of it staying" in bank_words(species["romu"], found)
    assert "is not known" in bank_words(species["moal"], found)


def test_the_years_of_seed_open_into_their_figures() -> None:
    found = setting()
    with watch() as steps:
        bank_years(found.reference.species["loma6"], found)
    assert steps[-1].formula.name.endswith("years_to_share")
    assert {one.formula.source for one in steps} >= {"compadre2019", "ours"}


def test_what_a_missed_follow_up_loses_is_told_with_its_source() -> None:
    words = lost_words(setting())
    assert "loses the money" in words
    assert "82% of the plants are back" in words
    assert "[compadre2019, reckoned]" in words


@given(st.floats(0.05, 0.9), st.floats(0.001, 0.5))
def test_after_so_many_years_so_much_is_left(stays: float, left: float) -> None:
    assert stays ** years_to_share(stays, left) == pytest.approx(left)


@given(st.floats(0, 5000), st.floats(0.01, 1), st.integers(0, 8))
def test_each_visit_leaves_fewer(stems: float, kill: float, visits: int) -> None:
    less, more = (best(survivors(sure(stems), sure(kill), many)) for many in (visits + 1, visits))
    assert 0 <= less <= more <= stems


def test_a_first_step_that_waits_for_its_second_is_no_visit_to_repeat() -> None:
    """Knotweed cut in June is sprayed two months later: that is told as the second step, not as a visit in a year."""
    june = replace(row(date(2026, 6, 10), species="pocu6", method="cut"), ingredient="")
    sprayed = row(date(2026, 8, 20), species="pocu6", method="foliar")
    assert owed(setting(june, on=date(2026, 8, 1))) == ()
    assert [one.species for one in owed(setting(june, sprayed, on=date(2026, 9, 1)))] == ["pocu6"]
